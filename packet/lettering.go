package packet

import (
	"fmt"
	"strings"

	"hoopwright/fonts"
	"hoopwright/layout/finding"
	"hoopwright/layout/spec"
)

// Letters returns a finding for each wording of the spec that holds characters which none of the packet's typefaces has; the sheets
// print ? for them.
func Letters(s *spec.Spec) []finding.Finding {
	var found []finding.Finding
	seen := map[string]bool{}
	for _, text := range s.Texts {
		missing := fonts.Missing(text.Value)
		if len(missing) == 0 || seen[text.Value] {
			continue
		}
		seen[text.Value] = true
		var codes []string
		for _, r := range missing {
			codes = append(codes, fmt.Sprintf("%U", r))
		}
		found = append(found, finding.Finding{Level: finding.LookAt, Code: "letters-missing", Key: text.Key, Pos: s.Position(text.Key),
			Text: fmt.Sprintf("The packet's typefaces lack %s of this wording (%s); the sheets print ? there. Write it with other letters.",
				strings.Join(codes, ", "), text.Key)})
	}
	return found
}
