package widgets

import "strings"

// wrap breaks a text into lines no wider than width, at spaces where it can,
// inside a word where it must. A line break in the text is kept.
func wrap(text string, width float32, measure func(string) float32) []string {
	var lines []string
	for _, paragraph := range strings.Split(text, "\n") {
		lines = append(lines, wrapParagraph(paragraph, width, measure)...)
	}
	return lines
}

func wrapParagraph(text string, width float32, measure func(string) float32) []string {
	if measure(text) <= width {
		return []string{text}
	}
	var lines []string
	line := ""
	for _, word := range strings.Split(text, " ") {
		longer := word
		if line != "" {
			longer = line + " " + word
		}
		if measure(longer) <= width {
			line = longer
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		pieces := breakWord(word, width, measure)
		lines = append(lines, pieces[:len(pieces)-1]...)
		line = pieces[len(pieces)-1]
	}
	return append(lines, line)
}

// breakWord cuts a word into pieces no wider than width, each of one character
// at least.
func breakWord(word string, width float32, measure func(string) float32) []string {
	var pieces []string
	piece := ""
	for _, r := range word {
		if piece != "" && measure(piece+string(r)) > width {
			pieces = append(pieces, piece)
			piece = ""
		}
		piece += string(r)
	}
	return append(pieces, piece)
}

// shorten cuts a text that is too wide and ends it in an ellipsis.
func shorten(text string, width float32, measure func(string) float32) string {
	if measure(text) <= width {
		return text
	}
	runes := []rune(text)
	for n := len(runes) - 1; n > 0; n-- {
		if cut := strings.TrimRight(string(runes[:n]), " ") + "…"; measure(cut) <= width {
			return cut
		}
	}
	return "…"
}
