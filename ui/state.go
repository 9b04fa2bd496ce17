package ui

import (
	"context"

	"handbreadth/domain"
	"handbreadth/ui/draft"
	"handbreadth/ui/task"
)

// State is what the shell shows, for tests and for the tour.
type State struct {
	Place   string // "welcome", "clients", "file", "practice", "help", or a page in front: "locked" and its like
	Section string // of the open file; "" where none is open
	Client  string // id of the open file; "" where none is open
	Save    string // "saved", "saving" or "failed"; "" where no file is open
	Turn    int    // how many changes the open form had
	OnDisk  int    // how many of them are on the disk
	Kept    string // "Plan 1, 2 March 2026"; "" where nothing is kept
	// Status is "none", "issuable", "held" or "referred".
	Status string
	// TargetKcal is the target energy; 0 where there is none.
	TargetKcal float64
	Folded     bool // the running sheet is folded away
	Palette    bool // the palette is open
	Asking     bool // a question is asked
	Toast      string
	Touched    int  // how often somebody typed or moved the pointer
	Sealed     bool // the practice has a passphrase
	Loading    bool // names are still being read
	// Settings is true where what the practice set is on the disk.
	Settings bool
	// Form is the open form as typed.
	Form draft.Form
}

var placeNames = map[Place]string{
	PlaceWelcome: "welcome", PlaceClients: "clients", PlaceFile: "file", PlacePractice: "practice", PlaceHelp: "help",
}

var saveNames = map[SaveState]string{Saved: "saved", Saving: "saving", SaveFailed: "failed"}

// State returns what is shown now.
func (s *Shell) State() State {
	state := State{Place: placeNames[s.place], Status: "none", Palette: s.palette != nil, Asking: s.asking != nil}
	if s.gate != nil {
		state.Place = s.gateName
	}
	state.Touched = s.idle.count
	state.Sealed = s.door != nil && s.door.Sealed()
	state.Loading = s.desk != nil && s.desk.Loading()
	if s.toast.Visible() {
		state.Toast = s.toast.Text()
	}
	state.Settings = s.settings != nil && s.settings.turn == s.settings.saved
	f := s.file
	if f == nil {
		return state
	}
	state.Form = f.session.Form()
	state.Section, state.Client = f.section.Name(), f.id
	state.Save, state.Turn, state.OnDisk = saveNames[f.saver.state], f.saver.turn, f.saver.saved
	state.Kept, state.Folded = f.file.Kept().String(), f.fold.now
	if plan, ok := f.session.Plan(); ok {
		state.Status = statusOf(plan)
		if plan.Targets != nil {
			state.TargetKcal = float64(plan.Targets.Energy.Value)
		}
	}
	return state
}

func statusOf(plan domain.Plan) string {
	switch {
	case plan.Gate.Referred():
		return "referred"
	case plan.Gate.Held():
		return "held"
	}
	return "issuable"
}

// Set types a text into a field of the open form.
func (s *Shell) Set(field draft.Field, text string) {
	if s.file != nil {
		s.file.session.Set(field, text)
	}
}

// SaveHandout keeps the plan of the open file and writes its handout to path.
func (s *Shell) SaveHandout(path string, done func(error)) {
	f := s.file
	if f == nil {
		return
	}
	plan, _ := f.session.Plan()
	choice := Choice{Paper: s.desk.Settings().PaperSize()}
	for _, page := range f.papers.PageNames() {
		if !page.Extra {
			choice.Pages = append(choice.Pages, page.Key)
		}
	}
	s.tools.Run.Start(task.Job{
		Label: "Saving the handout",
		Work:  func(ctx context.Context) error { return f.papers.Save(ctx, plan, choice, path) },
		Done:  done,
	})
}
