package report

import (
	"bufio"
	"container/heap"
	"encoding/gob"
	"errors"
	"io"
	"iter"
	"os"
)

// runs is a file with lists of questions, each sorted, that can be read as one
// sorted list in little memory.
type runs struct {
	file *os.File
	ends []int64
}

func newRuns(folder string) (*runs, error) {
	file, err := os.CreateTemp(folder, "questions-")
	if err != nil {
		return nil, err
	}
	return &runs{file: file}, nil
}

// close gives the file up.
func (r *runs) close() {
	if r != nil {
		r.file.Close()
		os.Remove(r.file.Name())
	}
}

// add appends a sorted list.
func (r *runs) add(list []*Question) error {
	w := bufio.NewWriterSize(r.file, 1<<18)
	e := gob.NewEncoder(w)
	for _, q := range list {
		if err := e.Encode(q); err != nil {
			return err
		}
	}
	if err := w.Flush(); err != nil {
		return err
	}
	end, err := r.file.Seek(0, io.SeekCurrent)
	r.ends = append(r.ends, end)
	return err
}

// merged yields the questions of all lists in the order in which each is
// sorted. Of those that are alike, one of an earlier list comes first.
func (r *runs) merged(order func(a, b *Question) int) iter.Seq2[*Question, error] {
	return func(yield func(*Question, error) bool) {
		m := merge{order: order}
		start := int64(0)
		for i, end := range r.ends {
			h := &head{run: i, d: gob.NewDecoder(bufio.NewReaderSize(io.NewSectionReader(r.file, start, end-start), 1<<14))}
			start = end
			more, err := h.next()
			if err != nil {
				yield(nil, err)
				return
			}
			if more {
				m.heads = append(m.heads, h)
			}
		}
		heap.Init(&m)
		for len(m.heads) > 0 {
			h := m.heads[0]
			if !yield(h.q, nil) {
				return
			}
			more, err := h.next()
			if err != nil {
				yield(nil, err)
				return
			}
			if more {
				heap.Fix(&m, 0)
			} else {
				heap.Pop(&m)
			}
		}
	}
}

// head is the next question of a list.
type head struct {
	run int
	d   *gob.Decoder
	q   *Question
}

func (h *head) next() (more bool, err error) {
	h.q = &Question{}
	err = h.d.Decode(h.q)
	if errors.Is(err, io.EOF) {
		return false, nil
	}
	return err == nil, err
}

// merge is a heap of the lists by their next question.
type merge struct {
	heads []*head
	order func(a, b *Question) int
}

func (m *merge) Len() int { return len(m.heads) }
func (m *merge) Less(i, j int) bool {
	a, b := m.heads[i], m.heads[j]
	if c := m.order(a.q, b.q); c != 0 {
		return c < 0
	}
	return a.run < b.run
}
func (m *merge) Swap(i, j int) { m.heads[i], m.heads[j] = m.heads[j], m.heads[i] }
func (m *merge) Push(x any)    { m.heads = append(m.heads, x.(*head)) }
func (m *merge) Pop() any {
	n := len(m.heads) - 1
	h := m.heads[n]
	m.heads = m.heads[:n]
	return h
}
