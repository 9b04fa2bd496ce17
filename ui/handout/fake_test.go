package handout

import (
	"context"
	"image"
	"image/color"
	"image/draw"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain"
	"handbreadth/ui/draft"
	"handbreadth/ui/task"
	"handbreadth/ui/theme"
)

// fakePapers makes blank pages with bars for lines, and remembers what it was
// asked for.
type fakePapers struct {
	err             error
	previews        []Choice
	saved, printed  []Choice
	paths           []string
	previewReferred bool
}

func (f *fakePapers) PageNames() []PageName {
	return []PageName{
		{Key: "glance", Name: "Your plan at a glance"},
		{Key: "why", Name: "Why these numbers"},
		{Key: "foods", Name: "Foods to build meals from"},
		{Key: "life_size", Name: "Your hand, life size", Extra: true},
	}
}

func (f *fakePapers) SuggestedName(plan domain.Plan) string {
	if plan.Gate.Referred() {
		return "Robin referral 2026-03-02.pdf"
	}
	return "Robin plan 2026-03-02.pdf"
}

func (f *fakePapers) Preview(ctx context.Context, plan domain.Plan, choice Choice) ([]image.Image, error) {
	f.previews = append(f.previews, choice)
	f.previewReferred = plan.Gate.Referred()
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	if f.err != nil {
		return nil, f.err
	}
	var pages []image.Image
	for range choice.Pages {
		pages = append(pages, blankPage())
	}
	return pages, nil
}

func (f *fakePapers) Save(ctx context.Context, _ domain.Plan, choice Choice, path string) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	f.saved, f.paths = append(f.saved, choice), append(f.paths, path)
	return f.err
}

func (f *fakePapers) Print(ctx context.Context, _ domain.Plan, choice Choice) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	f.printed = append(f.printed, choice)
	return f.err
}

// blankPage has the shape of A4 at 96 dots an inch.
func blankPage() image.Image {
	page := image.NewNRGBA(image.Rect(0, 0, 794, 1123))
	draw.Draw(page, page.Bounds(), image.NewUniform(color.White), image.Point{}, draw.Src)
	for y := 90; y < 1000; y += 28 {
		draw.Draw(page, image.Rect(70, y, 724-(y%5)*40, y+9), image.NewUniform(color.Gray{Y: 90}), image.Point{}, draw.Src)
	}
	return page
}

// slowRunner runs jobs when it is told to.
type slowRunner struct{ jobs []*slowJob }

type slowJob struct {
	job    task.Job
	ctx    context.Context
	cancel func()
}

func (r *slowRunner) Start(job task.Job) (cancel func()) {
	ctx, stop := context.WithCancel(context.Background())
	r.jobs = append(r.jobs, &slowJob{job, ctx, stop})
	return stop
}

// next runs the job that has waited longest; one that was asked to stop ends
// with a failure as the real runner's does.
func (r *slowRunner) next(t *testing.T) {
	t.Helper()
	if len(r.jobs) == 0 {
		t.Fatal("nothing was started")
	}
	j := r.jobs[0]
	r.jobs = r.jobs[1:]
	err := j.job.Work(j.ctx)
	if err != nil {
		err = &task.Failure{Words: task.Words(err), Cause: err}
	}
	j.job.Done(err)
}

// desk is a screen in a window, with what it works with.
type desk struct {
	session *draft.Session
	papers  *fakePapers
	clock   *task.ManualClock
	screen  *Screen
	window  fyne.Window
	asked   []string // proposed names
	path    string   // what the dialog answers; "" closes it
	gone    way      // where a button led to
}

func sit(t *testing.T, form draft.Form, run task.Runner) *desk {
	t.Helper()
	return sitIn(t, form, run, theme.Light, fyne.NewSize(958, 900))
}

func sitIn(t *testing.T, form draft.Form, run task.Runner, v theme.Variant, size fyne.Size) *desk {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(theme.New(v, 1))
	d := &desk{session: opened(form), papers: &fakePapers{}, clock: &task.ManualClock{}, path: "/papers/robin.pdf"}
	d.screen = newScreen(d.session, d.papers, run, d.clock)
	d.screen.OnGo = func(section string, field draft.Field) { d.gone = way{Section: section, Field: field} }
	d.screen.OnChoosePath = func(proposed string, chosen func(string)) {
		d.asked = append(d.asked, proposed)
		if d.path != "" {
			chosen(d.path)
		}
	}
	d.window = test.NewTempWindow(t, container.NewStack(canvas.NewRectangle(theme.Colour(theme.Paper)), d.screen.Object()))
	d.window.SetPadded(false)
	d.window.Resize(size)
	return d
}

func (d *desk) pages() int        { return len(d.screen.preview.pages.Objects) }
func (d *desk) said() string      { return d.screen.choices.told.text.Text() }
func (d *desk) previewed() string { return d.screen.preview.told.text.Text() }
func (d *desk) pause()            { d.clock.Advance(previewPause) }
