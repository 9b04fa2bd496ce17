package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime"

	"handbreadth/cmd/dev/system"
)

// handoutDots is the resolution of the pictures of the handout, in dots an inch.
const handoutDots = "72"

// pictures runs the demo consultation and puts its pictures, and those of its
// handout, in place of the README's.
func pictures(ctx context.Context, arguments []string) error {
	flags := flag.NewFlagSet("pictures", flag.ContinueOnError)
	if err := flags.Parse(arguments); err != nil {
		return errTold
	}
	if runtime.GOOS != "linux" {
		return errors.New("pictures are made in a virtual display, which this command starts on Linux only")
	}
	if err := prepare(ctx, os.Stdout, system.VirtualDisplay, system.Papers); err != nil {
		return err
	}
	environment, err := apart()
	if err != nil {
		return err
	}
	program, err := buildProgram(ctx, os.Stdout, environment)
	if err != nil {
		return err
	}
	folder, err := tour(ctx, os.Stdout, environment, program)
	if err != nil {
		return err
	}
	err = run(ctx, os.Stdout, environment, "pdftoppm", "-png", "-r", handoutDots,
		filepath.Join(folder, "handout.pdf"), filepath.Join(folder, "handout"))
	if err != nil {
		return err
	}
	return putPictures(folder, picturesFolder)
}

// putPictures puts the pictures of one folder in place of those of another.
func putPictures(from, to string) error {
	if err := os.RemoveAll(to); err != nil {
		return err
	}
	if err := os.MkdirAll(to, 0o755); err != nil {
		return err
	}
	names, err := filepath.Glob(filepath.Join(from, "*.png"))
	if err != nil {
		return err
	}
	for _, name := range names {
		content, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		target := filepath.Join(to, filepath.Base(name))
		if err := os.WriteFile(target, content, 0o644); err != nil {
			return err
		}
		fmt.Println(target)
	}
	return nil
}
