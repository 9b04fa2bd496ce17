package ui

import (
	"context"
	"errors"
	"strings"
	"time"
)

// fakeOpener opens fake practices.
type fakeOpener struct {
	begun   bool
	desk    *fakeDesk
	door    *fakeDoor // made where it is nil
	trouble error
	look    Settings

	restored   Restoring
	restoreErr error
}

func (o *fakeOpener) Begun() bool                            { return o.begun }
func (o *fakeOpener) Look() Settings                         { return o.look }
func (o *fakeOpener) Practice(context.Context) (Door, error) { return o.open(false) }
func (o *fakeOpener) Demo(context.Context) (Door, error)     { return o.open(true) }

func (o *fakeOpener) open(demo bool) (Door, error) {
	if o.trouble != nil {
		return nil, o.trouble
	}
	if o.door == nil {
		o.door = &fakeDoor{passphrase: somePhrase, sealed: true, tried: true}
	}
	o.door.desk, o.door.demo = o.desk, demo
	if demo {
		o.door.sealed, o.door.locked = false, false
	}
	return o.door, nil
}

func (o *fakeOpener) Advise(passphrase string) Advice {
	return Advice{Accepted: len(passphrase) > 7, Words: "advice"}
}

func (o *fakeOpener) Describe(_ context.Context, path string) (Backup, error) {
	return Backup{Path: path}, nil
}

func (o *fakeOpener) Prepare(context.Context, string, string) (Restoring, error) {
	return &fakeRestoring{}, nil
}

func (o *fakeOpener) Restore(_ context.Context, r Restoring) error {
	o.restored = r
	if o.restoreErr == nil {
		o.begun = true
		o.door = &fakeDoor{passphrase: "of that day", sealed: true, locked: true}
	}
	return o.restoreErr
}

type fakeRestoring struct{ discarded bool }

func (r *fakeRestoring) Inside() Inside          { return Inside{Clients: 3} }
func (r *fakeRestoring) Present() (Inside, bool) { return Inside{}, false }

func (r *fakeRestoring) Discard() error {
	r.discarded = true
	return nil
}

// An invented passphrase and code.
const somePhrase = "lantern orchard seven kites"

var someCode = Code{Groups: strings.Fields("ABCD EFGH JKLM NOPR STUW XYZA BCDE FGHJ")}

// fakeDoor is a door that guards nothing.
type fakeDoor struct {
	desk                 *fakeDesk
	demo, sealed, locked bool
	tried, unfinished    bool
	passphrase           string
	sealErr              error // the rest of the sealing is not done
	sealFails            error // nothing is sealed

	locks, resumed, backups int
	backupErr               error
	printed                 []string
}

func (d *fakeDoor) Demo() bool                { return d.demo }
func (d *fakeDoor) Sealed() bool              { return d.sealed }
func (d *fakeDoor) Locked() bool              { return d.locked }
func (d *fakeDoor) Wait() time.Duration       { return 0 }
func (d *fakeDoor) Advise(text string) Advice { return (&fakeOpener{}).Advise(text) }

func (d *fakeDoor) Seal(_ context.Context, passphrase string, _ Progress) (Code, error) {
	if d.sealFails != nil {
		return Code{}, d.sealFails
	}
	d.sealed, d.passphrase, d.unfinished, d.tried = true, passphrase, d.sealErr != nil, false
	return someCode, d.sealErr
}

func (d *fakeDoor) Unlock(_ context.Context, passphrase string) error {
	if passphrase != d.passphrase {
		return errors.New("wrong passphrase")
	}
	d.locked = false
	return nil
}

func (d *fakeDoor) ReadCode(typed string) (Code, error) {
	return Code{Groups: strings.Fields(strings.ToUpper(typed))}, nil
}

func (d *fakeDoor) Recover(_ context.Context, _ Code, passphrase string) (Code, error) {
	d.locked, d.passphrase = false, passphrase
	return someCode, nil
}

func (d *fakeDoor) Change(_ context.Context, _, passphrase string) error {
	d.passphrase = passphrase
	return nil
}

func (d *fakeDoor) Renew(context.Context, string) (Code, error) { return someCode, nil }

func (d *fakeDoor) Confirm(context.Context, Code) error {
	d.tried = true
	return nil
}

func (d *fakeDoor) SheetName() string { return "sheet.pdf" }

func (d *fakeDoor) PrintSheet(_ context.Context, code Code) error {
	d.printed = append(d.printed, code.String())
	return nil
}

func (d *fakeDoor) SaveSheet(context.Context, Code, string) error { return nil }

func (d *fakeDoor) Enter(context.Context) (Desk, error) {
	if d.locked {
		return nil, errors.New("locked")
	}
	return d.desk, nil
}

func (d *fakeDoor) Lock(context.Context) { d.locked, d.locks = true, d.locks+1 }
func (d *fakeDoor) Keeper() Keeper       { return &fakeKeeper{door: d} }

func (d *fakeDoor) BackUpIfDue(context.Context) error {
	d.backups++
	return d.backupErr
}

// fakeKeeper keeps nothing.
type fakeKeeper struct {
	fakeOpener
	door *fakeDoor
}

func (k *fakeKeeper) State() KeepState {
	return KeepState{Demo: k.door.demo, Sealed: k.door.sealed, Unfinished: k.door.unfinished, SheetTried: k.door.tried}
}

func (k *fakeKeeper) Resume(context.Context, KeyMoves) error {
	k.door.resumed++
	k.door.unfinished = false
	return nil
}

func (k *fakeKeeper) TryCode(context.Context, string) error     { return nil }
func (k *fakeKeeper) ChangeKey(context.Context, KeyMoves) error { return nil }
func (k *fakeKeeper) Backups(context.Context) (Backups, error) {
	return Backups{DueWords: "No folder for backups is chosen yet."}, nil
}
func (k *fakeKeeper) SetFolder(context.Context, string) error { return nil }
func (k *fakeKeeper) BackUp(context.Context) (Backup, error)  { return Backup{}, nil }

func (k *fakeKeeper) BackUpTo(context.Context, string) (Backup, error) { return Backup{}, nil }

func (k *fakeKeeper) Rehearse(context.Context, string, string) (Inside, error) { return Inside{}, nil }
func (k *fakeKeeper) Record(context.Context, int64, int) ([]Entry, error)      { return nil, nil }
func (k *fakeKeeper) CheckRecord(context.Context) (string, error)              { return "", nil }
func (k *fakeKeeper) OldCopies(context.Context) (int, error)                   { return 0, nil }
func (k *fakeKeeper) RemoveOldCopies(context.Context) (int, error)             { return 0, nil }
