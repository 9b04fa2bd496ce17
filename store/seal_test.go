package store

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"
	"testing"

	"pgregory.net/rapid"
)

// plantWords fills every sealed place with its own word, and one client more
// that is deleted again, so that its pages are used over.
func plantWords(t *testing.T, path string, sealer Sealer) (words []string) {
	t.Helper()
	s := mustOpen(t, path, Options{Sealer: sealer})
	word := func(column string) []byte {
		w := "planted" + column + "word"
		words = append(words, w)
		return []byte(w)
	}
	f := fillClient(t, s, word)
	for revision := range 3 {
		must(s.SaveDraft(t.Context(), f.client.ID, FormIntake, word(fmt.Sprint("draft", revision))))(t)
	}
	for _, name := range []string{"practice", "logo"} {
		if err := s.PutSetting(t.Context(), name, word(name)); err != nil {
			t.Fatal(err)
		}
	}
	must(s.BackUpTo(t.Context(), filepath.Dir(path)))(t)
	mustClose(t, s)
	return words
}

func TestEverySensitiveColumnGoesThroughTheSealer(t *testing.T) {
	sealedPath, plainPath := newPath(t), newPath(t)
	words := plantWords(t, sealedPath, boundSealer{})
	plantWords(t, plainPath, PassThrough{})
	sealed, plain := allBytes(t, sealedPath), allBytes(t, plainPath)
	for _, word := range words {
		if bytes.Contains(sealed, []byte(word)) {
			t.Errorf("%q is readable in the sealed file", word)
		}
	}
	// The same search must be able to find words where nothing is sealed. The
	// first drafts are overwritten, and a document is kept as its sum only.
	for _, column := range []string{"identity", "contact", "text", "health", "answers", "draft2", "intake", "plan", "settings", "logo"} {
		if !bytes.Contains(plain, []byte("planted"+column+"word")) {
			t.Errorf("%s is not found in the unsealed file: the search shows nothing", column)
		}
	}
}

// sealedColumns are the columns of which every value goes through the sealer.
var sealedColumns = map[string]bool{
	"record.body": true, "draft.body": true, "intake.body": true, "plan_version.body": true,
	"plan_version.handout_settings": true, "setting.body": true, "audit.body": true, "audit_head.body": true,
}

// Every column of bytes is sealed, and every column of text is one of those
// that may be in clear.
func TestClearColumnsAreTheKnownOnes(t *testing.T) {
	s := mustOpen(t, newPath(t), Options{})
	clear := map[string]bool{}
	for _, column := range []string{
		"client.id", "client.created_at", "client.updated_at", "client.last_opened_at", "client.archived_at",
		"client.next_visit", "record.id", "record.client_id", "record.kind", "record.version", "record.saved_at",
		"draft.id", "draft.client_id", "draft.form", "draft.revision", "draft.saved_at", "intake.id",
		"intake.client_id", "intake.visit_date", "intake.height_cm", "intake.weight_kg", "intake.waist_cm",
		"intake.pal", "intake.made_at", "plan_version.id", "plan_version.client_id", "plan_version.intake_id",
		"plan_version.number", "plan_version.made_at", "handout.id", "handout.client_id",
		"handout.plan_version_id", "handout.kind", "handout.made_at", "handout.sha256", "setting.name",
		"setting.version", "setting.saved_at", "meta.name", "meta.value", "vault.name", "vault.body",
		"audit.number", "audit.at", "audit.action", "audit.subject", "audit.body_sum", "audit.link",
		"audit_head.id", "audit_head.entries", "audit_head.link",
	} {
		clear[column] = true
	}
	var columns []string
	if err := s.reader.Select(&columns, `SELECT s.name || '.' || c.name FROM sqlite_schema s
		JOIN pragma_table_info(s.name) c WHERE s.type = 'table' AND s.name <> 'goose_db_version'
		AND s.name NOT LIKE 'sqlite%'`); err != nil {
		t.Fatal(err)
	}
	if len(columns) != len(clear)+len(sealedColumns) {
		t.Errorf("%d columns, known are %d clear and %d sealed", len(columns), len(clear), len(sealedColumns))
	}
	for _, column := range columns {
		if clear[column] == sealedColumns[column] {
			t.Errorf("%s is neither known to be clear nor known to be sealed", column)
		}
	}
}

func TestSealingChangesNoSchema(t *testing.T) {
	schema := func(sealer Sealer) (all []string) {
		s := mustOpen(t, newPath(t), Options{Sealer: sealer})
		if err := s.reader.Select(&all, "SELECT coalesce(sql, name) FROM sqlite_schema ORDER BY name"); err != nil {
			t.Fatal(err)
		}
		return all
	}
	if a, b := fmt.Sprint(schema(PassThrough{})), fmt.Sprint(schema(boundSealer{})); a != b {
		t.Errorf("schemas differ:\n%s\n%s", a, b)
	}
}

// moves are what somebody with the file could do to sealed values.
var moves = map[string]string{
	"record to another kind":      "UPDATE record SET body = (SELECT body FROM record WHERE kind = 'text') WHERE kind = 'health'",
	"record to an older version":  "UPDATE record SET version = 9 WHERE kind = 'text'",
	"record to another client":    "UPDATE record SET client_id = (SELECT id FROM client WHERE id <> record.client_id) WHERE kind = 'identity' AND version = 1",
	"draft to another revision":   "UPDATE draft SET revision = revision + 1",
	"draft from an intake":        "UPDATE draft SET body = (SELECT max(body) FROM intake)",
	"plan body to the settings":   "UPDATE plan_version SET handout_settings = body",
	"plan to another number":      "UPDATE plan_version SET number = number + 1",
	"setting to another setting":  "UPDATE setting SET body = (SELECT body FROM setting WHERE name = 'one') WHERE name = 'two'",
	"setting to another revision": "UPDATE setting SET version = version + 1",
}

// With either sealer, a value that is copied to another row, column or version
// is refused; so is one that moves to another client together with its row.
func TestMovedValuesAreRefused(t *testing.T) {
	for name, statement := range moves {
		for _, sealer := range []Sealer{PassThrough{}, boundSealer{}} {
			t.Run(fmt.Sprintf("%s/%T", name, sealer), func(t *testing.T) {
				path := newPath(t)
				s := mustOpen(t, path, Options{Sealer: sealer})
				for _, setting := range []string{"one", "two"} {
					if err := s.PutSetting(t.Context(), setting, []byte(setting)); err != nil {
						t.Fatal(err)
					}
				}
				fillClient(t, s, func(column string) []byte { return []byte("a " + column) })
				must(s.CreateClient(t.Context(), nil))(t)
				if err := s.Check(t.Context()); err != nil {
					t.Fatalf("before the move: %v", err)
				}
				if err := unguard(t.Context(), s.writer); err != nil {
					t.Fatal(err)
				}
				if _, err := s.writer.Exec(statement); err != nil {
					t.Fatal(err)
				}
				wantErr(t, s.Check(t.Context()), ErrDamaged)
			})
		}
	}
}

func TestAFailingSealerKeepsNothing(t *testing.T) {
	s := mustOpen(t, newPath(t), Options{Sealer: brokenSealer{}})
	if _, err := s.CreateClient(t.Context(), map[Kind][]byte{KindText: nil}); !errors.Is(err, errBroken) {
		t.Errorf("got %v", err)
	}
	if all := must(s.Clients(t.Context(), true))(t); len(all) != 0 {
		t.Errorf("%d clients were kept", len(all))
	}
}

var errBroken = errors.New("no key")

type brokenSealer struct{ PassThrough }

func (brokenSealer) Seal(string, string, string, int, []byte) ([]byte, error) { return nil, errBroken }

func TestPassThroughGivesBackWhatItGot(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		text := rapid.String()
		table, row, column := text.Draw(rt, "table"), text.Draw(rt, "row"), text.Draw(rt, "column")
		version, plain := rapid.Int().Draw(rt, "version"), rapid.SliceOf(rapid.Byte()).Draw(rt, "plain")
		sealed, err := PassThrough{}.Seal(table, row, column, version, plain)
		if err != nil {
			rt.Fatal(err)
		}
		back, err := PassThrough{}.Open(table, row, column, version, sealed)
		if err != nil || !bytes.Equal(back, plain) {
			rt.Fatalf("%q came back as %q, %v", plain, back, err)
		}
		bit := rapid.IntRange(0, len(sealed)*8-1).Draw(rt, "bit")
		sealed[bit/8] ^= 1 << (bit % 8)
		if _, err := (PassThrough{}).Open(table, row, column, version, sealed); err == nil {
			rt.Fatalf("bit %d flipped and not noticed", bit)
		}
	})
}

func FuzzPassThroughOpen(f *testing.F) {
	sealed, err := PassThrough{}.Seal("t", "r", "c", 1, []byte("body"))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(sealed)
	f.Add([]byte{})
	f.Add([]byte{markPlain, 0, 0, 0})
	f.Fuzz(func(t *testing.T, in []byte) {
		plain, err := PassThrough{}.Open("t", "r", "c", 1, in)
		if err != nil {
			return
		}
		again, err := PassThrough{}.Seal("t", "r", "c", 1, plain)
		if err != nil || !bytes.Equal(again, in) {
			t.Errorf("%x opened, but sealing again gives %x, %v", in, again, err)
		}
	})
}
