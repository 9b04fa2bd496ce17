package food

// Pattern is an eating pattern.
type Pattern string

// The eating patterns.
const (
	Omnivore    Pattern = "omnivore"
	Pescatarian Pattern = "pescatarian"
	Vegetarian  Pattern = "vegetarian"
	Vegan       Pattern = "vegan"
)

// Patterns lists the eating patterns, widest first.
func Patterns() []Pattern { return []Pattern{Omnivore, Pescatarian, Vegetarian, Vegan} }

// Valid reports whether the pattern is known.
func (p Pattern) Valid() bool {
	switch p {
	case Omnivore, Pescatarian, Vegetarian, Vegan:
		return true
	}
	return false
}

// origin says what a food is made of, which decides the patterns that have it.
type origin int

const (
	plant origin = iota
	dairyOrEgg
	fish
	meat
)

func (p Pattern) has(o origin) bool {
	switch p {
	case Omnivore:
		return true
	case Pescatarian:
		return o != meat
	case Vegetarian:
		return o == plant || o == dairyOrEgg
	default:
		return o == plant
	}
}
