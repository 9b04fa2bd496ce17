package chart

import (
	"image/png"
	"os"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

// intake is an invented adult without anything that stops a plan.
func intake() domain.Intake {
	in := domain.NewIntake()
	in.Date = unit.Date{Year: 2026, Month: time.March, Day: 2}
	in.Client = domain.Client{Name: "Robin Sample", Born: unit.Date{Year: 1990, Month: time.May, Day: 17}, EquationSex: energy.Female}
	in.Height, in.Weight = 168, 78
	in.Activity = energy.Activity{Category: energy.LowActive}
	in.Goal = energy.Goal{Kind: energy.Lose, Weight: 70, By: unit.Date{Year: 2026, Month: time.August, Day: 31}}
	in.Screening = screen.Answers{}.AllNo()
	return in
}

// planned returns the plan of an intake and its course.
func planned(t testing.TB, in domain.Intake, style unit.Style) (domain.Plan, Course) {
	t.Helper()
	p, err := domain.NewPlan(in)
	if err != nil {
		t.Fatal(err)
	}
	c, known := Of(p, style)
	if !known {
		t.Fatalf("no course: %v", p.Gate.Refers)
	}
	return p, c
}

// goals are the invented intake with goals of every kind.
func goals() map[string]domain.Intake {
	with := func(change func(*domain.Intake)) domain.Intake { in := intake(); change(&in); return in }
	return map[string]domain.Intake{
		"lose": intake(),
		"slow": with(func(in *domain.Intake) { in.Goal.By = unit.Date{Year: 2027, Month: time.September, Day: 1} }),
		"hold": with(func(in *domain.Intake) { in.Goal = energy.Goal{Kind: energy.Maintain} }),
		"gain": with(func(in *domain.Intake) { in.Goal.Kind, in.Goal.Weight = energy.Gain, 82 }),
		"open": with(func(in *domain.Intake) { in.Goal = energy.Goal{Kind: energy.Lose} }),
		"near": with(func(in *domain.Intake) {
			in.Goal.Weight = 77
			in.Goal.By = unit.Date{Year: 2026, Month: time.March, Day: 30}
		}),
		"far": with(func(in *domain.Intake) { in.Weight, in.Goal.Weight, in.Goal.By = 140, 75, unit.Date{} }),
	}
}

// shown puts an object into a window without a display.
func shown(t testing.TB, object fyne.CanvasObject, width, height float32) fyne.Window {
	t.Helper()
	window := test.NewTempWindow(t, container.NewStack(canvas.NewRectangle(theme.Colour(theme.Card)), object))
	window.SetPadded(false)
	window.Resize(fyne.NewSize(width, height))
	return window
}

// keepPicture writes what a window shows into the folder that is named by
// HANDBREADTH_GALLERY, to be looked at.
func keepPicture(t *testing.T, w fyne.Window, name string) {
	t.Helper()
	file, err := os.Create(filepath.Join(os.Getenv("HANDBREADTH_GALLERY"), name+".png"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if err := png.Encode(file, w.Canvas().Capture()); err != nil {
		t.Fatal(err)
	}
}

func TestGallery(t *testing.T) {
	if os.Getenv("HANDBREADTH_GALLERY") == "" {
		t.Skip("HANDBREADTH_GALLERY names no folder")
	}
	styles := map[string]unit.Style{"kg": {}, "lb": {System: unit.USCustomary}, "st": {System: unit.UKCustomary, EnergyIn: unit.InKilojoules}}
	for look, variant := range map[string]theme.Variant{"light": theme.Light, "dark": theme.Dark} {
		for name, in := range goals() {
			for units, style := range styles {
				for _, size := range []fyne.Size{fyne.NewSize(522, 420), fyne.NewSize(1080, 480)} {
					if units != "kg" && (size.Width > 600 || look == "dark") {
						continue
					}
					test.NewTempApp(t).Settings().SetTheme(theme.New(variant, 1))
					_, c := planned(t, in, style)
					panel := NewPanel(style, func() {})
					panel.SetCourse(c)
					w := shown(t, container.NewVBox(panel.Object), size.Width, size.Height)
					if name == "lose" {
						panel.Chart.FocusGained()
						panel.Chart.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft})
					}
					keepPicture(t, w, "chart-"+name+"-"+units+"-"+look+"-"+unit.Style{}.Number(float64(size.Width), 0))
				}
			}
		}
	}
}
