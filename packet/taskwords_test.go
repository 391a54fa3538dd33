package packet

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"hoopwright/layout"
	"hoopwright/layout/crew"

	"hoopwright/examples"
)

// taskPlans are the examples, and the same without marks.
func taskPlans(t *testing.T) map[string]*layout.Plan {
	plans := map[string]*layout.Plan{}
	marks := regexp.MustCompile(`(?m)^  marks:.*\n(    .*\n)*`)
	for _, name := range []string{"garden", "schoolyard", "millwalk", "parkwalk", "starter"} {
		data, err := examples.Files.ReadFile(name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		texts := map[string]string{name: string(data)}
		if name != "parkwalk" {
			texts[name+" without marks"] = marks.ReplaceAllString(string(data), "")
		}
		if name == "garden" {
			texts["garden of two arches"] = strings.Replace(string(data), "arches: 6", "arches: 2", 1)
			texts["garden with a wire, screwed"] = strings.NewReplacer("  soil: soft\n", "  soil: soft\n  overhead: [{name: service drop, line: [[0 ft, -9 ft], [30 ft, -9 ft]], height: 14 ft, keep: 12 ft}]\n",
				"  span: 7 ft\n", "  span: 7 ft\n  joints: pinned\n").Replace(string(data))
			texts["garden glued, without guys"] = regexp.MustCompile(`(?m)^guys:.*\n`).ReplaceAllString(strings.Replace(string(data), "  span: 7 ft\n", "  span: 7 ft\n  joints: glued\n", 1), "")
			texts["garden without a ridge"] = regexp.MustCompile(`(?m)^.*where: ridge.*\n`).ReplaceAllString(strings.Replace(string(data), "\nguys:", "\nridge: false\nguys:", 1), "")
			texts["one arch"] = regexp.MustCompile(`(?m)^.*(where: ridge|spacing:).*\n`).ReplaceAllString(strings.Replace(string(data), "arches: 6", "arches: 1", 1), "")
		}
		for title, text := range texts {
			plans[title] = planOf(t, []byte(text))
		}
	}
	return plans
}

// pictured are the actions of cutting, winding, raising and hanging, which the leaves stock, lights and raise show in pictures and words of their own.
func pictured(a crew.Action) bool {
	return a >= crew.CutLegs && a <= crew.CutRidge || a >= crew.TagStrings && a <= crew.WindPipe && a != crew.TryWrapped || a >= crew.CheckDay && a <= crew.TryOpening
}

// Every action that no leaf shows in pictures has words, every warning too.
func TestEveryTaskHasWords(t *testing.T) {
	for a := range crew.Actions {
		if doing(a) == nil && !pictured(a) {
			t.Errorf("action %d has no words", a)
		}
	}
	for x := crew.NoWarning + 1; x < crew.Warnings; x++ {
		if warned[x] == "" {
			t.Errorf("warning %d has no words", x)
		}
	}
}

// losers are words that another one has won over; to screw or pin a socket is not among them.
var losers = regexp.MustCompile(`(?i)\b(bars?|pins?|rods?|taps?|chains?|flagging|cords? set|strings? line|scale bar|safe|rated|compliant|proven)\b`)

// toldInDo are figures that stand in what is done.
var toldInDo = []crew.Wanted{crew.PullUp, crew.PullForce, crew.TriangleSide}

// Every task of every example is said: what to do, every figure wanted, every remedy; in the words that won, in short sentences.
func TestTasksOfTheExamplesInWords(t *testing.T) {
	for name, plan := range taskPlans(t) {
		w := newTaskWords(plan)
		sentences, count := 0, 0
		for i, task := range plan.Crew.Tasks {
			in := w.of(task)
			if in.Do == "" && !pictured(task.Action) {
				t.Errorf("%s: task %d (%d) says nothing to do", name, i+1, task.Action)
			}
			for _, f := range task.Want {
				if w.want(f) == "" && !slices.Contains(toldInDo, f.What) && !pictured(task.Action) {
					t.Errorf("%s: %q wants %d without words", name, in.Do, f.What)
				}
			}
			for _, c := range task.IfOff {
				if w.cure(c) == "" && !pictured(task.Action) && task.Phase != crew.Wrapping {
					t.Errorf("%s: %q has remedy %d without words", name, in.Do, c.Do)
				}
			}
			if task.Hold && !pictured(task.Action) && (in.Want == "" || !strings.HasSuffix(in.Sign, "Signed")) {
				t.Errorf("%s: hold %q wants %q and has %q to sign", name, in.Do, in.Want, in.Sign)
			}
			all := strings.Join([]string{in.Do, in.Want, in.IfOff}, " ")
			if found := losers.FindString(strings.ReplaceAll(all, "Bar both ends", "")); found != "" {
				t.Errorf("%s: %q is said in: %s", name, found, all)
			}
			if strings.Contains(all, "%!") {
				t.Errorf("%s: %s", name, all)
			}
			for _, s := range strings.FieldsFunc(all, func(r rune) bool { return r == '.' || r == ';' || r == ':' }) {
				n := len(strings.Fields(s))
				sentences, count = sentences+1, count+n
				if n > 26 {
					t.Errorf("%s: %d words in one go: %s", name, n, s)
				}
			}
			t.Logf("%s %s %2d%s\n   %s\n   WANT %s\n   OFF %s\n   SIGN %s", name, task.Phase, i+1, map[bool]string{true: " HOLD"}[task.Hold], in.Do, in.Want, in.IfOff, in.Sign)
		}
		if mean := float64(count) / float64(sentences); mean > 9 {
			t.Errorf("%s: %.1f words a clause on average", name, mean)
		}
	}
}
