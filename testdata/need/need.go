// Package need fetches what a test checks itself against but the project does
// not carry: published reference data, and outside programs. A test that
// cannot have it is skipped with one line saying what to do; where
// FIELDFARE_REQUIRE_TOOLS=1 is set, it fails instead, so that a complete run
// cannot pass by skipping.
package need

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// Reference returns the folder of reference data that FIELDFARE_REFERENCE
// names.
func Reference(t testing.TB) string {
	t.Helper()
	dir := os.Getenv("FIELDFARE_REFERENCE")
	if dir == "" {
		missing(t, "set FIELDFARE_REFERENCE to the folder of reference data")
	}
	if info, err := os.Stat(dir); err != nil || !info.IsDir() {
		missing(t, "FIELDFARE_REFERENCE names %q, which is not a folder", dir)
	}
	return dir
}

// ReferenceFile returns the path of one file below the reference folder.
func ReferenceFile(t testing.TB, name string) string {
	t.Helper()
	path := filepath.Join(Reference(t), filepath.FromSlash(name))
	if _, err := os.Stat(path); err != nil {
		missing(t, "the reference folder has no file %s", name)
	}
	return path
}

// Tool returns the path of an outside program. The hint says how to install
// it: "apt-get install libxml2-utils".
func Tool(t testing.TB, name, installHint string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		missing(t, "needs %s: %s", name, installHint)
	}
	return path
}

func missing(t testing.TB, format string, args ...any) {
	t.Helper()
	if os.Getenv("FIELDFARE_REQUIRE_TOOLS") == "1" {
		t.Fatalf(format, args...)
	}
	t.Skipf(format, args...)
}
