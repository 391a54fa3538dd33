package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"

	"hoopwright/examples"
)

// TestRecoverFromResavedPackets gets the spec back from packets that other programs have saved again: what is not installed is skipped.
func TestRecoverFromResavedPackets(t *testing.T) {
	inFolder(t, nil)
	if code, _, errs := call(t, "", "packet", "--date", "2026-11-20", "--sheets", "board"); code != 0 {
		t.Fatalf("exit %d: %s", code, errs)
	}
	tools := []struct {
		name string
		args []string
	}{
		{"qpdf", []string{"--object-streams=generate", "garden.pdf", "new.pdf"}},
		{"qpdf", []string{"--qdf", "garden.pdf", "new.pdf"}},
		{"qpdf", []string{"--linearize", "garden.pdf", "new.pdf"}},
		{"mutool", []string{"clean", "-gggg", "-z", "garden.pdf", "new.pdf"}},
		{"gs", []string{"-q", "-dNOPAUSE", "-dBATCH", "-sDEVICE=pdfwrite", "-sOutputFile=new.pdf", "garden.pdf"}},
	}
	for _, tool := range tools {
		t.Run(tool.name+tool.args[0], func(t *testing.T) {
			if _, err := exec.LookPath(tool.name); err != nil {
				t.Skipf("%s is not installed", tool.name)
			}
			os.Remove("new.pdf")
			if out, err := exec.Command(tool.name, tool.args...).CombinedOutput(); err != nil {
				t.Fatalf("%v: %s", err, out)
			}
			recovers(t, "new.pdf")
		})
	}
	t.Run("pdfcpu", func(t *testing.T) { // a library, always there
		if err := api.OptimizeFile("garden.pdf", "opt.pdf", nil); err != nil {
			t.Fatal(err)
		}
		recovers(t, "opt.pdf")
	})
	t.Run("as written", func(t *testing.T) { recovers(t, "garden.pdf") })
}

// recovers gets the built-in spec out of a packet, to a file and to standard output.
func recovers(t *testing.T, file string) {
	t.Helper()
	want := example(t, examples.BuiltIn)
	code, out, errs := call(t, "", "recover", file, "-o", "-")
	if code != 0 || out != want {
		t.Fatalf("exit %d, %d bytes of %d: %s", code, len(out), len(want), errs)
	}
	os.Remove("garden.yaml")
	if code, _, errs := call(t, "", "recover", file); code != 0 {
		t.Fatalf("exit %d: %s", code, errs)
	}
	if got, err := os.ReadFile("garden.yaml"); err != nil || string(got) != want {
		t.Errorf("the file holds %d bytes, %v", len(got), err)
	}
}

// TestRecoverLeavesFilesAlone: what is there stays, and a packet without a spec is told apart from what is no packet.
func TestRecoverLeavesFilesAlone(t *testing.T) {
	inFolder(t, map[string]string{"garden.yaml": "mine", "notes.txt": "no PDF", "plain.pdf": "%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\n2 0 obj<</Type/Pages/Kids[]/Count 0>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF"})
	if code, _, errs := call(t, "", "packet", "--sheets", "board"); code != 0 {
		t.Fatal(errs)
	}
	tests := []struct {
		name, args string
		code       int
		says       string
	}{
		{"over a file", "recover garden.pdf", 3, "left as it was"},
		{"over a named file", "recover garden.pdf -o notes.txt", 3, "left as it was"},
		{"to a folder", "recover garden.pdf -o .", 3, "."},
		{"no such folder", "recover garden.pdf -o nowhere/s.yaml", 3, "nowhere"},
		{"no PDF", "recover notes.txt", 2, "not a PDF"},
		{"no attachment", "recover plain.pdf", 2, "no files attached"},
		{"missing", "recover absent.pdf", 2, "absent.pdf"},
		{"nothing named", "recover", 2, "name a packet"},
		{"a PDF without a spec as the spec", "packet plain.pdf -o x.pdf", 2, "no files attached"},
		{"the packet over itself", "packet garden.pdf", 2, "is what the spec is read from"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			code, out, errs := call(t, "", strings.Fields(tt.args)...)
			if code != tt.code || out != "" || !strings.Contains(errs, tt.says) {
				t.Errorf("exit %d, %q, %q; want %d and %q", code, out, errs, tt.code, tt.says)
			}
			for name, want := range map[string]string{"garden.yaml": "mine", "notes.txt": "no PDF"} {
				if got, _ := os.ReadFile(name); string(got) != want {
					t.Errorf("%s was changed", name)
				}
			}
			if left, _ := filepath.Glob(".*.*"); len(left) > 0 {
				t.Errorf("left behind: %v", left)
			}
		})
	}
}

// The filled spec comes out of a packet beside the one as written, and nothing differs between a tunnel and what its packet was built by. A packet by a spec of that very name keeps both apart.
func TestRecoverFilled(t *testing.T) {
	inFolder(t, map[string]string{"filled.yaml": example(t, examples.BuiltIn)})
	if code, _, errs := call(t, "", "packet", "filled.yaml", "-o", "p.pdf", "--date", "2026-11-20", "--sheets", "spec"); code != 0 {
		t.Fatalf("exit %d: %s", code, errs)
	}
	code, asWritten, errs := call(t, "", "recover", "p.pdf", "-o", "-")
	if code != 0 || asWritten != example(t, examples.BuiltIn) {
		t.Errorf("exit %d: %s%s", code, errs, asWritten)
	}
	code, filled, errs := call(t, "", "recover", "p.pdf", "--filled", "-o", "-")
	if code != 0 || !strings.Contains(filled, "late modulus: 60 %") || strings.Contains(asWritten, "late modulus") {
		t.Errorf("exit %d: %s%s", code, errs, filled)
	}
	if code, out, errs := call(t, "", "check", "filled.yaml", "--against", "p.pdf"); code != 0 || !strings.Contains(out, "No figure differs") {
		t.Errorf("exit %d: %s%s", code, errs, out)
	}
}
