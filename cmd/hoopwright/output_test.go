package main

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"strconv"
	"strings"
	"testing"
)

// A packet is replaced by a newer one of the same title and season alone; --force replaces any, but never what is no PDF.
func TestOnlyItsOwnPacketIsReplaced(t *testing.T) {
	thisYear := strings.Replace(small, "title: Small", "title: Small\nseason: 2026", 1)
	inFolder(t, map[string]string{"a.yaml": thisYear, "mended.yaml": strings.Replace(thisYear, "7 ft", "7 ft 3 in", 1), "other.yaml": strings.Replace(thisYear, "Small", "Other", 1),
		"next.yaml": strings.Replace(thisYear, "2026", "2027", 1), "text.pdf": "no PDF"})
	for _, tt := range []struct {
		spec, force string
		code        int
		says        string
	}{
		{"a.yaml", "", 0, "wrote p.pdf"}, {"a.yaml", "", 0, "wrote p.pdf"}, {"mended.yaml", "", 0, "wrote p.pdf"},
		{"other.yaml", "", 3, "p.pdf is there already and is the packet of another tunnel, Small"}, {"next.yaml", "", 3, "p.pdf is there already and is the packet of 2026"},
		{"next.yaml", "--force", 0, "wrote p.pdf"}, {"a.yaml", "", 3, "is the packet of 2027"},
	} {
		before, _ := os.ReadFile("p.pdf")
		args := []string{"packet", tt.spec, "-o", "p.pdf", "--sheets", "stakes"}
		if tt.force != "" {
			args = append(args, tt.force)
		}
		code, _, errs := call(t, "", args...)
		if code != tt.code || !strings.Contains(errs, tt.says) {
			t.Errorf("%s %s: exit %d, %s", tt.spec, tt.force, code, errs)
		}
		if after, _ := os.ReadFile("p.pdf"); tt.code != 0 && string(after) != string(before) {
			t.Errorf("%s: p.pdf was changed", tt.spec)
		}
	}
}

// -o with a slash at its end makes the folder; one that is there is used; /dev/null takes a packet; no message names a file that nobody asked for.
func TestWhereAPacketGoes(t *testing.T) {
	inFolder(t, map[string]string{"a.yaml": small})
	for _, out := range []string{"new/deep/", "new"} {
		if code, _, errs := call(t, "", "packet", "a.yaml", "-o", out, "--sheets", "stakes"); code != 0 {
			t.Errorf("%s: exit %d, %s", out, code, errs)
		}
	}
	for _, file := range []string{"new/deep/a.pdf", "new/a.pdf"} {
		if _, err := os.Stat(file); err != nil {
			t.Error(err)
		}
	}
	if code, out, errs := call(t, "", "packet", "a.yaml", "-o", os.DevNull, "--sheets", "stakes", "--quiet"); code != 0 || out+errs != "" {
		t.Errorf("exit %d: %q %q", code, out, errs)
	}
	code, _, errs := call(t, "", "packet", "a.yaml", "-o", "nowhere/p.pdf", "--sheets", "stakes")
	if code != 3 || errs != "hoopwright: cannot write nowhere/p.pdf: there is no folder nowhere; make it first, or name another\n" {
		t.Errorf("exit %d: %q", code, errs)
	}
}

// One line says what to act on, one how much was taken for granted; who has a spec of his own and forgot to name it is told.
func TestWhatIsSaidOfAPacket(t *testing.T) {
	inFolder(t, map[string]string{"tunnel.yaml": small})
	_, _, errs := call(t, "", "packet", "--sheets", "stakes", "-o", "p.pdf")
	for _, want := range []string{"wrote p.pdf. ", "People inside below gusts of", "taken for granted; hoopwright check --assumed lists them", "you have tunnel.yaml here; this was the built-in example"} {
		if !strings.Contains(errs, want) {
			t.Errorf("%q does not say %q", errs, want)
		}
	}
}

// JSON carries its schema, what was assumed, and errors in the same form with the same exit code.
func TestJSONOfACheck(t *testing.T) {
	var plan struct {
		Schema  int
		Assumed []struct{ Key, Value, Why string }
		Stakes  []any
	}
	code, out, _ := call(t, small, "check", "-", "--json")
	if err := json.Unmarshal([]byte(out), &plan); err != nil || code != 0 || plan.Schema != 1 || len(plan.Assumed) == 0 || plan.Assumed[0].Key == "" || len(plan.Stakes) == 0 {
		t.Errorf("exit %d, %v, %+v", code, err, plan.Assumed)
	}
	var wrong struct {
		Schema int
		Errors []struct {
			File, Key, Text, Example string
			Line, Column             int
		}
	}
	code, out, errs := call(t, strings.Replace(small, "span: 7 ft", "span: 7", 1), "check", "-", "--json")
	if err := json.Unmarshal([]byte(out), &wrong); err != nil || code != 2 || errs != "" || len(wrong.Errors) != 1 || wrong.Errors[0].Key != "arch.span" || wrong.Errors[0].Line != 4 {
		t.Errorf("exit %d, %v, %s%s", code, err, out, errs)
	}
	code, out, _ = call(t, "", "check", "missing.yaml", "--json")
	if err := json.Unmarshal([]byte(out), &wrong); err != nil || code != 2 || len(wrong.Errors) != 1 || !strings.Contains(wrong.Errors[0].Text, "missing.yaml") {
		t.Errorf("exit %d, %v, %s", code, err, out)
	}
}

// Figures that differ are numbers, lengths in millimetres: 7 ft are 2133.6 mm and 7 ft 3 in 2209.8 mm by the inch of 25.4 mm.
func TestComparisonHasNumbers(t *testing.T) {
	inFolder(t, map[string]string{"old.yaml": small, "new.yaml": strings.Replace(strings.Replace(small, "7 ft", "7 ft 3 in", 1), "arches: 2", "arches: 3", 1)})
	_, out, _ := call(t, "", "check", "new.yaml", "--against", "old.yaml", "--json")
	var c struct {
		Schema  int
		Figures []struct {
			What, Unit string
			Was, Is    any
		}
	}
	if err := json.Unmarshal([]byte(out), &c); err != nil || c.Schema != 1 {
		t.Fatalf("%v: %s", err, out)
	}
	found := map[string][2]any{}
	for _, f := range c.Figures {
		found[f.What+" "+f.Unit] = [2]any{f.Was, f.Is}
	}
	if found["arches "] != [2]any{2.0, 3.0} || found["span of arch 1 and 2 mm"] != [2]any{2133.6, 2209.8} {
		t.Errorf("%v", found)
	}
	for name, f := range found {
		for _, v := range f {
			text, _ := v.(string)
			if _, err := strconv.ParseFloat(text, 64); err == nil {
				t.Errorf("%s: %q is a number in words", name, text)
			}
		}
	}
}

// A piece that nothing to be had gives stands on the list, with how many.
func TestUnmetPiecesAreOnTheList(t *testing.T) {
	long := strings.Replace(small, "sticks: [10 ft, 10 ft]", "sticks: [11 ft, 11 ft]", 1) + "stock: {sell: [{item: pvc sch40 1/2 in, length: 10 ft}]}\n"
	_, out, _ := call(t, long, "check", "-", "--shopping", "csv")
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		if row[0] == "not to be had" && row[1] == "pvc sch40 1/2 in, 132 in" && row[2] == "4" {
			return
		}
	}
	t.Errorf("four sticks of 132 in are not on the list:\n%s", out)
}

// Help fits a terminal of 80 columns, which is the least that there is, and shows a call of its verb.
func TestHelpFitsATerminal(t *testing.T) {
	for verb := range manual {
		_, out, _ := call(t, "", "help", verb)
		if !strings.Contains(out, "Examples:\n  hoopwright "+verb) {
			t.Errorf("%s: no example", verb)
		}
		for _, line := range strings.Split(out, "\n") {
			if n := len([]rune(line)); n > 80 {
				t.Errorf("%s: %d columns: %s", verb, n, line)
			}
		}
	}
}
