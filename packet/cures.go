package packet

import (
	"strings"

	"hoopwright/layout/finding"
	"hoopwright/layout/say"
)

// cureWords says what to change in the spec: "Set arch.span to 7 ft 6 in." It is empty where no change is known that cures the finding.
func cureWords(cure []finding.Change) string {
	var words []string
	for _, c := range cure {
		key := c.Key
		if strings.Contains(key, " ") {
			key = "“" + key + "”"
		}
		if c.Value == "" {
			words = append(words, "take "+key+" out of the spec")
			continue
		}
		words = append(words, "set "+key+" to "+c.Value)
	}
	if len(words) == 0 {
		return ""
	}
	return say.Capital(say.And(words)) + "."
}

// titleOf is what paper calls a finding.
func titleOf(code string) string {
	row, ok := finding.Of(code)
	if !ok {
		return code
	}
	return row.Title
}
