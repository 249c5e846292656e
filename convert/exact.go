package convert

import "fieldfare/convert/stage"

// ExactFile is the full copy, in which nothing is blurred, for the person who
// is entitled to it. Its name is such that nobody takes it for the submission.
const ExactFile = "CONFIDENTIAL exact places - do not publish.zip"

// newExact begins the full copy. People who are not to be named and what must
// never leave (addresses, telephone numbers) are not in it either.
func newExact(s *settings, v *setView, out *stage.Folder) (*archive, error) {
	file, err := out.Create(ExactFile)
	if err != nil {
		return nil, err
	}
	a, err := newArchive(file, s, v.exact)
	if err == nil {
		a.exact = true
	}
	return a, err
}
