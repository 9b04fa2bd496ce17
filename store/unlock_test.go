package store

import (
	"bytes"
	"errors"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"handbreadth/domain/unit"
	"handbreadth/store/vault"
)

const (
	phrase      = "seven green bicycles sleep"
	otherPhrase = "a drawer full of winter light"
)

// quick are options with which a passphrase takes no time.
func quick() Options { return Options{Effort: vault.TestEffort} }

// sealedFile makes a sealed file of some clients and returns it open.
func sealedFile(t testing.TB, clients int) (s *Store, ids []ClientID, code vault.RecoveryCode) {
	t.Helper()
	s = mustOpen(t, newPath(t), quick())
	for range clients {
		ids = append(ids, fillClient(t, s, sampleBody).client.ID)
	}
	code = must(s.SetPassphrase(t.Context(), phrase, nil))(t)
	return s, ids, code
}

func again(t testing.TB, s *Store) *Store {
	t.Helper()
	mustClose(t, s)
	return mustOpen(t, s.Path(), quick())
}

// checkClients wants everything of the sample clients to be there.
func checkClients(t testing.TB, s *Store, ids []ClientID) {
	t.Helper()
	for _, id := range ids {
		f := must(s.ClientFile(t.Context(), id))(t)
		if string(f.Records[KindIdentity].Body) != string(sampleBody("identity")) ||
			string(f.Drafts[0].Body) != string(sampleBody("draft")) ||
			string(f.Intakes[0].Body) != string(sampleBody("intake")) ||
			string(f.Plans[0].HandoutSettings) != string(sampleBody("settings")) {
			t.Errorf("client %s is not what was kept", id)
		}
	}
	if err := s.Check(t.Context()); err != nil {
		t.Error(err)
	}
}

func TestPassphraseAndCode(t *testing.T) {
	ctx := t.Context()
	s, ids, code := sealedFile(t, 3)
	if !s.Sealed() || s.Locked() || s.Unfinished() || s.RecoveryConfirmed() {
		t.Error("after setting a passphrase the file is sealed, open and settled")
	}
	checkClients(t, s, ids)
	_, err := s.SetPassphrase(ctx, phrase, nil)
	wantErr(t, err, ErrAlreadySealed)

	s = again(t, s)
	if !s.Sealed() || !s.Locked() {
		t.Fatal("a sealed file opens locked")
	}
	wantErr(t, s.Unlock(ctx, phrase+"?"), ErrWrongPassphrase)
	if err := s.Unlock(ctx, " "+phrase); err != nil {
		t.Fatal(err)
	}
	checkClients(t, s, ids)
	wantErr(t, s.ConfirmRecoveryCode(ctx, vault.NewRecoveryCode()), ErrWrongCode)
	if err := s.ConfirmRecoveryCode(ctx, code); err != nil || !s.RecoveryConfirmed() {
		t.Errorf("the right code: %v", err)
	}

	s.Lock()
	wantErr(t, s.Recover(ctx, vault.NewRecoveryCode(), otherPhrase), ErrWrongCode)
	wantErr(t, s.Recover(ctx, code, "short"), ErrWeakPassphrase)
	if !s.Locked() {
		t.Fatal("nothing opened it yet")
	}
	if err := s.Recover(ctx, code, otherPhrase); err != nil {
		t.Fatal(err)
	}
	checkClients(t, s, ids)
	s.Lock()
	wantErr(t, s.Unlock(ctx, phrase), ErrWrongPassphrase)
	s = again(t, s)
	if err := s.Unlock(ctx, otherPhrase); err != nil || !s.RecoveryConfirmed() {
		t.Errorf("the new passphrase: %v; the code is still the confirmed one", err)
	}
	checkClients(t, s, ids)
}

func TestANewCodeAndANewPassphrase(t *testing.T) {
	ctx := t.Context()
	s, ids, code := sealedFile(t, 1)
	if err := s.ConfirmRecoveryCode(ctx, code); err != nil {
		t.Fatal(err)
	}
	_, err := s.NewRecoveryCode(ctx, otherPhrase)
	wantErr(t, err, ErrWrongPassphrase)
	next := must(s.NewRecoveryCode(ctx, phrase))(t)
	if s.RecoveryConfirmed() {
		t.Error("a new code was confirmed by nobody")
	}
	wantErr(t, s.ConfirmRecoveryCode(ctx, code), ErrWrongCode)
	if err := s.ConfirmRecoveryCode(ctx, next); err != nil {
		t.Error(err)
	}
	wantErr(t, s.ChangePassphrase(ctx, otherPhrase, otherPhrase), ErrWrongPassphrase)
	wantErr(t, s.ChangePassphrase(ctx, phrase, "password"), ErrWeakPassphrase)
	if err := s.ChangePassphrase(ctx, phrase, otherPhrase); err != nil {
		t.Fatal(err)
	}
	checkClients(t, s, ids)
	s = again(t, s)
	wantErr(t, s.Unlock(ctx, phrase), ErrWrongPassphrase)
	wantErr(t, s.ConfirmRecoveryCode(ctx, next), ErrLocked)
	if err := s.Recover(ctx, next, phrase); err != nil {
		t.Fatal(err)
	}
	checkClients(t, s, ids)
}

// Everything that a locked Store offers, but the few calls that lead in.
func TestALockedFileDoesNothing(t *testing.T) {
	ctx := t.Context()
	s, ids, code := sealedFile(t, 1)
	plan := must(s.LatestPlan(ctx, ids[0]))(t)
	s.Lock()
	s.Lock() // twice is once
	id := ids[0]
	calls := map[string]func() error{
		"CreateClient":  func() error { _, err := s.CreateClient(ctx, nil); return err },
		"Client":        func() error { _, err := s.Client(ctx, id); return err },
		"Clients":       func() error { _, err := s.Clients(ctx, true); return err },
		"VisitClients":  func() error { _, err := s.ClientsWithVisit(ctx, visitDay, visitDay); return err },
		"MarkOpened":    func() error { return s.MarkOpened(ctx, id) },
		"SetNextVisit":  func() error { return s.SetNextVisit(ctx, id, unit.Date{}) },
		"Archive":       func() error { return s.ArchiveClient(ctx, id) },
		"Unarchive":     func() error { return s.UnarchiveClient(ctx, id) },
		"Delete":        func() error { return s.DeleteClient(ctx, id) },
		"SaveRecord":    func() error { _, err := s.SaveRecord(ctx, id, KindText, 1, nil); return err },
		"LatestRecord":  func() error { _, err := s.LatestRecord(ctx, id, KindText); return err },
		"RecordHistory": func() error { _, err := s.RecordHistory(ctx, id, KindText); return err },
		"EachLatest":    func() error { return s.EachLatest(ctx, KindText, func(Record) error { return nil }) },
		"SaveDraft":     func() error { _, err := s.SaveDraft(ctx, id, FormIntake, nil); return err },
		"Draft":         func() error { _, err := s.Draft(ctx, id, FormIntake); return err },
		"DiscardDraft":  func() error { return s.DiscardDraft(ctx, id, FormIntake) },
		"AddIntake": func() error {
			_, err := s.AddIntake(ctx, NewIntake{ClientID: id, VisitDate: visitDay, Height: 1, Weight: 1})
			return err
		},
		"Intakes":        func() error { _, err := s.Intakes(ctx, id); return err },
		"Measurements":   func() error { _, err := s.Measurements(ctx, id); return err },
		"AddPlan":        func() error { _, err := s.AddPlan(ctx, NewPlan{ClientID: id}); return err },
		"Plans":          func() error { _, err := s.Plans(ctx, id); return err },
		"AddHandout":     func() error { _, err := s.AddHandout(ctx, plan.ID, "handout", nil); return err },
		"Handouts":       func() error { _, err := s.Handouts(ctx, id); return err },
		"ClientFile":     func() error { _, err := s.ClientFile(ctx, id); return err },
		"PutSetting":     func() error { return s.PutSetting(ctx, "name", nil) },
		"Setting":        func() error { _, err := s.Setting(ctx, "name"); return err },
		"Settings":       func() error { _, err := s.Settings(ctx); return err },
		"SetMeta":        func() error { return s.SetMeta(ctx, "name", "") },
		"Meta":           func() error { _, err := s.Meta(ctx, "name"); return err },
		"Check":          func() error { return s.Check(ctx) },
		"ChangePhrase":   func() error { return s.ChangePassphrase(ctx, phrase, otherPhrase) },
		"NewCode":        func() error { _, err := s.NewRecoveryCode(ctx, phrase); return err },
		"ConfirmCode":    func() error { return s.ConfirmRecoveryCode(ctx, code) },
		"RotateKey":      func() error { return s.RotateKey(ctx, nil) },
		"Resume":         func() error { return s.Resume(ctx, nil) },
		"OpenNames":      func() error { _, err := s.OpenNames(nil); return err },
		"openKeys":       func() error { _, err := s.openKeys(); return err },
		"seal":           func() error { _, err := s.seal(place{}, nil); return err },
		"open":           func() error { _, err := s.open(place{}, nil); return err },
		"Note":           func() error { return s.Note(ctx, Printed, id, Detail{}) },
		"Trail":          func() error { _, err := s.Trail(ctx, TrailQuery{Limit: 1}); return err },
		"before it ends": func() error { return s.settleWork(ctx) },
	}
	for name, call := range calls {
		t.Run(name, func(t *testing.T) { wantErr(t, call(), ErrLocked) })
	}
	if err := s.Unlock(ctx, phrase); err != nil {
		t.Fatal(err)
	}
	checkClients(t, s, ids)
}

// A file without a passphrase has nothing to lock with.
func TestAFileWithoutAPassphrase(t *testing.T) {
	ctx := t.Context()
	s := mustOpen(t, newPath(t), quick())
	id := newClient(t, s)
	if s.Sealed() || s.Locked() || s.Unfinished() || s.RecoveryConfirmed() || s.UnlockWait() != 0 {
		t.Error("it has no passphrase")
	}
	s.Lock()
	must(s.SaveDraft(ctx, id, FormIntake, []byte("goes on")))(t)
	wantErr(t, s.Unlock(ctx, phrase), ErrNotSealed)
	wantErr(t, s.Recover(ctx, vault.NewRecoveryCode(), phrase), ErrNotSealed)
	wantErr(t, s.RotateKey(ctx, nil), ErrNotSealed)
	wantErr(t, s.ChangePassphrase(ctx, phrase, otherPhrase), ErrNotSealed)
	wantErr(t, s.ConfirmRecoveryCode(ctx, vault.NewRecoveryCode()), ErrNotSealed)
	if err := s.Resume(ctx, nil); err != nil {
		t.Error(err)
	}
	_, err := s.SetPassphrase(ctx, "1234", nil)
	wantErr(t, err, ErrWeakPassphrase)
	if s.Sealed() || !bytes.Contains(allBytes(t, s.Path()), []byte("goes on")) {
		t.Error("a passphrase that is too weak sealed it")
	}
}

// The delay grows, is kept when the program ends, ends when it is told to, and
// does not get in the way of the recovery code.
func TestWrongPassphrasesAreDelayed(t *testing.T) {
	ctx := t.Context()
	s, ids, code := sealedFile(t, 1)
	mustClose(t, s)
	now := time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)
	opts := quick()
	opts.Clock = func() time.Time { return now }
	s = mustOpen(t, s.Path(), opts)
	for range 3 {
		wantErr(t, s.Unlock(ctx, otherPhrase), ErrWrongPassphrase)
	}
	if wait := s.UnlockWait(); wait != 0 {
		t.Errorf("three may be wrong, yet %v to wait", wait)
	}
	wantErr(t, s.Unlock(ctx, otherPhrase), ErrWrongPassphrase)
	wantErr(t, s.Unlock(ctx, phrase), ErrTooSoon)
	mustClose(t, s)

	s = mustOpen(t, s.Path(), opts)
	wantErr(t, s.Unlock(ctx, phrase), ErrTooSoon)
	now = now.Add(-1000 * time.Hour) // somebody set the clock back
	wait := s.UnlockWait()
	if wait != vault.Delay(4) {
		t.Errorf("%v to wait after the clock went back, want %v", wait, vault.Delay(4))
	}
	now = now.Add(wait)
	wantErr(t, s.Unlock(ctx, otherPhrase), ErrWrongPassphrase)
	if longer := s.UnlockWait(); longer != vault.Delay(5) || longer <= wait {
		t.Errorf("%v to wait after five", longer)
	}
	if err := s.Recover(ctx, code, otherPhrase); err != nil {
		t.Fatal(err)
	}
	s.Lock()
	if err := s.Unlock(ctx, otherPhrase); err != nil {
		t.Errorf("the count begins anew: %v", err)
	}
	checkClients(t, s, ids)
}

// A try is counted before it is made: nobody saves it by ending the program.
func TestATryIsCountedFirst(t *testing.T) {
	s, _, _ := sealedFile(t, 0)
	s = again(t, s)
	for range 4 {
		s.countTry(t.Context())
	}
	s = again(t, s)
	wantErr(t, s.Unlock(t.Context(), phrase), ErrTooSoon)
}

// Both copies of the key ring must go before the file cannot be opened, and
// then it is called damage and not a wrong passphrase.
func TestADamagedKeyRing(t *testing.T) {
	s, ids, _ := sealedFile(t, 1)
	mustClose(t, s)
	const spoil = "UPDATE vault SET body = substr(body, 1, 200) || 'x' || substr(body, 202) WHERE name = "
	rawly(t, s.Path(), spoil+"'ring'")
	s = mustOpen(t, s.Path(), quick())
	if err := s.Unlock(t.Context(), phrase); err != nil {
		t.Fatal(err)
	}
	checkClients(t, s, ids)
	mustClose(t, s)
	rawly(t, s.Path(), spoil+"'ring_second'")
	_, err := Open(t.Context(), s.Path(), quick())
	wantErr(t, err, ErrDamaged)
}

// Saves, reads, locking and unlocking at the same time: a save either is there
// afterwards or was refused as locked.
func TestLockingUnderWay(t *testing.T) {
	ctx := t.Context()
	s, _, _ := sealedFile(t, 1)
	id := newClient(t, s)
	one, stop, total := make(chan struct{}), make(chan struct{}), make(chan int, 1)
	go func() {
		n := 0
		defer func() { total <- n; close(one) }()
		for {
			_, err := s.SaveDraft(ctx, id, FormIntake, []byte("typed"))
			if err != nil && !errors.Is(err, ErrLocked) {
				t.Error(err)
				return
			}
			if err == nil {
				n++
			}
			select {
			case <-stop:
				return
			case one <- struct{}{}:
			default:
			}
		}
	}()
	for range 20 {
		<-one // the other is at work
		s.Lock()
		if err := s.Unlock(ctx, phrase); err != nil {
			t.Error(err)
		}
	}
	must(s.SaveDraft(ctx, id, FormIntake, []byte("typed")))(t)
	close(stop)
	n := <-total + 1
	if d := must(s.Draft(ctx, id, FormIntake))(t); d.Revision != n {
		t.Errorf("%d saves were acknowledged, %d are there", n, d.Revision)
	}
}

// A passphrase that is changed while a backup reads the file leaves its trace to
// the next opening.
func TestAPassphraseChangedDuringABackup(t *testing.T) {
	s, ids, _ := sealedFile(t, 1)
	former := bytes.Clone(must(s.ring())(t).Bytes())
	s.backingUp.Lock()
	if err := s.ChangePassphrase(t.Context(), phrase, otherPhrase); err != nil {
		t.Fatal(err)
	}
	s.backingUp.Unlock()
	slot := former[len(former)/10 : len(former)/5] // within the passphrase's part
	if !bytes.Contains(everyFile(t, filepath.Dir(s.Path())), slot) {
		t.Fatal("the former key ring is gone already: the test shows nothing")
	}
	s = again(t, s)
	if bytes.Contains(everyFile(t, filepath.Dir(s.Path())), slot) {
		t.Error("the former key ring is left")
	}
	if err := s.ChangePassphrase(t.Context(), otherPhrase, phrase); !errors.Is(err, ErrLocked) {
		t.Error(err)
	}
	if err := s.Unlock(t.Context(), otherPhrase); err != nil {
		t.Fatal(err)
	}
	checkClients(t, s, ids)
}

// What was done with the keys is in the audit trail, and the trail stays whole.
func TestKeysInTheAuditTrail(t *testing.T) {
	ctx := t.Context()
	s, _, code := sealedFile(t, 1)
	must(s.NewRecoveryCode(ctx, phrase))(t)
	if err := s.RotateKey(ctx, nil); err != nil {
		t.Fatal(err)
	}
	s.Lock()
	wantErr(t, s.Unlock(ctx, otherPhrase), ErrWrongPassphrase)
	if err := s.Unlock(ctx, phrase); err != nil {
		t.Fatal(err)
	}
	wantErr(t, s.Recover(ctx, code, otherPhrase), ErrWrongCode)
	if err := s.ChangePassphrase(ctx, phrase, otherPhrase); err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, e := range must(s.Trail(ctx, TrailQuery{Limit: 5}))(t) {
		got = append(got, e.Words())
	}
	want := "Changed: passphrase, Unlocked: wrong passphrases before 1, Changed: data key, Changed: recovery code, Changed: passphrase"
	if all := strings.Join(got, ", "); all != want {
		t.Errorf("the trail has %s", all)
	}
	if err := s.Check(ctx); err != nil {
		t.Error(err)
	}
}
