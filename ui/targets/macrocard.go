package targets

import (
	"fyne.io/fyne/v2"

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

	slider         *widgets.BalanceSlider
	kept           *widgets.Text
	whys           *widgets.Text
	floor, protein *input

	bar                       *widgets.MacroBar
	proteinRow, fatRow        *opening
	carbohydrateRow, fibreRow *opening
}

func newMacroCard(s Source, changed func()) *macroCard {
	c := &macroCard{source: s}
	style := s.Style()
	c.slider = widgets.Name(widgets.NewBalanceSlider(c.onBalance), "targets."+string(draft.Balance))
	c.slider.SetStyle(style)
	c.kept, c.whys = widgets.NewText("", widgets.Small), widgets.NewText("", widgets.Small)
	c.floor = newInput(s, draft.FatFloor, "Fat floor", "15 to 40% of energy")
	c.protein = newInput(s, draft.Protein, "Protein for each kg", "0.8 to 2.5 g; empty: by situation")
	c.bar = widgets.Name(widgets.NewMacroBar(style), "targets.macros")
	c.proteinRow = newOpening("targets.protein_row", "Protein", style, changed)
	c.fatRow = newOpening("targets.fat_row", "Fat", style, changed)
	c.carbohydrateRow = newOpening("targets.carbohydrate_row", "Carbohydrate", style, changed)
	c.fibreRow = newOpening("targets.fibre_row", "Fibre", style, changed)
	c.object = widgets.NewCard("Protein, fat and carbohydrate", widgets.Beside(cardWidth-2*theme.Two,
		widgets.InsetSides(0, 0, theme.Unit, 0, c.moves()), widgets.InsetSides(theme.Unit, 0, 0, 0, c.comes())))
	return c
}

func (c *macroCard) moves() fyne.CanvasObject {
	const fieldWidth = 150
	return widgets.ColumnGap(theme.Two,
		widgets.Column(widgets.NewText("Carbohydrate-fat balance", widgets.Strong), c.slider, c.kept),
		widgets.Grid(fieldWidth, c.floor.Field, c.protein.Field), c.whys)
}

func (c *macroCard) comes() fyne.CanvasObject {
	return widgets.ColumnGap(theme.Half, c.bar, widgets.InsetSides(0, theme.Half, 0, 0, widgets.NewHairline()), c.proteinRow, c.fatRow, c.carbohydrateRow, c.fibreRow)
}

func (c *macroCard) show(v view) {
	c.object.Hidden = !v.HasTargets
	c.floor.show()
	c.protein.show()
	if !v.HasTargets {
		return
	}
	c.slider.SetWall(v.Balance.Wall, v.Balance.Why)
	c.slider.SetValue(c.source.Reading().Intake.CarbFatBalance)
	c.kept.SetText(v.Balance.Kept)
	c.kept.Hidden = v.Balance.Kept == ""
	c.whys.SetText(v.Balance.Floor + "\n" + v.ProteinWhy)
	c.floor.SetPlaceHolder(v.Balance.FloorInForce)
	c.protein.SetPlaceHolder(v.ProteinInForce)
	c.bar.SetGrams(v.Grams[0], v.Grams[1], v.Grams[2])
	c.proteinRow.set(v.Protein)
	c.fatRow.set(v.Fat)
	c.carbohydrateRow.set(v.Carbohydrate)
	c.fibreRow.set(v.Fibre)
}

func (c *macroCard) onBalance(to unit.Percent) {
	c.source.Set(draft.Balance, balanceText(to, c.slider.AtWall()))
}
