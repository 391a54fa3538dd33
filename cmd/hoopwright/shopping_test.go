package main

import (
	"encoding/csv"
	"encoding/json"
	"strconv"
	"strings"
	"testing"
)

// RFC 4180: a header of names, each line ended by CR LF, as many fields in each, quotes doubled within quotes. Read back by a reader of that
// format it must say what the plan's JSON says. The string's name is an invented one that needs every rule.
func TestShoppingCSV(t *testing.T) {
	const odd = `granny's "gold", 5 m`
	spec := strings.ReplaceAll(example(t, "garden.yaml"), "mini led 50 warm", "'"+strings.ReplaceAll(odd, "'", "''")+"'")
	spec = strings.Replace(spec, "lights:\n", "lights:\n  strings: {'"+strings.ReplaceAll(odd, "'", "''")+"': {length: 16 ft, bulbs: 50, watts: 3 W}}\n", 1)
	_, sheet, stderr := call(t, spec, "check", "-", "--shopping", "csv")
	if strings.Contains(stderr, "<standard input>") {
		t.Fatal(stderr)
	}
	lines := strings.SplitAfter(sheet, "\r\n")
	if last := lines[len(lines)-1]; last != "" || strings.Count(sheet, "\n") != len(lines)-1 {
		t.Errorf("not every line ends in CR LF: %q", sheet)
	}
	if !strings.Contains(sheet, `,"granny's ""gold"", 5 m",`) {
		t.Errorf("the odd name is not quoted: %s", sheet)
	}
	rows, err := csv.NewReader(strings.NewReader(sheet)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	_, text, _ := call(t, spec, "check", "-", "--json")
	var plan struct {
		Shopping []struct {
			Item           string
			Need, Own, Buy int
			Price          float64
		}
	}
	if err := json.Unmarshal([]byte(text), &plan); err != nil {
		t.Fatal(err)
	}
	if len(rows) != len(plan.Shopping)+1 || strings.Join(rows[0], " ") != "where item need own buy unit price sum currency paid for price is" {
		t.Fatalf("%d rows for %d items, header %q", len(rows), len(plan.Shopping), rows[0])
	}
	for k, i := range plan.Shopping {
		row := rows[k+1]
		if row[1] != i.Item || row[2] != strconv.Itoa(i.Need) || row[3] != strconv.Itoa(i.Own) || row[4] != strconv.Itoa(i.Buy) {
			t.Errorf("%q, want %+v", row, i)
		}
		if price, err := strconv.ParseFloat(row[6], 64); i.Price > 0 && (err != nil || price != i.Price) || i.Price == 0 && row[6] != "" {
			t.Errorf("%s: price %q, want %v", i.Item, row[6], i.Price)
		}
		if sum, err := strconv.ParseFloat(row[7], 64); row[6] != "" && (err != nil || sum-float64(i.Buy)*i.Price > 0.005 || sum-float64(i.Buy)*i.Price < -0.005) {
			t.Errorf("%s: sum %q of %d at %v", i.Item, row[7], i.Buy, i.Price)
		}
	}
}
