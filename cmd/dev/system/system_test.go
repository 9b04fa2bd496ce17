package system

import (
	"slices"
	"strings"
	"testing"
)

// bare is a machine that has exactly what is listed.
func bare(there ...string) Machine {
	has := func(name string) bool { return slices.Contains(there, name) }
	return Machine{HasProgram: has, HasFile: has}
}

func TestMissing(t *testing.T) {
	all := func(needs []Need) []string { return packages(needs) }
	for _, row := range []struct {
		name    string
		machine Machine
		needs   []Need
		want    []string
	}{
		{"nothing there", bare(), Building, all(Building)},
		{"a compiler only", bare("gcc", "/usr/include/stdlib.h"), Building, []string{"xorg-dev", "libgl1-mesa-dev", "libxkbcommon-dev"}},
		{"one header of several", bare("/usr/include/X11/Xlib.h"), Building[2:3], []string{"xorg-dev"}},
		{"another place for the driver", bare("Xvfb", "/usr/lib64/dri/swrast_dri.so"), VirtualDisplay, []string{}},
		{"another name for the program", bare("xdotool", "magick"), Driving, []string{}},
		{"half of the papers", bare("qpdf"), Papers, []string{"poppler-utils"}},
	} {
		if got := packages(row.machine.Missing(row.needs)); !slices.Equal(got, row.want) {
			t.Errorf("%s: missing %q, want %q", row.name, got, row.want)
		}
	}
	groups := bare().Missing(VirtualDisplay, Papers)
	if got, want := packages(groups), []string{"xvfb", "libgl1-mesa-dri", "poppler-utils", "qpdf"}; !slices.Equal(got, want) {
		t.Errorf("two groups: missing %q, want %q", got, want)
	}
}

func TestByHandGivesTheExactCommand(t *testing.T) {
	err := ByHand(Papers, true)
	want := "sudo apt-get update && sudo apt-get install -y --no-install-recommends poppler-utils qpdf"
	if !strings.Contains(err.Error(), want) {
		t.Errorf("message %q lacks %q", err, want)
	}
	for _, need := range Papers {
		if !strings.Contains(err.Error(), need.Why) {
			t.Errorf("message %q does not say what %s is for", err, need.Package)
		}
	}
	if elsewhere := ByHand(Papers, false).Error(); strings.Contains(elsewhere, "apt-get") || !strings.Contains(elsewhere, "qpdf") {
		t.Errorf("without apt-get: %q", elsewhere)
	}
}

func TestCompilerIsNamed(t *testing.T) {
	nothing := func(string, ...string) bool { return false }
	for system, says := range map[string]string{"windows": "MinGW-w64", "darwin": "xcode-select --install", "freebsd": "install gcc"} {
		if err := compilerError(system, "gcc -m64", nothing); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v, want words with %q", system, err, says)
		}
	}
	gcc := func(name string, _ ...string) bool { return name == "gcc" }
	if err := compilerError("windows", "gcc -m64", gcc); err != nil {
		t.Errorf("windows with gcc: %v", err)
	}
	standIn := func(name string, arguments ...string) bool { return name == "clang" && len(arguments) == 0 }
	if err := compilerError("darwin", "clang", standIn); err == nil {
		t.Error("macOS with the stand-in for clang only: no error")
	}
}

func TestHasDisplay(t *testing.T) {
	for _, row := range []struct {
		name, value string
		want        bool
	}{{"DISPLAY", ":0", true}, {"WAYLAND_DISPLAY", "wayland-0", true}, {"DISPLAY", "", false}, {"TERM", "xterm", false}} {
		got := HasDisplay(func(name string) string {
			if name == row.name {
				return row.value
			}
			return ""
		})
		if got != row.want {
			t.Errorf("%s=%q: %v, want %v", row.name, row.value, got, row.want)
		}
	}
}
