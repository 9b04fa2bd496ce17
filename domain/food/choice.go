package food

import (
	"strconv"
	"strings"

	"handbreadth/domain/unit"
)

// BasketChoice is what the practitioner puts into a client's measures: any
// number of foods, each into the measure that it fills alone. A measure for
// which nothing is chosen keeps its usual basket.
type BasketChoice []ChosenFood

// ChosenFood is one food of a choice.
type ChosenFood struct {
	Code  string
	Share unit.Ratio // of the basket, relative to the others; above 0, at most 10
}

// mostShare is the largest share of a chosen food.
const mostShare = 10

// Check returns nil, or unit.Problems that name each food which is not known,
// fills no measure alone, is there twice or has no fit share: "basket[2].share".
func (c BasketChoice) Check() error {
	var problems unit.Problems
	seen := map[string]bool{}
	for i, chosen := range c {
		field := "basket[" + strconv.Itoa(i) + "]"
		f, known := ByCode(chosen.Code)
		_, fills := f.Fills()
		switch {
		case !known:
			problems.Add(field+".code", chosen.Code, "the code of a food in the table")
		case !fills:
			problems.Add(field+".code", chosen.Code, "a food that fills a measure alone")
		case seen[chosen.Code]:
			problems.Add(field+".code", chosen.Code, "each food once")
		}
		seen[chosen.Code] = true
		if !(chosen.Share > 0 && chosen.Share <= mostShare) {
			problems.Add(field+".share", strconv.FormatFloat(float64(chosen.Share), 'g', -1, 64), "a share above 0, at most 10")
		}
	}
	return problems.Err()
}

// Filling is the basket of one measure and how it came about.
type Filling struct {
	Group    Group
	Foods    []Food // never empty, each with the share that applies
	Chosen   bool   // by the practitioner; else the usual basket
	FellBack bool   // something was chosen, but none of it is fit for this client
	LeftOut  []LeftOut
}

// LeftOut is a chosen food that does not suit the client, and why.
type LeftOut struct {
	Food Food
	Why  string // "contains fish", "is not vegan"
}

// Fill returns the basket of a group's measure for an eating pattern without the
// avoided allergens: the chosen foods that suit the client, or the usual basket
// where nothing is chosen or nothing of it is left. Foods that Check refuses are
// passed over.
func (c BasketChoice) Fill(g Group, p Pattern, avoid []Allergen) Filling {
	filling := Filling{Group: g}
	for _, chosen := range c {
		f, known := ByCode(chosen.Code)
		of, fills := f.Fills()
		if !known || !fills || of != g || !(chosen.Share > 0 && chosen.Share <= mostShare) {
			continue
		}
		if why := f.unfit(p, avoid); why != "" {
			filling.LeftOut = append(filling.LeftOut, LeftOut{f, why})
			continue
		}
		f.Share = chosen.Share
		filling.Foods = append(filling.Foods, f)
	}
	filling.Chosen = len(filling.Foods) > 0
	if !filling.Chosen {
		filling.FellBack = len(filling.LeftOut) > 0
		filling.Foods = Basket(g, p, avoid)
	}
	return filling
}

// unfit says why a food does not suit a client, or nothing.
func (f Food) unfit(p Pattern, avoid []Allergen) string {
	if !p.has(f.origin) {
		return "is not " + string(p)
	}
	for _, a := range avoid {
		if f.Contains(a) {
			if !f.known {
				return "may contain " + a.Name()
			}
			return "contains " + a.Name()
		}
	}
	return ""
}

// Words says in plain sentences what a choice came to, or nothing where the
// usual basket was not touched.
func (f Filling) Words() string {
	var parts []string
	for _, out := range f.LeftOut {
		parts = append(parts, out.Food.Name+" "+out.Why)
	}
	left := strings.Join(parts, ", ")
	switch {
	case f.FellBack:
		return "None of the foods chosen for the " + f.Group.Measure() + " is fit for this client (" + left + "), so the usual foods fill it."
	case f.Chosen && left != "":
		return "The " + f.Group.Measure() + " is filled with the chosen foods, without some: " + left + "."
	case f.Chosen:
		return "The " + f.Group.Measure() + " is filled with the chosen foods."
	}
	return ""
}
