package packet

import (
	"bytes"
	"path/filepath"
	"testing"
	"time"

	"hoopwright/draw/pdf"
	"hoopwright/layout"
	"hoopwright/layout/spec"
)

// written binds a plan, annex and all, and returns its file.
func written(t testing.TB, plan *layout.Plan) []byte {
	t.Helper()
	doc, _, err := Bind(plan, Options{Annex: true, Date: time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)})
	if err != nil {
		t.Fatal(err)
	}
	var file bytes.Buffer
	if err := pdf.Write(&file, doc); err != nil { // a figure that is no number is refused there
		t.Fatal(err)
	}
	return file.Bytes()
}

// FuzzPipeline: whatever the reader accepts, whole or changed at random, becomes a packet without a panic in a moment, and the spec comes back out of it.
func FuzzPipeline(f *testing.F) {
	for seed := range uint64(2) {
		f.Add([]byte(thrown(seed)))
	}
	f.Fuzz(func(t *testing.T, source []byte) {
		s, err := spec.Read("fuzz.yaml", source)
		if err != nil || s.Tunnel.Arches > 20 {
			return
		}
		began := time.Now()
		file := written(t, layout.Solve(s))
		if took := time.Since(began); took > 20*time.Second {
			t.Errorf("took %v", took)
		}
		name, back, err := Recover(file)
		if err != nil || name != "fuzz.yaml" || !bytes.Equal(back, source) {
			t.Errorf("%s of %d bytes came back for %d: %v", name, len(back), len(source), err)
		}
	})
}

// FuzzRecover: what is got out of any file, harmed or hostile, is a spec by its first key, under a name without a folder; else there is an error, never a panic.
func FuzzRecover(f *testing.F) {
	whole := written(f, planOf(f, []byte(thrown(1))))
	f.Add(whole)
	f.Add(whole[:len(whole)/2])
	f.Add(bytes.ReplaceAll(whole, []byte("endobj"), []byte("endobx")))
	f.Add([]byte("%PDF-1.4\n1 0 obj<</Names<</EmbeddedFiles<</Names[(a)<</F(../a)/EF<</F 2 0 R>>>>]>>>>>>endobj 2 0 obj<</Length 13>>stream\nhoopwright: 1\nendstream endobj trailer<</Root 1 0 R>>"))
	f.Fuzz(func(t *testing.T, file []byte) {
		for _, get := range []func([]byte) (string, []byte, error){Recover, RecoverFilled} {
			name, source, err := get(file)
			if (err == nil) != (source != nil) {
				t.Fatalf("%d bytes and %v", len(source), err)
			}
			if err == nil && (!versionLine.Match(source) || name != filepath.Base(name) || name == "..") {
				t.Fatalf("%q: %.40q", name, source)
			}
		}
	})
}
