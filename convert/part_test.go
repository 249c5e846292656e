package convert_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/demo"
	"fieldfare/convert/ledger"
	"fieldfare/testdata/make/large"
	"fieldfare/testdata/results"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// manyNotebooks are the demonstration's, several generated ones, one written
// month first and one with answers to give.
func manyNotebooks(t *testing.T) []string {
	t.Helper()
	folder := t.TempDir()
	paths, err := demo.Write(folder)
	require.NoError(t, err)
	paths = slices.DeleteFunc(paths, func(path string) bool { return filepath.Ext(path) == ".toml" })
	var all strings.Builder
	require.NoError(t, large.Write(&all, 3000))
	lines := strings.SplitAfter(all.String(), "\n")
	heading, rows := lines[0], lines[1:]
	for i, n := 0, 1000; i < len(rows)-1; i += n {
		path := filepath.Join(folder, fmt.Sprintf("large-%d.csv", i/n))
		text := heading + strings.Join(rows[i:min(i+n, len(rows))], "")
		if i == n {
			text += rows[0] // which stands in another notebook too
		}
		require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
		paths = append(paths, path)
	}
	american := "Date,Species,Count,Site,Grid ref,Recorder,Method\n06/14/2021,Heart and Dart,3,Carr Edge,TL4588,Ines Calloway,light trap\n06/05/2021,Large Yellow Underwing,2,Carr Edge,TL4588,Ines Calloway,light trap\n06/25/2021,no such moth,1,,,Ines Calloway,light trap\n"
	path := filepath.Join(folder, "month-first.csv")
	require.NoError(t, os.WriteFile(path, []byte(american), 0o644))
	paths = append(paths, path)
	slices.Sort(paths)
	return paths
}

// TestPartsMakeTheSameSet: a set that is read in parts, each notebook in any of
// them and the parts in any order, gives the outputs of one run.
func TestPartsMakeTheSameSet(t *testing.T) {
	notebooks := manyNotebooks(t)
	project := filepath.Join(filepath.Dir(notebooks[0]), "fieldfare.toml")
	folder := t.TempDir()
	out := filepath.Join(folder, "out")
	whole := func(files []string) map[string]string {
		run(t, convert.Job{Files: files, Project: project, Out: out, Formats: []string{"csv"}, Exact: true})
		outputs := results.In(t, out)
		require.NoError(t, os.RemoveAll(out))
		require.NoError(t, os.Remove(filepath.Join(filepath.Dir(project), ledger.FileName))) // each run is the first
		return outputs
	}
	want := whole(notebooks)
	require.Contains(t, want, convert.SubmissionFile)
	for _, parts := range []int{1, 3} {
		split := make([][]string, parts)
		for i, path := range notebooks {
			split[i%parts] = append([]string{path}, split[i%parts]...) // the last first
		}
		var files []string
		for i := range split {
			file := filepath.Join(folder, fmt.Sprintf("%d-of-%d.part", parts-i, parts))
			part, err := convert.ReadPart(context.Background(), convert.Job{Files: split[i], Project: project, Today: today, Workers: i}, file)
			require.NoError(t, err)
			assert.Equal(t, len(split[i]), part.Notebooks)
			files = append(files, file)
		}
		for range parts {
			files = append(files[1:], files[0])
			got := whole(files)
			for name, text := range want {
				assert.True(t, text == got[name], "%s of %d parts", name, parts)
			}
			assert.Len(t, got, len(want))
		}
	}
}

// TestSetSeenOnTheWay: records that are looked at as a set while they are read,
// those that wait until it is known what may be carried down to them among them,
// make the set that a look at all of them afterwards makes, as there is for a
// part of it.
func TestSetSeenOnTheWay(t *testing.T) {
	notebooks := slices.DeleteFunc(manyNotebooks(t), func(path string) bool { return filepath.Base(path) == "month-first.csv" })
	folder := t.TempDir()
	carried := strings.Builder{}
	carried.WriteString("Date,Species,Count,Site,Grid ref,Method,Recorder\n")
	for i := range 200 {
		species, method := "Heart and Dart", ""
		if i%90 == 0 {
			species, method = "Buff-tip", fmt.Sprintf("MV trap by badger sett %d", i)
		} else if i%40 == 0 {
			method = fmt.Sprintf("MV trap by the old pump %d", i)
		}
		fmt.Fprintf(&carried, "%d/6/2021,%s,%d,Sallowmere Reserve,TL4588,%s,Ines Calloway\n", 1+i/10, species, i+1, method)
	}
	project := filepath.Join(folder, "fieldfare.toml")
	require.NoError(t, os.WriteFile(project, []byte("[[privacy.taxon]]\nname = \"Phalera bucephala\"\n"), 0o644))
	notebooks = append(notebooks, filepath.Join(folder, "carried.csv"))
	require.NoError(t, os.WriteFile(notebooks[len(notebooks)-1], []byte(carried.String()), 0o644))
	out := filepath.Join(folder, "out")
	whole := func(workers int, files ...string) map[string]string {
		run(t, convert.Job{Files: files, Project: project, Out: out, Formats: []string{"csv"}, Exact: true, Workers: workers})
		outputs := results.In(t, out)
		require.NoError(t, os.RemoveAll(out))
		require.NoError(t, os.Remove(filepath.Join(folder, ledger.FileName)))
		return outputs
	}
	part := filepath.Join(folder, "all.part")
	_, err := convert.ReadPart(context.Background(), convert.Job{Files: notebooks, Project: project, Today: today}, part)
	require.NoError(t, err)
	want := whole(1, part)
	for _, workers := range []int{1, 3} {
		got := whole(workers, notebooks...)
		for name, text := range want {
			assert.True(t, text == got[name], "%s by %d workers", name, workers)
		}
		assert.Len(t, got, len(want))
	}
	var leaves string
	for name, text := range want {
		if filepath.Ext(name) == ".csv" {
			leaves += text
		}
	}
	assert.NotContains(t, leaves, "badger")
	assert.Contains(t, leaves, "old pump")
}

func TestPartsThatDoNotGoTogether(t *testing.T) {
	notebooks := manyNotebooks(t)
	project := filepath.Join(filepath.Dir(notebooks[0]), "fieldfare.toml")
	folder := t.TempDir()
	read := func(name string, job convert.Job) string {
		path := filepath.Join(folder, name)
		job.Today, job.Project = today, project
		_, err := convert.ReadPart(context.Background(), job, path)
		require.NoError(t, err)
		return path
	}
	one := read("one.part", convert.Job{Files: notebooks[:1]})
	other := read("other.part", convert.Job{Files: notebooks[:2]})
	list := filepath.Join(folder, "list.csv")
	require.NoError(t, os.WriteFile(list, []byte("scientific name,vernacular name,rank\nNoctua pronuba,Large Yellow Underwing,species\n"), 0o644))
	byList := read("by-list.part", convert.Job{Files: notebooks[1:2], Taxa: []string{list}})
	data, err := os.ReadFile(one)
	require.NoError(t, err)
	damaged := func(name string, change func([]byte) []byte) string {
		path := filepath.Join(folder, name)
		require.NoError(t, os.WriteFile(path, change(slices.Clone(data)), 0o644))
		return path
	}
	for _, c := range []struct {
		name  string
		files []string
		says  string
	}{
		{"the same notebook twice", []string{one, other}, "is the same as"},
		{"another list", []string{one, byList}, "other lists"},
		{"a notebook beside a part", []string{one, notebooks[1]}, "Read it into a part as well"},
		{"cut off", []string{damaged("cut.part", func(b []byte) []byte { return b[:len(b)-40] })}, "damaged or was cut off"},
		{"nearly nothing", []string{damaged("mark.part", func(b []byte) []byte { return b[:34] })}, "damaged or was cut off"},
		{"a byte wrong", []string{damaged("wrong.part", func(b []byte) []byte { b[len(b)/2] ^= 1; return b })}, "damaged or was cut off"},
	} {
		t.Run(c.name, func(t *testing.T) {
			out := filepath.Join(t.TempDir(), "out")
			_, err := convert.Run(context.Background(), convert.Job{Files: c.files, Project: project, Out: out, Today: today})
			assert.ErrorContains(t, err, c.says)
			assert.NoDirExists(t, out)
		})
	}
}
