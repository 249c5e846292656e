package dwc

import (
	"io"
	"sync/atomic"
)

// background writes in a goroutine of its own, so that rows are made while
// others are compressed. At most a few buffers are under way.
type background struct {
	work   chan []byte
	free   chan []byte
	ended  chan struct{}
	failed atomic.Pointer[error]
}

func newBackground(out io.Writer) *background {
	const underWay = 2
	b := &background{work: make(chan []byte, underWay), free: make(chan []byte, underWay+1), ended: make(chan struct{})}
	for range underWay {
		b.free <- make([]byte, 0, flushAt+flushAt/4)
	}
	go func() {
		defer close(b.ended)
		for p := range b.work {
			if b.failed.Load() == nil {
				if _, err := out.Write(p); err != nil {
					b.failed.Store(&err)
				}
			}
			b.free <- p[:0]
		}
	}()
	return b
}

// write hands p over, and returns an empty buffer in exchange. The error may
// be that of an earlier write.
func (b *background) write(p []byte) ([]byte, error) {
	b.work <- p
	return <-b.free, b.err()
}

func (b *background) err() error {
	if err := b.failed.Load(); err != nil {
		return *err
	}
	return nil
}

// finish waits until everything is written. It may be called only once.
func (b *background) finish() error {
	close(b.work)
	<-b.ended
	return b.err()
}
