package spec

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
)

// A filled spec gives everything: read again it takes nothing for granted but what no key says, and comes to the same values to eleven digits. Names of the spec's own may hold dots.
func TestFilledTakesNothingForGranted(t *testing.T) {
	sources := map[string]string{"quoted": quotedPlaces, "amended": amended, "aliases": `hoopwright: 1
title: x
tunnel: {arches: 3, spacing: 4 ft}
arch: {pipe: {od: 0.84 in, wall: 0.11 in, take off: 1/2 in, socket: 0.7 in}, sticks: [10 ft, 10 ft], span: 7 ft, stake: &s {depth: 14 in}}
guys: {from: 6 ft, out: 5 ft, stake: *s}
lights: {strings: {a.b: {length: 21 ft, bulbs: 50, watts: 3.7 W}, a: {length: 20 ft, bulbs: 50, watts: 3.7 W}}, wraps: [{where: legs, string: a.b}]}
power: {circuits: {east.porch: {volts: 120 V, breaker: 15 A}, east: {volts: 120 V, breaker: 15 A}}}
site: {outlets: [{name: o, at: [0, 0], circuit: east.porch}, {name: p, at: [9 ft, 0], circuit: east, sockets: 1}]}
`}
	files, err := filepath.Glob("../../examples/*.yaml")
	if err != nil || len(files) < 4 {
		t.Fatalf("%d examples, %v", len(files), err)
	}
	for _, file := range files {
		source, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		sources[filepath.Base(file)] = string(source)
	}
	for name, source := range sources {
		t.Run(name, func(t *testing.T) {
			s, err := Read(name, []byte(source))
			if err != nil {
				t.Fatal(err)
			}
			filled, err := Filled(s)
			if err != nil {
				t.Fatal(err)
			}
			again, err := Read(name, filled)
			if err != nil {
				t.Fatalf("%v\n%s", err, filled)
			}
			for _, d := range again.Defaults {
				if d.Written != nil {
					t.Errorf("%s is still a default: %v", d.Key, d.Written)
				}
			}
			if len(again.Defaults) >= len(s.Defaults) {
				t.Errorf("%d defaults of %d are left", len(again.Defaults), len(s.Defaults))
			}
			want, got := *s, *again
			for _, x := range []*Spec{&want, &got} {
				x.Power.Inline = slices.Clone(x.Power.Inline)
				for i := range x.Power.Inline {
					x.Power.Inline[i].Source = "" // the catalog's is now the spec's
				}
				x.Source, x.Defaults, x.Texts, x.positions, x.amended = nil, nil, nil, nil, nil
			}
			if a, b := fmt.Sprintf("%+v", flat(want)), fmt.Sprintf("%+v", flat(got)); a != b {
				t.Errorf("filled in\n%s\nit was\n%s", b, a)
			}
			twice, err := Filled(again)
			if err != nil || strings.Count(string(twice), filledHead) != 1 {
				t.Errorf("filled a second time: %v\n%s", err, twice)
			}
		})
	}
}

// flat shows what pointers point at, so that two values print alike where they are alike.
func flat(s Spec) string {
	var b strings.Builder
	var walk func(v reflect.Value)
	walk = func(v reflect.Value) {
		switch v.Kind() {
		case reflect.Pointer:
			if !v.IsNil() {
				walk(v.Elem())
			}
		case reflect.Struct:
			for i := range v.NumField() {
				fmt.Fprintf(&b, "%s{", v.Type().Field(i).Name)
				walk(v.Field(i))
				b.WriteString("} ")
			}
		case reflect.Slice, reflect.Array:
			for i := range v.Len() {
				walk(v.Index(i))
				b.WriteString(", ")
			}
		case reflect.Float64:
			fmt.Fprintf(&b, "%.11g", v.Float())
		default:
			fmt.Fprintf(&b, "%v", v)
		}
	}
	walk(reflect.ValueOf(s))
	return b.String()
}

// What was amended before it was read is in the filled spec too.
func TestFilledKeepsAmendments(t *testing.T) {
	s, err := ReadAmended("x", []byte(amended), Amendment{"arch.pipe", "pvc sch40 3/4 in"}, Amendment{"arch.except", nil})
	if err != nil {
		t.Fatal(err)
	}
	filled, err := Filled(s)
	if err != nil {
		t.Fatal(err)
	}
	again, err := Read("x", filled)
	if err != nil || again.Arch.Pipe.Name != "pvc sch40 3/4 in" || len(again.Except) > 0 {
		t.Errorf("%v\n%s", err, filled)
	}
}
