//go:build !probe

package main

import (
	"flag"

	"handbreadth/ui"
)

// The probe is only in programs built for the journey.
func probeFlag(*flag.FlagSet) {}

func (p *program) probe(*ui.Tools) {}
