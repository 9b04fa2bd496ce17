package main

import (
	"os"
	"testing"
)

// One of two files cannot be moved into place: the other is moved back.
func TestPlaceAllOrNone(t *testing.T) {
	for _, existed := range []bool{true, false} {
		tb := newTable(t, nil)
		if existed {
			tb.put("plan.json", "before")
		}
		first, err := prepare(output{flagPlan, tb.path("plan.json"), []byte("after")})
		if err != nil {
			t.Fatal(err)
		}
		second, err := prepare(output{flagHandout, tb.path("paper.pdf"), []byte("after")})
		if err != nil {
			t.Fatal(err)
		}
		if err := os.Remove(second.written); err != nil {
			t.Fatal(err)
		}
		failed, err := place([]move{first, second})
		if failed != 1 || err == nil {
			t.Errorf("place says %d, %v", failed, err)
		}
		first.clean()
		second.clean()
		switch {
		case existed && (tb.names() != "consult.json plan.json" || tb.read("plan.json") != "before"):
			t.Errorf("left %s", tb.names())
		case !existed && tb.names() != "consult.json":
			t.Errorf("left %s", tb.names())
		}
	}
}

// Where the disk has no links the file of before is copied.
func TestKeepCopiesWhereItCannotLink(t *testing.T) {
	tb := newTable(t, nil)
	tb.put("plan.json", "before")
	tb.put("second", "in the way of a link")
	if err := keep(tb.path("plan.json"), tb.path("second")); err != nil || tb.read("second") != "before" {
		t.Errorf("got %q, %v", tb.read("second"), err)
	}
	if err := keep(tb.path("none"), tb.path("third")); err == nil {
		t.Error("kept a file that is not there")
	}
}

func TestSameFile(t *testing.T) {
	tb := newTable(t, nil)
	if err := os.Symlink(tb.path("consult.json"), tb.path("link")); err != nil {
		t.Skip("no links here: ", err)
	}
	for _, c := range []struct {
		a, b string
		want bool
	}{
		{"consult.json", "consult.json", true},
		{"consult.json", "link", true},
		{"new", "./new", true},
		{"consult.json", "new", false},
		{"new", "other", false},
	} {
		if got := (osFiles{}).Same(tb.path(c.a), tb.folder+"/"+c.b); got != c.want {
			t.Errorf("%s and %s: %v", c.a, c.b, got)
		}
	}
}
