package pdf_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"hoopwright/draw/pdf"
	"hoopwright/layout"
	"hoopwright/layout/spec"
	"hoopwright/packet"
)

// aloneSpec names the spec whose pages a run of this test's own program writes through the library alone.
const aloneSpec = "HOOPWRIGHT_ALONE"

func TestMain(m *testing.M) {
	if file := os.Getenv(aloneSpec); file != "" {
		took, err := writeAlone(file)
		if err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		fmt.Println(took.Microseconds())
		os.Exit(0)
	}
	os.Exit(m.Run())
}

// writeAlone solves and binds a spec, then returns the processor time that writing its pages through the library alone takes.
func writeAlone(file string) (time.Duration, error) {
	source, err := os.ReadFile(file)
	if err != nil {
		return 0, err
	}
	sp, err := spec.Read(file, source)
	if err != nil {
		return 0, err
	}
	doc, _, err := packet.Bind(layout.Solve(sp), packet.Options{Date: time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)})
	if err != nil {
		return 0, err
	}
	write := pdf.Alone(doc)
	runtime.GC()
	before := cpu()
	err = write()
	return cpu() - before, err
}

// cpu is the processor time of this program so far.
func cpu() time.Duration {
	var r syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &r); err != nil {
		panic(err)
	}
	return time.Duration(r.Utime.Nano() + r.Stime.Nano())
}

// speed is what a packet takes.
type speed struct {
	whole, alone time.Duration // processor time of the command, and of the library alone on the same pages
	memory       float64       // MB that the command holds at the most
	sides        int
}

// speedOf measures by turns, so many of each, and returns medians.
func speedOf(t testing.TB, command, source string, turns int) (s speed) {
	t.Helper()
	dir := t.TempDir()
	file, out := filepath.Join(dir, "walk.yaml"), filepath.Join(dir, "walk.pdf")
	if err := os.WriteFile(file, []byte(source), 0o666); err != nil {
		t.Fatal(err)
	}
	var whole, alone []time.Duration
	var memory []float64
	for range turns {
		cmd := exec.Command(command, "packet", file, "-o", out, "--date", "2026-11-01")
		said, err := cmd.CombinedOutput()
		if code := cmd.ProcessState.ExitCode(); code != 0 && code != 1 {
			t.Fatalf("%v: %s", err, said)
		}
		used := cmd.ProcessState.SysUsage().(*syscall.Rusage)
		whole = append(whole, time.Duration(used.Utime.Nano()+used.Stime.Nano()))
		memory = append(memory, float64(used.Maxrss)/1024)
		cmd = exec.Command(os.Args[0])
		cmd.Env = append(os.Environ(), aloneSpec+"="+file)
		said, err = cmd.Output()
		if err != nil {
			t.Fatal(err)
		}
		us, err := strconv.Atoi(strings.TrimSpace(string(said)))
		if err != nil {
			t.Fatal(err)
		}
		alone = append(alone, time.Duration(us)*time.Microsecond)
	}
	slices.Sort(whole)
	slices.Sort(alone)
	slices.Sort(memory)
	data, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	return speed{whole[turns/2], alone[turns/2], memory[turns/2], strings.Count(string(data), "/Dest [")}
}

// commandFile builds the command.
func commandFile(t testing.TB) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "hoopwright")
	if said, err := exec.Command("go", "build", "-o", file, "hoopwright/cmd/hoopwright").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	return file
}

// walk is the spec of a straight lit walk of so many arches, an outlet to every six.
func walk(arches int) string {
	var outlets, circuits strings.Builder
	for i := range (arches + 5) / 6 {
		fmt.Fprintf(&outlets, "    - {name: post %d, at: [%d ft, %d ft], circuit: c%d, sockets: 4}\n", i+1, 28+24*(i%2), 6+26*i, i+1)
		fmt.Fprintf(&circuits, "    c%d: {volts: 120 V, breaker: 20 A, gfci: true}\n", i+1)
	}
	return fmt.Sprintf(`hoopwright: 1
title: A walk of %d
tunnel: {arches: %d, spacing: 4 ft 4 in, opening: {width: 4 ft, height: 6 ft 8 in}}
arch: {pipe: pvc sch40 3/4 in, sticks: [10 ft, 10 ft], span: 7 ft 4 in}
guys: {arches: [1, last], from: 7 ft, out: 5 ft}
site:
  start: {at: [40 ft, 4 ft], heading: 0 deg}
  marks: [{name: post, at: [0 ft, 0 ft]}, {name: lamp, at: [80 ft, 0 ft]}]
  outlets:
%slights: {wraps: [{where: legs, string: mini led 100 warm}, {where: ridge, string: mini led 50 warm, count: 1}]}
power:
  circuits:
%s`, arches, arches, outlets.String(), circuits.String())
}

// The command takes no more than five times what the library alone takes for the same pages, and no more by the arch for sixty than for eight. The
// benchmark below says what it takes; these limits leave room for a busy machine.
func TestWholeCommandIsQuick(t *testing.T) {
	command := commandFile(t)
	garden, err := os.ReadFile("../../examples/garden.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if s := speedOf(t, command, string(garden), 3); s.whole > 5*s.alone || s.alone == 0 {
		t.Errorf("%v, the library alone %v", s.whole, s.alone)
	}
	short, long := speedOf(t, command, walk(8), 1), speedOf(t, command, walk(60), 1)
	if long.whole/60 > short.whole/8 || long.memory/60 > short.memory/8 {
		t.Errorf("60 arches take %v and %.0f MB, 8 arches %v and %.0f MB", long.whole, long.memory, short.whole, short.memory)
	}
}

// BenchmarkWholeCommand measures the command against the library alone, by turns: run it with -benchtime 1x.
func BenchmarkWholeCommand(b *testing.B) {
	command := commandFile(b)
	garden, err := os.ReadFile("../../examples/garden.yaml")
	if err != nil {
		b.Fatal(err)
	}
	for _, c := range []struct{ name, source string }{{"garden", string(garden)}, {"2", walk(2)}, {"8", walk(8)}, {"60", walk(60)}, {"240", walk(240)}} {
		b.Run(c.name, func(b *testing.B) {
			var s speed
			for b.Loop() {
				s = speedOf(b, command, c.source, 11)
			}
			b.ReportMetric(0, "ns/op")
			b.ReportMetric(float64(s.sides), "sides")
			b.ReportMetric(float64(s.whole.Milliseconds()), "ms")
			b.ReportMetric(float64(s.alone.Milliseconds()), "alone-ms")
			b.ReportMetric(s.whole.Seconds()/s.alone.Seconds(), "ratio")
			b.ReportMetric(s.memory, "MB")
		})
	}
}
