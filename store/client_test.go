package store

import (
	"errors"
	"math"
	"slices"
	"testing"
	"time"

	"handbreadth/domain/unit"
)

func TestClientLife(t *testing.T) {
	ctx := t.Context()
	path := newPath(t)
	s := mustOpen(t, path, Options{})
	a, b := newClient(t, s), newClient(t, s)
	if a == b || len(a) < 26 {
		t.Errorf("ids %q and %q: want different ones of 26 letters (130 bits)", a, b)
	}
	if err := s.MarkOpened(ctx, a); err != nil {
		t.Fatal(err)
	}
	if err := s.SetNextVisit(ctx, a, visitDay); err != nil {
		t.Fatal(err)
	}
	if err := s.ArchiveClient(ctx, b); err != nil {
		t.Fatal(err)
	}
	mustClose(t, s)

	s = mustOpen(t, path, Options{})
	got := must(s.Client(ctx, a))(t)
	if got.NextVisit != visitDay || got.ArchivedAt != nil || !got.LastOpenedAt.After(got.CreatedAt) ||
		!got.UpdatedAt.After(got.LastOpenedAt) || got.CreatedAt.Location() != time.UTC {
		t.Errorf("got %+v", got)
	}
	if got := must(s.Client(ctx, b))(t); got.ArchivedAt == nil || !got.NextVisit.IsZero() {
		t.Errorf("archived client is %+v", got)
	}
	ids := func(clients []Client) []ClientID {
		var out []ClientID
		for _, c := range clients {
			out = append(out, c.ID)
		}
		return out
	}
	if got := ids(must(s.Clients(ctx, false))(t)); !slices.Equal(got, []ClientID{a}) {
		t.Errorf("daily list %v", got)
	}
	if got := ids(must(s.Clients(ctx, true))(t)); !slices.Equal(got, []ClientID{a, b}) {
		t.Errorf("full list %v, last opened first", got)
	}
	if err := s.UnarchiveClient(ctx, b); err != nil {
		t.Fatal(err)
	}
	if err := s.SetNextVisit(ctx, b, visitDay.AddDays(-1)); err != nil {
		t.Fatal(err)
	}
	due := func(first, last int) []ClientID {
		return ids(must(s.ClientsWithVisit(ctx, visitDay.AddDays(first), visitDay.AddDays(last)))(t))
	}
	if got := due(-1, 0); !slices.Equal(got, []ClientID{b, a}) {
		t.Errorf("visits on both days: %v", got)
	}
	if got := due(0, 30); !slices.Equal(got, []ClientID{a}) {
		t.Errorf("visits from the later day: %v", got)
	}
	if err := s.SetNextVisit(ctx, a, unit.Date{}); err != nil {
		t.Fatal(err)
	}
	if got := due(-100, 100); !slices.Equal(got, []ClientID{b}) {
		t.Errorf("after taking a visit away: %v", got)
	}
}

func TestAnUnknownClientIsNotFound(t *testing.T) {
	ctx := t.Context()
	s := mustOpen(t, newPath(t), Options{})
	const id = ClientID("nobody")
	calls := map[string]error{
		"MarkOpened":      s.MarkOpened(ctx, id),
		"SetNextVisit":    s.SetNextVisit(ctx, id, visitDay),
		"ArchiveClient":   s.ArchiveClient(ctx, id),
		"UnarchiveClient": s.UnarchiveClient(ctx, id),
		"DeleteClient":    s.DeleteClient(ctx, id),
	}
	_, calls["Client"] = s.Client(ctx, id)
	_, calls["ClientFile"] = s.ClientFile(ctx, id)
	_, calls["SaveRecord"] = s.SaveRecord(ctx, id, KindText, 0, nil)
	_, calls["LatestRecord"] = s.LatestRecord(ctx, id, KindText)
	_, calls["SaveDraft"] = s.SaveDraft(ctx, id, FormIntake, nil)
	_, calls["Draft"] = s.Draft(ctx, id, FormIntake)
	_, calls["AddIntake"] = s.AddIntake(ctx, NewIntake{ClientID: id, VisitDate: visitDay, Height: 1, Weight: 1})
	_, calls["Intake"] = s.Intake(ctx, "none")
	_, calls["AddPlan"] = s.AddPlan(ctx, NewPlan{ClientID: id, IntakeID: "none"})
	_, calls["Plan"] = s.Plan(ctx, "none")
	_, calls["LatestPlan"] = s.LatestPlan(ctx, id)
	_, calls["AddHandout"] = s.AddHandout(ctx, "none", "handout", nil)
	_, calls["Setting"] = s.Setting(ctx, "none")
	_, calls["Meta"] = s.Meta(ctx, "none")
	for name, err := range calls {
		if !errors.Is(err, ErrNotFound) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := s.DiscardDraft(ctx, id, FormIntake); err != nil {
		t.Errorf("discarding no draft: %v", err)
	}
}

func TestClientFileComesBackAsItWasKept(t *testing.T) {
	ctx := t.Context()
	path := newPath(t)
	s := mustOpen(t, path, Options{})
	kept := fillClient(t, s, func(column string) []byte { return []byte("body of " + column) })
	mustClose(t, s)
	s = mustOpen(t, path, Options{})
	f := must(s.ClientFile(ctx, kept.client.ID))(t)
	for _, kind := range []Kind{KindIdentity, KindContact, KindText, KindHealth, KindAnswers} {
		if got := string(f.Records[kind].Body); got != "body of "+string(kind) {
			t.Errorf("%s: %q", kind, got)
		}
	}
	if len(f.Drafts) != 1 || string(f.Drafts[0].Body) != "body of draft" || f.Drafts[0].Form != FormIntake {
		t.Errorf("drafts: %+v", f.Drafts)
	}
	if len(f.Intakes) != 1 || len(f.Plans) != 1 || len(f.Handouts) != 1 {
		t.Fatalf("got %d intakes, %d plans, %d handouts", len(f.Intakes), len(f.Plans), len(f.Handouts))
	}
	i := f.Intakes[0]
	if i.ID != kept.intake.ID || i.VisitDate != visitDay || i.Height != 168 || i.Weight != 72.5 ||
		*i.Waist != 81.5 || *i.PAL != 1.62 || string(i.Body) != "body of intake" || !i.MadeAt.Equal(kept.intake.MadeAt) {
		t.Errorf("intake: %+v", i)
	}
	p := f.Plans[0]
	if p.ID != kept.plan.ID || p.IntakeID != i.ID || p.Number != 1 || string(p.Body) != "body of plan" ||
		string(p.HandoutSettings) != "body of settings" || !p.MadeAt.Equal(kept.plan.MadeAt) {
		t.Errorf("plan: %+v", p)
	}
	if h := f.Handouts[0]; h != kept.handout || h.PlanID != p.ID {
		t.Errorf("handout: %+v, kept %+v", h, kept.handout)
	}
}

func TestIntakeRefusesWhatIsNoMeasurement(t *testing.T) {
	s := mustOpen(t, newPath(t), Options{})
	id := newClient(t, s)
	zero, nan := unit.Centimetre(0), unit.PAL(math.NaN())
	_, err := s.AddIntake(t.Context(), NewIntake{
		ClientID: id, Height: -3, Weight: unit.Kilogram(math.Inf(1)), Waist: &zero, PAL: &nan, FromDraft: "A Name",
	})
	var problems unit.Problems
	if !errors.As(err, &problems) || len(problems) != 6 {
		t.Fatalf("want six problems, got %v", err)
	}
	if Plain(err) != problems.Error() {
		t.Errorf("plain words %q", Plain(err))
	}
	intake := must(s.AddIntake(t.Context(), NewIntake{ClientID: id, VisitDate: visitDay, Height: 168, Weight: 72.5}))(t)
	got := must(s.Measurements(t.Context(), id))(t)
	if len(got) != 1 || got[0].Intake != intake.ID || got[0].Waist != nil || got[0].PAL != nil || got[0].Weight != 72.5 {
		t.Errorf("got %+v", got)
	}
}

func TestNamesThatCouldCarrySomethingArePutToNoClearColumn(t *testing.T) {
	ctx := t.Context()
	s := mustOpen(t, newPath(t), Options{})
	f := fillClient(t, s, func(string) []byte { return nil })
	for _, name := range []string{"", "Anna Example", "é", "9", "Wipe", "a b"} {
		calls := map[string]error{
			"PutSetting": s.PutSetting(ctx, name, nil),
			"SetMeta":    s.SetMeta(ctx, name, ""),
		}
		_, calls["SaveRecord"] = s.SaveRecord(ctx, f.client.ID, Kind(name), 0, nil)
		_, calls["SaveDraft"] = s.SaveDraft(ctx, f.client.ID, Form(name), nil)
		_, calls["AddHandout"] = s.AddHandout(ctx, f.plan.ID, Kind(name), nil)
		for call, err := range calls {
			var problem unit.Problem
			if !errors.As(err, &problem) {
				t.Errorf("%s took the name %q: %v", call, name, err)
			}
		}
	}
}

func TestAnIntakeTakesTheDraftItCameFromAlong(t *testing.T) {
	ctx := t.Context()
	s := mustOpen(t, newPath(t), Options{})
	id := newClient(t, s)
	must(s.SaveDraft(ctx, id, FormIntake, []byte("typed")))(t)
	must(s.SaveDraft(ctx, id, "notes", []byte("typed")))(t)
	must(s.AddIntake(ctx, NewIntake{ClientID: id, VisitDate: visitDay, Height: 168, Weight: 70, FromDraft: FormIntake}))(t)
	_, err := s.Draft(ctx, id, FormIntake)
	wantErr(t, err, ErrNotFound)
	must(s.Draft(ctx, id, "notes"))(t)
}

func TestPlansAreNumberedForEachClient(t *testing.T) {
	ctx := t.Context()
	s := mustOpen(t, newPath(t), Options{})
	body := func(string) []byte { return []byte("x") }
	a, b := fillClient(t, s, body), fillClient(t, s, body)
	for want := 2; want <= 4; want++ {
		p := must(s.AddPlan(ctx, NewPlan{ClientID: a.client.ID, IntakeID: a.intake.ID, Body: []byte{byte(want)}}))(t)
		if p.Number != want {
			t.Errorf("number %d, want %d", p.Number, want)
		}
	}
	if p := must(s.LatestPlan(ctx, a.client.ID))(t); p.Number != 4 || p.Body[0] != 4 {
		t.Errorf("latest is %+v", p)
	}
	if p := must(s.AddPlan(ctx, NewPlan{ClientID: b.client.ID, IntakeID: b.intake.ID}))(t); p.Number != 2 {
		t.Errorf("the other client's second plan has number %d", p.Number)
	}
	_, err := s.AddPlan(ctx, NewPlan{ClientID: b.client.ID, IntakeID: a.intake.ID})
	wantErr(t, err, ErrNotFound)
	for i, p := range must(s.Plans(ctx, a.client.ID))(t) {
		if p.Number != i+1 {
			t.Errorf("plan %d is at place %d", p.Number, i)
		}
	}
}

func TestSettingsAndNotes(t *testing.T) {
	ctx := t.Context()
	s := mustOpen(t, newPath(t), Options{})
	logo := make([]byte, 300_000)
	for i := range logo {
		logo[i] = byte(i * i)
	}
	for _, body := range [][]byte{[]byte("first"), logo} {
		if err := s.PutSetting(ctx, "logo", body); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.PutSetting(ctx, "address", []byte("1 Invented Street")); err != nil {
		t.Fatal(err)
	}
	if got := must(s.Setting(ctx, "logo"))(t); got.Version != 2 || !slices.Equal(got.Body, logo) {
		t.Errorf("logo came back as version %d with %d bytes", got.Version, len(got.Body))
	}
	if got := must(s.Settings(ctx))(t); len(got) != 2 || got[0].Name != "address" {
		t.Errorf("settings: %d, first %q", len(got), got[0].Name)
	}
	for _, value := range []string{"en", "fr"} {
		if err := s.SetMeta(ctx, "language", value); err != nil {
			t.Fatal(err)
		}
	}
	if got := must(s.Meta(ctx, "language"))(t); got != "fr" {
		t.Errorf("note is %q", got)
	}
}
