package reports

import "handbreadth/domain/unit"

// Paper is the size of the sheets.
type Paper int

// The sizes of paper.
const (
	A4     Paper = iota // 210 x 297 mm
	Letter              // 8.5 x 11 in
)

// Page names one kind of page of a handout.
type Page string

// The kinds of page, in the order in which they are bound.
const (
	PageGlance Page = "plan_at_a_glance"
	PageWhy    Page = "why_these_numbers"
	PageFoods  Page = "foods_to_build_from"
	// PageLifeSize is the client's own hand at 1:1, on two sheets.
	PageLifeSize Page = "life_size"
)

// Pages lists every kind of page in binding order.
func Pages() []Page { return append(UsualPages(), PageLifeSize) }

// UsualPages lists the pages of a handout for which none were chosen.
func UsualPages() []Page { return []Page{PageGlance, PageWhy, PageFoods} }

// Name returns the page's name for a list of choices. The page on reasons has
// another name where the handout carries no numbers.
func (p Page) Name(withoutNumbers bool) string {
	switch p {
	case PageGlance:
		return "Your plan at a glance"
	case PageWhy:
		if withoutNumbers {
			return "Why these measures"
		}
		return "Why these numbers"
	case PageFoods:
		return "Foods to build meals from"
	case PageLifeSize:
		return "Your hand, life size"
	}
	return string(p)
}

// Brand is the practice as it appears on paper. Empty parts are left out.
type Brand struct {
	Practice     string
	Practitioner string
	Registration string   // the registration line, as the local register writes it
	Contact      []string // one line each: address, telephone, e-mail
	Footer       string   // one line at the foot of each page
	Logo         []byte   // a PNG or JPEG picture
	Colour       string   // "#1E5B4F"; empty: the program's own
}

// Options say how a paper looks and what the practitioner adds to it.
type Options struct {
	Paper           Paper
	Style           unit.Style
	Brand           Brand
	WithoutNumbers  bool   // no weight, energy or grams: only measures and foods
	ClientFirstName string // empty: none is printed
	PlanVersion     int    // 0: none is printed
	NextStep        string // empty: a line to write on
	NextVisit       string // empty: a line to write on
	Pages           []Page // empty: the usual ones; the order is always that of Pages
}
