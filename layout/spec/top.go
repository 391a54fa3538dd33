package spec

import (
	"regexp"
	"strings"
	"time"

	"hoopwright/layout/finding"
)

const version = "1"

// Papers returns the names of the papers that a packet is printed on; draw/paper knows their sizes.
func Papers() []string { return []string{"letter", "legal", "tabloid", "a4", "a3"} }

// versionFits checks the version of the format. Of a spec in another version nothing else is said.
func (m mapping) versionFits() bool {
	if !m.has("hoopwright") {
		m.missing("hoopwright", ": it says which version of the format the spec is written in")
		return true
	}
	f, ok := m.value("hoopwright")
	if !ok {
		return true
	}
	if s, ok := f.scalar(); ok && s != version {
		f.fail("is %s; this program reads version %s of the format", quote(s), version)
		return false
	}
	return true
}

func (r *reader) readTop(top mapping) {
	s := r.spec
	top.read("title", &s.Title)
	top.read("season", &s.Season)
	top.read("units", &s.Units)
	top.read("paper", &s.Paper)
	top.read("currency", &s.Currency)
	r.readDates(top)
	r.readAccept(top)
}

func (r *reader) readDates(top mapping) {
	m, _ := top.section("dates")
	d := &r.spec.Dates
	days := []struct {
		key string
		day *time.Time
	}{{"mark", &d.Mark}, {"build", &d.Build}, {"open", &d.Open}, {"close", &d.Close}, {"down", &d.Down}}
	m.all(d)
	last := -1
	for i, this := range days {
		if this.day.IsZero() {
			continue
		}
		if last >= 0 && this.day.Before(*days[last].day) {
			f, _ := m.value(this.key)
			f.fail("is %s, before %s on %s; the days must follow each other as mark, build, open, close, down",
				this.day.Format(time.DateOnly), days[last].key, days[last].day.Format(time.DateOnly))
		}
		last = i
	}
}

var code = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

func (r *reader) readAccept(top mapping) {
	seen := names{of: "accepted findings"}
	r.spec.Accept = listOf(top, "accept", func(m mapping, a *Accept) bool {
		f, ok := m.value("finding")
		if !ok || !m.good["finding"] {
			return true
		}
		if !code.MatchString(a.Finding) {
			codes := namesOf(finding.Rows(), func(row finding.Row) string { return row.Code })
			f.failWith(f.other(f.wordMeant(strings.ReplaceAll(a.Finding, " ", "-"), codes)), "is %s; the code of a finding is wanted, as `check` prints it", quote(a.Finding))
		}
		if row, ok := finding.Of(a.Finding); ok && row.Firm {
			f.fail("is %s; findings about buried lines, overhead lines and arches that cannot stand can be accepted by nobody", quote(a.Finding))
		}
		seen.add(f, a.Finding)
		return true
	})
}
