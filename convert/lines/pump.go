package lines

import (
	"bytes"
	"fmt"
	"io"
	"runtime"
	"strings"
	"sync"
)

// blockSize is how much is read before a core starts on it.
const blockSize = 256 << 10

// LongestLine is how many bytes a line, or a row of a CSV file with its line
// breaks inside quotes, may have. A longer one is refused and not cut off, so
// that memory stays bounded whatever the stream is.
const LongestLine = 16 << 20

// TooLong is the error of a line beyond the limit.
type TooLong struct {
	Line int64 // counted from 1
}

func (e *TooLong) Error() string {
	return fmt.Sprintf("line %d is longer than %d MB. Each value needs a line of its own; in a CSV file a quotation mark may lack its partner", e.Line, LongestLine>>20)
}

// pump cuts a stream into blocks where split allows, works on the blocks on
// every core and writes the results in order. split returns how much of the
// block is whole, 0 for none of it; the end of the stream is always whole.
// drop is left out at the start of the stream.
func pump(in io.Reader, out io.Writer, drop string, split func(block []byte) int, work func(block string, dst []byte) []byte) error {
	workers := runtime.GOMAXPROCS(0)
	queue := make(chan chan []byte, 2*workers)
	stop := make(chan struct{})
	var readErr error
	spare := sync.Pool{New: func() any { return new([]byte) }}
	busy := make(chan struct{}, workers)
	go func() {
		defer close(queue)
		first := true
		readErr = blocks(in, split, func(block string) bool {
			if first {
				block, first = strings.TrimPrefix(block, drop), false
			}
			done := make(chan []byte, 1)
			select {
			case queue <- done:
			case <-stop:
				return false
			}
			busy <- struct{}{}
			go func() {
				buffer := spare.Get().(*[]byte)
				done <- work(block, (*buffer)[:0])
				<-busy
			}()
			return true
		})
	}()
	var err error
	for done := range queue {
		b := <-done
		if err == nil {
			if _, err = out.Write(b); err != nil {
				close(stop)
			}
		}
		spare.Put(&b)
	}
	if err == nil {
		err = readErr
	}
	return err
}

var lineEnd = []byte{'\n'}

// blocks reads the stream and yields it in whole blocks.
func blocks(in io.Reader, split func([]byte) int, yield func(string) bool) error {
	buffer := make([]byte, 0, blockSize)
	line := int64(1)
	for {
		if len(buffer) == cap(buffer) {
			if len(buffer) >= LongestLine {
				return &TooLong{line}
			}
			buffer = append(make([]byte, 0, 2*cap(buffer)), buffer...)
		}
		n, err := in.Read(buffer[len(buffer):cap(buffer)])
		buffer = buffer[:len(buffer)+n]
		if err == io.EOF {
			if len(buffer) > 0 {
				yield(string(buffer))
			}
			return nil
		}
		if err != nil {
			return err
		}
		// A terminal or a pipe that waits for each answer gives less than a
		// block at a time; what is whole is answered at once.
		if len(buffer) < cap(buffer) && n >= cap(buffer)/8 {
			continue
		}
		if whole := split(buffer); whole > 0 {
			if !yield(string(buffer[:whole])) {
				return nil
			}
			line += int64(bytes.Count(buffer[:whole], lineEnd))
			buffer = buffer[:copy(buffer, buffer[whole:])]
		}
	}
}

// lastLine returns the length of the block's whole lines.
func lastLine(block []byte) int { return bytes.LastIndexByte(block, '\n') + 1 }

// cutLine takes the first line off a block, without its end.
func cutLine(block string) (line, rest string) {
	line, rest, _ = strings.Cut(block, "\n")
	return strings.TrimSuffix(line, "\r"), rest
}
