package packet

// Yards that ask the stakes leaf something else than the examples do. Invented.
var stakeYards = map[string]string{
	"bend without marks": `hoopwright: 1
title: Bend
units: imperial
tunnel: {arches: 9, spacing: 4 ft}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}
guys: {arches: [1, last], from: 6 ft, out: 5 ft}
site: {route: [{straight: 8 ft}, {right: 90 deg, radius: 15 ft}, {straight: rest}]}
`,
	"two marks": `hoopwright: 1
title: Two marks
units: metric
tunnel: {arches: 6, spacing: 1.3 m}
arch: {pipe: pvc-u pn16 25 mm, sticks: [3.2 m, 3.2 m], span: 2.3 m, except: [{arches: [1], span: 2.6 m}]}
guys: {arches: [1, 3, last], from: 1.9 m, out: 1.6 m}
site: {start: {at: [5 m, 4 m]}, marks: [{name: gate, at: [0 m, 0 m]}, {name: barn, at: [12 m, 1 m]}]}
`,
	"one mark": `hoopwright: 1
title: One mark
units: metric
tunnel: {arches: 3, spacing: 1.3 m}
arch: {pipe: pvc-u pn16 25 mm, sticks: [3.2 m, 3.2 m], span: 2.3 m}
site: {start: {at: [5 m, 4 m]}, marks: [{name: gate, at: [0 m, 0 m]}]}
`,
	"hardly room beside the plan": `hoopwright: 1
title: Wide
units: metric
paper: a4
tunnel: {arches: 5, spacing: 1.6 m}
arch: {pipe: pvc-u pn16 25 mm, sticks: [3.4 m, 3.4 m], height: 2.5 m}
`,
	"lone and guyed": `hoopwright: 1
title: Lone
units: imperial
tunnel: {arches: 1}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}
guys: {arches: [1], from: 6 ft, out: 5 ft}
`,
	"longer than a tape": `hoopwright: 1
title: Long
units: imperial
tunnel: {arches: 40, spacing: 5 ft}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}
site: {start: {at: [20 ft, 4 ft]}, marks: [{name: gate, at: [0 ft, 0 ft]}, {name: barn, at: [60 ft, 90 ft]}, {name: well, at: [0 ft, 200 ft]}, {name: shed, at: [-20 ft, 100 ft]}, {name: elm, at: [60 ft, 190 ft]}]}
`,
	"row beyond its marks": `hoopwright: 1
title: Carried on
units: imperial
tunnel: {arches: 40, spacing: 4 ft 9 in}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}
guys: {arches: [1, last], from: 6 ft, out: 5 ft}
site: {start: {at: [20 ft, 4 ft]}, marks: [{name: gate, at: [0 ft, 0 ft]}, {name: barn, at: [60 ft, 40 ft]}]}
`,
	"row before its marks": `hoopwright: 1
title: Carried back
units: metric
tunnel: {arches: 40, spacing: 1.4 m}
arch: {pipe: pvc-u pn16 25 mm, sticks: [3.2 m, 3.2 m], span: 2.3 m, except: [{arches: [1], span: 2.6 m}]}
guys: none
site: {marks: [{name: gate, at: [-8 m, 51 m]}, {name: barn, at: [9 m, 45 m]}]}
`,
	"bend beyond its marks": `hoopwright: 1
title: Chords
units: imperial
tunnel: {arches: 44, spacing: 5 ft}
arch: {pipe: pvc sch40 1/2 in, sticks: [10 ft, 10 ft], span: 7 ft}
guys: {arches: [1, 30, last], from: 6 ft, out: 5 ft}
site: {start: {at: [20 ft, 4 ft]}, route: [{straight: 60 ft}, {right: 70 deg, radius: 40 ft}, {straight: rest}], marks: [{name: gate, at: [0 ft, 0 ft]}, {name: barn, at: [60 ft, 10 ft]}]}
`,
}
