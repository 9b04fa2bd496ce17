package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
)

// windowsCompiler builds C code for Windows on other systems.
const windowsCompiler = "x86_64-w64-mingw32-gcc"

// target is one system to build for.
type target struct {
	system, processor string
	environment       []string // what the build needs set
	linker            string   // flags beside those of every target
}

// packageProgram builds the program for handing out, for this system and, where
// its compiler is there, for Windows.
func packageProgram(ctx context.Context, arguments []string) error {
	flags := flag.NewFlagSet("package", flag.ContinueOnError)
	if err := flags.Parse(arguments); err != nil {
		return errTold
	}
	if err := prepare(ctx, os.Stdout); err != nil {
		return err
	}
	version, err := stampedVersion(ctx)
	if err != nil {
		return err
	}
	for _, t := range targets() {
		name := filepath.Join(buildFolder, "package", t.fileName(version))
		if err := t.build(ctx, os.Stdout, version, name); err != nil {
			return err
		}
		if err := tellStamp(os.Stdout, name, version); err != nil {
			return err
		}
	}
	return nil
}

// tellStamp names a built program and says where it does not know its version:
// the linker passes over a variable that the program lacks.
func tellStamp(out io.Writer, name, version string) error {
	content, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	fmt.Fprintln(out, name)
	if !bytes.Contains(content, []byte(version)) {
		fmt.Fprintln(out, "  only the name of the file gives the version: the program has no variable main.version that it uses")
	}
	return nil
}

// targets lists what this machine can build for.
func targets() []target {
	own := target{system: runtime.GOOS, processor: runtime.GOARCH}
	if own.system == "windows" {
		own.linker = "-H=windowsgui"
		return []target{own}
	}
	if _, err := exec.LookPath(windowsCompiler); err != nil {
		fmt.Printf("No build for Windows: %s is not found (package gcc-mingw-w64-x86-64).\n", windowsCompiler)
		return []target{own}
	}
	return []target{own, {
		system: "windows", processor: "amd64",
		environment: []string{"CC=" + windowsCompiler}, linker: "-H=windowsgui",
	}}
}

func (t target) fileName(version string) string {
	name := fmt.Sprintf("handbreadth-%s-%s-%s", version, t.system, t.processor)
	if t.system == "windows" {
		name += ".exe"
	}
	return name
}

func (t target) build(ctx context.Context, out io.Writer, version, name string) error {
	settings := append([]string{"CGO_ENABLED=1", "GOOS=" + t.system, "GOARCH=" + t.processor}, t.environment...)
	linker := strings.TrimSpace("-s -w -X main.version=" + version + " " + t.linker)
	return run(ctx, out, replaced(os.Environ(), settings...), "go", "build",
		"-trimpath", "-tags", shipped, "-ldflags", linker, "-o", name, "./cmd/handbreadth")
}

// stampedVersion is the version of FyneApp.toml with the commit, where the
// checkout knows it: "0.1.0+4cf6f7b".
func stampedVersion(ctx context.Context) (string, error) {
	manifest, err := os.ReadFile("FyneApp.toml")
	if err != nil {
		return "", err
	}
	version, err := manifestVersion(string(manifest))
	if err != nil {
		return "", err
	}
	commit, err := exec.CommandContext(ctx, "git", "rev-parse", "--short", "HEAD").Output()
	if err != nil {
		return version, nil
	}
	return version + "+" + strings.TrimSpace(string(commit)), nil
}

// manifestVersion finds the version in the text of the packaging file.
func manifestVersion(manifest string) (string, error) {
	for line := range strings.Lines(manifest) {
		name, value, ok := strings.Cut(line, "=")
		if ok && strings.TrimSpace(name) == "Version" {
			return strings.Trim(strings.TrimSpace(value), `"`), nil
		}
	}
	return "", errors.New("FyneApp.toml gives no Version")
}
