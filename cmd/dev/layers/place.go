package layers

import "strings"

// kind is the sort of a package.
type kind string

// The sorts of packages, named as messages name them.
const (
	domain  kind = "domain"
	store   kind = "store"
	reports kind = "reports"
	assets  kind = "assets"
	leaf    kind = "a leaf of ui"
	screen  kind = "a screen"
	shell   kind = "the shell"
	program kind = "cmd/handbreadth"
	batch   kind = "cmd/batch"
	dev     kind = "cmd/dev"
)

// place is where a package stands.
type place struct {
	kind kind
	part string // the folder below the kind: "energy", "task", "intake"; "" for none
	rank int    // domain only: a package imports lower ranks
}

// domainRanks orders the folders below domain. Those of one rank do not import
// each other. The root of the domain composes them; consult stands on top.
var domainRanks = map[string]int{
	"unit":   0,
	"derive": 1,
	"energy": 2, "body": 2, "macro": 2, "food": 2,
	"hand": 3,
	"menu": 4, "screen": 4, "followup": 4,
	"":        5,
	"consult": 6,
}

// leaves are the folders below ui that every screen may import.
var leaves = map[string]bool{"widgets": true, "theme": true, "chart": true, "task": true, "draft": true}

// below says which kinds a kind imports, beside its own part.
var below = map[kind][]kind{
	domain:  {},
	store:   {domain, assets},
	reports: {domain, assets},
	assets:  {domain},
	leaf:    {leaf, domain, assets},
	screen:  {leaf, domain, assets},
	shell:   {screen, leaf, domain, assets},
	program: {shell, leaf, store, reports, domain, assets},
	batch:   {store, reports, domain, assets},
	dev:     {},
}

// placeOf returns the place of a folder, and false where it has none.
func placeOf(folder string) (place, bool) {
	head, rest, _ := strings.Cut(folder, "/")
	part, _, _ := strings.Cut(rest, "/")
	switch head {
	case "domain":
		rank, ok := domainRanks[part]
		return place{kind: domain, part: part, rank: rank}, ok
	case "store":
		return place{kind: store}, true
	case "reports":
		return place{kind: reports}, true
	case "assets":
		return place{kind: assets}, true
	case "ui":
		return uiPlace(part), true
	case "cmd":
		return commandPlace(part)
	}
	return place{}, false
}

func uiPlace(part string) place {
	switch {
	case part == "":
		return place{kind: shell}
	case leaves[part]:
		return place{kind: leaf, part: part}
	}
	return place{kind: screen, part: part}
}

func commandPlace(part string) (place, bool) {
	switch part {
	case "handbreadth":
		return place{kind: program}, true
	case "batch":
		return place{kind: batch}, true
	case "dev":
		return place{kind: dev}, true
	}
	return place{}, false
}
