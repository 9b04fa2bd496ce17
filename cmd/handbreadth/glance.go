package main

import (
	"context"
	"maps"

	"handbreadth/domain"
	"handbreadth/domain/unit"
	"handbreadth/store"
	"handbreadth/ui"

	"handbreadth/ui/draft"
)

// Glances reads how far some client files are. A client that is gone is left out.
func (d *desk) Glances(ctx context.Context, ids []string) (map[string]ui.Glance, error) {
	found := make(map[string]ui.Glance, len(ids))
	for _, id := range ids {
		if _, ok := d.Row(id); !ok {
			continue
		}
		all, err := d.records.ClientFile(ctx, store.ClientID(id))
		if err != nil {
			return nil, err
		}
		g, err := glance(all, d.Settings().Style())
		if err != nil {
			return nil, err
		}
		found[id] = g
	}
	return found, nil
}

func glance(all store.ClientFile, style unit.Style) (ui.Glance, error) {
	var g ui.Glance
	if n := len(all.Intakes); n > 0 {
		g.LastVisit = all.Intakes[n-1].VisitDate
	}
	form, err := formOf(all)
	if err != nil {
		return g, err
	}
	f := &file{}
	if err := f.readKept(all); err != nil {
		return g, err
	}
	if n := len(all.Plans); n > 0 {
		g.Plan = all.Plans[n-1].Number
	}
	g.Status = status(form, f.kept, style)
	return g, nil
}

// status says how far a form is.
func status(form draft.Form, kept ui.Kept, style unit.Style) ui.Status {
	if len(form) == 0 {
		return ui.NotStarted
	}
	read := draft.Read(form, style)
	if !read.Complete() {
		return ui.Begun
	}
	plan, err := domain.NewPlan(read.Intake)
	switch {
	case err != nil:
		return ui.Begun
	case plan.Gate.Referred():
		return ui.Referred
	case plan.Gate.Held():
		return ui.Held
	case kept.Form != nil && maps.Equal(form, kept.Form):
		return ui.Complete
	}
	return ui.Ready
}
