package main

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"path/filepath"

	"golang.org/x/term"
)

// dropped is the main job without a command: notebooks dropped on the
// program's icon. The outputs go beside the first notebook, and the window
// stays open until a key is pressed.
func dropped(ctx context.Context, files []string, s streams) int {
	common := &common{}
	job, status, ok := common.job(files, s)
	if ok {
		job.Out = filepath.Join(filepath.Dir(files[0]), "fieldfare-out")
		status = runJob(ctx, job, common, false, s)
	}
	if in, ok := s.in.(*os.File); ok && term.IsTerminal(int(in.Fd())) {
		fmt.Fprint(s.err, "\nPress Enter to close this window.")
		bufio.NewReader(in).ReadString('\n')
	}
	return status
}
