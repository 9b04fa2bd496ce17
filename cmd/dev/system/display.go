package system

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strings"
	"time"
)

// Screen is the size of the virtual display: that of a small laptop.
const Screen = "1366x768x24"

// displayWait is how long the virtual display may take to say its number.
const displayWait = 30 * time.Second

// Display is a virtual display that this program started.
type Display struct {
	Name    string // what DISPLAY is to be: ":1"
	command *exec.Cmd
}

// HasDisplay reports whether a Linux session has a screen, by its environment.
func HasDisplay(getenv func(string) string) bool {
	return getenv("DISPLAY") != "" || getenv("WAYLAND_DISPLAY") != ""
}

// StartDisplay starts a virtual display under the first free number. The caller
// closes it. Messages of the server go to out.
func StartDisplay(ctx context.Context, out io.Writer) (*Display, error) {
	numbers, write, err := os.Pipe()
	if err != nil {
		return nil, err
	}
	defer numbers.Close()
	command := exec.CommandContext(ctx, "Xvfb", "-displayfd", "3", "-screen", "0", Screen, "-nolisten", "tcp")
	command.ExtraFiles = []*os.File{write}
	command.Stdout, command.Stderr = out, out
	if err := command.Start(); err != nil {
		write.Close()
		return nil, fmt.Errorf("the virtual display did not start: %w", err)
	}
	write.Close()
	number, err := readNumber(numbers)
	if err != nil {
		_ = command.Process.Kill()
		_ = command.Wait()
		return nil, err
	}
	return &Display{Name: ":" + number, command: command}, nil
}

// readNumber waits for the server to write the number of its display.
func readNumber(numbers *os.File) (string, error) {
	// Where the pipe has no deadlines, the server's end closes it.
	_ = numbers.SetReadDeadline(time.Now().Add(displayWait))
	line, err := bufio.NewReader(numbers).ReadString('\n')
	number := strings.TrimSpace(line)
	if err != nil || number == "" {
		return "", errors.Join(errors.New("the virtual display did not say its number"), err)
	}
	return number, nil
}

// Close ends the display. Programs that still use it end too.
func (d *Display) Close() {
	_ = d.command.Process.Signal(os.Interrupt)
	done := make(chan struct{})
	go func() {
		_ = d.command.Wait()
		close(done)
	}()
	select {
	case <-done:
	case <-time.After(5 * time.Second):
		_ = d.command.Process.Kill()
		<-done
	}
}
