package screen

import "handbreadth/domain/derive"

// Answer is an answer to a screening question.
type Answer int

// The answers.
const (
	NotAsked Answer = iota
	No
	Yes
)

// Code names a question and the finding that it gives.
type Code string

// Answers holds what was answered; a missing code was not asked.
type Answers map[Code]Answer

// Of returns the answer to a question.
func (a Answers) Of(c Code) Answer { return a[c] }

// Yes reports whether a question was answered with yes.
func (a Answers) Yes(c Code) bool { return a[c] == Yes }

// With returns a copy with one answer changed.
func (a Answers) With(c Code, answer Answer) Answers {
	changed := make(Answers, len(a)+1)
	for k, v := range a {
		changed[k] = v
	}
	changed[c] = answer
	return changed
}

// AllNo returns answers in which every question was asked and is no, but for
// those of a that were answered.
func (a Answers) AllNo() Answers {
	all := make(Answers, len(questions)+len(a))
	for _, q := range questions {
		all[q.Code] = No
	}
	all[Frail] = No
	for k, v := range a {
		if v != NotAsked {
			all[k] = v
		}
	}
	return all
}

// Section groups the questions for the screen.
type Section string

// The sections, in the order of a conversation.
const (
	SectionLife      Section = "Life stage and eating"
	SectionWeight    Section = "Weight and mood"
	SectionDiabetes  Section = "Diabetes and its medicines"
	SectionOrgans    Section = "Kidneys, heart, liver and gut"
	SectionMedicines Section = "Other medicines and conditions"
)

// Sections lists the sections in order.
func Sections() []Section {
	return []Section{SectionLife, SectionWeight, SectionDiabetes, SectionOrgans, SectionMedicines}
}

// effect is one thing a yes does.
type effect struct {
	level derive.Level
	scope derive.Scope
	text  string
}

// Question is one yes-or-no question, in our own words, with what a yes means.
type Question struct {
	Code    Code
	Section Section
	Ask     string
	Source  derive.Source
	effects []effect
}

// Questions lists the questions that are asked at every visit.
func Questions() []Question { return append([]Question(nil), questions...) }

// Known reports whether a code is a question.
func Known(c Code) bool {
	if c == Frail {
		return true
	}
	for _, q := range questions {
		if q.Code == c {
			return true
		}
	}
	return false
}

// Frail is asked of people of 65 and over only, and is not among Questions.
const Frail Code = "frail"

// FrailAsk is the wording of the question on frailty.
const FrailAsk = "At 65 or over: frail, or slowed down, weaker or more tired than a year ago?"
