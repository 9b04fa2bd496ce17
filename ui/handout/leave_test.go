package handout

import (
	"errors"
	"io/fs"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"

	"handbreadth/ui/task"
)

// fakeFile is what a file dialog hands over.
type fakeFile struct {
	path   string
	closed error
}

func (f *fakeFile) Write(b []byte) (int, error) { return len(b), nil }
func (f *fakeFile) Close() error                { return f.closed }
func (f *fakeFile) URI() fyne.URI               { return storage.NewFileURI(f.path) }

func TestFileDialogLiesOverTheWindow(t *testing.T) {
	d := sit(t, answers(), task.Inline{})
	d.screen.OnChoosePath = d.screen.askPath
	d.screen.onSave()
	if d.window.Canvas().Overlays().Top() == nil {
		t.Error("no dialog is shown")
	}
}

func TestWhatTheFileDialogComesTo(t *testing.T) {
	path := filepath.Join(t.TempDir(), "robin.pdf")
	for _, c := range []struct {
		name string
		file fyne.URIWriteCloser
		err  error
		path string
		said string
	}{
		{"chosen", &fakeFile{path: path}, nil, path, ""},
		{"closed", nil, nil, "", ""},
		{"not allowed", nil, fs.ErrPermission, "", task.Words(fs.ErrPermission)},
		{"not written", &fakeFile{path: path, closed: errors.New("full")}, nil, "", task.Words(errors.New("full"))},
	} {
		d := sit(t, answers(), task.Inline{})
		got := ""
		d.screen.pathGiven(c.file, c.err, func(path string) { got = path })
		if got != c.path || d.said() != c.said {
			t.Errorf("%s: path %q, said %q", c.name, got, d.said())
		}
	}
}
