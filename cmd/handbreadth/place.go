package main

import (
	"errors"
	"io"
	"io/fs"
	"log/slog"
	"os"
	"path/filepath"
)

// The files of the data folder.
const (
	fileName     = "practice.db"
	demoFileName = "demo.db"
	logName      = "handbreadth.log"
	lookName     = "look.json"
)

// place is the folder in which the practice's data lie.
type place struct{ folder string }

// newPlace returns the folder given, else the one of the system.
func newPlace(given string) (place, error) {
	if given != "" {
		folder, err := filepath.Abs(given)
		return place{folder}, err
	}
	config, err := os.UserConfigDir()
	return place{filepath.Join(config, "handbreadth")}, err
}

func (p place) file(demo bool) string {
	if demo {
		return filepath.Join(p.folder, demoFileName)
	}
	return filepath.Join(p.folder, fileName)
}

// begun reports whether a practice was started here.
func (p place) begun() bool {
	_, err := os.Stat(p.file(false))
	return !errors.Is(err, fs.ErrNotExist)
}

// shelf is where papers wait for the printer.
func (p place) shelf(demo bool) *shelf { return &shelf{folder: p.file(demo) + ".print"} }

// mostLog is the size at which the log begins anew; the former one is kept.
const mostLog = 1 << 20

// log opens the log file. Where it cannot be written, the log goes nowhere: the
// file of the practice then says why on the screen.
func (p place) log() (*slog.Logger, io.Closer) {
	nowhere := slog.New(slog.NewTextHandler(io.Discard, nil))
	if err := os.MkdirAll(p.folder, 0o700); err != nil {
		return nowhere, io.NopCloser(nil)
	}
	path := filepath.Join(p.folder, logName)
	if info, err := os.Stat(path); err == nil && info.Size() > mostLog {
		_ = os.Rename(path, path+".old")
	}
	file, err := os.OpenFile(path, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o600)
	if err != nil {
		return nowhere, io.NopCloser(nil)
	}
	return slog.New(slog.NewTextHandler(file, nil)), file
}
