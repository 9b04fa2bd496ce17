package main

import (
	"context"
	"encoding/json"
	"errors"
	"sync"
	"time"

	"handbreadth/domain"
	"handbreadth/domain/consult"
	"handbreadth/domain/unit"
	"handbreadth/store"
	"handbreadth/ui"
	"handbreadth/ui/draft"
	"handbreadth/ui/task"
)

// kindReferral is the record that a client was referred instead of given a plan.
const kindReferral store.Kind = "referral"

// file is one open client file.
type file struct {
	desk *desk
	id   store.ClientID
	form draft.Form // as it was when the file was opened

	saving sync.Mutex // one draft after the other
	turn   int

	mu       sync.Mutex
	kept     ui.Kept
	plan     store.PlanID // of kept; empty where no plan was kept
	referral int          // version of the referral record
}

var _ ui.File = (*file)(nil)

// keptBody is the body of a kept plan or referral: the plan file, and the form
// that it was computed from.
type keptBody struct {
	Plan json.RawMessage `json:"plan"`
	Form draft.Form      `json:"form"`
}

// Open reads a client file.
func (d *desk) Open(ctx context.Context, id string) (ui.File, error) {
	f, err := d.open(ctx, store.ClientID(id))
	if err != nil {
		return nil, err
	}
	return f, nil
}

func (d *desk) open(ctx context.Context, id store.ClientID) (*file, error) {
	if err := d.opened(ctx, id); err != nil {
		return nil, err
	}
	all, err := d.records.ClientFile(ctx, id)
	if err != nil {
		return nil, err
	}
	f := &file{desk: d, id: id}
	if err := d.meet(all); err != nil {
		return nil, err
	}
	if err := f.readKept(all); err != nil {
		return nil, err
	}
	if f.form, err = formOf(all); err != nil {
		return nil, err
	}
	if len(f.form) == 0 {
		row, _ := d.Row(string(id))
		f.form = draft.Form{draft.Name: row.Name, draft.Date: d.Today().Long()}
	}
	return f, nil
}

// meet takes in the identity of a client file, which may not be read for the
// list yet.
func (d *desk) meet(all store.ClientFile) error {
	r, ok := all.Records[store.KindIdentity]
	if !ok {
		return nil
	}
	_, err := d.nameOf(r)
	return err
}

// formOf returns the draft, else the form of the last visit, else nothing.
func formOf(all store.ClientFile) (draft.Form, error) {
	for _, d := range all.Drafts {
		if d.Form == store.FormIntake {
			return draft.FromJSON(d.Body)
		}
	}
	if n := len(all.Intakes); n > 0 {
		return draft.FromJSON(all.Intakes[n-1].Body)
	}
	return nil, nil
}

// readKept finds the newest of the plans and the referral.
func (f *file) readKept(all store.ClientFile) error {
	var newest time.Time
	if n := len(all.Plans); n > 0 {
		p := all.Plans[n-1]
		var body keptBody
		if err := json.Unmarshal(p.Body, &body); err != nil {
			return err
		}
		newest, f.plan = p.MadeAt, p.ID
		f.kept = ui.Kept{Number: p.Number, On: unit.FromTime(p.MadeAt.Local()), Form: body.Form}
	}
	r, ok := all.Records[kindReferral]
	if !ok {
		return nil
	}
	f.referral = r.Version
	if !r.SavedAt.After(newest) {
		return nil
	}
	var body keptBody
	if err := json.Unmarshal(r.Body, &body); err != nil {
		return err
	}
	f.plan = ""
	f.kept = ui.Kept{Referral: true, On: unit.FromTime(r.SavedAt.Local()), Form: body.Form}
	return nil
}

// Form returns the intake as it was left.
func (f *file) Form() draft.Form { return f.form.Clone() }

// Kept returns the newest of what was kept.
func (f *file) Kept() ui.Kept {
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.kept
}

// SaveDraft keeps the form as typed, unless a later turn was kept already.
func (f *file) SaveDraft(ctx context.Context, turn int, form draft.Form) error {
	body, err := form.JSON()
	if err != nil {
		return err
	}
	f.saving.Lock()
	defer f.saving.Unlock()
	if turn <= f.turn {
		return nil
	}
	if _, err := f.desk.records.SaveDraft(ctx, f.id, store.FormIntake, body); err != nil {
		return err
	}
	f.turn = turn
	return nil
}

// Settle brings the list up to date with the form.
func (f *file) Settle(ctx context.Context, form draft.Form) error {
	read := draft.Read(form, f.desk.Settings().Style())
	if err := f.desk.identify(ctx, f.id, identity{Name: read.Intake.Client.Name, Born: read.Intake.Client.Born}); err != nil {
		return err
	}
	return f.settleVisit(ctx, form.Get(draft.NextVisit))
}

// settleVisit keeps the next visit for the list. What cannot be read is no
// visit yet; the screen says so.
func (f *file) settleVisit(ctx context.Context, text string) error {
	var next unit.Date
	if text != "" {
		var err error
		if next, err = unit.ParseDate(string(draft.NextVisit), text); err != nil {
			return nil
		}
	}
	row, _ := f.desk.Row(string(f.id))
	if next == row.NextVisit {
		return nil
	}
	if err := f.desk.records.SetNextVisit(ctx, f.id, next); err != nil {
		return err
	}
	return f.desk.reread(ctx, f.id)
}

// identify keeps a new version of the identity where it changed. A name that
// was emptied stays as it was: a client needs one to be found.
func (d *desk) identify(ctx context.Context, id store.ClientID, now identity) error {
	d.mu.Lock()
	p := d.people[id]
	d.mu.Unlock()
	if now.Name == "" {
		now.Name = p.identity.Name
	}
	if now == p.identity {
		return nil
	}
	body, err := json.Marshal(now)
	if err != nil {
		return err
	}
	r, err := d.records.SaveRecord(ctx, id, store.KindIdentity, p.version, body)
	if err != nil {
		return err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	p.identity, p.version = now, r.Version
	d.people[id] = p
	d.index.Put(id, now.Name)
	return nil
}

const wordsHeld = "This plan is held: a reason is missing in Screening. It can be kept as soon as the reason is written down."

// Keep adds the visit and the plan, or the referral.
func (f *file) Keep(ctx context.Context, form draft.Form, plan domain.Plan) (ui.Kept, error) {
	written, err := consult.Encode(plan)
	if errors.Is(err, consult.ErrHeld) {
		return ui.Kept{}, &task.Failure{Words: wordsHeld, Cause: err}
	}
	if err != nil {
		return ui.Kept{}, err
	}
	body, err := json.Marshal(keptBody{Plan: written, Form: form})
	if err != nil {
		return ui.Kept{}, err
	}
	f.saving.Lock()
	defer f.saving.Unlock()
	visit, err := f.addVisit(ctx, form, plan)
	if err != nil {
		return ui.Kept{}, err
	}
	kept, id, err := f.addKept(ctx, visit, plan, body)
	if err != nil {
		return ui.Kept{}, err
	}
	kept.On, kept.Form = f.desk.Today(), form.Clone()
	f.mu.Lock()
	defer f.mu.Unlock()
	f.kept, f.plan = kept, id
	return kept, nil
}

func (f *file) addVisit(ctx context.Context, form draft.Form, plan domain.Plan) (store.Intake, error) {
	body, err := form.JSON()
	if err != nil {
		return store.Intake{}, err
	}
	pal := plan.Activity.Value
	return f.desk.records.AddIntake(ctx, store.NewIntake{
		ClientID: f.id, VisitDate: plan.Intake.Date, Height: plan.Intake.Height, Weight: plan.Intake.Weight,
		PAL: &pal, Body: body, FromDraft: store.FormIntake,
	})
}

func (f *file) addKept(ctx context.Context, visit store.Intake, plan domain.Plan, body []byte) (ui.Kept, store.PlanID, error) {
	if plan.Gate.Referred() {
		r, err := f.desk.records.SaveRecord(ctx, f.id, kindReferral, f.referral, body)
		if err == nil {
			f.referral = r.Version
		}
		return ui.Kept{Referral: true}, "", err
	}
	p, err := f.desk.records.AddPlan(ctx, store.NewPlan{ClientID: f.id, IntakeID: visit.ID, Body: body})
	return ui.Kept{Number: p.Number}, p.ID, err
}
