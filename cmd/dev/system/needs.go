// Package system finds out what the machine lacks to build, show and check the
// program, installs it where it may, and lends a virtual display.
package system

import (
	"os/exec"
	"path/filepath"
	"strings"
)

// Need is one package of the operating system.
type Need struct {
	Package string // its name in Debian and Ubuntu
	Why     string // what for, in plain words
	// Programs are found on the path; any one of them will do. Empty: none is
	// looked for.
	Programs []string
	// Files must all exist. Each is a list of patterns separated by bars, of
	// which one must match.
	Files []string
}

const (
	headers = "/usr/include/"
	drivers = "/usr/lib/*/dri/swrast_dri.so|/usr/lib/dri/swrast_dri.so|/usr/lib64/dri/swrast_dri.so"
)

// What each job needs.
var (
	Building = []Need{
		{Package: "gcc", Why: "compiles the part of the window library that is written in C", Programs: []string{"gcc"}},
		{Package: "libc6-dev", Why: "headers of the C library", Files: []string{headers + "stdlib.h"}},
		{Package: "xorg-dev", Why: "headers of the X window system", Files: []string{
			headers + "X11/Xlib.h", headers + "X11/Xcursor/Xcursor.h", headers + "X11/extensions/Xrandr.h",
			headers + "X11/extensions/Xinerama.h", headers + "X11/extensions/XInput2.h", headers + "X11/extensions/xf86vmode.h",
		}},
		{Package: "libgl1-mesa-dev", Why: "headers of OpenGL, which draws the window", Files: []string{headers + "GL/gl.h"}},
		{Package: "libxkbcommon-dev", Why: "headers for keyboard layouts", Files: []string{headers + "xkbcommon/xkbcommon.h"}},
	}
	VirtualDisplay = []Need{
		{Package: "xvfb", Why: "a display in memory, for machines without a screen", Programs: []string{"Xvfb"}},
		{Package: "libgl1-mesa-dri", Why: "draws OpenGL without a graphics card", Files: []string{drivers}},
	}
	Driving = []Need{
		{Package: "xdotool", Why: "types and clicks in the journey through the program", Programs: []string{"xdotool"}},
		{Package: "imagemagick", Why: "takes pictures of the window in the journey", Programs: []string{"import", "magick"}},
	}
	Papers = []Need{
		{Package: "poppler-utils", Why: "reads text, fonts and pages of the papers in the checks", Programs: []string{"pdftotext"}},
		{Package: "qpdf", Why: "checks that the papers are sound PDF", Programs: []string{"qpdf"}},
	}
	Outside = []Need{
		{Package: "sqlite3", Why: "reads the client file in the checks, as a program that is not ours", Programs: []string{"sqlite3"}},
		{Package: "age", Why: "opens what the vault wrapped in the checks, as a program that is not ours", Programs: []string{"age"}},
	}
)

// Machine answers what is there. The zero value asks the real machine.
type Machine struct {
	HasProgram func(name string) bool
	HasFile    func(pattern string) bool
}

func (m Machine) program(name string) bool {
	if m.HasProgram != nil {
		return m.HasProgram(name)
	}
	_, err := exec.LookPath(name)
	return err == nil
}

func (m Machine) file(pattern string) bool {
	if m.HasFile != nil {
		return m.HasFile(pattern)
	}
	matches, err := filepath.Glob(pattern)
	return err == nil && len(matches) > 0
}

// Missing returns the needs that the machine does not meet, in the order given.
func (m Machine) Missing(needs ...[]Need) []Need {
	var missing []Need
	for _, group := range needs {
		for _, need := range group {
			if !m.meets(need) {
				missing = append(missing, need)
			}
		}
	}
	return missing
}

func (m Machine) meets(need Need) bool {
	found := len(need.Programs) == 0
	for _, name := range need.Programs {
		found = found || m.program(name)
	}
	for _, patterns := range need.Files {
		found = found && m.anyFile(patterns)
	}
	return found
}

func (m Machine) anyFile(patterns string) bool {
	for _, pattern := range strings.Split(patterns, "|") {
		if m.file(pattern) {
			return true
		}
	}
	return false
}

// List gives one line a need: the package and what it is for.
func List(needs []Need) string {
	var lines strings.Builder
	for _, need := range needs {
		lines.WriteString("  " + need.Package + ": " + need.Why + "\n")
	}
	return lines.String()
}

// packages returns the names of the packages.
func packages(needs []Need) []string {
	names := make([]string, len(needs))
	for i, need := range needs {
		names[i] = need.Package
	}
	return names
}
