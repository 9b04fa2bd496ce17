package hand

import (
	"math"
	"strings"
	"testing"

	"handbreadth/domain/food"
)

func TestChosenFoodsFillTheMeasure(t *testing.T) {
	choice := food.BasketChoice{{Code: "salmon", Share: 1}, {Code: "mackerel", Share: 1}}
	c, fillings := FillChosen(choice, food.Omnivore, nil)
	// Source: USDA SR 28, 85 g each of cooked salmon (206 kcal, 12.35 g of fat in
	// 100 g) and mackerel (262 kcal, 17.81 g).
	if got := float64(c[Palm].Nutrients.Energy); math.Abs(got-0.85*(206+262)/2) > 0.01 {
		t.Errorf("%v kcal", got)
	}
	if got := float64(c[Palm].Nutrients.Fat); math.Abs(got-0.85*(12.35+17.81)/2) > 0.01 {
		t.Errorf("%v g of fat", got)
	}
	if !fillings[Palm].Chosen || fillings[Fist].Chosen {
		t.Errorf("%+v", fillings)
	}
	if last := c[Palm].Steps[len(c[Palm].Steps)-1]; !strings.Contains(last.Source.Text, "chosen by the practitioner") {
		t.Errorf("%+v", last.Source)
	}
	if usual := Fill(food.Omnivore, nil); c[Fist].Nutrients != usual[Fist].Nutrients || strings.Contains(usual[Palm].Steps[1].Source.Text, "chosen by") {
		t.Error("the usual basket is told as chosen")
	}
	back, fillings := FillChosen(choice, food.Vegan, nil)
	if !fillings[Palm].FellBack || fillings[Palm].Words() == "" || back[Palm].Nutrients != Fill(food.Vegan, nil)[Palm].Nutrients {
		t.Errorf("%+v", fillings[Palm])
	}
}

// One measure counts as itself, for the client's own hand too.
func TestFoodsCountAgainstTheContents(t *testing.T) {
	c := Fill(food.Omnivore, nil)
	per := c.PerMeasure()
	rice, _ := food.ByCode("white_rice")
	beef, _ := food.ByCode("lean_beef")
	if got := rice.CountsAs(rice.Portion, per).Words(); got != "1 cupped hand" {
		t.Errorf("half a cup of rice is %s", got)
	}
	if per != food.UsualPerMeasure(food.Omnivore, nil) {
		t.Errorf("the contents count otherwise than the usual baskets: %+v", per)
	}
	for k := range c {
		c[k].Hand.Value = 0.5
	}
	if got := beef.CountsAs(beef.Portion, c.PerMeasure()).Measures[food.Protein]; got != 2 {
		t.Errorf("85 g of beef are %v palms of a hand half as large", got)
	}
}
