package practice

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	_ "image/jpeg" // logos
	_ "image/png"  // logos
	"regexp"
	"strconv"
	"strings"

	"handbreadth/domain/unit"
	"handbreadth/ui/task"
)

const fieldColour = "colour"

var hexColour = regexp.MustCompile(`^#?([0-9a-fA-F]{6})$`)

// readColour accepts "#1E5B4F" or "1e5b4f", or nothing for the program's own.
// The error is a unit.Problem.
func readColour(text string) (string, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return "", nil
	}
	found := hexColour.FindStringSubmatch(text)
	if found == nil {
		return "", unit.Problem{
			Field: fieldColour, Given: text,
			Accepted: "six digits such as #1E5B4F, or nothing for the colour of the program",
		}
	}
	return "#" + strings.ToUpper(found[1]), nil
}

// The most that a logo may be.
const (
	mostLogoBytes  = 4 << 20
	mostLogoPixels = 4000
)

// checkLogo accepts a PNG or JPEG picture of a sensible size. The error is a
// task.Failure with words to show.
func checkLogo(data []byte) error {
	const wanted = "Choose a PNG or JPEG picture of at most 4 MB and 4000 pixels a side."
	refuse := func(why string) error { return &task.Failure{Words: why + " " + wanted} }
	if len(data) > mostLogoBytes {
		return refuse("This picture is too large.")
	}
	config, format, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil || (format != "png" && format != "jpeg") {
		return refuse("This file is not a picture that can be printed.")
	}
	if config.Width > mostLogoPixels || config.Height > mostLogoPixels {
		return refuse(fmt.Sprintf("This picture has %d by %d pixels.", config.Width, config.Height))
	}
	return nil
}

// rgb turns "#1E5B4F" into a colour, false where there is none.
func rgb(text string) (color.NRGBA, bool) {
	n, err := strconv.ParseUint(strings.TrimPrefix(text, "#"), 16, 32)
	if text == "" || err != nil {
		return color.NRGBA{}, false
	}
	return color.NRGBA{R: uint8(n >> 16), G: uint8(n >> 8), B: uint8(n), A: 0xFF}, true
}
