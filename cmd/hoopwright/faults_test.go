package main

import (
	"bytes"
	"cmp"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"
)

// asCommand makes this test's own program the command, so that it can be killed.
const asCommand = "HOOPWRIGHT_AS_COMMAND"

func TestMain(m *testing.M) {
	if os.Getenv(asCommand) != "" {
		main()
	}
	os.Exit(m.Run())
}

// command is a call of the command in a process of its own, behind a line of shell that ends in "$@" where one is given.
func command(shell string, args ...string) *exec.Cmd {
	c := exec.Command(os.Args[0], args...)
	if shell != "" {
		c = exec.Command("sh", append([]string{"-c", shell, "sh", os.Args[0]}, args...)...)
	}
	c.Env = append(os.Environ(), asCommand+"=1", "SOURCE_DATE_EPOCH=1795000000")
	return c
}

// twoPackets is a folder with two specs of one tunnel, and the packet of each.
func twoPackets(t *testing.T) (specs [2]string, packets [2][]byte) {
	specs = [2]string{"a.yaml", "b.yaml"}
	inFolder(t, map[string]string{"a.yaml": small, "b.yaml": small + "# another\n"})
	for i, name := range specs {
		if said, err := command("", "packet", name, "-o", "walk.pdf").CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, said)
		}
		packets[i], _ = os.ReadFile("walk.pdf")
	}
	if len(packets[0]) < 10000 || bytes.Equal(packets[0], packets[1]) {
		t.Fatalf("packets of %d and %d bytes", len(packets[0]), len(packets[1]))
	}
	return specs, packets
}

// stray returns the files of the folder that are neither a spec nor the packet.
func stray(t *testing.T) (list []string) {
	t.Helper()
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if name := e.Name(); name != "a.yaml" && name != "b.yaml" && name != "walk.pdf" {
			list = append(list, name)
		}
	}
	return list
}

// whole fails unless the packet is one of the two, to the byte.
func whole(t *testing.T, packets [2][]byte) {
	t.Helper()
	if now, err := os.ReadFile("walk.pdf"); err != nil || !bytes.Equal(now, packets[0]) && !bytes.Equal(now, packets[1]) {
		t.Fatalf("walk.pdf has %d bytes, %v; the packets have %d and %d", len(now), err, len(packets[0]), len(packets[1]))
	}
}

// Killed at any moment while it replaces a packet, the command leaves the old one whole or the new one whole. What it had begun to write is gone with a later call.
// HOOPWRIGHT_KILLS is how often it is tried.
func TestKilledWhileReplacing(t *testing.T) {
	kills, err := strconv.Atoi(cmp.Or(os.Getenv("HOOPWRIGHT_KILLS"), "10"))
	if err != nil {
		t.Fatal(err)
	}
	specs, packets := twoPackets(t)
	began := time.Now()
	if err := command("", "packet", specs[0], "-o", "walk.pdf").Run(); err != nil {
		t.Fatal(err)
	}
	took := time.Since(began)
	dice := rand.New(rand.NewPCG(uint64(began.UnixNano()), 1))
	done := 0
	for i := range kills {
		c := command("", "packet", specs[(i+1)%2], "-o", "walk.pdf")
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		part := 1.2 * dice.Float64()
		if i%2 == 0 { // half of them near the end, where the file is written
			part = 0.7 + 0.5*dice.Float64()
		}
		time.Sleep(time.Duration(part * float64(took)))
		_ = c.Process.Kill() // it may have ended
		if c.Wait() == nil {
			done++
		}
		whole(t, packets)
	}
	left := stray(t)
	t.Logf("killed %d times of %d, %d temporary files left", kills-done, kills, len(left))
	left = append(left, ".walk.pdf.123") // one at the least
	if err := os.WriteFile(".walk.pdf.123", packets[0][:100], 0o644); err != nil {
		t.Fatal(err)
	}
	for _, name := range left {
		if !strings.HasPrefix(name, ".walk.pdf.") {
			t.Errorf("%s is left", name)
		}
		if err := os.Chtimes(name, time.Time{}, time.Now().Add(-2*leftOver)); err != nil {
			t.Fatal(err)
		}
	}
	if err := command("", "packet", specs[0], "-o", "walk.pdf").Run(); err != nil {
		t.Fatal(err)
	}
	if left := stray(t); len(left) > 0 {
		t.Errorf("%v are left after a later call", left)
	}
}

// Two calls that write one packet at once leave one of the two, whole.
func TestTwoWriters(t *testing.T) {
	specs, packets := twoPackets(t)
	for range 3 {
		var both sync.WaitGroup
		for _, name := range specs {
			both.Go(func() {
				if said, err := command("", "packet", name, "-o", "walk.pdf").CombinedOutput(); err != nil {
					t.Errorf("%v: %s", err, said)
				}
			})
		}
		both.Wait()
		whole(t, packets)
	}
	if left := stray(t); len(left) > 0 {
		t.Errorf("%v are left", left)
	}
}

// Where a packet cannot be written the old one stays, nothing is left beside it, and the message says why.
func TestNoRoomToWrite(t *testing.T) {
	specs, packets := twoPackets(t)
	for _, c := range []struct {
		name, shell, out string
		code             int
		want             string
	}{
		{"a limit on a file's size, as on a full disk", `ulimit -f 16; exec "$@"`, "walk.pdf", 3, "cannot write walk.pdf: "},
		{"a folder nobody may write to", "", "/proc/walk.pdf", 3, "cannot write /proc/walk.pdf: "},
		{"a full device", "", "/dev/full", 3, "cannot write /dev/full: no space left on device"},
	} {
		var errs strings.Builder
		cmd := command(c.shell, "packet", specs[0], "-o", c.out)
		cmd.Stderr = &errs
		_ = cmd.Run() // the code says it
		if code := cmd.ProcessState.ExitCode(); code != c.code || !strings.Contains(errs.String(), c.want) {
			t.Errorf("%s: exit %d, %q", c.name, code, errs.String())
		}
		whole(t, packets)
		if left := stray(t); len(left) > 0 {
			t.Fatalf("%s: %v are left", c.name, left)
		}
	}
}

// Streams that are closed or break off end the command without a trace of the program.
func TestBrokenStreams(t *testing.T) {
	specs, packets := twoPackets(t)
	reader, writer, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	var errs strings.Builder
	c := command("", "packet", specs[0], "-o", "-")
	c.Stdout, c.Stderr = writer, &errs
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	writer.Close()
	if _, err := io.ReadFull(reader, make([]byte, 100)); err != nil {
		t.Fatal(err)
	}
	reader.Close()
	if err := c.Wait(); err == nil || strings.Contains(errs.String(), "goroutine") {
		t.Errorf("a broken pipe: %v, %q", err, errs.String())
	}
	for shell, want := range map[string]string{
		`exec "$@" <&-`:        "the file is empty",
		`exec "$@" </dev/null`: "the file is empty",
		`exec "$@" <.`:         "cannot read <standard input>: ",
	} {
		c := command(shell, "packet", "-", "-o", filepath.Join(".", "walk.pdf"))
		said, _ := c.CombinedOutput() // the code says it
		if code := c.ProcessState.ExitCode(); code != exitBadCall || !strings.Contains(string(said), want) {
			t.Errorf("%s: exit %d, %q", shell, code, said)
		}
	}
	whole(t, packets)
	if left := stray(t); len(left) > 0 {
		t.Errorf("%v are left", left)
	}
}
