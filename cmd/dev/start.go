package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"time"

	"handbreadth/cmd/dev/steps"
	"handbreadth/cmd/dev/system"
)

// start gets the machine ready, builds the program and opens it, or runs the
// demo consultation where there is no display.
func start(ctx context.Context, arguments []string) error {
	flags := flag.NewFlagSet("start", flag.ContinueOnError)
	demo := flags.Bool("demo", false, "open the demo practice")
	if err := flags.Parse(arguments); err != nil {
		return errTold
	}
	windowless := runtime.GOOS == "linux" && !system.HasDisplay(os.Getenv)
	if err := prepareStart(ctx, windowless); err != nil {
		return err
	}
	began := time.Now()
	fmt.Println("Building the program (the first time takes some minutes).")
	stop := steps.Beat(os.Stdout, "building")
	program, err := buildProgram(ctx, os.Stdout, os.Environ())
	stop()
	if err != nil {
		return err
	}
	fmt.Printf("Built in %s.\n", steps.Elapsed(time.Since(began)))
	if windowless {
		return startWithoutDisplay(ctx, program)
	}
	return open(ctx, program, *demo)
}

func prepareStart(ctx context.Context, windowless bool) error {
	if windowless {
		return prepare(ctx, os.Stdout, system.VirtualDisplay)
	}
	return prepare(ctx, os.Stdout)
}

// open runs the program on the screen of the person at work.
func open(ctx context.Context, program string, demo bool) error {
	var arguments []string
	if demo {
		arguments = append(arguments, "-demo")
	}
	fmt.Println("Opening Handbreadth.")
	command := prepared(ctx, os.Environ(), program, arguments...)
	command.Stdout, command.Stderr = os.Stdout, os.Stderr
	return command.Run()
}

func startWithoutDisplay(ctx context.Context, program string) error {
	fmt.Println("There is no display, so the program runs its demo consultation in a virtual one.")
	environment, err := apart()
	if err != nil {
		return err
	}
	folder, err := tour(ctx, os.Stdout, environment, program)
	if err != nil {
		return err
	}
	fmt.Printf("The pictures and the handout are in %s\n", folder)
	return nil
}

// tour runs the demo consultation in a virtual display and returns the folder
// in which it left its pictures and the handout.
func tour(ctx context.Context, out io.Writer, environment []string, program string) (folder string, err error) {
	folder, err = filepath.Abs(tourFolder)
	if err != nil {
		return "", err
	}
	if err := os.RemoveAll(folder); err != nil {
		return "", err
	}
	if err := os.MkdirAll(folder, 0o750); err != nil {
		return "", err
	}
	err = withDisplay(ctx, out, environment, func(environment []string) error {
		return run(ctx, out, environment, program, "-tour", folder)
	})
	if err != nil {
		return "", err
	}
	return folder, checkTour(folder)
}

// checkTour makes sure that the tour left what it promised.
func checkTour(folder string) error {
	pictures, err := filepath.Glob(filepath.Join(folder, "*.png"))
	if err != nil {
		return err
	}
	_, err = os.Stat(filepath.Join(folder, "handout.pdf"))
	if len(pictures) == 0 || err != nil {
		return errors.New("the demo consultation ended without pictures or without its handout")
	}
	return nil
}
