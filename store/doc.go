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
// # Finding a client by name
//
// Names are sealed, so they are searched in memory. At start, read them once
// with [Store.EachLatest] of [KindIdentity], take the name out of each body,
// and build a [NameIndex]; keep it up to date with Put and Remove.
//
// # Sealing
//
// Every body goes through the [Sealer] of [Options], bound to its table, row,
// column and version. [PassThrough], the default, does not encrypt.
//
// # Immutability and deletion
//
// There is no call that changes a record version, an intake, a plan or a
// handout entry, and the database itself refuses it too ([ErrImmutable]).
// [Store.DeleteClient] removes everything on a client in one transaction and
// wipes the traces from the file. Copies made before (backups, "before-v"
// files) still have the client: [Store.OldCopies] names those beside the file.
//
// # Backup
//
// [Store.Backup] writes a consistent copy and verifies it by opening and
// counting. The copy is exactly as protected as the file: with PassThrough it
// is not encrypted.
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
