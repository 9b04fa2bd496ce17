package ui

import (
	"context"
	"image"
	"maps"
	"reflect"
	"sync"

	"handbreadth/domain"
	"handbreadth/ui/draft"
	"handbreadth/ui/handout"
	"handbreadth/ui/task"
)

// filePapers gives the handout its papers. A paper that leaves the desk belongs
// to a plan that is kept, so saving and printing keep the plan first.
type filePapers struct {
	file  File
	run   task.Runner
	kept  func(Kept) // told where the user interface runs
	paper func() string

	mu   sync.Mutex
	form draft.Form
	plan domain.Plan
}

var _ handout.Papers = (*filePapers)(nil)

// note takes what the form and its plan are now.
func (p *filePapers) note(session *draft.Session) {
	plan, _ := session.Plan()
	form := session.Form()
	p.mu.Lock()
	defer p.mu.Unlock()
	p.form, p.plan = form, plan
}

// PageNames lists the kinds of page.
func (p *filePapers) PageNames() []PageName { return p.file.Papers().PageNames() }

// SuggestedName is a name for the file.
func (p *filePapers) SuggestedName(plan domain.Plan) string {
	return p.file.Papers().SuggestedName(plan)
}

// Preview draws the pages; the plan need not be kept.
func (p *filePapers) Preview(ctx context.Context, plan domain.Plan, choice Choice) ([]image.Image, error) {
	return p.file.Papers().Pictures(ctx, plan, p.standing(), choice)
}

// standing is what the paper would belong to: what is kept, where the form is
// as it was kept.
func (p *filePapers) standing() Kept {
	p.mu.Lock()
	defer p.mu.Unlock()
	if kept := p.file.Kept(); kept.Form != nil && maps.Equal(kept.Form, p.form) {
		return kept
	}
	return Kept{}
}

// Save keeps the plan and writes its paper.
func (p *filePapers) Save(ctx context.Context, plan domain.Plan, choice Choice, path string) error {
	kept, err := p.keep(ctx, plan)
	if err != nil {
		return err
	}
	return p.file.Papers().Save(ctx, plan, kept, choice, path)
}

// Print keeps the plan and hands its paper to the system.
func (p *filePapers) Print(ctx context.Context, plan domain.Plan, choice Choice) error {
	kept, err := p.keep(ctx, plan)
	if err != nil {
		return err
	}
	return p.file.Papers().Print(ctx, plan, kept, choice)
}

const wordsChanged = "The plan has changed meanwhile. Look at the handout again, then save or print it."

// keep returns what the plan is kept as, and keeps it where it is not yet.
func (p *filePapers) keep(ctx context.Context, plan domain.Plan) (Kept, error) {
	if kept := p.standing(); kept.Form != nil {
		return kept, nil
	}
	p.mu.Lock()
	form, now := p.form, p.plan
	p.mu.Unlock()
	if !reflect.DeepEqual(now, plan) {
		return Kept{}, &task.Failure{Words: wordsChanged}
	}
	kept, err := p.file.Keep(ctx, form, plan)
	if err != nil {
		return Kept{}, err
	}
	p.run.Start(task.Job{
		Label: "Showing what was kept",
		Work:  func(context.Context) error { return nil },
		Done:  func(error) { p.kept(kept) },
	})
	return kept, nil
}
