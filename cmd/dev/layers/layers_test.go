package layers

import (
	"bytes"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

const module = "handbreadth"

// root is the root of the module as seen from this package.
var root = filepath.Join("..", "..", "..")

// The whole module keeps to the layers of the design.
func TestModuleKeepsToTheLayers(t *testing.T) {
	packages, err := Load(root)
	if err != nil {
		t.Fatal(err)
	}
	if len(packages) < 5 {
		t.Fatalf("only %d packages found below %s; the rules looked at the wrong folder", len(packages), root)
	}
	for _, v := range Check(module, packages) {
		t.Error(v)
	}
}

// No package of others opens a back door to the window.
func TestOnlyTheProgramReachesTheWindow(t *testing.T) {
	command := exec.Command("go", "list", "-e", "-test", "-tags", "journey probe", "-f", ListFormat, "./...")
	command.Dir = root
	listing, err := command.Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	app, err := Reaching(module, fyneApp, bytes.NewReader(listing))
	if err != nil {
		t.Fatal(err)
	}
	for _, folder := range app {
		if place, _ := placeOf(folder); place.kind != program {
			t.Errorf("%s depends on %s; only cmd/handbreadth may", folder, fyneApp)
		}
	}
	fyne, err := Reaching(module, strings.TrimSuffix(fyneRoot, "/"), bytes.NewReader(listing))
	if err != nil {
		t.Fatal(err)
	}
	for _, folder := range fyne {
		if place, _ := placeOf(folder); windowless(place.kind) {
			t.Errorf("%s depends on Fyne; it must work without a window", folder)
		}
	}
}
