package unit

// Sex is the sex whose equation is used. It is asked as such, apart from
// gender: the published equations know two groups.
type Sex string

// The groups that the published equations know.
const (
	Female Sex = "female"
	Male   Sex = "male"
)

// Valid reports whether the equations know this group.
func (s Sex) Valid() bool { return s == Female || s == Male }
