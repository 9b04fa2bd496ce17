package reports

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"handbreadth/domain/hand"
)

// The fixed sentences of the handout, in plain words; "{}" is a gap for a value.
// A test keeps them at a reading grade of six or lower.
const (
	wordsRange = "Aim for this much on most days. What you need may lie between {} and {}. " +
		"We start here and see how you do."
	wordsOpening = "Use your own hand to build each meal. It goes where you go: at home, at work and out."
	wordsHand    = "Use your own hand to build each meal. It goes where you go. Judge food when it is cooked and on the plate."
	wordsCare    = "This plan does not take the place of medical care. If you feel unwell, call your doctor. " +
		"If it is urgent, call for help at once."
	wordsOwnHand = "Your {} is about {} of the usual one. The amounts here are for your hand."
	wordsFoot    = "This plan does not take the place of medical care."
)

// The sentences of the life-size sheets.
const (
	wordsPrint      = "Print at 100% (“actual size”). Do not let the printer fit it to the page."
	wordsPrintPlain = "Print at “actual size”. Do not let the printer fit it to the page."
	wordsCard       = "To check, hold a bank card along the rule. It is 85.6 mm wide and must end at the mark."
	wordsLay        = "Lay your hand on it."
	wordsCardMark   = "card"
	wordsOneIs      = "One is about {}."
	wordsMeasured   = "We measured your hand."
	wordsEstimated  = "We did not measure your hand. This is a usual one for your height and sex. Yours may differ a bit."
	wordsMayHold    = "Your palm may hold {} to {}."
)

// wordsMeasure says how each measure is taken.
var wordsMeasure = [...]string{
	hand.Palm:       "as wide and as thick as your palm",
	hand.Fist:       "as big as your fist",
	hand.CuppedHand: "what one cupped hand will hold",
	hand.Thumb:      "as big as your whole thumb",
}

// sentence gives a text a capital letter.
func sentence(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return text
	}
	return string(unicode.ToUpper(first)) + text[size:]
}

// listWords joins words: "a, b and c".
func listWords(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}
