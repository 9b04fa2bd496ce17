package store

import (
	"context"
	"crypto/rand"
	"crypto/sha256"
	"database/sql"
	"encoding/binary"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	"github.com/jmoiron/sqlx"

	"handbreadth/domain/unit"
)

// Action is what was done.
type Action string

// The actions of the audit trail.
const (
	Begun    Action = "begun"     // the trail itself begins
	Created  Action = "created"   // a client
	Opened   Action = "opened"    // a client file
	Changed  Action = "changed"   // something of a client, or a setting
	Printed  Action = "printed"   // a paper
	Exported Action = "exported"  // a file handed out
	Deleted  Action = "deleted"   // a client, for good
	Unlocked Action = "unlocked"  // the practice's file
	BackedUp Action = "backed_up" // the practice's file
	Restored Action = "restored"  // the practice's file, from a backup
)

// Detail says what an action was about. It has no free text, so that nothing of
// a client's identity can stay in the trail.
type Detail struct {
	What   string // a short name such as "plan"; empty where the action says all
	Number int    // of the plan, or the version; 0 for none
}

// AuditEntry is one line of the audit trail.
type AuditEntry struct {
	Number int64 // from 1, without a gap
	At     time.Time
	Action Action
	About  string // see Subject; empty where it is about the practice
	Detail Detail
	// Unreadable: the details do not open, or are not this entry's. CheckTrail
	// says where the trail is broken.
	Unreadable bool
}

// Words says the entry in plain words, without whom it is about.
func (e AuditEntry) Words() string {
	words := strings.ReplaceAll(string(e.Action), "_", " ")
	if words != "" { // empty only where somebody changed it
		words = strings.ToUpper(words[:1]) + words[1:]
	}
	if e.Unreadable {
		return words + " (the details cannot be read)"
	}
	if e.Detail.What != "" {
		words += ": " + strings.NewReplacer("_", " ", ".", " ").Replace(e.Detail.What)
	}
	if e.Detail.Number > 0 {
		words += " " + strconv.Itoa(e.Detail.Number)
	}
	return words
}

// Subject is what entries call a client: the same for all entries of one, and
// of no use to find the id. It stays when the client is deleted.
func Subject(id ClientID) string {
	if id == "" {
		return ""
	}
	sum := sha256.Sum256([]byte("handbreadth audit subject\x00" + string(id)))
	return hex.EncodeToString(sum[:16])
}

// auditBody is what is sealed of an entry. The salt keeps body_sum, which lies
// in clear, from telling what the few possible bodies are.
type auditBody struct {
	What   string `json:"what,omitempty"`
	Number int    `json:"number,omitempty"`
	Salt   []byte `json:"salt"`
}

type auditRow struct {
	Number  int64   `db:"number"`
	At      instant `db:"at"`
	Action  Action  `db:"action"`
	Subject string  `db:"subject"`
	Body    []byte  `db:"body"`
	BodySum []byte  `db:"body_sum"`
	Link    []byte  `db:"link"`
}

const auditColumns = "number, at, action, subject, body, body_sum, link"

func (r auditRow) place() place {
	return place{"audit", strconv.FormatInt(r.Number, 10), "body", 1}
}

// linkAfter is the hash that chains an entry to the one before. Lengths go in,
// so that no two entries run together.
func (r auditRow) linkAfter(before []byte) []byte {
	h := sha256.New()
	at := r.At.UTC().Format(instantLayout)
	for _, part := range []string{
		"handbreadth audit 1", string(before), strconv.FormatInt(r.Number, 10),
		at, string(r.Action), r.Subject, string(r.BodySum),
	} {
		h.Write(binary.BigEndian.AppendUint32(nil, uint32(len(part))))
		h.Write([]byte(part))
	}
	return h.Sum(nil)
}

// auditHead says how long the trail is and how it ends. The body has the same,
// sealed: whoever has no key cannot write another end.
type auditHead struct {
	Entries int64  `db:"entries"`
	Link    []byte `db:"link"`
	Body    []byte `db:"body"`
}

const headColumns = "entries, link, body"

func (h auditHead) place() place { return place{"audit_head", "1", "body", int(h.Entries)} }

// getHead returns the head, the zero value where no trail has begun.
func getHead(ctx context.Context, tx *sqlx.Tx) (h auditHead, err error) {
	err = get(ctx, tx, &h, "SELECT "+headColumns+" FROM audit_head WHERE id = 1")
	if errors.Is(err, sql.ErrNoRows) {
		return auditHead{}, nil
	}
	return h, err
}

// Note adds an entry to the audit trail. The id is empty where the action is
// about the practice. It fails with a unit.Problem for a detail that is not a
// short name.
func (s *Store) Note(ctx context.Context, action Action, id ClientID, about Detail) error {
	return s.write(ctx, func(tx *sqlx.Tx) error { return s.note(ctx, tx, action, id, about) })
}

// note adds an entry in the transaction of what it tells of, so that neither is
// there without the other.
func (s *Store) note(ctx context.Context, tx *sqlx.Tx, action Action, id ClientID, about Detail) error {
	if err := checkEntry(action, about); err != nil {
		return err
	}
	head, err := getHead(ctx, tx)
	if err != nil {
		return err
	}
	if head.Entries == 0 && action != Begun {
		if err := s.note(ctx, tx, Begun, "", Detail{}); err != nil {
			return err
		}
		return s.note(ctx, tx, action, id, about)
	}
	row := auditRow{Number: head.Entries + 1, At: s.now(), Action: action, Subject: Subject(id)}
	plain, err := json.Marshal(auditBody{What: about.What, Number: about.Number, Salt: salt()})
	if err != nil {
		return err
	}
	sum := sha256.Sum256(plain)
	row.BodySum = sum[:]
	row.Link = row.linkAfter(head.Link)
	if row.Body, err = s.seal(row.place(), plain); err != nil {
		return err
	}
	if _, err := run(ctx, tx, "INSERT INTO audit ("+auditColumns+") VALUES (?, ?, ?, ?, ?, ?, ?)",
		row.Number, row.At, row.Action, row.Subject, row.Body, row.BodySum, row.Link); err != nil {
		return err
	}
	return s.putHead(ctx, tx, auditHead{Entries: row.Number, Link: row.Link})
}

func (s *Store) putHead(ctx context.Context, tx *sqlx.Tx, h auditHead) (err error) {
	if h.Body, err = s.seal(h.place(), h.Link); err != nil {
		return err
	}
	return execOne(ctx, tx, "INSERT INTO audit_head (id, entries, link, body) VALUES (1, ?, ?, ?) "+
		"ON CONFLICT (id) DO UPDATE SET entries = excluded.entries, link = excluded.link, body = excluded.body",
		h.Entries, h.Link, h.Body)
}

func salt() []byte {
	out := make([]byte, 16)
	_, _ = rand.Read(out) // never fails: the program ends instead
	return out
}

func checkEntry(action Action, about Detail) error {
	if about.What == "" {
		return checkName("action", string(action))
	}
	return errors.Join(checkName("action", string(action)), checkName("detail", about.What))
}

// TrailQuery says which entries to read.
type TrailQuery struct {
	Client ClientID // of this client only; empty for all
	Before int64    // entries with lower numbers only; 0 for the newest
	Limit  int      // at most so many, over 0
}

// Trail returns entries of the audit trail, the newest first, broken ones too.
func (s *Store) Trail(ctx context.Context, q TrailQuery) (entries []AuditEntry, err error) {
	if q.Limit < 1 {
		return nil, unit.Problem{Field: "limit", Given: strconv.Itoa(q.Limit), Accepted: "a number of 1 or more"}
	}
	where, args := []string{"1 = 1"}, []any{}
	if q.Client != "" {
		where, args = append(where, "subject = ?"), append(args, Subject(q.Client))
	}
	if q.Before > 0 {
		where, args = append(where, "number < ?"), append(args, q.Before)
	}
	query := fmt.Sprintf("SELECT %s FROM audit WHERE %s ORDER BY number DESC LIMIT ?", auditColumns, strings.Join(where, " AND "))
	err = s.read(ctx, func(tx *sqlx.Tx) error {
		var rows []auditRow
		if err := list(ctx, tx, &rows, query, append(args, q.Limit)...); err != nil {
			return err
		}
		entries, err = each(rows, s.showEntry)
		return err
	})
	return entries, err
}

// showEntry opens an entry for reading, as far as it opens.
func (s *Store) showEntry(r auditRow) (AuditEntry, error) {
	e, err := s.openEntry(r)
	if errors.Is(err, ErrDamaged) {
		return AuditEntry{Number: r.Number, At: r.At.Time, Action: r.Action, About: r.Subject, Unreadable: true}, nil
	}
	return e, err
}

// openEntry fails with ErrDamaged when the body does not open or is not its own.
func (s *Store) openEntry(r auditRow) (AuditEntry, error) {
	plain, err := s.open(r.place(), r.Body)
	if err != nil {
		return AuditEntry{}, err
	}
	if sum := sha256.Sum256(plain); string(sum[:]) != string(r.BodySum) {
		return AuditEntry{}, fail(ErrDamaged, fmt.Errorf("the details of audit entry %d are not its own", r.Number))
	}
	var body auditBody
	if err := json.Unmarshal(plain, &body); err != nil {
		return AuditEntry{}, fail(ErrDamaged, fmt.Errorf("audit entry %d: %w", r.Number, err))
	}
	return AuditEntry{
		Number: r.Number, At: r.At.Time, Action: r.Action, About: r.Subject,
		Detail: Detail{What: body.What, Number: body.Number},
	}, nil
}
