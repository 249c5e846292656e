package dwc

import (
	"archive/zip"
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net/url"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/klauspost/compress/flate"
	"golang.org/x/text/encoding/charmap"
)

// source is where the files of an archive are: a zip, a folder, or the one
// file itself.
type source interface {
	// names are the files' paths with forward slashes, sorted.
	names() []string
	open(name string) (io.ReadCloser, error)
	close() error
}

// openSource opens path by what it is, not by how it is called.
func openSource(name string, limits Limits) (source, error) {
	info, err := os.Stat(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, &ReadError{File: name, Message: "There is no such file or folder.", Cause: err}
	}
	if err != nil {
		return nil, &ReadError{File: name, Message: "It cannot be opened.", Cause: err}
	}
	if info.IsDir() {
		return openFolder(name, limits)
	}
	if !info.Mode().IsRegular() { // reading a device or a pipe may never end
		return nil, unreadable(name, 0, "It is not an ordinary file. Save it to a file first.")
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, &ReadError{File: name, Message: "It cannot be opened.", Cause: err}
	}
	var magic [4]byte
	n, _ := io.ReadFull(f, magic[:])
	f.Close()
	switch start := string(magic[:n]); {
	case start == "PK\x03\x04" || start == "PK\x05\x06":
		return openZip(name, limits)
	case n == 0:
		return nil, unreadable(name, 0, "The file is empty.")
	case start == "\xd0\xcf\x11\xe0" || strings.HasPrefix(start, "\x1f\x8b") || start == "7z\xbc\xaf" || start == "Rar!" || start == "%PDF":
		return nil, unreadable(name, 0, "This is neither a zip nor a text file, so it cannot be a Darwin Core Archive.")
	}
	return &fileSource{path: name, limits: limits}, nil
}

// fileSource is a single text file.
type fileSource struct {
	path   string
	limits Limits
}

func (s *fileSource) names() []string { return []string{filepath.Base(s.path)} }
func (s *fileSource) close() error    { return nil }
func (s *fileSource) open(name string) (io.ReadCloser, error) {
	f, err := os.Open(s.path)
	if err != nil {
		return nil, &ReadError{File: name, Message: "It cannot be opened.", Cause: err}
	}
	return &boundedFile{ReadCloser: f, name: name, limits: s.limits}, nil
}

// folderSource is a folder. Nothing outside it is ever opened, through
// symbolic links neither.
type folderSource struct {
	root   *os.Root
	files  []string
	limits Limits
}

func openFolder(name string, limits Limits) (source, error) {
	root, err := os.OpenRoot(name)
	if err != nil {
		return nil, &ReadError{File: name, Message: "The folder cannot be opened.", Cause: err}
	}
	s := &folderSource{root: root, limits: limits}
	err = fs.WalkDir(root.FS(), ".", func(p string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return &ReadError{File: p, Message: "It cannot be opened.", Cause: err}
		case d.IsDir() && strings.Count(p, "/") >= 2:
			return fs.SkipDir
		case d.IsDir() || isClutter(p):
			return nil
		}
		if s.files = append(s.files, p); len(s.files) > limits.Entries {
			return unreadable(name, 0, "The folder holds more than %d files. Give the folder of the archive itself.", limits.Entries)
		}
		return nil
	})
	if err != nil {
		root.Close()
		return nil, err
	}
	return s, nil
}

func (s *folderSource) names() []string { return s.files }
func (s *folderSource) close() error    { return s.root.Close() }
func (s *folderSource) open(name string) (io.ReadCloser, error) {
	f, err := s.root.Open(name)
	if err != nil {
		return nil, &ReadError{File: name, Message: "It cannot be opened, or it is a link to a place outside the folder.", Cause: err}
	}
	if info, err := f.Stat(); err != nil || !info.Mode().IsRegular() {
		f.Close()
		return nil, unreadable(name, 0, "This is no ordinary file.")
	}
	return &boundedFile{ReadCloser: f, name: name, limits: s.limits}, nil
}

// zipSource is a zip, which is read in place: nothing is unpacked to disk.
type zipSource struct {
	zip    *zip.ReadCloser
	files  map[string]*zip.File
	sorted []string
	limits Limits
}

func openZip(name string, limits Limits) (source, error) {
	z, err := zip.OpenReader(name)
	if err != nil && !errors.Is(err, zip.ErrInsecurePath) {
		return nil, &ReadError{File: name, Message: "The zip is damaged or not complete. Fetch or make it again.", Cause: err}
	}
	s := &zipSource{zip: z, files: map[string]*zip.File{}, limits: limits}
	if err := s.index(name); err != nil {
		z.Close()
		return nil, err
	}
	return s, nil
}

// index refuses a zip that plays tricks with names: no genuine archive does.
func (s *zipSource) index(archive string) error {
	if len(s.zip.File) > s.limits.Entries {
		return unreadable(archive, 0, "The zip holds more than %d files, which no archive of records needs.", s.limits.Entries)
	}
	s.zip.RegisterDecompressor(zip.Deflate, flate.NewReader)
	for _, f := range s.zip.File {
		name := strings.ReplaceAll(zipName(f), `\`, "/")
		if err := refuseName(archive, name); err != nil {
			return err
		}
		if strings.HasSuffix(name, "/") || f.Mode().IsDir() || isClutter(name) {
			continue
		}
		name = path.Clean(name)
		if !f.Mode().IsRegular() {
			return unreadable(archive, 0, "“%s” in the zip is a link, not a file. Such a zip is not read; make it again with the file itself.", name)
		}
		if s.files[name] != nil {
			return unreadable(archive, 0, "The zip holds two files named “%s”, and it cannot be told which is meant.", name)
		}
		s.files[name] = f
		s.sorted = append(s.sorted, name)
	}
	slices.Sort(s.sorted)
	return nil
}

// zipName returns a file's name. Where a zip does not say that its names are
// UTF-8, and they are not, they are of IBM code page 437 (PKWARE APPNOTE,
// appendix D).
func zipName(f *zip.File) string {
	if f.NonUTF8 && !utf8.ValidString(f.Name) {
		// Every byte is a character of the code page, so this cannot fail.
		name, _ := charmap.CodePage437.NewDecoder().String(f.Name)
		return name
	}
	return f.Name
}

// refuseName refuses a name that points out of its archive.
func refuseName(archive, name string) error {
	outside := strings.HasPrefix(name, "/") || len(name) > 1 && name[1] == ':' || strings.ContainsRune(name, 0)
	for part := range strings.SplitSeq(name, "/") {
		outside = outside || part == ".."
	}
	if outside {
		return unreadable(archive, 0, "The zip holds a file named “%s”, which points to a place outside it. Such a zip is not read.", name)
	}
	return nil
}

// isClutter says whether a file is what file managers leave behind.
func isClutter(name string) bool {
	base := path.Base(name)
	return strings.HasPrefix(base, "._") || base == ".DS_Store" || strings.EqualFold(base, "thumbs.db") ||
		strings.EqualFold(base, "desktop.ini") || strings.HasPrefix(name, "__MACOSX/") || strings.Contains(name, "/__MACOSX/")
}

func (s *zipSource) names() []string { return s.sorted }
func (s *zipSource) close() error    { return s.zip.Close() }
func (s *zipSource) open(name string) (io.ReadCloser, error) {
	f := s.files[name]
	const encrypted = 1
	if f.Flags&encrypted != 0 {
		return nil, unreadable(name, 0, "The zip is locked with a password. Unpack it with the password, and give the folder.")
	}
	r, err := f.Open()
	if err != nil {
		return nil, &ReadError{File: name, Message: "It is packed in a way that cannot be read here. Unpack the zip, and give the folder.", Cause: err}
	}
	return &boundedFile{ReadCloser: r, name: name, limits: s.limits, packed: max(1, int64(min(f.CompressedSize64, 1<<62)))}, nil
}

// boundedFile stops at the limits.
type boundedFile struct {
	io.ReadCloser
	name   string
	limits Limits
	packed int64 // size in the zip; 0 where not packed
	read   int64
}

func (f *boundedFile) Read(p []byte) (int, error) {
	n, err := f.ReadCloser.Read(p)
	f.read += int64(n)
	switch {
	case f.read > f.limits.FileBytes:
		return 0, over("FileBytes", f.name, 0, "The file is larger than %s. If it is genuine, split it.", size(f.limits.FileBytes))
	case f.packed > 0 && f.read > ratioFrom && f.read/f.packed > f.limits.Ratio:
		return 0, over("Ratio", f.name, 0, "The file grows to more than %d times its size when it is unpacked, as no records do. It is not read.", f.limits.Ratio)
	case err != nil && err != io.EOF:
		return n, &ReadError{File: f.name, Message: "The file is damaged or not complete. Fetch or make the archive again.", Cause: err}
	}
	return n, err
}

func size(bytes int64) string {
	for _, u := range []struct {
		size int64
		name string
	}{{1 << 30, "GiB"}, {1 << 20, "MiB"}, {1 << 10, "KiB"}} {
		if bytes >= u.size {
			return fmt.Sprintf("%d %s", bytes/u.size, u.name)
		}
	}
	return fmt.Sprintf("%d bytes", bytes)
}

// find returns the file that a location in meta.xml means, relative to the
// folder of meta.xml; exact is false where the name is spelt differently.
func find(s source, folder, location string) (name string, exact, ok bool) {
	want := path.Clean(path.Join(folder, strings.ReplaceAll(location, `\`, "/")))
	var close []string
	for _, n := range s.names() {
		if n == want {
			return n, true, true
		}
		if strings.EqualFold(n, want) {
			close = append(close, n)
		}
	}
	if len(close) == 1 {
		return close[0], false, true
	}
	// Some programs write locations as parts of web addresses: "my%20file".
	if plain, err := url.PathUnescape(location); err == nil && plain != location {
		name, _, ok = find(s, folder, plain)
		return name, false, ok
	}
	return "", false, false
}

// findMeta returns the descriptor nearest to the top.
func findMeta(s source) (name string, ok, several bool) {
	var found []string
	for _, n := range s.names() {
		if strings.EqualFold(path.Base(n), metaFile) {
			found = append(found, n)
		}
	}
	depth := func(n string) int { return strings.Count(n, "/") }
	slices.SortStableFunc(found, func(a, b string) int { return cmp.Compare(depth(a), depth(b)) })
	switch {
	case len(found) == 0:
		return "", false, false
	case len(found) > 1 && depth(found[0]) == depth(found[1]):
		return "", true, true
	}
	return found[0], true, false
}
