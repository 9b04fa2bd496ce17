package store

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jmoiron/sqlx"
)

// Plan is one version of a client's plan. Numbers count from 1 for each client;
// a plan is never changed, the next one is another version.
type Plan struct {
	ID              PlanID
	ClientID        ClientID
	IntakeID        IntakeID
	Number          int
	MadeAt          time.Time
	Body            []byte
	HandoutSettings []byte
}

// NewPlan is what AddPlan needs. The intake must be of the same client.
type NewPlan struct {
	ClientID        ClientID
	IntakeID        IntakeID
	Body            []byte
	HandoutSettings []byte
}

type planRow struct {
	ID              PlanID   `db:"id"`
	ClientID        ClientID `db:"client_id"`
	IntakeID        IntakeID `db:"intake_id"`
	Number          int      `db:"number"`
	MadeAt          instant  `db:"made_at"`
	Body            []byte   `db:"body"`
	HandoutSettings []byte   `db:"handout_settings"`
}

const planColumns = "id, client_id, intake_id, number, made_at, body, handout_settings"

func (r planRow) place(column string) place {
	return place{"plan_version", fmt.Sprintf("%s/%s", r.ClientID, r.ID), column, r.Number}
}

func (r planRow) plan(body, settings []byte) Plan {
	return Plan{
		ID: r.ID, ClientID: r.ClientID, IntakeID: r.IntakeID, Number: r.Number, MadeAt: r.MadeAt.Time,
		Body: body, HandoutSettings: settings,
	}
}

func (s *Store) openPlan(r planRow) (Plan, error) {
	body, err := s.open(r.place("body"), r.Body)
	if err != nil {
		return Plan{}, err
	}
	settings, err := s.open(r.place("handout_settings"), r.HandoutSettings)
	return r.plan(body, settings), err
}

// AddPlan keeps a plan as the client's next version. It fails with ErrNotFound
// without the client, or when the intake is not one of this client's.
func (s *Store) AddPlan(ctx context.Context, n NewPlan) (Plan, error) {
	row := planRow{ID: newID[PlanID](), ClientID: n.ClientID, IntakeID: n.IntakeID, MadeAt: s.now()}
	err := s.write(ctx, func(tx *sqlx.Tx) error {
		if err := s.touch(ctx, tx, n.ClientID); err != nil {
			return err
		}
		if err := get(ctx, tx, &row.Number,
			"SELECT coalesce(max(number), 0) + 1 FROM plan_version WHERE client_id = ?", n.ClientID); err != nil {
			return err
		}
		body, bodyErr := s.seal(row.place("body"), n.Body)
		settings, settingsErr := s.seal(row.place("handout_settings"), n.HandoutSettings)
		if err := errors.Join(bodyErr, settingsErr); err != nil {
			return err
		}
		if _, err := run(ctx, tx, "INSERT INTO plan_version ("+planColumns+") VALUES (?, ?, ?, ?, ?, ?, ?)",
			row.ID, row.ClientID, row.IntakeID, row.Number, row.MadeAt, body, settings); err != nil {
			return err
		}
		return s.note(ctx, tx, Changed, n.ClientID, Detail{What: "plan", Number: row.Number})
	})
	if err != nil {
		return Plan{}, err
	}
	return row.plan(n.Body, n.HandoutSettings), nil
}

// Plan returns one plan version, ErrNotFound when there is none.
func (s *Store) Plan(ctx context.Context, id PlanID) (Plan, error) {
	return s.plan(ctx, "id = ?", id)
}

// LatestPlan returns the client's newest plan, ErrNotFound when there is none.
func (s *Store) LatestPlan(ctx context.Context, id ClientID) (Plan, error) {
	return s.plan(ctx, "client_id = ? ORDER BY number DESC LIMIT 1", id)
}

func (s *Store) plan(ctx context.Context, where string, args ...any) (p Plan, err error) {
	err = s.read(ctx, func(tx *sqlx.Tx) error {
		var row planRow
		if err := get(ctx, tx, &row, "SELECT "+planColumns+" FROM plan_version WHERE "+where, args...); err != nil {
			return err
		}
		p, err = s.openPlan(row)
		return err
	})
	return p, err
}

// Plans returns all plan versions of a client, number 1 first.
func (s *Store) Plans(ctx context.Context, id ClientID) (plans []Plan, err error) {
	err = s.read(ctx, func(tx *sqlx.Tx) error {
		plans, err = s.plans(ctx, tx, id)
		return err
	})
	return plans, err
}

func (s *Store) plans(ctx context.Context, tx *sqlx.Tx, id ClientID) ([]Plan, error) {
	var rows []planRow
	if err := list(ctx, tx, &rows,
		"SELECT "+planColumns+" FROM plan_version WHERE client_id = ? ORDER BY number", id); err != nil {
		return nil, err
	}
	return each(rows, s.openPlan)
}
