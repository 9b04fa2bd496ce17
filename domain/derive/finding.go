package derive

import "strings"

// Level says how strongly a finding speaks.
type Level int

// The levels, mildest first.
const (
	Note    Level = iota + 1 // mention
	Caution                  // explain, adjust
	Hold                     // stops its scope until a reason is recorded
	Refer                    // stops its scope; a referral note instead
)

// String returns the level's word: note, caution, hold or refer.
func (l Level) String() string {
	switch l {
	case Note:
		return "note"
	case Caution:
		return "caution"
	case Hold:
		return "hold"
	case Refer:
		return "refer"
	}
	return "unknown"
}

// Scope is a set of what a finding stops.
type Scope uint16

// What can be stopped.
const (
	ScopeDeficit      Scope = 1 << iota // a target below maintenance
	ScopeSurplus                        // a target above maintenance
	ScopePlan                           // any plan
	ScopeProtein                        // protein set away from 0.8 g/kg
	ScopeCarbohydrate                   // under 45 % of energy from carbohydrate, fasting
	ScopeFibre                          // a rise in fibre
	ScopeFluid                          // advice to drink more
	ScopeComparison                     // the comparison of two balances
)

var scopeNames = []string{"deficit", "surplus", "plan", "protein", "carbohydrate", "fibre", "fluid", "comparison"}

// Covers reports whether the scope stops something that was asked for.
func (s Scope) Covers(asked Scope) bool { return s&asked != 0 }

// String lists the names of the set: "deficit, fluid".
func (s Scope) String() string {
	var names []string
	for i, name := range scopeNames {
		if s&(1<<i) != 0 {
			names = append(names, name)
		}
	}
	return strings.Join(names, ", ")
}

// Finding is one thing that screening or the computation has to say. A rule
// that stops different things at different levels gives one finding a level,
// with the same code.
type Finding struct {
	Code   string
	Level  Level
	Scope  Scope // empty: it only speaks
	Text   string
	Source Source
}
