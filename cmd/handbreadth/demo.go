package main

import (
	"context"
	"errors"
	"maps"
	"time"

	"handbreadth/domain"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/store"
	"handbreadth/ui"
	"handbreadth/ui/draft"
)

// errDemo says that an invented client is not what the demo says it is.
var errDemo = errors.New("an invented client has no plan to keep")

// demoClient is an invented person with what was typed at some visits. All of
// them are made up; any likeness is chance.
type demoClient struct {
	years  int // of age
	visits []demoVisit
}

// demoVisit is one visit: how many days ago, what was typed, whether its plan
// was kept, and in how many days the next visit is.
type demoVisit struct {
	ago  int
	form draft.Form
	yes  []screen.Code // all others were asked and are no; nil with unasked: none was asked
	keep bool
	next int // days from today; 0: none agreed
	goal int // days from today to the goal; 0: no date
	// unasked leaves the screening open.
	unasked bool
}

// demoSettings is the invented practice.
func demoSettings() ui.Settings {
	return ui.Settings{
		Name: "The Paper Lantern Practice", Practitioner: "Juniper Hale",
		Registration: "Invented register, no. 000 000",
		Contact:      "1 Make-Believe Lane, Sampleton\nhello@paperlantern.example",
		Footer:       "Demo data: every person and place here is made up.",
	}
}

// noteFilled is set in a demo file that was filled to its end.
const noteFilled = "demo_filled"

// readyDemo fills the demo, unless it is full already. One that was cut short
// begins anew.
func (d *desk) readyDemo(ctx context.Context) error {
	_, err := d.records.Meta(ctx, noteFilled)
	if !errors.Is(err, store.ErrNotFound) {
		return err
	}
	for _, id := range append(d.Find("", false), d.Find("", true)...) {
		if err := d.Delete(ctx, id); err != nil {
			return err
		}
	}
	if err := d.fillDemo(ctx); err != nil {
		return err
	}
	return d.records.SetMeta(ctx, noteFilled, "yes")
}

// fillDemo fills an empty file with the invented practice. The clients are
// seeded so that the first of the list is the last one added.
func (d *desk) fillDemo(ctx context.Context) error {
	if err := d.SaveSettings(ctx, demoSettings()); err != nil {
		return err
	}
	for _, c := range demoClients() {
		if err := d.addDemo(ctx, c); err != nil {
			return err
		}
	}
	return nil
}

func (d *desk) addDemo(ctx context.Context, c demoClient) error {
	id, err := d.Create(ctx, c.visits[0].form.Get(draft.Name))
	if err != nil {
		return err
	}
	f, err := d.open(ctx, store.ClientID(id))
	if err != nil {
		return err
	}
	born := d.Today().AddDays(-c.years*365 - c.years/4 - 100)
	for turn, v := range c.visits {
		form := v.typed(d.Today())
		form[draft.Born] = born.Long()
		if err := f.SaveDraft(ctx, turn+1, form); err != nil {
			return err
		}
		if err := f.Settle(ctx, form); err != nil {
			return err
		}
		if v.keep {
			if err := f.keepDemo(ctx, form, v.ago); err != nil {
				return err
			}
		}
	}
	return nil
}

// keepDemo keeps a plan on the day of the visit.
func (f *file) keepDemo(ctx context.Context, form draft.Form, ago int) error {
	plan, err := domain.NewPlan(draft.Read(form, unit.Style{}).Intake)
	if err != nil {
		return err
	}
	if !plan.Issuable() {
		return errDemo
	}
	now := f.desk.watch.now
	f.desk.watch.now = func() time.Time { return now().AddDate(0, 0, -ago) }
	defer func() { f.desk.watch.now = now }()
	_, err = f.Keep(ctx, form, plan)
	return err
}

// typed returns the form of a visit as it would have been typed.
func (v demoVisit) typed(today unit.Date) draft.Form {
	form := maps.Clone(v.form)
	form[draft.Date] = today.AddDays(-v.ago).Long()
	if v.next != 0 {
		form[draft.NextVisit] = today.AddDays(v.next).Long()
	}
	if v.goal != 0 {
		form[draft.GoalBy] = today.AddDays(v.goal).Long()
	}
	if v.unasked {
		return form
	}
	for _, q := range screen.Questions() {
		form[draft.Screening(q.Code)] = draft.AnswerNo
	}
	form[draft.Screening(screen.Frail)] = draft.AnswerNo
	for _, code := range v.yes {
		form[draft.Screening(code)] = draft.AnswerYes
	}
	return form
}
