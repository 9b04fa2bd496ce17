package main

import (
	"context"
	"errors"
	"flag"
	"os"
	"path/filepath"
)

// galleryVariable names the folder that the galleries write their pictures to.
const galleryVariable = "HANDBREADTH_GALLERY"

// drawings writes contact sheets of the hand measures to a folder: small and
// large, light, dark, black on white, and one without a word for fresh eyes.
func drawings(ctx context.Context, arguments []string) error {
	flags := flag.NewFlagSet("drawings", flag.ContinueOnError)
	if err := flags.Parse(arguments); err != nil {
		return errTold
	}
	if flags.NArg() != 1 {
		return errors.New("drawings needs one folder to write to: go run ./cmd/dev drawings FOLDER")
	}
	folder, err := filepath.Abs(flags.Arg(0))
	if err != nil {
		return err
	}
	if err := os.MkdirAll(folder, 0o750); err != nil {
		return err
	}
	environment := replaced(os.Environ(), "CGO_ENABLED=0", galleryVariable+"="+folder)
	return run(ctx, os.Stdout, environment, "go", "test", "-count=1", "-run=^TestGallery$", "./assets/hand")
}
