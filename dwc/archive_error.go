package dwc

import "fmt"

// ReadError says, in plain words, why an archive cannot be read.
type ReadError struct {
	// File is the file within the archive, or the archive itself.
	File string
	// Line is the line in File, from 1, where the trouble is; 0 where it is
	// not at one line.
	Line int
	// Message is plain sentences: what was found and what to do.
	Message string
	// Limit is the field of Limits that the archive is over; empty for any
	// other trouble.
	Limit string
	// Cause is the underlying error, where there is one.
	Cause error
}

// Error returns the place and the message.
func (e *ReadError) Error() string {
	if e.Line > 0 {
		return fmt.Sprintf("%s, line %d: %s", e.File, e.Line, e.Message)
	}
	return e.File + ": " + e.Message
}

// Unwrap returns the cause.
func (e *ReadError) Unwrap() error { return e.Cause }

func unreadable(file string, line int, message string, args ...any) *ReadError {
	return &ReadError{File: file, Line: line, Message: fmt.Sprintf(message, args...)}
}

// over is unreadable because of a limit.
func over(limit, file string, line int, message string, args ...any) *ReadError {
	e := unreadable(file, line, message, args...)
	e.Limit = limit
	return e
}

// Note is something about an archive that was read although it is not as it
// should be, or that somebody should know.
type Note struct {
	// File is the file within the archive that the note is about.
	File string
	// Line is the line in File, from 1; 0 where the note is not about a line.
	Line int
	// Message is one plain sentence.
	Message string
}

// String returns the place and the message.
func (n Note) String() string {
	return (&ReadError{File: n.File, Line: n.Line, Message: n.Message}).Error()
}
