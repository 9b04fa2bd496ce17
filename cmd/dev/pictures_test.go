package main

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// put writes a file of the tests.
func put(t *testing.T, name, content string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte(content), 0o600); err != nil {
		t.Fatal(err)
	}
}

func TestShownPictures(t *testing.T) {
	folder := t.TempDir()
	readme, other := filepath.Join(folder, "README.md"), filepath.Join(folder, "OTHER.md")
	put(t, readme, "![Targets](assets/pictures/targets-light.png) ![Intake](assets/pictures/intake.png)\n"+
		"![Again](assets/pictures/intake.png) ![Not ours](elsewhere/cat.png)\n")
	got, err := shownPictures([]string{readme, filepath.Join(folder, "none.md")})
	if want := []string{"intake.png", "targets-light.png"}; err != nil || !slices.Equal(got, want) {
		t.Errorf("pictures %q, %v; want %q", got, err, want)
	}
	put(t, other, "no pictures here\n")
	if _, err := shownPictures([]string{other}); err == nil {
		t.Error("no error for a text without pictures")
	}
}

func TestPutPicturesReplacesOldOnes(t *testing.T) {
	from, to := t.TempDir(), filepath.Join(t.TempDir(), "pictures")
	put(t, filepath.Join(from, "intake.png"), "new")
	put(t, filepath.Join(from, "unused.png"), "new")
	put(t, filepath.Join(to, "gone.png"), "old")
	if err := putPictures(from, to, []string{"intake.png", "missing.png"}); err == nil {
		t.Error("no error for a picture that was not made")
	}
	if _, err := os.Stat(filepath.Join(to, "gone.png")); err != nil {
		t.Errorf("a failed run changed the folder: %v", err)
	}
	if err := putPictures(from, to, []string{"intake.png"}); err != nil {
		t.Fatal(err)
	}
	left, err := filepath.Glob(filepath.Join(to, "*"))
	if err != nil || len(left) != 1 || filepath.Base(left[0]) != "intake.png" {
		t.Errorf("pictures %q, %v; want intake.png alone", left, err)
	}
}
