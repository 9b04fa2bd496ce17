package reports

import (
	"strings"

	"handbreadth/domain/derive"
)

// closing is what every handout carries: the cautions and notes in plain words,
// and that the plan does not replace medical care. What to take care of stands
// beside what is good to know where both are short.
func (w writer) closing() []block {
	care, know := w.told()
	blocks := []block{gap(2)}
	if len(care) > 0 && len(know) > 0 {
		const between = 9
		pair := beside{
			left: stack(w.lists("Take care", care)), right: stack(w.lists("Good to know", know)),
			leftWide: (w.inner() - between) / 2, between: between,
		}
		const most = 0.4 // of a page
		if pair.height(w.inner()) <= most*w.room() {
			return append(blocks, pair, w.medical())
		}
	}
	blocks = append(blocks, w.lists("Take care", care)...)
	blocks = append(blocks, w.lists("Good to know", know)...)
	return append(blocks, w.medical())
}

func (w writer) medical() block {
	return ruled{block: para{text: wordsCare, face: bold, size: sizeBody, colour: ink}, hue: w.hue}
}

// lists keeps the heading with the first sentence.
func (w writer) lists(head string, sentences []string) []block {
	var blocks []block
	for i, s := range sentences {
		item := listed{s}
		if i == 0 {
			blocks = append(blocks, stack{heading(head, w.hue), item})
			continue
		}
		blocks = append(blocks, item)
	}
	if len(blocks) > 0 {
		blocks = append(blocks, gap(2))
	}
	return blocks
}

// told returns what the findings say to the client: from caution upwards, and
// the notes. Each sentence stands once.
func (w writer) told() (care, know []string) {
	seen := map[string]bool{}
	for _, f := range w.plan.Findings {
		words := w.plainly(f)
		if seen[words] {
			continue
		}
		seen[words] = true
		if f.Level >= derive.Caution {
			care = append(care, words)
		} else {
			know = append(know, words)
		}
	}
	return care, know
}

// plainly says a finding in the client's words. A finding without such words is
// told as the practitioner reads it; where no number may stand on the paper and
// its text has one, the client is asked to talk about it.
func (w writer) plainly(f derive.Finding) string {
	if words, ok := careWords[f.Code]; ok {
		return words
	}
	text := clean(f.Text)
	if w.withoutNumbers && strings.ContainsAny(text, "0123456789") {
		return wordsAsk
	}
	return text
}
