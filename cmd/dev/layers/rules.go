package layers

import (
	"fmt"
	"slices"
	"strings"
)

// Import paths of others that the rules name.
const (
	fyneRoot   = "fyne.io/"
	fyneApp    = "fyne.io/fyne/v2/app"
	gonumRoot  = "gonum.org/v1/gonum"
	properties = "pgregory.net/rapid"
)

// technology lists the standard packages that reach outside the program. The
// domain has none of them; its tests may read files.
var technology = []string{"os", "net", "database/sql", "syscall", "plugin", "io/ioutil", "C"}

// insideRule says what is wrong with importing a folder of this module, or "".
func insideRule(from place, folder string) string {
	to, ok := placeOf(folder)
	if !ok {
		return "that folder has no place in the layers"
	}
	if from.kind == domain && to.kind == domain {
		if from.part == to.part || to.rank < from.rank {
			return ""
		}
		return "the domain imports downwards: unit, derive, (energy, body, macro, food), hand, (menu, screen, followup), domain, consult"
	}
	if from.kind == to.kind && from.part == to.part {
		return ""
	}
	if slices.Contains(below[from.kind], to.kind) {
		return ""
	}
	return fmt.Sprintf("%s does not import %s; it imports %s", from.kind, to.kind, listed(below[from.kind]))
}

func listed(kinds []kind) string {
	if len(kinds) == 0 {
		return "nothing of this module but its own parts"
	}
	words := make([]string, len(kinds))
	for i, k := range kinds {
		words[i] = string(k)
	}
	return strings.Join(words, ", ")
}

// outsideRule says what is wrong with importing a package of the standard
// library or of others, or "".
func outsideRule(from place, path string, test bool) string {
	if from.kind == domain {
		return domainRule(path, test)
	}
	switch {
	case path == fyneApp && from.kind != program:
		return "only cmd/handbreadth opens the window"
	case from.kind == dev && !standard(path):
		return "cmd/dev uses the standard library only"
	case strings.HasPrefix(path, fyneRoot) && windowless(from.kind):
		return fmt.Sprintf("%s works without a window", from.kind)
	}
	return ""
}

func domainRule(path string, test bool) string {
	switch {
	case under(path, gonumRoot), test && under(path, properties):
		return ""
	case !standard(path):
		return "the domain imports the standard library, gonum and itself"
	case test:
		if under(path, "net") || under(path, "database/sql") {
			return "tests of the domain need no network and no database"
		}
		return ""
	}
	for _, root := range technology {
		if under(path, root) {
			return "the domain has no files, network, database or processes"
		}
	}
	return ""
}

// windowless reports whether a kind must build and run without Fyne.
func windowless(k kind) bool {
	return k == domain || k == store || k == reports || k == assets || k == batch || k == dev
}

// standard reports whether an import path belongs to the standard library: its
// first element has no dot.
func standard(path string) bool {
	first, _, _ := strings.Cut(path, "/")
	return !strings.Contains(first, ".")
}

// under reports whether path is root or lies below it.
func under(path, root string) bool {
	return path == root || strings.HasPrefix(path, root+"/")
}
