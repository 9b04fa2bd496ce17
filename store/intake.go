package store

import (
	"context"
	"fmt"
	"strconv"
	"time"

	"github.com/jmoiron/sqlx"

	"handbreadth/domain/unit"
)

// Measurement is what of an intake may be read without opening its body.
type Measurement struct {
	Intake    IntakeID
	VisitDate unit.Date
	Height    unit.Centimetre
	Weight    unit.Kilogram
	Waist     *unit.Centimetre // nil when it was not measured
	PAL       *unit.PAL        // nil when it was not settled
	MadeAt    time.Time
}

// Intake is the snapshot of a visit: the whole form as it stood. It is never
// changed; a correction is another intake for the same day.
type Intake struct {
	ID       IntakeID
	ClientID ClientID
	Measurement
	Body []byte
}

// NewIntake is what AddIntake needs.
type NewIntake struct {
	ClientID  ClientID
	VisitDate unit.Date
	Height    unit.Centimetre  // over 0
	Weight    unit.Kilogram    // over 0
	Waist     *unit.Centimetre // over 0, or nil
	PAL       *unit.PAL        // over 0, or nil
	Body      []byte
	// FromDraft, when not empty, is the draft that became this intake; it is
	// removed in the same transaction.
	FromDraft Form
}

type intakeRow struct {
	ID        IntakeID         `db:"id"`
	ClientID  ClientID         `db:"client_id"`
	VisitDate day              `db:"visit_date"`
	Height    unit.Centimetre  `db:"height_cm"`
	Weight    unit.Kilogram    `db:"weight_kg"`
	Waist     *unit.Centimetre `db:"waist_cm"`
	PAL       *unit.PAL        `db:"pal"`
	MadeAt    instant          `db:"made_at"`
	Body      []byte           `db:"body"`
}

const (
	measurementColumns = "id, client_id, visit_date, height_cm, weight_kg, waist_cm, pal, made_at"
	intakeColumns      = measurementColumns + ", body"
	byVisit            = " ORDER BY visit_date, made_at, id"
)

func (r intakeRow) place() place {
	return place{"intake", fmt.Sprintf("%s/%s", r.ClientID, r.ID), "body", 1}
}

func (r intakeRow) measurement() Measurement {
	return Measurement{
		Intake: r.ID, VisitDate: r.VisitDate.Date, Height: r.Height, Weight: r.Weight,
		Waist: r.Waist, PAL: r.PAL, MadeAt: r.MadeAt.Time,
	}
}

func (s *Store) openIntake(r intakeRow) (Intake, error) {
	body, err := s.open(r.place(), r.Body)
	return Intake{ID: r.ID, ClientID: r.ClientID, Measurement: r.measurement(), Body: body}, err
}

// check returns unit.Problems for what cannot be kept.
func (n NewIntake) check() error {
	var problems unit.Problems
	problems.Keep(checkDay("visit date", n.VisitDate))
	over0 := func(field string, value float64) {
		if !(value > 0) || value > 1e6 { // the negation catches NaN
			problems.Add(field, strconv.FormatFloat(value, 'g', -1, 64), "a number over 0")
		}
	}
	over0("height", float64(n.Height))
	over0("weight", float64(n.Weight))
	if n.Waist != nil {
		over0("waist", float64(*n.Waist))
	}
	if n.PAL != nil {
		over0("activity level", float64(*n.PAL))
	}
	if n.FromDraft != "" {
		problems.Keep(checkName("form", string(n.FromDraft)))
	}
	return problems.Err()
}

// AddIntake keeps the snapshot of a visit. It fails with unit.Problems when a
// measurement is no number over 0, and with ErrNotFound without the client.
func (s *Store) AddIntake(ctx context.Context, n NewIntake) (Intake, error) {
	if err := n.check(); err != nil {
		return Intake{}, err
	}
	row := intakeRow{
		ID: newID[IntakeID](), ClientID: n.ClientID, VisitDate: day{n.VisitDate}, Height: n.Height,
		Weight: n.Weight, Waist: n.Waist, PAL: n.PAL, MadeAt: s.now(),
	}
	err := s.write(ctx, func(tx *sqlx.Tx) error {
		sealed, err := s.seal(row.place(), n.Body)
		if err != nil {
			return err
		}
		if err := s.touch(ctx, tx, n.ClientID); err != nil {
			return err
		}
		if _, err := run(ctx, tx, "INSERT INTO intake ("+intakeColumns+") VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
			row.ID, row.ClientID, row.VisitDate, row.Height, row.Weight, row.Waist, row.PAL, row.MadeAt, sealed); err != nil {
			return err
		}
		if _, err := removeDraft(ctx, tx, n.ClientID, n.FromDraft); err != nil {
			return err
		}
		return s.note(ctx, tx, Changed, n.ClientID, Detail{What: "visit"})
	})
	if err != nil {
		return Intake{}, err
	}
	return Intake{ID: row.ID, ClientID: n.ClientID, Measurement: row.measurement(), Body: n.Body}, nil
}

// Intake returns one intake, ErrNotFound when there is none.
func (s *Store) Intake(ctx context.Context, id IntakeID) (i Intake, err error) {
	err = s.read(ctx, func(tx *sqlx.Tx) error {
		var row intakeRow
		if err := get(ctx, tx, &row, "SELECT "+intakeColumns+" FROM intake WHERE id = ?", id); err != nil {
			return err
		}
		i, err = s.openIntake(row)
		return err
	})
	return i, err
}

// Intakes returns all intakes of a client, the earliest visit first.
func (s *Store) Intakes(ctx context.Context, id ClientID) (intakes []Intake, err error) {
	err = s.read(ctx, func(tx *sqlx.Tx) error {
		intakes, err = s.intakes(ctx, tx, id)
		return err
	})
	return intakes, err
}

func (s *Store) intakes(ctx context.Context, tx *sqlx.Tx, id ClientID) ([]Intake, error) {
	var rows []intakeRow
	if err := list(ctx, tx, &rows,
		"SELECT "+intakeColumns+" FROM intake WHERE client_id = ?"+byVisit, id); err != nil {
		return nil, err
	}
	return each(rows, s.openIntake)
}

// Measurements returns what was measured at each visit of a client, the
// earliest first. Nothing sealed is opened.
func (s *Store) Measurements(ctx context.Context, id ClientID) ([]Measurement, error) {
	var rows []intakeRow
	err := s.read(ctx, func(tx *sqlx.Tx) error {
		return list(ctx, tx, &rows, "SELECT "+measurementColumns+" FROM intake WHERE client_id = ?"+byVisit, id)
	})
	measurements := make([]Measurement, len(rows))
	for i, row := range rows {
		measurements[i] = row.measurement()
	}
	return measurements, err
}
