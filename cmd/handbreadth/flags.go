package main

import (
	"flag"
	"fmt"
	"io"

	"fyne.io/fyne/v2"
)

// options is what the command line asks for.
type options struct {
	data       string // folder; "" is the system's
	demo       bool
	tour       string // folder for pictures; "" is no tour
	benchStart bool
	benchHold  bool
	size       fyne.Size
}

// The size of the window at first.
const (
	firstWidth  = 1366
	firstHeight = 768
)

// readFlags reads the command line; what is wrong with it is told to out.
func readFlags(arguments []string, out io.Writer) (options, error) {
	o := options{size: fyne.NewSize(firstWidth, firstHeight)}
	flags := flag.NewFlagSet("handbreadth", flag.ContinueOnError)
	flags.SetOutput(out)
	flags.StringVar(&o.data, "data", "", "keep the data in this `folder`")
	flags.BoolVar(&o.demo, "demo", false, "open the demo with invented clients")
	flags.StringVar(&o.tour, "tour", "", "walk through the demo consultation and write pictures and the handout to this `folder`")
	flags.BoolVar(&o.benchStart, "bench-start", false, "print first-frame when the first frame is drawn, then end")
	flags.BoolVar(&o.benchHold, "bench-hold", false, "with -bench-start: stay open until the input closes")
	size := flags.String("size", "", "size of the window, such as `1366x768`")
	probeFlag(flags)
	if err := flags.Parse(arguments); err != nil {
		return o, err
	}
	if *size == "" {
		return o, nil
	}
	var width, height int
	if _, err := fmt.Sscanf(*size, "%dx%d", &width, &height); err != nil || width < 640 || height < 480 {
		return o, fmt.Errorf("size: %q is not accepted: give width and height of at least 640x480, such as 1366x768", *size)
	}
	o.size = fyne.NewSize(float32(width), float32(height))
	return o, nil
}
