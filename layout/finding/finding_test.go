package finding

import (
	"encoding/json"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"
)

func TestLevelWords(t *testing.T) {
	for level, want := range map[Level]string{MustFix: "must fix", LookAt: "look at", Note: "note", 0: "level 0", 9: "level 9"} {
		if got := level.String(); got != want {
			t.Errorf("level %d is %q, want %q", int(level), got, want)
		}
	}
}

// A finding whose level was forgotten must not reach a reader.
func TestJSON(t *testing.T) {
	got, err := json.Marshal(Finding{Level: LookAt, Code: "guys-missing", Text: "Nothing holds it lengthwise.", Sheet: "raise"})
	if want := `{"level":"look at","code":"guys-missing","text":"Nothing holds it lengthwise.","sheet":"raise"}`; err != nil || string(got) != want {
		t.Errorf("got %s, %v; want %s", got, err, want)
	}
	if got, err := json.Marshal(Finding{Code: "guys-missing"}); err == nil {
		t.Errorf("a finding without a level became %s", got)
	}
}

func TestPosition(t *testing.T) {
	for want, p := range map[string]Position{
		"":           {},
		"walk.yaml":  {File: "walk.yaml", Column: 4},
		"a.yaml:7":   {File: "a.yaml", Line: 7},
		"a.yaml:7:3": {File: "a.yaml", Line: 7, Column: 3},
	} {
		if got := p.String(); got != want {
			t.Errorf("%+v is %q, want %q", p, got, want)
		}
	}
}

// Whatever order findings arrive in, they leave in one: worst first, then by sheet, code and text.
func TestSort(t *testing.T) {
	want := []Finding{
		{Level: MustFix, Sheet: "raise", Code: "no-arch"},
		{Level: MustFix, Sheet: "stakes", Code: "stake-near-line", Text: "L1"},
		{Level: MustFix, Sheet: "stakes", Code: "stake-near-line", Text: "L2"},
		{Level: LookAt, Sheet: "raise", Code: "arch-soft"},
		{Level: LookAt, Sheet: "raise", Code: "band-wide"},
		{Level: Note, Sheet: "raise", Code: "arch-soft"},
	}
	random := rand.New(rand.NewPCG(3, 4))
	for range 50 {
		got := slices.Clone(want)
		random.Shuffle(len(got), func(i, j int) { got[i], got[j] = got[j], got[i] })
		if Sort(got); !reflect.DeepEqual(got, want) {
			t.Fatalf("sorted as %v", got)
		}
	}
}

func TestMustFixes(t *testing.T) {
	list := []Finding{{Level: MustFix, Code: "b"}, {Level: LookAt, Code: "c"}, {Level: MustFix, Code: "a"}, {Level: MustFix, Code: "b"}}
	if got := MustFixes(list); !slices.Equal(got, []string{"b", "a"}) {
		t.Errorf("codes %q", got)
	}
	if got := MustFixes(list[1:2]); got != nil {
		t.Errorf("codes %q, want none", got)
	}
}
