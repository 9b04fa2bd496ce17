package store

import (
	"crypto/rand"
	"database/sql/driver"
	"fmt"
	"regexp"
	"strings"
	"time"

	"handbreadth/domain/unit"
)

// The ids of rows are random text of at least 128 bits (crypto/rand) that says
// nothing about the client. Each table has its own type, so that they cannot be
// swapped.
type (
	ClientID  string // a client
	RecordID  string // one version of a record
	DraftID   string // a draft, through all its revisions
	IntakeID  string // the snapshot of a visit
	PlanID    string // a plan version
	HandoutID string // an entry on a printed handout
)

func newID[T ~string]() T { return T(strings.ToLower(rand.Text())) }

// Kind names what a [Record] holds. The store does not know its shape.
type Kind string

// The kinds that the program uses; any other short name works as well.
const (
	KindIdentity Kind = "identity" // name, birth date, equation sex
	KindContact  Kind = "contact"  // address, telephone, consent to be written to
	KindText     Kind = "text"     // free notes
	KindHealth   Kind = "health"   // conditions, medicines, laboratory values
	KindAnswers  Kind = "answers"  // screening answers
)

// Form names a form whose typing is kept as a [Draft].
type Form string

// FormIntake is the intake form.
const FormIntake Form = "intake"

var shortName = regexp.MustCompile(`^[a-z][a-z0-9_.-]{0,63}$`)

// checkName refuses names that could carry something about a client into a
// clear column.
func checkName(field, name string) error {
	if shortName.MatchString(name) {
		return nil
	}
	return unit.Problem{Field: field, Given: name, Accepted: "a short name in lower case, such as identity"}
}

// day is a calendar day as it lies in a TEXT column, ISO text; a day that was
// not given is null.
type day struct{ unit.Date }

func (d day) Value() (driver.Value, error) {
	if d.IsZero() {
		return nil, nil
	}
	return d.String(), nil
}

func (d *day) Scan(value any) error {
	if value == nil {
		d.Date = unit.Date{}
		return nil
	}
	text, ok := value.(string)
	if !ok {
		return fail(ErrDamaged, fmt.Errorf("a day is stored as %T", value))
	}
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return fail(ErrDamaged, fmt.Errorf("a day cannot be read: %w", err))
	}
	d.Date = unit.FromTime(t)
	return nil
}

// checkDay refuses a day that was not given or that no calendar has.
func checkDay(field string, d unit.Date) error {
	if _, err := unit.NewDate(d.Year, d.Month, d.Day); err != nil {
		return unit.Problem{Field: field, Given: d.String(), Accepted: "a day such as 2026-03-02"}
	}
	return nil
}

// instantLayout is fixed in width and always UTC, so that text order is time
// order. Microseconds are what PostgreSQL keeps as well.
const instantLayout = "2006-01-02T15:04:05.000000Z"

// instant is a moment as it lies in a TEXT column.
type instant struct{ time.Time }

func (i instant) Value() (driver.Value, error) { return i.UTC().Format(instantLayout), nil }

func (i *instant) Scan(value any) error {
	text, ok := value.(string)
	if !ok {
		return fail(ErrDamaged, fmt.Errorf("a moment is stored as %T", value))
	}
	t, err := time.Parse(instantLayout, text)
	if err != nil {
		return fail(ErrDamaged, fmt.Errorf("a moment cannot be read: %w", err))
	}
	i.Time = t
	return nil
}

// now is the clock's time as the file will give it back.
func (s *Store) now() instant { return instant{s.clock().UTC().Truncate(time.Microsecond)} }

func (i *instant) pointer() *time.Time {
	if i == nil {
		return nil
	}
	return &i.Time
}
