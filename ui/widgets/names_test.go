package widgets

import (
	"testing"

	"handbreadth/ui/theme"
)

func TestNames(t *testing.T) {
	program(t, theme.Light)
	weight := Name(NewField("Weight", ""), "intake.weight")
	Name(NewField("Height", ""), "intake.height")
	Name(NewPrimaryButton("Save", nil), "intakes")
	if Named()["intake.weight"] != weight || NameOf(weight) != "intake.weight" {
		t.Error("the field is not found by its name, or has none")
	}
	copied := Named()
	delete(copied, "intakes")
	Unname("intake")
	if names := Named(); len(names) != 1 || names["intakes"] == nil {
		t.Errorf("left: %v", names)
	}
	if NameOf(weight) != "" {
		t.Error("a name that was taken away is still told")
	}
	ResetNames()
	if len(Named()) != 0 {
		t.Error("names left after a reset")
	}
}

func TestNameMovesToTheNewer(t *testing.T) {
	program(t, theme.Light)
	old := Name(NewText("a", Body), "x")
	newer := Name(NewText("b", Body), "x")
	if Named()["x"] != newer || NameOf(old) != "" {
		t.Error("the older object kept the name")
	}
}
