// Command fieldfare turns a recorder's own notebooks into records that can be
// handed in: it reads spreadsheets and CSV, checks what was seen, where, when
// and by whom, and writes a Darwin Core submission.
package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"
)

// Exit statuses, the same for every command.
const (
	exitDone   = 0
	exitHeld   = 1 // something is held (check, convert --strict)
	exitUsage  = 2 // the command line or the project file is wrong
	exitFailed = 3 // the work could not be done
)

// streams are a command's connections to the world.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

func main() {
	ctx, stop := context.Background(), func() {}
	if len(os.Args) > 1 && !endsAtOnce[os.Args[1]] {
		ctx, stop = signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM)
		context.AfterFunc(ctx, stop) // a second time ends the program whatever it does
	}
	out := &output{w: screenOf(os.Stdout)}
	s := streams{os.Stdin, out, screenOf(os.Stderr)}
	status := run(ctx, os.Args[1:], s)
	stop()
	os.Exit(out.whole(status, s))
}

// endsAtOnce are the commands that an interrupt may end where they stand: they
// leave nothing half done.
var endsAtOnce = map[string]bool{"gridref": true, "explain": true, "compare": true}

func run(ctx context.Context, args []string, s streams) int {
	if len(args) == 0 {
		fmt.Fprint(s.err, overview)
		return exitUsage
	}
	name, rest := args[0], args[1:]
	switch name {
	case "convert":
		return convertCommand(ctx, rest, s)
	case "check":
		return checkCommand(ctx, rest, s)
	case "gridref":
		return gridrefCommand(rest, s.in, s.out, s.err)
	case "explain":
		return explainCommand(rest, s)
	case "compare":
		return compareCommand(rest, s)
	case "demo":
		return demoCommand(ctx, rest, s)
	case "version", "--version":
		fmt.Fprintln(s.out, "fieldfare", version())
		return exitDone
	case "help", "--help", "-h":
		if name == "help" && len(rest) > 0 {
			return run(ctx, []string{rest[0], "--help"}, s)
		}
		fmt.Fprint(s.out, overview)
		return exitDone
	}
	if _, err := os.Stat(name); err == nil {
		return dropped(ctx, args, s)
	}
	fmt.Fprintf(s.err, "%q is neither a command of Fieldfare nor a file in this folder.\n\n%s", name, overview)
	return exitUsage
}

const overview = `Fieldfare turns a recorder's notebooks into records that can be handed in.

  fieldfare convert FILE... --out FOLDER   read notebooks, check them, write a submission
  fieldfare check FILE...                  the same reading and checks, nothing handed in
  fieldfare gridref [VALUE...]             grid references to latitude and longitude, and back
  fieldfare explain date|count|name VALUE  how one value would be read, and why
  fieldfare compare OLD NEW                what changed between two submissions
  fieldfare demo [FOLDER]                  write demonstration notebooks and convert them

Start with:     fieldfare demo
Then try:       fieldfare convert season.xlsx --out handed-in
More about one: fieldfare convert --help
`
