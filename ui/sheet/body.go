package sheet

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/unit"
	"handbreadth/ui/chart"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// body is everything on the sheet, from top to bottom. It is built once; show
// changes what the parts say and which of them are seen.
type body struct {
	object *fyne.Container
	goTo   func(action)
	now    view

	title, lead *widgets.Text
	start       *widgets.Button
	startRow    *fyne.Container
	top         *fyne.Container

	target, resting, maintenance *opening
	aside                        *widgets.Text
	reason                       *widgets.Button
	heldBy                       *fyne.Container
	energy                       *fyne.Container

	expected *opening
	spark    *chart.Spark
	course   *fyne.Container

	bar           *widgets.MacroBar
	fibre, shares *opening
	macros        *fyne.Container

	day      *dayFigures
	wants    *wantList
	findings *findingList
}

func newBody(style unit.Style, goTo func(action), changed func()) *body {
	b := &body{goTo: goTo}
	b.title, b.lead = widgets.NewText("", widgets.Title), widgets.NewText("", widgets.Body)
	b.start = widgets.Name(widgets.NewPrimaryButton("Start the intake", b.onStart), "sheet.start")
	b.startRow = widgets.InsetSides(0, theme.Half, 0, 0, widgets.Row(b.start))
	b.top = widgets.Column(b.title, b.lead, b.startRow)
	b.buildEnergy(style, changed)
	b.buildCourse(style, changed)
	b.buildMacros(style, changed)
	b.day = newDayFigures(style, changed)
	b.wants = newWantList(goTo)
	b.findings = newFindingList(goTo, changed)
	b.object = widgets.ColumnGap(theme.Three, b.top, b.energy, b.course, b.wants.object, b.macros, b.day.object, b.findings.object)
	return b
}

func (b *body) buildEnergy(style unit.Style, changed func()) {
	b.target = newOpening("sheet.energy", "Target energy", style, changed)
	b.resting = newOpening("sheet.resting", "Resting energy", style, changed)
	b.maintenance = newOpening("sheet.maintenance", "Maintenance energy", style, changed)
	b.aside = widgets.NewText("", widgets.Small)
	b.aside.SetAlign(fyne.TextAlignTrailing)
	held := widgets.NewText(heldWords, widgets.Problem)
	b.reason = widgets.Name(widgets.NewQuietButton("", b.onHeld), "sheet.held")
	b.heldBy = widgets.InsetSides(0, theme.Unit, 0, theme.Unit, widgets.Column(held, widgets.Row(b.reason)))
	b.energy = widgets.ColumnGap(theme.Half, b.target, b.aside, b.heldBy, b.maintenance, b.resting)
}

func (b *body) buildCourse(style unit.Style, changed func()) {
	b.expected = newOpening("sheet.expected", "Expected weight", style, changed)
	b.spark = chart.NewSpark()
	b.course = widgets.ColumnGap(theme.Half, b.expected, b.spark)
}

func (b *body) buildMacros(style unit.Style, changed func()) {
	b.bar = widgets.Name(widgets.NewMacroBar(style), "sheet.macros")
	b.fibre = newOpening("sheet.fibre", "Fibre", style, changed)
	b.shares = newOpening("sheet.shares", "Where the grams come from", style, changed)
	b.macros = widgets.ColumnGap(theme.Half, b.bar, b.fibre, b.shares)
}

// show changes what the sheet says.
func (b *body) show(v view) {
	b.now = v
	b.title.SetText(v.title())
	b.title.Hidden = v.title() == ""
	b.lead.SetText(v.Lead)
	b.start.SetText(startLabel(v.State))
	b.startRow.Hidden = v.State == waiting
	b.top.Hidden = v.Lead == ""

	b.energy.Hidden = v.State == empty || v.State == referred
	b.target.set(v.Target)
	b.target.SetProminent(v.Target.Value != "")
	b.maintenance.set(v.Maintenance)
	b.resting.set(v.Resting)
	b.aside.SetText(v.Aside)
	b.aside.Hidden = v.Aside == ""
	b.heldBy.Hidden = v.State != held
	b.reason.SetText(v.Held.Label)

	b.showCourse(v)
	b.showMacros(v)
	b.day.show(v)
	b.wants.set(v.wantsShown())
	b.findings.set(v.Groups)
}

func (b *body) showCourse(v view) {
	b.course.Hidden = v.Expected.Value == ""
	if b.course.Hidden {
		return
	}
	b.expected.set(v.Expected)
	b.spark.SetCourse(v.Course)
}

func (b *body) showMacros(v view) {
	b.macros.Hidden = v.Targets == nil
	if v.Targets == nil {
		return
	}
	b.bar.SetDay(v.Targets.Protein.Value, v.Targets.Fat.Value, v.Targets.Carbohydrate.Value, v.Targets.Shares)
	b.fibre.set(v.Fibre)
	b.shares.set(figure{Value: gramsHow, Steps: joined(v.Protein.Steps, v.Fat.Steps, v.Carbohydrate.Steps)})
}

// gramsHow stands in the place of a value: the bar above has the grams.
const gramsHow = " "

// startLabel is what the one button at the top says.
func startLabel(s state) string {
	if s == referred {
		return "Go to the referral note"
	}
	return "Start the intake"
}

func (b *body) onStart() {
	if b.now.State == referred {
		b.goTo(action{Section: sectionHandout})
		return
	}
	b.goTo(action{Section: sectionIntake, Field: draft.Born})
}

func (b *body) onHeld() { b.goTo(b.now.Held) }
