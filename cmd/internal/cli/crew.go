package cli

import (
	"fmt"
	"runtime"
	"time"
)

// crew does one thing to many receipts side by side, as many as the machine has
// processors, and hands the results back in the order they came.
type crew[T any] struct{ waiting []*errand[T] }

// errand is one receipt on its way.
type errand[T any] struct {
	result T
	panic  any
	done   chan struct{}
}

// take starts a piece of work. When every place is busy it first waits for the
// oldest and hands its result back.
func (c *crew[T]) take(work func() T) (oldest T, ok bool) {
	e := &errand[T]{done: make(chan struct{})}
	go func() {
		defer func() {
			e.panic = recover()
			close(e.done)
		}()
		e.result = work()
	}()
	c.waiting = append(c.waiting, e)
	if len(c.waiting) <= runtime.GOMAXPROCS(0) {
		return oldest, false
	}
	return c.next()
}

// next waits for the oldest piece of work and hands its result back; false when
// there is none.
func (c *crew[T]) next() (oldest T, ok bool) {
	if len(c.waiting) == 0 {
		return oldest, false
	}
	e := c.waiting[0]
	c.waiting = c.waiting[1:]
	<-e.done
	if e.panic != nil {
		panic(e.panic) // where Main turns it into a line and an exit code
	}
	return e.result, true
}

// rest hands every result that is still to come to show, until that fails.
func (c *crew[T]) rest(show func(T) error) error {
	for d, ok := c.next(); ok; d, ok = c.next() {
		if err := show(d); err != nil {
			return err
		}
	}
	return nil
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
