package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"hoopwright/examples"
)

// call runs the command as a shell would, in a folder of its own, and returns its exit code and two streams.
func call(t *testing.T, stdin string, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	var out, errs bytes.Buffer
	code = run(args, strings.NewReader(stdin), &out, &errs)
	return code, out.String(), errs.String()
}

// inFolder moves the test into a new folder that holds the named files.
func inFolder(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	t.Chdir(dir)
	return dir
}

func example(t *testing.T, name string) string {
	t.Helper()
	data, err := examples.Files.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func TestCalls(t *testing.T) {
	tests := []struct {
		name           string
		stdin          string
		args           string
		code           int
		stdout, stderr string // substrings wanted; "" wants the stream empty
	}{
		{"help", "", "--help", 0, "hoopwright packet yard.yaml", ""},
		{"help of a verb", "", "help packet", 0, "hoopwright packet yard.yaml --for marking", ""},
		{"help of no verb", "", "help pakcet", 2, "", "did you mean packet?"},
		{"keys", "", "keys site.outlets", 0, "a whole number, 1 to 24", ""},
		{"keys by a word", "", "keys stakes", 0, "arch.stake.depth", ""},
		{"keys in metric", "", "keys arch.span --units metric", 0, "span: 2.3 m", ""},
		{"no such key", "", "keys zither", 2, "", "no key holds"},
		{"names in any order", "", "names warm leds 100 mini", 0, "mini led 100 warm", ""},
		{"names in the plural", "", "names pipes", 0, "pvc sch40 3/4 in", ""},
		{"names of soil", "", "names soil", 0, "firm, soft, sandy", ""},
		{"names of strings", "", "names strings", 0, "mini led 100 red", ""},
		{"names in the user's units", "", "names 25 mm", 0, "25 mm across", ""},
		{"assumed", "", "check --assumed", 0, "arch.late modulus", ""},
		{"assumed and against", "", "check --assumed --against x", 2, "", "a list of its own"},
		{"sheets with blanks", "", "packet --sheets stakes,|power -o /dev/null -q", 0, "", ""},
		{"verb help", "", "packet --help", 0, "--sheets", ""},
		{"version", "", "--version", 0, "hoopwright", ""},
		{"nothing", "", "", 2, "", "hoopwright starter --ask"},
		{"no such verb", "", "pakcet", 2, "", "did you mean packet?"},
		{"no such flag", "", "packet --sheet stake", 2, "", "--sheet"},
		{"shopping list", "", "check --shopping csv", 0, "where,item,need,own,buy", ""},
		{"no such list", "", "check --shopping xlsx", 2, "", "--shopping is csv"},
		{"list and plan", "", "check --shopping csv --json", 2, "", "not both"},
		{"two specs", "", "check a.yaml b.yaml", 2, "", "one name, and here are 2"},
		{"no such spec", "", "check missing.yaml", 2, "", "missing.yaml"},
		{"bad spec", "hoopwright: 1\ntitle: x\ntunnel: {arches: 0}\n", "check -", 2, "", "<standard input>:3:"},
		{"empty spec", "", "check -", 2, "", "<standard input>"},
		{"bad sheet", "", "packet --sheets steaks", 2, "", `no sheet "steaks"`},
		{"bad paper", "", "packet --paper a5", 2, "", `not "a5"`},
		{"bad units", "", "packet --units cubits", 2, "", `not "cubits"`},
		{"bad date", "", "packet --date tomorrow", 2, "", "2026-11-21"},
		{"names", "", "names sch40", 0, "pvc sch40 3/4 in", ""},
		{"names by two words", "", "names led 50", 0, "mini led 50 warm", ""},
		{"names of nothing", "", "names zither", 2, "", "zither"},
		{"starter to standard output", "", "starter -", 0, "hoopwright: 1", ""},
		{"form to standard output", "", "starter --form -", 0, "%PDF-1.", ""},
		{"form and spec in one", "", "starter a.yaml --form v.pdf", 2, "", "leave out a.yaml"},
		{"form without a name", "", "starter --form=", 2, "", "--form is given without anything"},
		{"form in cubits", "", "starter --form v.pdf --units cubits", 2, "", `not "cubits"`},
		{"units of a spec", "", "starter --units metric", 2, "", "--form"},
		{"check", "", "check", 0, "load factor", ""},
		{"sizes", "", "sizes", 0, "Can be built: 5′-0″ to 10′-0″.", ""},
		{"sizes help", "", "sizes --help", 0, "--sticks LENGTHS", ""},
		{"sizes of no pipe", "", "sizes --pipe pvc", 2, "", `--pipe: no pipe is named`},
		{"sizes over no range", "", "sizes --span 7", 2, "", `--span: 7 needs a unit: 7 ft or 7 in`},
		{"sizes over too much", "", "sizes --span 50ft", 2, "", `--span: 50 ft is not between 12 in and 40 ft; write e.g. --span "5 to 10 ft"`},
		{"sizes of a stake in pieces", "", "sizes --stake 3/8in,3ft,1ft,1ft", 2, "", `bar, length and depth are wanted`},
		{"sizes of no stake", "", "sizes --stake 3/8in,36in,40in", 2, "", `--stake: 3 ft 4 in deep leaves nothing`},
		{"sizes of no stick", "", "sizes --sticks 10,10", 2, "", `--sticks: 10 needs a unit`},
		{"sizes for some arches", "", "sizes --arches some", 2, "", `--arches: "some" is no whole number; write e.g. --arches 8`},
		{"sizes for too many", "", "sizes --arches 500", 2, "", "--arches: is `500`; 1 to 240 is wanted"},
		{"sizes in no units", "", "sizes --units cubits", 2, "", `not "cubits"`},
		{"sizes of a missing spec", "", "sizes missing.yaml", 2, "", "missing.yaml"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			inFolder(t, nil)
			args := strings.Fields(tt.args)
			for i := range args {
				args[i] = strings.ReplaceAll(args[i], "|", " ")
			}
			code, out, errs := call(t, tt.stdin, args...)
			if code != tt.code {
				t.Errorf("exit %d, want %d; standard error: %s", code, tt.code, errs)
			}
			holds(t, "standard output", out, tt.stdout)
			holds(t, "standard error", errs, tt.stderr)
		})
	}
}

func holds(t *testing.T, stream, got, want string) {
	t.Helper()
	if want == "" && got != "" || !strings.Contains(got, want) {
		t.Errorf("%s is %q, want it to hold %q", stream, got, want)
	}
}

func TestPacketIsWrittenWhole(t *testing.T) {
	inFolder(t, nil)
	code, out, errs := call(t, "", "packet", "--date", "2026-11-20")
	if code != 0 || out != "" {
		t.Fatalf("exit %d, standard output %q, standard error %q", code, out, errs)
	}
	first, err := os.ReadFile("garden.pdf")
	if err != nil {
		t.Fatal(err)
	}
	if code, out, _ = call(t, "", "packet", "--date", "2026-11-20", "-o", "-"); code != 0 || out != string(first) {
		t.Errorf("the same spec and date gave other bytes on standard output (exit %d, %d bytes against %d)", code, len(out), len(first))
	}
	if entries, _ := os.ReadDir("."); len(entries) != 1 {
		t.Errorf("the folder holds %d files, want the packet alone", len(entries))
	}
}

func TestExistingFilesAreNotDamaged(t *testing.T) {
	spec := example(t, examples.BuiltIn)
	files := map[string]string{"yard.yaml": spec, "notes.txt": "keep me", "old.pdf": "%PDF-1.4 an older packet", "bad.yaml": "hoopwright: 1\n"}
	tests := []struct {
		name string
		args []string
		code int
		kept string
	}{
		{"not a PDF", []string{"packet", "yard.yaml", "-o", "notes.txt"}, 3, "notes.txt"},
		{"the spec itself", []string{"packet", "yard.yaml", "-o", "yard.yaml"}, 2, "yard.yaml"},
		{"a failed run", []string{"packet", "bad.yaml", "-o", "old.pdf"}, 2, "old.pdf"},
		{"a folder that is a file", []string{"packet", "yard.yaml", "-o", "notes.txt/"}, 3, "notes.txt"},
		{"some PDF", []string{"packet", "yard.yaml", "-o", "old.pdf"}, 3, "old.pdf"},
		{"no such folder", []string{"packet", "yard.yaml", "-o", "nowhere/p.pdf"}, 3, "notes.txt"},
		{"starter over a file", []string{"starter", "notes.txt"}, 3, "notes.txt"},
		{"a form over a packet", []string{"starter", "--form", "old.pdf"}, 3, "old.pdf"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			inFolder(t, files)
			code, _, errs := call(t, "", tt.args...)
			if code != tt.code || errs == "" {
				t.Errorf("exit %d with %q, want %d and a message", code, errs, tt.code)
			}
			if got, _ := os.ReadFile(tt.kept); string(got) != files[tt.kept] {
				t.Errorf("%s was changed", tt.kept)
			}
			if entries, _ := os.ReadDir("."); len(entries) != len(files) {
				t.Errorf("the folder holds %d files, want the %d it began with", len(entries), len(files))
			}
		})
	}
}

// The names of the plan's JSON are part of the file format.
func TestCheckJSONKeepsItsNames(t *testing.T) {
	want := map[string]string{
		"arches":    "number span_mm length_mm crown_mm clear_mm widest_mm bend_radius_mm bend_at_mm strain thrust_n load_factor load_factor_way season_crown_mm",
		"stakes":    "name x_mm y_mm ground_mm along_mm offset_mm",
		"ties":      "stake mark_a a_mm mark_b b_mm",
		"ridge":     "bay centres_mm cut_mm",
		"diagonals": "from to mm",
		"strings":   "name string run from to used_mm left_over_mm watts",
		"wraps":     "on pitch_mm turns",
		"chains":    "name strings watts amps outlet cord_mm cord_gauge end_volts",
		"circuits":  "name amps allowed_amps",
		"shopping":  "item need own buy price",
	}
	for _, file := range []string{"garden.yaml", "schoolyard.yaml", "parkwalk.yaml"} {
		t.Run(file, func(t *testing.T) {
			code, out, errs := call(t, example(t, file), "check", "-", "--json")
			if code != 0 {
				t.Fatalf("exit %d: %s", code, errs)
			}
			var plan map[string]json.RawMessage
			if err := json.Unmarshal([]byte(out), &plan); err != nil {
				t.Fatal(err)
			}
			var costs struct {
				Bought, Power struct{ Money, Assumed, Unpriced *float64 }
				NextYear      struct{ Money *float64 } `json:"next_year"`
				PerArch       *float64                 `json:"per_arch"`
				Hours         struct{ Building, Nights, Takedown, Kept *float64 }
			}
			if err := json.Unmarshal(plan["cost"], &costs); err != nil || costs.Bought.Unpriced == nil || costs.Power.Assumed == nil || costs.NextYear.Money == nil || costs.PerArch == nil || costs.Hours.Takedown == nil || costs.Hours.Kept == nil {
				t.Errorf("cost: %v, %s", err, plan["cost"])
			}
			if string(plan["found"]) != "[]" {
				t.Errorf("found: %s", plan["found"])
			}
			for list, names := range want {
				var rows []map[string]any
				if err := json.Unmarshal(plan[list], &rows); err != nil || len(rows) == 0 {
					t.Errorf("%s: %v, %d rows", list, err, len(rows))
					continue
				}
				for _, name := range strings.Fields(names) {
					if _, ok := rows[0][name]; !ok {
						t.Errorf("%s lacks %s", list, name)
					}
				}
			}
			for _, path := range [][2]string{{"stakes", "name"}, {"ties", "stake"}, {"diagonals", "from"}, {"strings", "run"}, {"wraps", "on"}} {
				var rows []map[string]any
				if err := json.Unmarshal(plan[path[0]], &rows); err != nil {
					t.Fatal(err)
				}
				for _, r := range rows {
					if s, ok := r[path[1]].(string); !ok || s == "" || strings.ContainsAny(s, "{}") {
						t.Errorf("%s: %s is %v, want its name", path[0], path[1], r[path[1]])
					}
				}
			}
			var cuts map[string]any
			if err := json.Unmarshal(plan["cuts"], &cuts); err != nil {
				t.Fatal(err)
			}
			for _, name := range []string{"cost", "bound", "proven", "bars"} {
				if _, ok := cuts[name]; !ok {
					t.Errorf("cuts lacks %s", name)
				}
			}
		})
	}
}
