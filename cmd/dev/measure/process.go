package measure

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"time"
)

// FirstFrame is the line that a program prints when its first frame is drawn.
const FirstFrame = "first-frame"

// settle is how long a window stands before its memory is read.
const settle = time.Second

// Start runs a program that prints FirstFrame and ends, and returns the time
// from its start to that line.
func Start(ctx context.Context, program string, environment []string, arguments ...string) (time.Duration, error) {
	command := exec.CommandContext(ctx, program, arguments...)
	command.Env = environment
	out, err := command.StdoutPipe()
	if err != nil {
		return 0, err
	}
	var complaints strings.Builder
	command.Stderr = &complaints
	start := time.Now()
	if err := command.Start(); err != nil {
		return 0, err
	}
	seen := AwaitLine(out, FirstFrame)
	elapsed := time.Since(start)
	_, _ = io.Copy(io.Discard, out)
	if err := errors.Join(seen, command.Wait()); err != nil {
		return 0, fmt.Errorf("%s: %w\n%s", program, err, complaints.String())
	}
	return elapsed, nil
}

// Resident runs a program that prints FirstFrame and stays open until its
// input closes, and returns its resident memory in kB a moment later. It reads
// the figure that Linux gives.
func Resident(ctx context.Context, program string, environment []string, arguments ...string) (kilobytes int, err error) {
	command := exec.CommandContext(ctx, program, arguments...)
	command.Env = environment
	hold, err := command.StdinPipe()
	if err != nil {
		return 0, err
	}
	out, err := command.StdoutPipe()
	if err != nil {
		return 0, err
	}
	if err := command.Start(); err != nil {
		return 0, err
	}
	if err = AwaitLine(out, FirstFrame); err == nil {
		time.Sleep(settle)
		kilobytes, err = residentOf(command.Process.Pid)
	}
	hold.Close()
	_, _ = io.Copy(io.Discard, out)
	if err := errors.Join(err, command.Wait()); err != nil {
		return 0, fmt.Errorf("%s: %w", program, err)
	}
	return kilobytes, nil
}

// AwaitLine reads until a line is exactly want.
func AwaitLine(out io.Reader, want string) error {
	lines := bufio.NewReader(out)
	for {
		line, err := lines.ReadString('\n')
		if strings.TrimSpace(line) == want {
			return nil
		}
		if err != nil {
			return fmt.Errorf("it ended without the line %q", want)
		}
	}
}

func residentOf(pid int) (kilobytes int, err error) {
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		return 0, err
	}
	return ResidentLine(string(status))
}

// ResidentLine finds the resident memory, in kB, in the text of a process's
// status file.
func ResidentLine(status string) (kilobytes int, err error) {
	for line := range strings.Lines(status) {
		if value, ok := strings.CutPrefix(line, "VmRSS:"); ok {
			return strconv.Atoi(strings.TrimSuffix(strings.TrimSpace(value), " kB"))
		}
	}
	return 0, errors.New("no resident memory is given")
}
