package spec

import (
	"errors"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

var (
	expectation = regexp.MustCompile(`### (".*")\r?$`)
	besides     = regexp.MustCompile(`(?m) ### ".*"$`)
	between     = regexp.MustCompile(`" "`)
)

// expected returns what a line of a fixture says of itself: after ### each message that must appear, in quotes, with one blank between.
func expected(line string) []string {
	parts := expectation.FindStringSubmatch(line)
	if parts == nil {
		return nil
	}
	quoted := parts[1]
	return between.Split(quoted[1:len(quoted)-1], -1)
}

// TestBadSpecs reads each fixture: exactly the errors that stand beside its lines must appear, at these lines.
func TestBadSpecs(t *testing.T) {
	files, err := filepath.Glob("testdata/bad/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no fixtures: %v", err)
	}
	first, err := filepath.Glob("testdata/bad/first/*.yaml") // one slip each of somebody's first hour
	if err != nil || len(first) < 115 {
		t.Fatalf("%d slips: %v", len(first), err)
	}
	files = append(files, first...)
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			source, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			alone := source
			if strings.Contains(file, "first") { // what is expected stands beside the slip, and is no part of it
				alone = besides.ReplaceAll(source, nil)
			}
			s, err := Read(filepath.Base(file), alone)
			var list Errors
			if s != nil || !errors.As(err, &list) {
				t.Fatalf("read without an error list: %v", err)
			}
			for i, line := range strings.Split(string(source), "\n") {
				list = checkLine(t, i+1, expected(line), list)
			}
			for _, e := range list {
				t.Errorf("not expected: %s", e)
			}
		})
	}
}

// checkLine takes the expected messages of one line out of the list.
func checkLine(t *testing.T, line int, want []string, list Errors) Errors {
	t.Helper()
	for _, text := range want {
		found := false
		for i, e := range list {
			if e.Pos.Line == line && strings.Contains(e.Error(), text) {
				if e.Pos.Column < 1 {
					t.Errorf("no column: %s", e)
				}
				list = append(list[:i:i], list[i+1:]...)
				found = true
				break
			}
		}
		if !found {
			t.Errorf("line %d: no error says %s", line, text)
		}
	}
	return list
}
