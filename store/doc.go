// Package store keeps the practice's records in one file: clients, what was
// asked and measured, plans, drafts, and the settings of the practice.
//
// It keeps records, never the program's own structs. A caller hands over
// bytes (usually JSON) and gets the same bytes back; only what must be found or
// drawn without opening bodies has a column of its own: dates, measurements,
// versions. No name is ever in a clear column.
//
// # Opening
//
//	s, err := store.Open(ctx, path, store.Options{})
//	if err != nil {
//		show(store.Plain(err)) // plain words for the person at the desk
//		log(err)               // the rest
//	}
//	defer s.Close()
//
// [Open] makes the folder (0700) and the file (0600) when they are missing,
// takes the file's lock for this program, looks at an existing file before
// changing anything, and brings an older one up to date on a copy, keeping the
// file as it was as "<path>.before-v<N>". It fails with [ErrInUse],
// [ErrReadOnlyFolder], [ErrDamaged], [ErrForeign], [ErrNewerVersion],
// [ErrDiskFull] or [ErrUpdate]; the file is then as it was. The look takes time
// in proportion to the file: open it beside the drawing of the first window.
//
// # What is kept
//
//   - A [Client] is a random id and a few dates: [Store.CreateClient],
//     [Store.Client], [Store.Clients], [Store.MarkOpened],
//     [Store.SetNextVisit], [Store.ArchiveClient], [Store.UnarchiveClient],
//     [Store.DeleteClient].
//   - A [Record] is a sealed body of some [Kind] (identity, contact, text,
//     health, answers), in versions that are only ever added:
//     [Store.SaveRecord] (give the version that you read; somebody else's newer
//     one is [ErrConflict]), [Store.LatestRecord], [Store.RecordAt],
//     [Store.RecordHistory], [Store.EachLatest].
//   - A [Draft] is a form as it is being typed, one a client and [Form]:
//     [Store.SaveDraft] is on the disk when it returns; [Store.Draft],
//     [Store.DiscardDraft]. The client needs no intake yet.
//   - An [Intake] is the immutable snapshot of a visit: [Store.AddIntake],
//     [Store.Intake], [Store.Intakes], [Store.Measurements] (without bodies).
//   - A [Plan] is an immutable, numbered version: [Store.AddPlan],
//     [Store.Plan], [Store.LatestPlan], [Store.Plans].
//   - A [Handout] says what was printed, when and from which plan:
//     [Store.AddHandout], [Store.Handouts].
//   - Settings of the practice (its logo among them) and the program's own
//     notes: [Store.PutSetting], [Store.Setting], [Store.Settings],
//     [Store.SetMeta], [Store.Meta].
//
// [Store.ClientFile] reads everything on one client in one transaction.
//
// # A file with a passphrase
//
// A new file has no passphrase: everything is written as it is, which is right
// for demonstration data and for nothing else.
//
//	code, err := s.SetPassphrase(ctx, passphrase, progress)
//	if !code.IsZero() {
//		print(code.Groups()) // even with an error: it is shown only now
//	}
//
// [Store.SetPassphrase] makes a key ring (package vault says what that is), and
// from that moment seals what is written. Then it seals what is there already,
// page by page; removes the unsealed copies beside the file; and writes the file
// anew, so that no page, no free space and no log has a word of what was there.
// What the disk itself keeps of replaced blocks is out of its reach, and so are
// unsealed backups elsewhere.
//
// From then on [Open] gives a locked Store, without asking for anything and as
// quickly as before. [Store.Locked], [Store.Sealed], [Store.UnlockWait],
// [Store.Unlock], [Store.Recover], [Store.Path] and [Store.Close] work;
// everything else fails with [ErrLocked].
//
//	err := s.Unlock(ctx, passphrase) // takes about a second: beside the window
//	switch {
//	case errors.Is(err, store.ErrWrongPassphrase): // Plain(err) says what to look for
//	case errors.Is(err, store.ErrTooSoon):         // UnlockWait tells how long
//	case err == nil:
//		background(s.Resume) // goes on with what was interrupted, mostly nothing
//	}
//
// [Store.Recover] opens it with the recovery code and sets a new passphrase.
// [Store.ConfirmRecoveryCode] and [Store.RecoveryConfirmed] tell whether anybody
// ever typed the code back from its sheet; until then, remind them.
// [Store.ChangePassphrase] and [Store.NewRecoveryCode] ask for the passphrase;
// [Store.RotateKey] makes a new data key and seals everything with it. Do both
// where somebody else may know the passphrase: the old one still opens old copies.
//
// SetPassphrase and RotateKey can be cancelled and killed at any moment. The file
// works in between, with both keys or with sealed and unsealed values side by
// side; [Store.Unfinished] tells, and [Store.Resume] goes on. Only while a first
// sealing is unfinished does an unsealed value still open.
//
// [Store.Lock] takes the keys out of memory. It waits for a save on its way,
// cancels long work, and empties the indexes of names.
//
// # Finding a client by name
//
// Names are sealed, so they are searched in memory. [Store.OpenNames] reads them
// in the background, the clients opened last first, and returns a [NameIndex]
// that answers at once with what it has. Keep it up to date with Put and Remove:
// what they say wins over what is still being read. At Lock it is emptied for
// good; open another after the next Unlock.
//
// # Sealing
//
// Every body goes through a [Sealer], bound to its table, row, column and
// version: the key ring's keys once the file has a passphrase, before that the
// one of [Options], and that is [PassThrough] by default, which does not encrypt.
//
// To add a sealed column: give its values a place, seal and open them inside
// write and read, and add the table to sealedTables in rotate.go. Tests compare
// that list with the schema.
//
// # Immutability and deletion
//
// There is no call that changes a record version, an intake, a plan or a
// handout entry, and the database itself refuses it too ([ErrImmutable]).
// [Store.DeleteClient] removes everything on a client in one transaction and
// wipes the traces from the file; show [RetentionNotice] before. Copies made
// before still have the client: [Store.OldCopies] names those beside the file
// and [Store.RemoveOldCopies] removes them, backups go as they are rotated.
//
// # The audit trail
//
// What is done is noted in the same transaction: created, opened, changed,
// printed, deleted, unlocked, backed up, restored. [Store.Note] adds what only
// the program knows, such as a file handed out. A form that is being typed is
// one entry a sitting. [Store.Trail] reads entries, the newest first.
//
// An entry names no client but a one-way [Subject], and says no more than a
// [Detail], so it can outlive the client. Each carries a hash over itself and
// the entry before; the head has their number and the last hash, in clear and
// sealed. The database refuses to change or remove entries, and
// [Store.CheckTrail] finds where somebody did it all the same: taken out,
// changed, swapped, put in, cut off. Only a whole older copy of the file has a
// sound trail too: [Store.CheckTrailHolds] compares with a backup. The hash is
// over the sum of the plain body, so a change of the key does not break it.
//
// # Backup and restore
//
// [Store.SetBackupFolder] chooses and marks a folder, [BackupDue] decides, and
// [Store.BackUp] copies one moment of the file while reading and saving go on,
// checks and counts the copy, encrypts it where the file has a passphrase, reads
// it back, gives it its name, and removes those that newer ones supersede.
// [Backups] lists a folder; [Store.BackUpTo] makes one by hand elsewhere.
//
// [PrepareRestore] unpacks one beside the client file and checks all of it;
// show what is [Inside] before [Restoring.Exchange], which keeps the present
// file beside as "<path>.before-restore-<moment>". [Rehearse] does all of it on
// trial. A backup is opened by the passphrase or the recovery code of its day
// ([Secret]), on any machine.
//
// THREATS.md says what all of this protects against, and what not.
//
// # Threads
//
// A Store and a NameIndex may be used from several goroutines. Writes go
// through one connection, one at a time; reads have their own and see the last
// committed state.
//
// # What moves to PostgreSQL unchanged
//
// The migrations, and every statement outside sqlite.go: portable SQL, placed
// through Rebind. sqlite.go alone knows SQLite: connection settings, looking
// at a file, copying, the guards against change, and the meaning of its errors.
package store
