package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"handbreadth/domain"
	"handbreadth/reports"
	"handbreadth/reports/preview"
	"handbreadth/store"
	"handbreadth/ui"
	"handbreadth/ui/task"
)

// kindHandout is how a client's paper is entered in the file.
const kindHandout store.Kind = "handout"

// previewDots is how fine a page is drawn for the screen, in dots an inch.
const previewDots = 96

// papers makes the papers of one client's plans.
type papers struct{ file *file }

var _ ui.Papers = papers{}

// Papers makes papers of this client's plans.
func (f *file) Papers() ui.Papers { return papers{f} }

// PageNames lists the kinds of page that can be chosen.
func (p papers) PageNames() []ui.PageName {
	var names []ui.PageName
	usual := reports.UsualPages()
	for _, page := range reports.Pages() {
		names = append(names, ui.PageName{
			Key: string(page), Name: page.Name(false), Extra: !slices.Contains(usual, page),
		})
	}
	return names
}

// SuggestedName is the first name and the day of the visit.
func (p papers) SuggestedName(plan domain.Plan) string {
	first := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' {
			return r
		}
		return -1
	}, firstName(plan.Intake.Client.Name))
	what := "plan"
	if plan.Gate.Referred() {
		what = "referral"
	}
	return strings.TrimSpace(fmt.Sprintf("%s %s %s", first, what, plan.Intake.Date)) + ".pdf"
}

// Pictures draws the pages for the screen.
func (p papers) Pictures(ctx context.Context, plan domain.Plan, kept ui.Kept, choice ui.Choice) ([]image.Image, error) {
	document, err := p.document(plan, kept, choice)
	if err != nil {
		return nil, err
	}
	return preview.Pages(ctx, document, previewDots)
}

// Save writes the paper and enters it in the client file.
func (p papers) Save(ctx context.Context, plan domain.Plan, kept ui.Kept, choice ui.Choice, path string) error {
	document, err := p.document(plan, kept, choice)
	if err != nil {
		return err
	}
	if err := writePrivate(path, document); err != nil {
		return err
	}
	if err := p.enter(ctx, document); err != nil {
		return err
	}
	return p.note(ctx, store.Exported, plan, kept)
}

// Print hands the paper to the system's viewer or printer and enters it.
func (p papers) Print(ctx context.Context, plan domain.Plan, kept ui.Kept, choice ui.Choice) error {
	document, err := p.document(plan, kept, choice)
	if err != nil {
		return err
	}
	path, err := p.file.desk.shelf.put(p.SuggestedName(plan), document)
	if err != nil {
		return err
	}
	if err := handOver(ctx, path); err != nil {
		return err
	}
	if plan.Gate.Referred() { // it has no plan to enter the paper under
		return p.note(ctx, store.Printed, plan, kept)
	}
	return p.enter(ctx, document)
}

// note writes what was done with a paper into the record.
func (p papers) note(ctx context.Context, what store.Action, plan domain.Plan, kept ui.Kept) error {
	about := store.Detail{What: string(kindHandout), Number: kept.Number}
	if plan.Gate.Referred() {
		about = store.Detail{What: string(kindReferral)}
	}
	return p.file.desk.records.Note(ctx, what, p.file.id, about)
}

// enter notes that a paper was made from the plan that is kept. A referral has
// its own record.
func (p papers) enter(ctx context.Context, document []byte) error {
	p.file.mu.Lock()
	plan := p.file.plan
	p.file.mu.Unlock()
	if plan == "" {
		return nil
	}
	_, err := p.file.desk.records.AddHandout(ctx, plan, kindHandout, document)
	return err
}

func (p papers) document(plan domain.Plan, kept ui.Kept, choice ui.Choice) ([]byte, error) {
	options := p.options(plan, kept, choice)
	document, err := reports.Handout(plan, options)
	if plan.Gate.Referred() {
		document, err = reports.Referral(plan, options)
	}
	var closed *reports.NotIssuableError
	switch {
	case errors.As(err, &closed):
		return nil, &task.Failure{Words: wordsHeld, Cause: err}
	case errors.Is(err, reports.ErrPaper):
		return nil, &task.Failure{Words: "This paper could not be made. Choose fewer pages or another paper size, or look at the logo in Practice.", Cause: err}
	}
	return document, err
}

func (p papers) options(plan domain.Plan, kept ui.Kept, choice ui.Choice) reports.Options {
	settings := p.file.desk.Settings()
	options := reports.Options{
		Style: settings.Style(), Brand: brand(settings), WithoutNumbers: choice.WithoutNumbers,
		ClientFirstName: firstName(plan.Intake.Client.Name), PlanVersion: kept.Number,
		NextStep: choice.NextStep, NextVisit: choice.NextVisit,
	}
	if choice.Paper == ui.PaperLetter {
		options.Paper = reports.Letter
	}
	for _, key := range choice.Pages {
		options.Pages = append(options.Pages, reports.Page(key))
	}
	return options
}

func brand(s ui.Settings) reports.Brand {
	var contact []string
	for _, line := range strings.Split(s.Contact, "\n") {
		if line = strings.TrimSpace(line); line != "" {
			contact = append(contact, line)
		}
	}
	return reports.Brand{
		Practice: s.Name, Practitioner: s.Practitioner, Registration: s.Registration,
		Contact: contact, Footer: s.Footer, Logo: s.Logo, Colour: s.Colour,
	}
}

func firstName(name string) string {
	first, _, _ := strings.Cut(strings.TrimSpace(name), " ")
	return first
}

// writePrivate writes a file that only its owner can read, all of it or none.
func writePrivate(path string, data []byte) error {
	folder := filepath.Dir(path)
	fresh, err := os.CreateTemp(folder, ".handbreadth-*")
	if err != nil {
		return err
	}
	defer os.Remove(fresh.Name()) // after the rename this finds nothing
	_, err = bytes.NewReader(data).WriteTo(fresh)
	if err := errors.Join(err, fresh.Sync(), fresh.Close()); err != nil {
		return err
	}
	return os.Rename(fresh.Name(), path)
}

// shelf is a private folder for papers on their way to the printer. It is
// emptied at start, when the file is locked, and at the end.
type shelf struct{ folder string }

func (s *shelf) empty() error { return os.RemoveAll(s.folder) }

// put lays a paper on the shelf and returns its path.
func (s *shelf) put(name string, data []byte) (string, error) {
	if err := os.MkdirAll(s.folder, 0o700); err != nil {
		return "", err
	}
	err := os.Chmod(s.folder, 0o700) // #nosec G302 -- a folder without the right to enter it is of no use
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return "", err
	}
	path := filepath.Join(s.folder, name)
	return path, writePrivate(path, data)
}
