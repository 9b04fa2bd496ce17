package reports

import (
	"fmt"
	"slices"
	"strings"

	drawn "handbreadth/assets/hand"
	"handbreadth/domain"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

// house is the look of one paper: the brand and the options after cleaning and
// checking.
type house struct {
	title        string // of the document; names nobody
	practice     string
	practitioner string
	registration string
	contact      []string
	footer       string
	logo         *logo
	hue          colour // readable on white
	style        unit.Style
	reader       string // the client's first name
	date         string
	version      string
	nextStep     string
	nextVisit    string
	bare         [4]bool          // measures that are drawn without the food beside them
	hand         drawn.Dimensions // that is drawn
}

// handOf is the client's own hand, or that of the reference adult where no plan
// knows the client's. The thumb is drawn by convention, as none is measured.
func handOf(targets *domain.Targets) drawn.Dimensions {
	if targets == nil {
		return drawn.Reference()
	}
	size := targets.Calibration.Size
	const perCentimetre = 10
	return drawn.WithThumb(drawn.Dimensions{
		PalmBreadth: perCentimetre * float64(size.PalmBreadth), PalmLength: perCentimetre * float64(size.PalmLength),
		HandLength: perCentimetre * float64(size.HandLength),
	})
}

// bareFor tells which measures are drawn without food for a client: the palm
// holds a fillet of fish, and almonds lie by the thumb.
func bareFor(in domain.Intake) (bare [4]bool) {
	eatsFish := in.Pattern == food.Omnivore || in.Pattern == food.Pescatarian
	bare[hand.Palm] = !eatsFish || slices.Contains(in.Avoid, food.FishFlesh)
	bare[hand.Thumb] = slices.Contains(in.Avoid, food.TreeNuts)
	return bare
}

// The most characters of what is typed for a paper.
const (
	mostName = 120
	mostLine = 200
	mostStep = 600
)

// newHouse checks and cleans the options. The error is [unit.Problems].
func newHouse(title string, plan domain.Plan, opt Options) (house, error) {
	var problems unit.Problems
	hue, err := parseColour(opt.Brand.Colour)
	problems.Keep(err)
	picture, err := newLogo(opt.Brand.Logo)
	problems.Keep(err)
	text := func(field, given string, most int) string {
		cleaned := clean(given)
		if len([]rune(cleaned)) > most {
			problems.Keep(tooLong(field, fmt.Sprintf("at most %d characters", most)))
		}
		return cleaned
	}
	h := house{
		title:        title,
		practice:     text("brand.practice", opt.Brand.Practice, mostName),
		practitioner: text("brand.practitioner", opt.Brand.Practitioner, mostName),
		registration: text("brand.registration", opt.Brand.Registration, mostLine),
		contact:      cleanAll(opt.Brand.Contact),
		footer:       text("brand.footer", opt.Brand.Footer, mostLine),
		logo:         picture, hue: readable(hue), style: opt.Style,
		reader:    text("client_first_name", opt.ClientFirstName, mostName),
		date:      plan.Intake.Date.Long(),
		nextStep:  text("next_step", opt.NextStep, mostStep),
		nextVisit: text("next_visit", opt.NextVisit, mostLine),
		bare:      bareFor(plan.Intake),
		hand:      handOf(plan.Targets),
	}
	text("brand.contact", strings.Join(opt.Brand.Contact, " "), 2*mostLine)
	if opt.PlanVersion != 0 {
		h.version = fmt.Sprintf("plan %d", opt.PlanVersion)
	}
	if opt.Paper != A4 && opt.Paper != Letter {
		problems.Add("paper", fmt.Sprint(int(opt.Paper)), "A4 or Letter")
	}
	for _, page := range opt.Pages {
		if !page.valid() {
			problems.Add("pages", string(page), strings.Join(pageWords(), ", "))
		}
	}
	return h, problems.Err()
}

func tooLong(field, accepted string) error {
	return unit.Problem{Field: field, Given: "a longer text", Accepted: accepted}
}

func (p Page) valid() bool { return slices.Contains(Pages(), p) }

func pageWords() []string {
	var words []string
	for _, p := range Pages() {
		words = append(words, string(p))
	}
	return words
}

// wants reports whether a page was chosen.
func (o Options) wants(p Page) bool {
	chosen := o.Pages
	if len(chosen) == 0 {
		chosen = UsualPages()
	}
	return slices.Contains(chosen, p)
}
