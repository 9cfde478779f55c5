package cli

import (
	"fmt"
	"runtime"
	"time"

	"assize/formula"
	"assize/formula/book"
	"assize/ratios/judge"
	"assize/reference/fault"
)

// judged is one receipt on its way through the judge.
type judged struct {
	formula *formula.Formula
	book    *book.Book
	report  *judge.Report
	faults  fault.List
	panic   any
	done    chan struct{}
}

// crew judges receipts side by side, as many as the machine has processors,
// and hands them back in the order they came.
type crew struct {
	judge   *judge.Judge
	waiting []*judged
}

// take starts a receipt. When every place is busy it first waits for the
// oldest and hands it back; else it gives nil.
func (c *crew) take(f *formula.Formula, b *book.Book) *judged {
	d := &judged{formula: f, book: b, done: make(chan struct{})}
	go func() {
		defer func() {
			d.panic = recover()
			close(d.done)
		}()
		d.report, d.faults = c.judge.Check(f)
	}()
	c.waiting = append(c.waiting, d)
	if len(c.waiting) <= runtime.GOMAXPROCS(0) {
		return nil
	}
	return c.next()
}

// next waits for the oldest receipt and hands it back; nil when there is none.
func (c *crew) next() *judged {
	if len(c.waiting) == 0 {
		return nil
	}
	d := c.waiting[0]
	c.waiting = c.waiting[1:]
	<-d.done
	if d.panic != nil {
		panic(d.panic) // where Main turns it into a line and an exit code
	}
	return d
}

// progress shows on a terminal how many receipts are done, when there are
// enough of them to wait for.
type progress struct {
	r      *run
	of     int
	done   int
	before time.Time
}

// worthShowing is how many receipts are worth a progress line.
const worthShowing = 20

func (p *progress) step() {
	p.done++
	if !p.r.ErrTerminal || p.of < worthShowing || time.Since(p.before) < 100*time.Millisecond && p.done < p.of {
		return
	}
	p.before = time.Now()
	const width = 30
	full := width * p.done / p.of
	bar := make([]byte, width)
	for i := range bar {
		bar[i] = '.'
		if i < full {
			bar[i] = '='
		}
	}
	end := ""
	if p.done == p.of {
		end = "\n"
	}
	fmt.Fprintf(p.r.Err, "\r%s %d of %d receipts%s", bar, p.done, p.of, end)
}
