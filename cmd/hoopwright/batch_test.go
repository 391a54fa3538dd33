package main

import (
	"bytes"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"testing"
	"time"

	"hoopwright/draw/pdf"
)

const small = "hoopwright: 1\ntitle: Small\ntunnel: {arches: 2, spacing: 4 ft}\narch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}\n"

// TestSeveralSpecsInOneCall: each is made into its own packet, whatever becomes of the others, and the messages keep the order of the call.
func TestSeveralSpecsInOneCall(t *testing.T) {
	files := map[string]string{"a.yaml": small, "bad.yaml": "hoopwright: 1\ntitle: x\n", "c.yaml": strings.Replace(small, "Small", "Third", 1), "old.pdf": "%PDF-1.4 old"}
	inFolder(t, files)
	if err := os.Mkdir("out", 0o755); err != nil {
		t.Fatal(err)
	}
	code, _, errs := call(t, "", "packet", "a.yaml", "bad.yaml", "missing.yaml", "c.yaml", "--sheets", "overview", "-o", "out")
	if code != 2 || !strings.Contains(errs, "2 of 4 packets were not made") {
		t.Errorf("exit %d: %s", code, errs)
	}
	at := -1
	for _, name := range []string{"a.pdf", "bad.yaml", "missing.yaml", "c.pdf"} {
		i := strings.Index(errs, name)
		if i <= at {
			t.Errorf("%s is named out of order in %q", name, errs)
		}
		at = i
	}
	for _, name := range []string{"a", "c"} {
		file, err := os.ReadFile("out/" + name + ".pdf")
		if err != nil {
			t.Fatal(err)
		}
		if attached, err := pdf.Attachments(file); err != nil || string(attached[0].Data) != files[name+".yaml"] {
			t.Errorf("out/%s.pdf carries another spec, %v", name, err)
		}
	}
	if entries, _ := os.ReadDir("out"); len(entries) != 2 {
		t.Errorf("%d files in the folder, want 2", len(entries))
	}
	if err := os.WriteFile("out/c.pdf", []byte("no PDF"), 0o644); err != nil {
		t.Fatal(err)
	}
	// The gravest code wins: one spec is wrong (2), one packet cannot be written (3).
	if code, _, errs := call(t, "", "packet", "c.yaml", "bad.yaml", "--sheets", "overview", "-o", "out"); code != 3 || !strings.Contains(errs, "is not a PDF") {
		t.Errorf("exit %d: %s", code, errs)
	}
	for _, bad := range [][]string{{"a.yaml", "c.yaml", "-o", "old.pdf"}, {"a.yaml", "out/../a.yaml"}, {"a.yaml", "-"}} {
		if code, _, errs := call(t, "", append([]string{"packet"}, bad...)...); code != 2 || errs == "" {
			t.Errorf("%v: exit %d, %q", bad, code, errs)
		}
	}
	if old, _ := os.ReadFile("old.pdf"); string(old) != files["old.pdf"] {
		t.Error("old.pdf was changed")
	}
}

// A bundle holds its crew's sheets and steps, under a name of its own.
func TestBundleForACrew(t *testing.T) {
	inFolder(t, map[string]string{"a.yaml": small})
	if code, _, errs := call(t, "", "packet", "a.yaml", "--for", "marking"); code != 0 || !strings.Contains(errs, "wrote a-marking.pdf") {
		t.Errorf("exit %d: %s", code, errs)
	}
	if code, _, errs := call(t, "", "packet", "a.yaml", "--for", "baking"); code != 2 || !strings.Contains(errs, "marking, driving") {
		t.Errorf("exit %d: %s", code, errs)
	}
}

// SOURCE_DATE_EPOCH, seconds since 1970 as reproducible-builds.org defines it, gives the issue date: 1 795 132 800 is 2026-11-20T00:00:00Z by `date -u -d @1795132800`.
func TestSourceDateEpoch(t *testing.T) {
	inFolder(t, map[string]string{"a.yaml": small})
	_, byDate, _ := call(t, "", "packet", "a.yaml", "-o", "-", "--sheets", "overview", "--date", "2026-11-20")
	t.Setenv("SOURCE_DATE_EPOCH", "1795132800")
	code, byEpoch, errs := call(t, "", "packet", "a.yaml", "-o", "-", "--sheets", "overview")
	if code != 0 || byEpoch != byDate {
		t.Errorf("exit %d, %s: other bytes than by --date", code, errs)
	}
	t.Setenv("SOURCE_DATE_EPOCH", "soon")
	if code, _, errs := call(t, "", "packet", "a.yaml", "-o", "-"); code != 2 || !strings.Contains(errs, "SOURCE_DATE_EPOCH") {
		t.Errorf("exit %d: %s", code, errs)
	}
}

// fullDisk takes nothing.
type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, syscall.ENOSPC }

// An unwritable folder gives exit 3 and nothing is left behind.
func TestUnwritableFolder(t *testing.T) {
	inFolder(t, map[string]string{"a.yaml": small})
	var errs bytes.Buffer
	if code := run([]string{"packet", "a.yaml", "-o", "-", "--sheets", "overview"}, strings.NewReader(""), fullDisk{}, &errs); code != 3 || !strings.Contains(errs.String(), "no space left") {
		t.Errorf("a full disk: exit %d, %q", code, errs.String())
	}
	if os.Getuid() == 0 {
		t.Skip("root writes anywhere")
	}
	if err := os.Mkdir("locked", 0o555); err != nil {
		t.Fatal(err)
	}
	if code, _, errs := call(t, "", "packet", "a.yaml", "-o", "locked/a.pdf"); code != 3 || !strings.Contains(errs, "locked/a.pdf") {
		t.Errorf("exit %d: %s", code, errs)
	}
}

// The bash script is tried in a bash.
func TestCompletionInBash(t *testing.T) {
	if _, err := exec.LookPath("bash"); err != nil {
		t.Skip("bash is not installed")
	}
	_, script, _ := call(t, "", "completion", "bash")
	for line, want := range map[string]string{
		"hoopwright rec":                        "recover",
		"hoopwright packet --sh":                "--sheets",
		"hoopwright packet --for mark":          "marking",
		"hoopwright packet --units me":          "metric",
		"hoopwright packet --sheets perm":       "permission",
		"hoopwright completion f":               "fish",
		"hoopwright keys li":                    "lights",
		`hoopwright sizes --pipe pvc\ sch40\ 3`: `pvc\ sch40\ 3/4\ in`,
		"hoopwright check yard.yaml --jso":      "--json",
	} {
		ask := script + "\nCOMP_WORDS=(" + line + "); COMP_CWORD=$((${#COMP_WORDS[@]}-1)); _hoopwright; echo \"${COMPREPLY[@]}\""
		out, err := exec.Command("bash", "--norc", "-c", ask).CombinedOutput()
		if got := strings.TrimSpace(string(out)); err != nil || got != want {
			t.Errorf("%s completes to %q, %v; want %q", line, got, err, want)
		}
	}
	for _, shell := range []string{"zsh", "fish"} {
		if code, out, _ := call(t, "", "completion", shell); code != 0 || !strings.Contains(out, "sheets") {
			t.Errorf("%s: exit %d, %d bytes", shell, code, len(out))
		}
	}
	if code, _, errs := call(t, "", "completion", "tcsh"); code != 2 || !strings.Contains(errs, "fish") {
		t.Errorf("exit %d: %s", code, errs)
	}
}

// The line of progress counts what is made, and is wiped at the end.
func TestProgress(t *testing.T) {
	var out bytes.Buffer
	p := &progress{out: &out, does: "solving and drawing", makes: "packets", of: 3, ticks: make(chan struct{}, 3), quit: make(chan struct{})}
	p.ended.Go(func() { p.watch(5 * time.Millisecond) })
	p.done()
	time.Sleep(40 * time.Millisecond)
	p.stop()
	if text := out.String(); !strings.Contains(text, "1 of 3 packets") || !strings.HasSuffix(text, "\r\x1b[K") {
		t.Errorf("it says %q", text)
	}
	out.Reset()
	q := startProgress(&out, "solving", "packets", 1, time.Millisecond)
	time.Sleep(10 * time.Millisecond)
	q.done()
	q.stop()
	if out.Len() > 0 {
		t.Errorf("to what is no terminal it says %q", out.String())
	}
}
