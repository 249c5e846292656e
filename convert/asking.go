package convert

import "fieldfare/convert/report"

// questionsGiven is how many questions a result has at most; the workbook has
// all of them.
const questionsGiven = 10_000

// ask puts the questions in order and takes them into the result. It returns
// what stands in the way of records.
func (r *Result) ask(questions *report.Questions) (obstacles, error) {
	if err := questions.Settle(); err != nil {
		return nil, err
	}
	var by causes
	inTheWay := obstacles{}
	for q, err := range questions.All() {
		if err != nil {
			return nil, err
		}
		if len(r.Questions) < questionsGiven {
			r.Questions = append(r.Questions, q)
		}
		by.add(q)
		inTheWay.add(q)
	}
	r.Asking, r.causes = questions.Len(), by.sorted()
	return inTheWay, nil
}
