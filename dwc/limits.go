package dwc

// Limits bound what reading an archive may take, whatever the archive claims,
// so that a damaged or a hostile one ends in an error and not in a full disk
// or memory. A limit of zero means the default, which is far above what
// genuine archives hold.
type Limits struct {
	// Entries is how many files an archive may have. Default 10,000.
	Entries int
	// FileBytes is how large one file may be after unpacking.
	// Default 32 GiB: rows are streamed, so that this costs time only.
	FileBytes int64
	// Ratio is how many times larger a file may become by unpacking, once it
	// is larger than 64 MiB. Default 400; text of records seldom reaches 50.
	Ratio int64
	// RecordBytes and FieldBytes are how long a row, and a value in it, may
	// be. Defaults 16 MiB and 4 MiB. Memory use follows these.
	RecordBytes, FieldBytes int
	// Columns is how many values a row may have. Default 4,096.
	Columns int
	// XMLBytes and XMLDepth bound meta.xml and the metadata document.
	// Defaults 16 MiB and 64 elements within each other. There may be one
	// element or attribute for every 32 of the bytes allowed.
	XMLBytes, XMLDepth int
}

// ratioFrom is the size below which unpacking is never taken for an attack.
const ratioFrom = 64 << 20

func (l Limits) withDefaults() Limits {
	orDefault(&l.Entries, 10_000)
	orDefault(&l.FileBytes, 32<<30)
	orDefault(&l.Ratio, 400)
	orDefault(&l.RecordBytes, 16<<20)
	orDefault(&l.FieldBytes, 4<<20)
	orDefault(&l.Columns, 4096)
	orDefault(&l.XMLBytes, 16<<20)
	orDefault(&l.XMLDepth, 64)
	return l
}

func orDefault[T int | int64](limit *T, otherwise T) {
	if *limit <= 0 {
		*limit = otherwise
	}
}
