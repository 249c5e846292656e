// Package demo carries the demonstration notebooks: several years of an
// invented reserve and garden, with the faults that real notebooks have.
package demo

import (
	"embed"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"fieldfare/convert/stage"
)

//go:generate go run ./make

//go:embed notebooks
var notebooks embed.FS

// Write copies the demonstration notebooks, their lists and their project
// file into the folder, and returns the paths of the notebooks. A file that
// is there already is left alone if it is the same, and refused if not.
func Write(folder string) ([]string, error) {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return nil, fmt.Errorf("the folder %s cannot be made. Give another after demo", folder)
	}
	entries, err := notebooks.ReadDir("notebooks")
	if err != nil {
		return nil, err
	}
	var paths []string
	for _, entry := range entries {
		data, err := notebooks.ReadFile("notebooks/" + entry.Name())
		if err != nil {
			return nil, err
		}
		path := filepath.Join(folder, entry.Name())
		if err := writeNew(path, data); err != nil {
			return nil, err
		}
		if IsNotebook(entry.Name()) {
			paths = append(paths, path)
		}
	}
	return paths, nil
}

// IsNotebook tells the notebooks from the lists and the project file.
func IsNotebook(name string) bool {
	return name != "places.csv" && name != "people.csv" && filepath.Ext(name) != ".toml"
}

func writeNew(path string, data []byte) error {
	old, err := os.ReadFile(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return stage.File(path, func(w io.Writer) error {
			_, err := w.Write(data)
			return err
		})
	case err != nil || string(old) != string(data):
		return fmt.Errorf("%s is there already and differs from the demonstration notebook. Give an empty folder after demo, so that nothing of yours is overwritten", path)
	}
	return nil
}
