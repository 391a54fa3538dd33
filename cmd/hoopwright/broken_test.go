package main

import (
	"maps"
	"os"
	"strings"
	"testing"
)

// Calls that cannot be done as they stand: each message says what is wrong and what would be right, and nothing that is there is harmed.
func TestBrokenCalls(t *testing.T) {
	garden := example(t, "garden.yaml")
	inFolder(t, map[string]string{"yard.yaml": garden, "notes.txt": "hello\n", "there.yaml": "mine", "empty.yaml": "", "foreign.pdf": "%PDF-1.4\n1 0 obj<<>>endobj\ntrailer<<>>\n%%EOF\n"})
	if err := os.MkdirAll("plans", 0o755); err != nil {
		t.Fatal(err)
	}
	if code, _, errs := call(t, "", "packet", "yard.yaml", "-q"); code != 0 {
		t.Fatal(errs)
	}
	packet, err := os.ReadFile("yard.pdf")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("cut.pdf", packet[:20000], 0o644); err != nil {
		t.Fatal(err)
	}
	before := contents(t)
	for _, c := range []struct {
		args string // parted by blanks; ~ stands for a blank within one, ∅ for nothing
		code int
		want string
	}{
		{"packet yrd.yaml", 2, "cannot read yrd.yaml: there is no such file; did you mean yard.yaml?"},
		{"packet zebra.yaml", 2, "`hoopwright starter` writes a spec to begin from"},
		{"packet plans/yard.yaml", 2, "there is no such file"},
		{"packet plans", 2, "cannot read plans: it is a folder; name a file in it, as in plans/tunnel.yaml"},
		{"packet empty.yaml", 2, "the file is empty, or has only comments; `hoopwright starter` writes"},
		{"packet notes.txt", 2, "this is no spec, which holds keys with values; `hoopwright starter` writes one to begin from; write e.g. `title: Lantern Walk`"},
		{"check foreign.pdf", 2, "no spec can be got out of foreign.pdf: not a PDF file: it has no catalog; a packet that hoopwright made is wanted, whole"},
		{"check cut.pdf", 2, "no spec can be got out of cut.pdf"},
		{"packet yard.pdf", 2, "yard.pdf is what the spec is read from; name another file with -o"},
		{"packet yard.yaml -o notes.txt", 3, "notes.txt is there already and is not a PDF; it is left as it was. Name another file with -o"},
		{"packet yard.yaml -o foreign.pdf", 3, "foreign.pdf is there already and is no packet of ours; it is left as it was"},
		{"packet yard.yaml -o nowhere/x.pdf", 3, "cannot write nowhere/x.pdf: there is no folder nowhere; make it first, or name another"},
		{"packet yard.yaml -o ∅", 2, "packet: --output is given without anything; give it its FILE, or leave it out"},
		{"packet yard.yaml --sheets ∅", 2, "--sheets is given without anything; give it its SHEETS"},
		{"packet yard.yaml --sheet stakes", 2, "unknown flag: --sheet; did you mean --sheets? Try hoopwright help packet"},
		{"packet yard.yaml --sheets stakess -o x.pdf", 2, `no sheet "stakess"; the sheets are day, board, stakes`},
		{"packet yard.yaml --for nobody -o x.pdf", 2, `no crew "nobody"; the crews are marking`},
		{"packet yard.yaml --paper a5 -o x.pdf", 2, `paper is letter, legal, tabloid, a4 or a3, not "a5"`},
		{"packet yard.yaml --units inches", 2, `--units is imperial or metric, not "inches"`},
		{"packet yard.yaml --date 21.11.2026", 2, `--date is a day such as 2026-11-21, not "21.11.2026"`},
		{"packet yard.yaml yard.yaml", 2, "yard.yaml is named twice; once is enough"},
		{"check yard.yaml notes.txt", 2, "check takes one name, and here are 2: yard.yaml, notes.txt; a name with blanks in it stands in quotes"},
		{"check yard.yaml --against nothing.pdf", 2, "cannot read nothing.pdf: there is no such file"},
		{"check yard.yaml --against plans", 2, "cannot read plans: it is a folder"},
		{"check yard.yaml --shopping xls", 2, `--shopping is csv, not "xls"`},
		{"check yard.yaml --shopping", 2, "flag needs an argument: --shopping. Try hoopwright help check"},
		{"chek", 2, `no verb "chek"; did you mean check? try hoopwright --help`},
		{"--verison", 2, `no verb "--verison"; did you mean --version?`},
		{"starter there.yaml", 3, "there.yaml is there already and is left as it was; name another file"},
		{"starter plans", 3, "cannot write plans: it is a folder; name a file in it, as in plans/tunnel.yaml"},
		{"starter nowhere/x.yaml", 3, "there is no folder nowhere"},
		{"starter --form yard.pdf", 3, "yard.pdf is there already"},
		{"starter --form ∅", 2, "--form is given without anything; give it its FILE"},
		{"starter --width 8 n.yaml", 2, "--width: 8 needs a unit: 8 ft or 8 in"},
		{"starter --length 0~ft n.yaml", 2, `--length: "0 ft" is nought or less; a length such as 8 ft or 2.4 m is wanted`},
		{"starter --outlet there n.yaml", 2, "as in left 12 ft, behind 6 ft"},
		{"starter --marks oak n.yaml", 2, "as in porch post 9 ft 4 in, 14 ft behind"},
		{"starter --units metric", 2, "--units goes with --form or --ask"},
		{"sizes --span 9~to~7", 2, `the range "9 to 7" runs backwards; the lower end comes first; write e.g. --span "5 to 10 ft"`},
		{"sizes --height tall", 2, `"tall" does not begin with a number`},
		{"sizes --sticks 10", 2, "--sticks: 10 needs a unit: 10 ft or 10 in"},
		{"sizes --pipe copper", 2, `write e.g. --pipe "pvc sch40 3/4 in"`},
		{"sizes --have stock.own", 2, "stock.own is the shed of a spec, and none is named; as in hoopwright sizes tunnel.yaml --have stock.own"},
		{"sizes --have 3~x~10~ft", 2, "3 x 10 ft do not make two arches; give more, or shorter legs with --sticks"},
		{"keys zither", 2, `no key holds "zither"; hoopwright keys lists them all`},
		{"names zither", 2, "hoopwright keys arch.pipe"},
		{"recover", 2, "name a packet, as in hoopwright recover garden.pdf"},
		{"recover yard.yaml", 2, "no spec can be got out of yard.yaml: not a PDF file; a packet that hoopwright made is wanted, whole"},
		{"recover yard.pdf -o there.yaml", 3, "there.yaml is there already and is left as it was"},
		{"recover yard.pdf -o plans", 3, "it is a folder; name a file in it"},
		{"recover plans", 2, "cannot read plans: it is a folder"},
		{"completion tcsh", 2, `name a shell, bash, zsh or fish, not "tcsh"`},
	} {
		args := strings.Fields(c.args)
		for i := range args {
			args[i] = strings.NewReplacer("~", " ", "∅", "").Replace(args[i])
		}
		code, out, errs := call(t, "", args...)
		if code != c.code || !strings.Contains(errs, c.want) || out != "" {
			t.Errorf("%s: exit %d, want %d; %q, want %q; %.40q", c.args, code, c.code, errs, c.want, out)
		}
		if now := contents(t); !maps.Equal(now, before) {
			t.Fatalf("%s has changed what is there", c.args)
		}
	}
}

// contents are the files of the folder.
func contents(t *testing.T) map[string]string {
	t.Helper()
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]string{}
	for _, e := range entries {
		data, _ := os.ReadFile(e.Name()) // nothing of a folder
		files[e.Name()] = string(data)
	}
	return files
}
