package spec

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"hoopwright/layout/measure"
)

// TestSources reads files that are no spec at all.
func TestSources(t *testing.T) {
	for _, c := range []struct{ name, source, want string }{
		{"empty", "", "walk.yaml:1:1: the file is empty"},
		{"only comments", "# nothing\n\n# yet\n", "walk.yaml:1:1: the file is empty"},
		{"a packet", "%PDF-1.7\n%\xe2\xe3", "walk.yaml:1:1: this is a PDF, not a spec; `hoopwright recover`"},
		{"too large", "# " + strings.Repeat("x", MostBytes), "walk.yaml:1:1: the file has 1048578 bytes; a spec has at most 1048576"},
		{"Latin-1", "hoopwright: 1\ntitle: Caf\xe9\n", "walk.yaml:2:11: the byte here is no UTF-8"},
		{"UTF-16", "\xff\xfeh\x00", "walk.yaml:1:1: the file is in UTF-16"},
		{"a control character", "title: \x07\n", "walk.yaml:1:8: there is a control character here (code 7)"},
		{"a list", "- hoopwright: 1\n", "walk.yaml:1:1: this is no spec, which holds keys with values"},
		{"a word", "hoopwright:1\n", "walk.yaml:1:1: this is no spec, which holds keys with values"},
		{"an open quotation", "hoopwright: 1\ntitle: 'x\n", "a quotation mark opens here and is never closed"},
		{"a second document without end", "hoopwright: 1\n---\n[", "walk.yaml:2:1: a second document begins here"},
	} {
		s, err := Read("walk.yaml", []byte(c.source))
		if s != nil || err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %s", c.name, err, c.want)
		}
	}
}

func TestByteOrderMarkAndCarriageReturns(t *testing.T) {
	s := mustRead(t, "\ufeff"+strings.ReplaceAll(smallest, "\n", "\r\n"))
	equal(t, "title", s.Title, "One")
}

// TestAliases repeats a value by a name of YAML's.
func TestAliases(t *testing.T) {
	s := mustRead(t, strings.Replace(smallest, "span: 2 m}", "span: 2 m, stake: &s {bar: 12 mm, length: 1 m, depth: 400 mm}}\nguys: {from: 1.5 m, out: 1 m, stake: *s}", 1))
	equal(t, "guy stake", s.Guys.Stake, Stake{Bar: s.Arch.Stake.Bar, Length: 1000, Depth: 400})
}

// FuzzRead reads whatever comes: no panic, and what is read is finite and within the limits.
func FuzzRead(f *testing.F) {
	for _, glob := range []string{"../../examples/*.yaml", "testdata/bad/*.yaml"} {
		files, err := filepath.Glob(glob)
		if err != nil || len(files) == 0 {
			f.Fatalf("nothing at %s: %v", glob, err)
		}
		for _, file := range files {
			source, err := os.ReadFile(file)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(source)
		}
	}
	f.Add([]byte(quotedPlaces))
	f.Add([]byte(smallest))
	f.Fuzz(func(t *testing.T, source []byte) {
		s, err := Read("fuzz.yaml", source)
		if (s == nil) == (err == nil) {
			t.Fatalf("spec %v with error %v", s != nil, err)
		}
		if err != nil {
			var list Errors
			if !errors.As(err, &list) || len(list) == 0 {
				t.Fatalf("no list of errors: %v", err)
			}
			for _, e := range list {
				if e.Text == "" || e.Pos.Line < 1 || e.Pos.Column < 1 {
					t.Fatalf("error without text or place: %#v", e)
				}
			}
			return
		}
		checkLimits(t, s)
	})
}

// checkLimits checks what a spec promises to the parts that use it.
func checkLimits(t *testing.T, s *Spec) {
	t.Helper()
	for i := range s.Lights.Wraps {
		checkPlaces(t, s, s.Lights.Wraps[i].Where)
	}
	for i := range s.Lights.Drops {
		checkPlaces(t, s, s.Lights.Drops[i].Where)
	}
	finite(t, "spec", reflect.ValueOf(*s))
	u := s.Tunnel
	if u.Arches < 1 || u.Arches > MostArches || u.Arches > 1 && !spacings.hold(u.Spacing) {
		t.Errorf("tunnel of %d arches %v apart", u.Arches, u.Spacing)
	}
	if off := u.Length - measure.Length(u.Arches-1)*u.Spacing; math.Abs(float64(off)) > float64(bayTolerance) {
		t.Errorf("%d arches %v apart are not %v long", u.Arches, u.Spacing, u.Length)
	}
	for n := 1; n <= u.Arches; n++ {
		a := s.ArchOf(n)
		if a.Pipe.OD <= 0 || a.Pipe.ID() <= 0 || a.Pipe.Mass <= 0 || a.Stake.Showing() <= 0 || a.Stake.Bar.Diameter <= 0 {
			t.Errorf("arch %d: pipe %+v, stake %+v", n, a.Pipe, a.Stake)
		}
		if (a.Left == nil) != (a.Missing == Sticks) || (a.Span == 0) != (a.Missing == Span) || (a.Height == 0) != (a.Missing == Height) {
			t.Errorf("arch %d: %+v does not leave one of three open", n, a)
		}
	}
}

func checkPlaces(t *testing.T, s *Spec, places []Place) {
	t.Helper()
	if len(places) == 0 {
		t.Errorf("no place")
	}
	for i := range places {
		if math.IsInf(float64(places[i].To), 1) && places[i].Bound == ByHeight {
			places[i].To = 0 // the one infinite figure a spec may hold
		}
		for _, n := range places[i].Of {
			if n < 1 || n > s.Tunnel.Arches || places[i].Part == RidgePieces && n >= s.Tunnel.Arches {
				t.Errorf("place of %d", n)
			}
		}
	}
}

// finite checks every number in a value.
func finite(t *testing.T, path string, v reflect.Value) {
	t.Helper()
	switch v.Kind() {
	case reflect.Float64:
		if math.IsNaN(v.Float()) || math.Abs(v.Float()) > 1e12 {
			t.Errorf("%s is %v", path, v.Float())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			finite(t, path+"."+v.Type().Field(i).Name, v.Field(i))
		}
	case reflect.Slice:
		if v.Type().Elem().Kind() == reflect.Uint8 {
			return // the source
		}
		for i := range v.Len() {
			finite(t, fmt.Sprintf("%s[%d]", path, i), v.Index(i))
		}
	case reflect.Pointer:
		if !v.IsNil() {
			finite(t, path, v.Elem())
		}
	}
}
