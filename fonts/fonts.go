// Package fonts holds the packet's typefaces with the advance widths and coverage of each, so that text is measured
// exactly as it will be drawn and a rune that a face lacks is known before it leaves a hole in a sheet.
//
// Go Medium and Go Bold (text) and Go Mono (the printed spec) come from golang.org/x/image, BSD-3, LICENSE-Go.txt. B612 Regular and Bold (figures and drawing lettering)
// come from Debian's fonts-b612 1.008 with outlines converted to TrueType, LICENSE-B612.txt.
package fonts

import (
	_ "embed"
	"sync"
)

// Face is one typeface of the packet.
type Face int

// The faces.
const (
	Text       Face = iota // Go Medium
	Head                   // Go Bold
	Figure                 // B612 Regular
	FigureBold             // B612 Bold
	Mono                   // Go Mono
	faces
)

// Faces returns every face of the packet.
func Faces() []Face { return []Face{Text, Head, Figure, FigureBold, Mono} }

//go:embed Go-Medium.ttf
var goMedium []byte

//go:embed Go-Bold.ttf
var goBold []byte

//go:embed Go-Mono.ttf
var goMono []byte

//go:embed B612-Regular.ttf
var b612Regular []byte

//go:embed B612-Bold.ttf
var b612Bold []byte

// typeface is a face's name, its file, and the faces that stand in for runes it lacks: the one of like weight first.
type typeface struct {
	name    string
	file    *[]byte
	instead []Face
	metrics func() *metrics // read from the file when first asked for
}

var table = [faces]typeface{
	Text:       open("Go-Medium", &goMedium, Head, Figure, FigureBold),
	Head:       open("Go-Bold", &goBold, Text, FigureBold, Figure),
	Figure:     open("B612-Regular", &b612Regular, Text, Head, FigureBold),
	FigureBold: open("B612-Bold", &b612Bold, Head, Text, Figure),
	Mono:       open("Go-Mono", &goMono, Text, Head, Figure, FigureBold),
}

func open(name string, file *[]byte, instead ...Face) typeface {
	return typeface{name, file, instead, sync.OnceValue(func() *metrics {
		m, err := parse(*file)
		if err != nil {
			panic("fonts: " + name + ": " + err.Error()) // the file is part of the program
		}
		return m
	})}
}
