package reports

import (
	"handbreadth/domain"
)

// Handout returns the client's paper as a PDF. The error is a
// [*NotIssuableError] where the plan may not leave the desk,
// [unit.Problems] where the options cannot be used, and wraps [ErrPaper] where
// the engine failed.
func Handout(plan domain.Plan, opt Options) ([]byte, error) {
	if !plan.Issuable() {
		return nil, notIssuable(plan)
	}
	defer forgetWraps()
	h, err := newHouse("Your plan", plan, opt)
	if err != nil {
		return nil, err
	}
	w := writer{house: h, sheet: newSheet(opt.Paper, h), plan: plan, targets: plan.Targets, withoutNumbers: opt.WithoutNumbers}
	if err := w.sheet.frame(letterhead{h}, pagefoot{house: h, always: wordsFoot}); err != nil {
		return nil, err
	}
	pages := w.pages(opt)
	for _, blocks := range pages {
		if err := w.sheet.add(blocks...); err != nil {
			return nil, err
		}
	}
	return w.sheet.finish()
}

// pages returns the blocks of the chosen pages, each kind beginning a page. The
// cautions and the word on medical care are always there: under the first page
// that has room for them, or else after the last one.
func (w writer) pages(opt Options) [][]block {
	var pages [][]block
	if opt.wants(PageGlance) {
		pages = append(pages, w.glance()...)
	}
	if opt.wants(PageWhy) {
		pages = append(pages, w.why())
	}
	closing := w.closing()
	placed := w.placed(pages, closing)
	if opt.wants(PageFoods) {
		foods := w.foods(placed)
		if !placed {
			foods, placed = append(foods, closing...), true
		}
		pages = append(pages, foods)
	}
	if !placed && len(pages) > 0 {
		last := len(pages) - 1
		pages[last], placed = append(pages[last], closing...), true
	}
	if opt.wants(PageLifeSize) {
		pages = append(pages, w.lifeSize()...)
	}
	if !placed {
		pages = append(pages, closing)
	}
	return pages
}

// placed puts the closing words under the first pages that have room for them,
// and reports whether any had.
func (w writer) placed(pages [][]block, closing []block) bool {
	for i := range pages {
		if stack(closing).height(w.inner()) <= w.left(pages[i]) {
			pages[i] = append(pages[i], closing...)
			return true
		}
	}
	return false
}

// left returns the room that blocks leave on the last page that they take.
func (w writer) left(blocks []block) float64 {
	left := w.room()
	for _, b := range blocks {
		h := b.height(w.inner())
		if h > left {
			left = w.room()
		}
		left -= h
	}
	return left
}

// Referral returns the note to a clinician as a PDF where a referral takes the
// plan's place. The error is a [*NotReferredError] where it does not, and else
// as of [Handout].
func Referral(plan domain.Plan, opt Options) ([]byte, error) {
	if !plan.Gate.Referred() {
		return nil, &NotReferredError{}
	}
	defer forgetWraps()
	h, err := newHouse("Referral note", plan, opt)
	if err != nil {
		return nil, err
	}
	h.version = "" // nothing was issued
	w := writer{house: h, sheet: newSheet(opt.Paper, h), plan: plan}
	if err := w.sheet.frame(letterhead{h}, pagefoot{house: h, always: wordsConfidential}); err != nil {
		return nil, err
	}
	if err := w.sheet.add(w.referral()...); err != nil {
		return nil, err
	}
	return w.sheet.finish()
}

func notIssuable(plan domain.Plan) error {
	gate := plan.Gate
	if gate.Referred() {
		return &NotIssuableError{Referred: true, Findings: gate.Refers}
	}
	return &NotIssuableError{Findings: gate.Holds}
}
