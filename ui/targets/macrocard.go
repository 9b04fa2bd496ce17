package targets

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/macro"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// macroCard shares the target among protein, fat and carbohydrate. On one side
// stands what can be moved, on the other what it comes to.
type macroCard struct {
	object *widgets.Card
	source Source

	slider                            *widgets.BalanceSlider
	kept                              *widgets.Text
	protein, floor, floorPerKg, usual *input
	training, basis, counting         *widgets.Choice
	proteinSet, floorSet              *widgets.Setting
	countingSet, usualSet             *widgets.Setting

	bar           *widgets.MacroBar
	rows          [3]*opening
	tracks        [3]*widgets.ShareTrack
	beside, fibre *opening
}

func newMacroCard(s Source, changed func()) *macroCard {
	c := &macroCard{source: s}
	style := s.Style()
	c.slider = widgets.Name(widgets.NewBalanceSlider(c.onBalance), "targets."+string(draft.Balance))
	c.slider.SetStyle(style)
	c.kept = widgets.NewText("", widgets.Small)
	c.buildSettings(s, changed)
	c.bar = widgets.Name(widgets.NewMacroBar(style), "targets.macros")
	for i, name := range macroOrder {
		c.rows[i] = newOpening(name+"_row", map[int]string{0: "Protein", 1: "Fat", 2: "Carbohydrate"}[i], style, changed)
		c.tracks[i] = widgets.NewShareTrack()
	}
	c.beside = newOpening("beside_row", "", style, changed)
	c.fibre = newOpening("fibre_row", "Fibre", style, changed)
	c.object = widgets.NewCard("Protein, fat and carbohydrate", widgets.Beside(macroWidth,
		widgets.InsetSides(0, 0, theme.Unit, 0, c.moves()), c.comes()))
	return c
}

// macroWidth is the least width of each side.
const macroWidth float32 = 360

func (c *macroCard) buildSettings(s Source, changed func()) {
	c.protein = newInput(s, draft.Protein, "Protein for each kg", "0.8 to 2.5 g; empty: by situation")
	c.floor = newInput(s, draft.FatFloor, "Part of energy", "15 to 40%")
	c.floorPerKg = newInput(s, draft.FatFloorPerKg, "For each kg, too", "0.3 to 1.5 g; may stay empty")
	c.usual = newInput(s, draft.UsualFibre, "Fibre of a usual day", "grams; empty: not asked")
	c.training = choiceOf(s, draft.Training, "Training", trainings)
	c.basis = choiceOf(s, draft.ProteinBasis, "Reckoned on", bases)
	c.counting = choiceOf(s, draft.Counting, "Carbohydrate is counted", countings)
	const fieldWidth = 150
	c.proteinSet = newSetting("protein_set", "Protein for each kg", widgets.ColumnGap(theme.Two, c.training, c.basis, c.protein.Field), changed)
	c.floorSet = newSetting("floor_set", "Fat floor", widgets.Grid(fieldWidth, c.floor.Field, c.floorPerKg.Field), changed)
	c.countingSet = newSetting("counting_set", "Carbohydrate counted", c.counting, changed)
	c.usualSet = newSetting("usual_set", "Fibre eaten now", c.usual.Field, changed)
}

func newSetting(name, label string, content fyne.CanvasObject, changed func()) *widgets.Setting {
	s := widgets.Name(widgets.NewSetting(label, content), "targets."+name)
	s.OnToggled = func(bool) { changed() }
	return s
}

// coded is an answer as the form has it and as it is said.
type coded struct{ code, label string }

var (
	trainings = []coded{{draft.NoTraining, "None"}, {string(macro.TrainingEndurance), "Endurance"}, {string(macro.TrainingStrength), "Strength"}}
	bases     = []coded{
		{string(macro.BasisByBMI), "By BMI"},
		{string(macro.BasisCurrent), "Weight"},
		{string(macro.BasisAdjusted), "Adjusted weight"},
		{string(macro.BasisLean), "Lean weight"},
	}
	countings = []coded{{string(macro.CountTotal), "Total, fibre inside"}, {string(macro.CountAvailable), "Available, fibre beside"}}
)

// choiceOf is a choice that writes the code of an answer into the form.
func choiceOf(s Source, field draft.Field, label string, answers []coded) *widgets.Choice {
	options := make([]widgets.Option, len(answers))
	for i, a := range answers {
		options[i].Label = a.label
	}
	return widgets.Name(widgets.NewChoice(label, options, func(i int) { s.Set(field, answers[i].code) }), "targets."+string(field))
}

// chosenOf returns which answer a text is; -1 for none.
func chosenOf(answers []coded, text string) int {
	for i, a := range answers {
		if a.code == text {
			return i
		}
	}
	return -1
}

func (c *macroCard) moves() fyne.CanvasObject {
	return widgets.ColumnGap(theme.Two,
		widgets.Column(widgets.NewText("Carbohydrate-fat balance", widgets.Strong), c.slider, c.kept),
		widgets.ColumnGap(theme.Half, c.proteinSet, c.floorSet, c.countingSet, c.usualSet))
}

func (c *macroCard) comes() fyne.CanvasObject {
	column := widgets.ColumnGap(theme.Half, c.bar, widgets.InsetSides(0, theme.Half, 0, 0, widgets.NewHairline()))
	for i, r := range c.rows {
		column.Add(widgets.ColumnGap(0, r, widgets.InsetSides(theme.Three, 0, 0, theme.Half, c.tracks[i])))
	}
	column.Add(c.beside)
	column.Add(c.fibre)
	return column
}

func (c *macroCard) show(v view) {
	c.object.Hidden = !v.HasTargets
	for _, in := range []*input{c.protein, c.floor, c.floorPerKg, c.usual} {
		in.show()
	}
	c.training.SetSelected(chosenOf(trainings, c.source.Get(draft.Training)))
	c.basis.SetSelected(chosenOf(bases, c.source.Get(draft.ProteinBasis)))
	c.counting.SetSelected(chosenOf(countings, c.source.Get(draft.Counting)))
	if v.HasTargets {
		c.showTargets(v.Macros)
	}
}

func (c *macroCard) showTargets(m macroView) {
	c.slider.SetWall(m.Balance.Wall, m.Balance.Why)
	c.slider.SetValue(c.source.Reading().Intake.CarbFatBalance)
	say(c.kept, m.Balance.Kept)
	for setting, is := range map[*widgets.Setting]setting{
		c.proteinSet: m.Protein, c.floorSet: m.Floor, c.countingSet: m.Counting, c.usualSet: m.Usual,
	} {
		setting.SetValue(is.Value, is.Note)
	}
	c.floor.SetPlaceHolder(m.FloorInForce)
	c.protein.SetPlaceHolder(m.ProteinInForce)
	c.bar.SetDay(m.Grams[0], m.Grams[1], m.Grams[2], m.Shares)
	for i, r := range c.rows {
		r.set(m.Rows[i])
		c.tracks[i].Set(m.Bands[i].Share.Value, m.Bands[i].Low, m.Bands[i].High)
	}
	c.beside.set(m.Beside)
	c.fibre.set(m.Fibre)
}

func (c *macroCard) onBalance(to unit.Percent) {
	c.source.Set(draft.Balance, balanceText(to, c.slider.AtWall()))
}

// place is what takes the focus for a field; its setting opens first.
func (c *macroCard) place(field draft.Field) fyne.CanvasObject {
	open := func(s *widgets.Setting, object fyne.CanvasObject) fyne.CanvasObject {
		s.SetOpen(true)
		return object
	}
	switch field {
	case draft.Balance:
		return c.slider
	case draft.Protein:
		return open(c.proteinSet, c.protein.Field)
	case draft.Training:
		return open(c.proteinSet, c.training)
	case draft.ProteinBasis:
		return open(c.proteinSet, c.basis)
	case draft.FatFloor:
		return open(c.floorSet, c.floor.Field)
	case draft.FatFloorPerKg:
		return open(c.floorSet, c.floorPerKg.Field)
	case draft.Counting:
		return open(c.countingSet, c.counting)
	case draft.UsualFibre:
		return open(c.usualSet, c.usual.Field)
	}
	return nil
}
