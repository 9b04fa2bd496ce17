package screening

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
	"handbreadth/ui/widgets/widgettest"
)

func TestDetailsFollowTheirQuestion(t *testing.T) {
	sc, s, c := opened(t, askedOf())
	follow := sc.rows[screen.Pregnant].follow
	if follow.object.Visible() {
		t.Error("weeks are asked of somebody who is not pregnant")
	}
	sc.rows[screen.Pregnant].TypedRune('y')
	if !follow.object.Visible() {
		t.Fatal("weeks are not asked")
	}
	sc.Focus(draft.PregnantWeeks)
	test.Type(c.Focused(), "50")
	if p := follow.details[draft.PregnantWeeks].(*typed).Problem(); p != "" {
		t.Errorf("told while typing: %q", p)
	}
	c.FocusNext()
	if p := follow.details[draft.PregnantWeeks].(*typed).Problem(); !strings.Contains(p, "1 to 42") {
		t.Errorf("after leaving: %q", p)
	}
	s.Set(draft.PregnantWeeks, "24")
	sc.Focus(draft.Breastfeeding)
	widgettest.Key(c, fyne.KeyRight, fyne.KeyRight)
	if s.Get(draft.Breastfeeding) != draft.FirstHalfYear || s.Reading().Intake.Reproduction.Weeks != 24 {
		t.Errorf("breastfeeding %q, %+v", s.Get(draft.Breastfeeding), s.Reading().Intake.Reproduction)
	}
	widgettest.Key(c, fyne.KeyHome)
	if s.Get(draft.Breastfeeding) != "" {
		t.Error("not asked cannot be chosen again")
	}
	sc.rows[screen.Pregnant].TypedRune('n')
	if follow.object.Visible() {
		t.Error("weeks are still asked")
	}
	if sc.Focus(draft.PregnantWeeks); widgettest.Focused(c) == "screening.reproduction.weeks" {
		t.Error("a hidden field takes the focus")
	}
}

func TestRefeedingIsAskedAtALoss(t *testing.T) {
	sc, s, c := opened(t, askedOf(screen.UnexplainedLoss))
	sc.Focus(draft.RecentLoss)
	test.Type(c.Focused(), "4 kg")
	loss := sc.rows[screen.UnexplainedLoss].follow.details[draft.RecentLoss].(*typed)
	if loss.Understood() != "= 5.2% of the weight before" || !s.Reading().Intake.Scored.RecentLoss.Asked {
		t.Errorf("understood as %q", loss.Understood())
	}
	sc.Focus(draft.AlcoholOrDrugs)
	c.Focused().TypedRune('y')
	if s.Get(draft.AlcoholOrDrugs) != draft.AnswerYes {
		t.Error("y is not yes")
	}
	s.Set(draft.AlcoholOrDrugs, "")
	if sc.rows[screen.UnexplainedLoss].follow.details[draft.AlcoholOrDrugs].(*asked).Answer() != screen.NotAsked {
		t.Error("the answer does not follow the form")
	}
}

func (s *Screen) card(code string) *scoreCard {
	at := slices.IndexFunc(s.cards, func(c *scoreCard) bool { return c.q.Code == code })
	return s.cards[at]
}

func TestAQuestionnaireIsScoredHere(t *testing.T) {
	sc, s, c := opened(t, askedOf())
	card := sc.card(screen.SCOFF)
	if card.fold.Open() || card.fold.Mark() != "Not asked" {
		t.Errorf("open %v, mark %q", card.fold.Open(), card.fold.Mark())
	}
	c.Focus(card.fold.FocusTarget())
	widgettest.Key(c, fyne.KeyReturn)
	for _, item := range card.q.Items[:2] {
		sc.Focus(draft.ScoreItem(screen.SCOFF, item.Key))
		c.Focused().TypedRune('y')
	}
	if card.result.Text() != "At least 2 of 5: positive" || !strings.Contains(card.meaning.Text(), "no diagnosis") {
		t.Errorf("%q, %q", card.result.Text(), card.meaning.Text())
	}
	if plan, _ := s.Plan(); !plan.Gate.Referred() || sc.findings.lead.Text() != leadReferred {
		t.Error("the score does not refer")
	}
	s.Undo()
	if card.result.Text() != "1 point so far" {
		t.Errorf("after undo: %q", card.result.Text())
	}
	if card.fold.SetOpen(false); card.fold.Mark() != "Begun, 4 answers missing" {
		t.Errorf("closed it says %q", card.fold.Mark())
	}
}

func TestTheScoreOfThePublishedFormIsTaken(t *testing.T) {
	sc, s, c := opened(t, askedOf())
	card := sc.card(screen.MUST)
	sc.Focus(draft.ScoreItem(screen.MUST, "ill"))
	card.way.Tapped(&fyne.PointEvent{Position: card.way.Spot(1)})
	if card.own.Visible() || !card.formBox.Visible() {
		t.Fatal("the score cannot be typed")
	}
	sc.Focus(draft.ScoreOf(screen.MUST))
	test.Type(c.Focused(), "7")
	c.FocusNext()
	if card.form.Problem() == "" || card.fold.Open() != true {
		t.Error("7 of 6 is taken")
	}
	if card.fold.SetOpen(false); card.fold.Mark() != "1 to mend" {
		t.Errorf("closed it says %q", card.fold.Mark())
	}
	s.Set(draft.ScoreOf(screen.MUST), "1")
	if card.fold.Mark() != "1 of 6: medium" || s.Reading().Intake.Scored.Scores[screen.MUST].Points != 1 {
		t.Errorf("closed it says %q", card.fold.Mark())
	}
	card.fold.SetOpen(true)
	card.way.Tapped(&fyne.PointEvent{Position: card.way.Spot(0)})
	if s.Get(draft.ScoreOf(screen.MUST)) != "" || !card.own.Visible() {
		t.Error("going back keeps the score")
	}
	if s.Undo(); s.Get(draft.ScoreOf(screen.MUST)) != "1" || !card.formBox.Visible() {
		t.Error("undo does not bring the score back")
	}
}

func TestKnownStepsOfMUSTStandAsText(t *testing.T) {
	sc, s, c := opened(t, askedOf())
	card := sc.card(screen.MUST)
	sc.Focus(draft.ScoreItem(screen.MUST, "bmi"))
	if widgettest.Focused(c) != "screening.must.way" || card.items["bmi"].Object().Visible() || !card.known["bmi"].Visible() {
		t.Errorf("BMI is asked though it is known; focus at %q", widgettest.Focused(c))
	}
	s.Set(draft.Height, "")
	if !card.items["bmi"].Object().Visible() || card.known["bmi"].Visible() {
		t.Error("BMI is not asked though it is not known")
	}
	sc.Focus(draft.ScoreItem(screen.MUST, "bmi"))
	widgettest.Key(c, fyne.KeyRight)
	if s.Get(draft.ScoreItem(screen.MUST, "bmi")) != "over_20" {
		t.Errorf("the form has %q", s.Get(draft.ScoreItem(screen.MUST, "bmi")))
	}
}

// Everything that is asked is reached by Tab, with all cards open.
func TestTabReachesWhatIsAsked(t *testing.T) {
	sc, _, c := opened(t, scored())
	for _, card := range sc.cards {
		card.fold.SetOpen(true)
		card.show()
	}
	sc.settle()
	reached := widgettest.Walk(c)
	want := []string{
		"screening.reproduction.weeks", "screening.reproduction.weight_before", "screening.reproduction.breastfeeding",
		"screening.scored.recent_loss_percent", "screening.scored.days_of_little_food", "screening.scored.low_electrolytes",
		"screening.scored.alcohol_or_listed_medicine", "screening.fold.scoff", "screening.scoff.way", "screening.scored.scoff.sick",
		"screening.fold.must", "screening.scored.must.ill", "screening.fold.mst", "screening.mst.way", "screening.scored.mst",
	}
	for _, name := range want {
		if !slices.Contains(reached, name) {
			t.Errorf("Tab does not reach %s", name)
		}
	}
	for _, q := range screen.Questions() {
		if !slices.Contains(reached, string(draft.Screening(q.Code))) {
			t.Errorf("Tab does not reach %s", q.Code)
		}
	}
}

// What the section looks like, in words and places.
func TestOutlines(t *testing.T) {
	for name, form := range map[string]draft.Form{"first": {}, "scored": scored()} {
		t.Run(name, func(t *testing.T) {
			widgettest.Program(t, theme.Light)
			s := New(draft.NewSession(form, unit.Style{}))
			window := widgettest.Window(t, s.Object(), widgettest.LaptopWidth, 640)
			for _, c := range s.cards {
				c.fold.SetOpen(len(form) > 0)
				c.show()
			}
			s.settle()
			widgettest.AssertOutline(t, window, name)
			if _, named := widgets.Named()["screening.fold.scoff"]; !named {
				t.Error("the cards have no names")
			}
		})
	}
}
