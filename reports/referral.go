package reports

import (
	"fmt"

	"handbreadth/domain/derive"
)

const (
	wordsConfidential = "Confidential: for the client and the clinician named by the client."
	wordsReferTo      = "To whom it may concern"
	wordsReferIntro   = "{} came to us on {} for advice on eating. Our screening found what is listed below. We do not diagnose. We ask for your view before we go on."
	wordsReferNone    = "No plan and no target were issued. What was found stops {}."
	wordsReferAsk     = "Please tell us whether and how we may help with eating, and what we should watch. The client holds this note and chooses whom to show it to."
)

// scopeWords tells in words what a finding stops.
var scopeWords = []struct {
	scope derive.Scope
	words string
}{
	{derive.ScopePlan, "any plan"},
	{derive.ScopeDeficit, "eating below what holds the weight"},
	{derive.ScopeSurplus, "eating above what holds the weight"},
	{derive.ScopeProtein, "a change in protein"},
	{derive.ScopeCarbohydrate, "low carbohydrate or fasting"},
	{derive.ScopeFibre, "a rise in fibre"},
	{derive.ScopeFluid, "advice to drink more"},
}

// referral is the note to a clinician: who, what was found, what was not issued
// and why, and room for the answer. It has no target.
func (w writer) referral() []block {
	gate := w.plan.Gate
	blocks := []block{
		title("Referral note", wordsReferTo),
		w.person(),
		body(fill(wordsReferIntro, w.clientName(), w.date)),
		gap(3),
	}
	blocks = append(blocks, w.findingBlocks("What we found", gate.Refers)...)
	blocks = append(blocks, w.findingBlocks("Also found", others(w.plan.Findings, gate.Refers))...)
	blocks = append(blocks, w.scoredBlocks()...)
	blocks = append(blocks,
		stack{heading("What we did not do", w.hue), body(fill(wordsReferNone, stopped(gate.Refers))), gap(3)},
		stack{heading("What we ask", w.hue), body(wordsReferAsk), gap(3)},
		stack{
			beside{left: toWrite{label: "For the practice", text: w.signature(), lines: 1, hue: w.hue}, right: toWrite{label: "Signature and date", lines: 1, hue: w.hue}, leftWide: 0.5 * w.inner(), between: 8},
			gap(4),
		},
		w.answer(),
	)
	return blocks
}

func (w writer) clientName() string {
	if name := clean(w.plan.Intake.Client.Name); name != "" {
		return shortened(regular, sizeBody, w.inner()/2, name)
	}
	return "The client"
}

func (w writer) signature() string { return joined(w.practitioner, w.registration, w.practice) }

// person names the client with the birth date, as a clinic needs it.
func (w writer) person() block {
	name := clean(w.plan.Intake.Client.Name)
	if name == "" {
		name = w.reader
	}
	return stack{
		beside{
			left:     labelled{"Client", name, w.hue},
			right:    labelled{"Born", w.plan.Intake.Client.Born.Long(), w.hue},
			leftWide: 0.62 * w.inner(), between: 8,
		},
		gap(4),
	}
}

// labelled is a short text under its label.
type labelled struct {
	label, text string
	hue         colour
}

func (l labelled) height(w float64) float64 {
	return float64(1+max(1, len(wrap(regular, sizeBody, w, l.text))))*lineHeight(sizeBody) + 0.5
}

func (l labelled) draw(c canvas) {
	c.text(bold, sizeBody, l.hue, c.x, c.y+ascent(sizeBody), l.label)
	c.paragraph(regular, sizeBody, ink, c.x, c.y+lineHeight(sizeBody)+0.5, wrap(regular, sizeBody, c.w, l.text))
}

// findingBlocks tells findings with their codes and sources.
func (w writer) findingBlocks(head string, found []derive.Finding) []block {
	var blocks []block
	for i, f := range found {
		item := stack{
			listed{clean(f.Text)},
			indented{para{text: clean(fmt.Sprintf("%s, %s. %s", f.Code, f.Level, source(f.Source))), face: italic, size: sizeSmall, colour: muted, after: 2.4}},
		}
		if i == 0 {
			item = append(stack{heading(head, w.hue)}, item...)
		}
		blocks = append(blocks, item)
	}
	if len(blocks) > 0 {
		blocks = append(blocks, gap(2.5))
	}
	return blocks
}

// indented is a block set in as far as a listed sentence.
type indented struct{ block }

func (i indented) height(w float64) float64 { return i.block.height(w - listIndent) }

func (i indented) draw(c canvas) {
	c.x, c.w = c.x+listIndent, c.w-listIndent
	i.block.draw(c)
}

// others returns the findings from caution upwards that are not among those
// given.
func others(all, given []derive.Finding) []derive.Finding {
	in := map[derive.Finding]bool{}
	for _, f := range given {
		in[f] = true
	}
	var rest []derive.Finding
	for _, f := range all {
		if f.Level >= derive.Caution && !in[f] {
			rest = append(rest, f)
		}
	}
	return rest
}

func stopped(found []derive.Finding) string {
	var all derive.Scope
	for _, f := range found {
		all |= f.Scope
	}
	var words []string
	for _, s := range scopeWords {
		if s.scope.Covers(all) {
			words = append(words, s.words)
		}
	}
	return listWords(words)
}

// answer is room for the clinician's reply. It names the client again, as it may
// go back alone.
func (w writer) answer() block {
	about := joined(w.plan.Intake.Client.Name, "born "+w.plan.Intake.Client.Born.Long())
	return stack{
		heading("Your answer", w.hue),
		para{text: about, size: sizeBody, colour: muted, after: 2},
		toWrite{label: "We may go on with advice on eating:   yes   /   no   /   after this", lines: 4, hue: ink},
		beside{left: toWrite{label: "Name and role", lines: 1, hue: ink}, right: toWrite{label: "Signature and date", lines: 1, hue: ink}, leftWide: 80, between: 8},
	}
}
