package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"

	"handbreadth/cmd/dev/system"
)

// handoutDots is the resolution of the pictures of the handout, in dots an inch.
const handoutDots = "72"

// documents lists the texts that show pictures.
var documents = []string{"README.md", "DEVELOPERS.md"}

// shownPicture finds a picture in a text.
var shownPicture = regexp.MustCompile(picturesFolder + `/([\w.-]+\.png)`)

// pictures runs the demo consultation and makes the pictures anew that the
// documents show: of its screens, and of the pages of its handout.
func pictures(ctx context.Context, arguments []string) error {
	flags := flag.NewFlagSet("pictures", flag.ContinueOnError)
	if err := flags.Parse(arguments); err != nil {
		return errTold
	}
	if runtime.GOOS != "linux" {
		return errors.New("pictures are made in a virtual display, which this command starts on Linux only")
	}
	names, err := shownPictures(documents)
	if err != nil {
		return err
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
	return putPictures(folder, picturesFolder, names)
}

// shownPictures returns the names of the pictures that texts show, sorted.
func shownPictures(texts []string) ([]string, error) {
	var names []string
	for _, text := range texts {
		content, err := os.ReadFile(text)
		if errors.Is(err, os.ErrNotExist) {
			continue
		}
		if err != nil {
			return nil, err
		}
		for _, match := range shownPicture.FindAllStringSubmatch(string(content), -1) {
			names = append(names, match[1])
		}
	}
	if len(names) == 0 {
		return nil, fmt.Errorf("%s show no picture of %s, so there is none to make", strings.Join(texts, " and "), picturesFolder)
	}
	slices.Sort(names)
	return slices.Compact(names), nil
}

// putPictures puts the named pictures of one folder in place of all those of
// another. It changes nothing when one of them is missing.
func putPictures(from, to string, names []string) error {
	contents := make([][]byte, len(names))
	for i, name := range names {
		var err error
		if contents[i], err = os.ReadFile(filepath.Join(from, name)); err != nil {
			return fmt.Errorf("the demo consultation makes no picture %s: %w", name, err)
		}
	}
	if err := os.RemoveAll(to); err != nil {
		return err
	}
	if err := os.MkdirAll(to, 0o750); err != nil {
		return err
	}
	for i, name := range names {
		target := filepath.Join(to, name)
		if err := os.WriteFile(target, contents[i], 0o600); err != nil {
			return err
		}
		fmt.Println(target)
	}
	return nil
}
