package report

import (
	"cmp"
	"iter"
	"maps"
	"slices"

	"fieldfare/convert/reading"
)

// Questions collects findings into questions. However many there are, those in
// memory take no more than some tens of megabytes: what is more goes to
// temporary files, sorted, and is put together in the end. Without a folder for
// such files (the zero value) all stay in memory.
type Questions struct {
	temp  string // folder for work files
	most  int    // bytes held in memory, roughly
	byKey map[key]*Question
	bytes int
	runs  *runs // by key; the same question may be in several
	list  []*Question
	final *runs // in the order of the workbook; nil where list has all
	n     int
	err   error
}

// NewQuestions begins a collection. Temp is the folder for work files.
func NewQuestions(temp string) *Questions { return &Questions{temp: temp, most: 24 << 20} }

type key struct{ about, written, code string }

func (q *Question) key() key { return key{q.About, q.Written, q.Code} }

// size is what a question takes in memory, roughly, in bytes.
func (q *Question) size() int {
	n := 400 + len(q.Written) + len(q.Message)
	for _, c := range q.Candidates {
		n += 16 + len(c)
	}
	return n
}

// sizeOfPlace is what each further place takes.
const sizeOfPlace = 64

// Add counts one finding of one record at the place.
func (q *Questions) Add(f *reading.Finding, at Place) {
	if f.State == reading.Fair || q.err != nil {
		return
	}
	k := key{f.About, f.Written, f.Code}
	question := q.byKey[k]
	if question == nil {
		if q.byKey == nil {
			q.byKey = map[key]*Question{}
		}
		question = &Question{About: f.About, Written: f.Written, Code: f.Code, State: f.State, Message: f.Message, Candidates: f.Candidates}
		q.byKey[k] = question
		q.bytes += question.size()
	}
	question.State = max(question.State, f.State)
	question.Records++
	if len(question.Places) < placesKept {
		question.Places = append(question.Places, at)
		q.bytes += sizeOfPlace
	} else {
		question.Others++
	}
	if q.temp != "" && q.bytes > q.most {
		q.spill()
	}
}

// spill writes what is in memory to a file.
func (q *Questions) spill() {
	if q.runs == nil {
		if q.runs, q.err = newRuns(q.temp); q.err != nil {
			return
		}
	}
	list := slices.Collect(maps.Values(q.byKey))
	slices.SortFunc(list, byKey)
	q.err = q.runs.add(list)
	q.byKey, q.bytes = nil, 0
}

// byKey is the order in which the runs of one file are put together.
func byKey(a, b *Question) int {
	return cmp.Or(cmp.Compare(a.About, b.About), cmp.Compare(a.Written, b.Written), cmp.Compare(a.Code, b.Code))
}

// byWeight is the order of the workbook: held first, then by how many records
// the answer frees.
func byWeight(a, b *Question) int {
	return cmp.Or(cmp.Compare(b.State, a.State), cmp.Compare(b.Records, a.Records), byKey(a, b))
}

// add takes in what a later run knows of the same question.
func (q *Question) add(later *Question) {
	q.State = max(q.State, later.State)
	q.Records += later.Records
	q.Places = append(q.Places, later.Places[:min(len(later.Places), placesKept-len(q.Places))]...)
	q.Others = q.Records - len(q.Places)
}

// Settle puts the questions in order, after the last was added.
func (q *Questions) Settle() error {
	if q.runs == nil {
		q.list = slices.SortedFunc(maps.Values(q.byKey), byWeight)
		q.n, q.byKey = len(q.list), nil
		return q.err
	}
	if q.spill(); q.err != nil {
		return q.err
	}
	if q.final, q.err = newRuns(q.temp); q.err != nil {
		return q.err
	}
	q.err = q.join()
	q.runs.close()
	q.runs = nil
	return q.err
}

// join puts together what the runs know of each question, and sorts the
// questions anew.
func (q *Questions) join() error {
	var list []*Question
	size := 0
	flush := func() error {
		slices.SortFunc(list, byWeight)
		err := q.final.add(list)
		list, size = list[:0], 0
		return err
	}
	for question, err := range q.runs.merged(byKey) {
		if err != nil {
			return err
		}
		if n := len(list); n > 0 && list[n-1].key() == question.key() {
			list[n-1].add(question)
			continue
		}
		if size > q.most {
			if err := flush(); err != nil {
				return err
			}
		}
		list = append(list, question)
		size += question.size() + len(question.Places)*sizeOfPlace
		q.n++
	}
	return flush()
}

// Len is how many questions there are, once they are settled.
func (q *Questions) Len() int { return q.n }

// All yields the questions in their order: held first, then by how many records
// the answer frees, then by what they are about. It may be called again.
func (q *Questions) All() iter.Seq2[*Question, error] {
	if q.final != nil {
		return q.final.merged(byWeight)
	}
	return func(yield func(*Question, error) bool) {
		for _, question := range q.list {
			if !yield(question, nil) {
				return
			}
		}
	}
}

// Close gives up the temporary files. What All yielded stays valid.
func (q *Questions) Close() {
	q.runs.close()
	q.final.close()
}
