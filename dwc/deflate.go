package dwc

import (
	"bytes"
	"io"
	"runtime"
	"sync"
	"sync/atomic"

	"github.com/klauspost/compress/flate"
)

// compression is the level at which a table's repetitive text is already
// small, in less than half the time of the usual level, which would make it a
// tenth smaller.
const compression = 1

// deflateBlock is how much text is compressed by itself, in bytes: so much that
// doing without what went before costs two bytes in a hundred.
const deflateBlock = 256 << 10

// deflater compresses a file (RFC 1951) block by block in the background, on as
// many processors as there are. The blocks have a fixed size, so that the
// result does not depend on how many there are, nor on how the text arrives. It
// is for one goroutine. Close must be called; it waits until all is written.
type deflater struct {
	out    io.Writer
	filled *textBlock
	closed bool
	// work goes to the compressors and queue to the one that writes, once
	// there is more than one block.
	work, queue, free chan *textBlock
	wait              sync.WaitGroup
	failed            atomic.Pointer[error]
}

// textBlock is a block on its way through a deflater.
type textBlock struct {
	text   []byte
	last   bool
	packed bytes.Buffer
	done   chan error
}

func newDeflater(out io.Writer) *deflater {
	return &deflater{out: out, filled: &textBlock{done: make(chan error, 1)}}
}

// Write takes p in. The error may be that of an earlier write.
func (d *deflater) Write(p []byte) (int, error) {
	for rest := p; len(rest) > 0; {
		b := d.filled
		n := min(len(rest), deflateBlock-len(b.text))
		b.text = append(b.text, rest[:n]...)
		rest = rest[n:]
		if len(b.text) == deflateBlock {
			d.hand()
			d.filled = <-d.free
		}
	}
	return len(p), d.err()
}

// hand gives a block to the compressors.
func (d *deflater) hand() {
	if d.work == nil {
		d.start()
	}
	d.work <- d.filled
	d.queue <- d.filled
}

func (d *deflater) start() {
	workers := runtime.GOMAXPROCS(0)
	blocks := 2*workers + 1
	d.work, d.queue, d.free = make(chan *textBlock, blocks), make(chan *textBlock, blocks), make(chan *textBlock, blocks)
	for range blocks - 1 {
		d.free <- &textBlock{done: make(chan error, 1)}
	}
	for range workers {
		d.wait.Go(func() {
			w := blockWriter()
			for b := range d.work {
				b.done <- b.pack(w)
			}
		})
	}
	d.wait.Go(func() {
		for b := range d.queue {
			d.put(b, <-b.done)
			b.text = b.text[:0]
			d.free <- b
		}
	})
}

func blockWriter() *flate.Writer {
	w, err := flate.NewWriter(nil, compression)
	if err != nil {
		panic(err) // there is no such level
	}
	return w
}

// pack compresses the block, whatever went before it.
func (b *textBlock) pack(w *flate.Writer) error {
	b.packed.Reset()
	w.Reset(&b.packed)
	if _, err := w.Write(b.text); err != nil {
		return err
	}
	if b.last {
		return w.Close()
	}
	return w.Flush()
}

// put writes a compressed block, unless something has failed.
func (d *deflater) put(b *textBlock, err error) {
	if d.failed.Load() != nil {
		return
	}
	if err == nil {
		_, err = d.out.Write(b.packed.Bytes())
	}
	if err != nil {
		d.failed.Store(&err)
	}
}

func (d *deflater) err() error {
	if err := d.failed.Load(); err != nil {
		return *err
	}
	return nil
}

// Close writes what remains. After the first call it does nothing.
func (d *deflater) Close() error {
	if d.closed {
		return d.err()
	}
	d.closed = true
	d.filled.last = true
	if d.work == nil { // not worth a goroutine
		d.put(d.filled, d.filled.pack(blockWriter()))
		return d.err()
	}
	d.hand()
	close(d.work)
	close(d.queue)
	d.wait.Wait()
	return d.err()
}
