package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"runtime"
	"strings"
	"time"

	"handbreadth/cmd/dev/system"
)

// shipped is the build tag of programs that people use: the window library then
// leaves out the checks that development wants.
const shipped = "migrated_fynedo"

// prepare makes sure that the program can be built, and that what else is
// needed on Linux is there.
func prepare(ctx context.Context, out io.Writer, beside ...[]system.Need) error {
	if runtime.GOOS == "linux" {
		return system.Ensure(ctx, out, append([][]system.Need{system.Building}, beside...)...)
	}
	compiler, err := goEnv("CC")
	if err != nil {
		return err
	}
	return system.Compiler(runtime.GOOS, compiler)
}

// run runs a program to its end with all its output to out and no input.
func run(ctx context.Context, out io.Writer, environment []string, name string, arguments ...string) error {
	command := prepared(ctx, environment, name, arguments...)
	command.Stdout, command.Stderr = out, out
	fmt.Fprintf(out, "$ %s %s\n", name, strings.Join(arguments, " "))
	if err := command.Run(); err != nil {
		return fmt.Errorf("%s %s: %w", name, strings.Join(arguments, " "), err)
	}
	return nil
}

// prepared is a command that ends politely when ctx does.
func prepared(ctx context.Context, environment []string, name string, arguments ...string) *exec.Cmd {
	command := exec.CommandContext(ctx, name, arguments...)
	command.Env = environment
	if runtime.GOOS != "windows" {
		command.Cancel = func() error { return command.Process.Signal(os.Interrupt) }
	}
	command.WaitDelay = 10 * time.Second
	return command
}

// buildProgram builds the program as people use it and returns where it is.
func buildProgram(ctx context.Context, out io.Writer, environment []string) (string, error) {
	program := executable("handbreadth")
	return program, buildTo(ctx, out, environment, program, "./cmd/handbreadth")
}

func buildTo(ctx context.Context, out io.Writer, environment []string, program, folder string) error {
	return run(ctx, out, replaced(environment, "CGO_ENABLED=1"), "go", "build", "-tags", shipped, "-o", program, folder)
}

// withDisplay runs work with an environment in which DISPLAY leads to a virtual
// display, and ends the display afterwards.
func withDisplay(ctx context.Context, out io.Writer, environment []string, work func(environment []string) error) error {
	display, err := system.StartDisplay(ctx, out)
	if err != nil {
		return err
	}
	defer display.Close()
	return work(replaced(environment, "DISPLAY="+display.Name, "WAYLAND_DISPLAY", "XAUTHORITY"))
}
