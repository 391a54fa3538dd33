package layout

import (
	"hoopwright/layout/finding"
	"hoopwright/layout/spec"
)

// notKnown makes a finding of each danger that the spec says nobody has looked into: it is done before anything else, by whoever keeps the run sheet.
func notKnown(s *spec.Spec) (list []finding.Finding) {
	for _, d := range s.Site.Unknown {
		f := finding.Finding{Level: finding.LookAt, Key: "site.unknown"}
		switch d {
		case spec.BuriedLines:
			f.Code, f.Text = "buried-not-known", "Nobody has said what lies buried here. Have it located before anything is driven; ask the owner about private lines too. Then list it in the spec."
		case spec.OverheadLines:
			f.Code, f.Text = "overhead-not-known", "Nobody has said what hangs overhead here. Walk the whole length and look up before the first arch is raised. Then list wires in the spec."
		case spec.OutletsGFCI:
			f.Code, f.Text = "gfci-not-known", "Nobody has said whether the outlets are protected (GFCI). Press TEST on each before anything is plugged in: a protected one goes dead. Then say so in the spec."
		case spec.BreakerAmps:
			f.Code, f.Text = "breaker-not-known", "Nobody has read the breaker; the least that outlets have is taken. Read the amps on it before anything is plugged in, then write it in the spec."
		}
		list = append(list, f)
	}
	return list
}
