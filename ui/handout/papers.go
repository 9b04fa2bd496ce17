package handout

import (
	"context"
	"image"

	"handbreadth/domain"
)

// Choice is what is chosen for a paper.
type Choice struct {
	Paper          string // "A4" or "Letter"
	WithoutNumbers bool   // no weight, energy or grams
	Pages          []string
	NextStep       string
	NextVisit      string // in words: "2 March 2026"
}

// The sizes of paper.
const (
	A4     = "A4"
	Letter = "Letter"
)

// PageName is a page that can be chosen.
type PageName struct {
	Key   string
	Name  string
	Extra bool // offered, but not chosen at first
}

// Papers makes the papers. Preview, Save and Print are called in the background,
// and make the referral note of a plan that is referred.
type Papers interface {
	PageNames() []PageName
	Preview(ctx context.Context, plan domain.Plan, choice Choice) ([]image.Image, error)
	Save(ctx context.Context, plan domain.Plan, choice Choice, path string) error
	Print(ctx context.Context, plan domain.Plan, choice Choice) error
	SuggestedName(plan domain.Plan) string
}
