package main

import (
	"bytes"
	"fmt"
	"io"
	"sync"
	"time"

	"hoopwright/layout/arch"
)

// progressAfter is how long a call works in silence.
const progressAfter = time.Second

// bindAll makes the packets of all jobs, as many at once as there are processors. What each has to say comes in the order of the jobs, each failure with
// its message, and none keeps the others from being made. The exit code is the gravest.
func bindAll(jobs []job, o packetOptions, s streams) error {
	said, errs := make([]bytes.Buffer, len(jobs)), make([]error, len(jobs))
	sideBySide(s, "solving and drawing", "packets", len(jobs), func(i int) {
		errs[i] = guarded(func() error { return o.bind(jobs[i], streams{s.in, s.out, &said[i]}) })
	})
	if len(jobs) == 1 {
		s.err.Write(said[0].Bytes())
		return errs[0]
	}
	worst, failed := exitError{}, 0
	for i, err := range errs {
		s.err.Write(said[i].Bytes())
		if err == nil {
			continue
		}
		e := asExit(err)
		e.say(s.err, jobs[i].operand+": ")
		if e.code > exitMustFix {
			failed++
		}
		worst.code = max(worst.code, e.code)
	}
	switch {
	case worst.code == exitDone:
		return nil
	case failed > 0:
		worst.msg = fmt.Sprintf("%d of %d packets were not made", failed, len(jobs))
	}
	return worst
}

// sideBySide does each of so many jobs, and says how far it has come.
func sideBySide(s streams, does, makes string, of int, do func(i int)) {
	shown := startProgress(s.err, does, makes, of, progressAfter)
	arch.SideBySide(of, func(i int) {
		do(i)
		shown.done()
	})
	shown.stop()
}

// guarded turns a panic, which is a bug, into the failure of one job, or of the call.
func guarded(work func() error) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("a fault in hoopwright: %v", r)
		}
	}()
	return work()
}

// progress says on a terminal how far a call has come, once it takes long.
type progress struct {
	out   io.Writer
	does  string // what is done, and what each job makes
	makes string
	of    int
	ticks chan struct{} // one for each job done
	quit  chan struct{}
	ended sync.WaitGroup
}

// startProgress begins to watch. Where the stream is no terminal nothing is ever said.
func startProgress(out io.Writer, does, makes string, of int, after time.Duration) *progress {
	p := &progress{out: out, does: does, makes: makes, of: of, ticks: make(chan struct{}, of), quit: make(chan struct{})}
	if isTerminal(out) {
		p.ended.Go(func() { p.watch(after) })
	}
	return p
}

func (p *progress) done() { p.ticks <- struct{}{} }

func (p *progress) stop() {
	close(p.quit)
	p.ended.Wait()
}

// watch writes one line over and over until it is told to stop.
func (p *progress) watch(after time.Duration) {
	began, made, said := time.Now(), 0, false
	clock := time.NewTicker(after)
	defer clock.Stop()
	for {
		select {
		case <-p.ticks:
			made++
		case <-clock.C:
			said = true
			fmt.Fprintf(p.out, "\r%s", p.line(made, time.Since(began)))
		case <-p.quit:
			if said {
				fmt.Fprint(p.out, "\r\x1b[K")
			}
			return
		}
	}
}

// line is what is said after so long.
func (p *progress) line(made int, since time.Duration) string {
	text := fmt.Sprintf("%s, %d s", p.does, int(since.Seconds()))
	if p.of > 1 {
		text += fmt.Sprintf(", %d of %d %s", made, p.of, p.makes)
	}
	return text
}
