package store

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

func init() { moreRoles["seal"] = sealUntilKilled }

// sealUntilKilled gives the file a passphrase or goes on with what was
// interrupted, and then changes the key again and again. Meanwhile it saves a
// draft of the first client and acknowledges each save. It tells each step.
func sealUntilKilled(path string) error {
	ctx := context.Background()
	s, err := Open(ctx, path, quick())
	if err != nil {
		return err
	}
	fmt.Println("opened")
	page := func(done, _ int) { fmt.Println("page", done) }
	trouble := make(chan error)
	if !s.Sealed() {
		go saveUntilKilled(ctx, s, trouble)
		code, err := s.SetPassphrase(ctx, phrase, page)
		fmt.Println("code", code)
		if err != nil {
			return err
		}
	} else {
		if err := s.Unlock(ctx, phrase); err != nil {
			return err
		}
		go saveUntilKilled(ctx, s, trouble)
		if err := s.Resume(ctx, page); err != nil {
			return err
		}
	}
	for {
		select {
		case err := <-trouble:
			return err
		default:
		}
		if err := s.RotateKey(ctx, page); err != nil {
			return err
		}
		fmt.Println("rotated")
	}
}

func saveUntilKilled(ctx context.Context, s *Store, trouble chan<- error) {
	clients, err := s.Clients(ctx, true)
	if err != nil || len(clients) == 0 {
		trouble <- errors.Join(err, errors.New("no clients"))
		return
	}
	id := clients[len(clients)-1].ID
	for {
		d, err := s.SaveDraft(ctx, id, "kills", killBody(1))
		if err != nil {
			trouble <- err
			return
		}
		fmt.Println("draft", id, d.Revision)
	}
}

// A first sealing and then changes of the key, killed at any moment: the file
// has no passphrase yet, or the passphrase opens it; everything is there, every
// acknowledged save too; and once the work is finished nothing is readable.
func TestKilledWhileSealingAndRotating(t *testing.T) {
	ctx := t.Context()
	rng := newRandom(t)
	var words []string
	var path string
	var ids []ClientID
	states := map[string]int{}
	for kill := range kills(t) {
		if kill%5 == 0 { // begin with an unsealed file again
			path, ids, words = newPath(t), nil, nil
			s := mustOpen(t, path, quick())
			for range 60 {
				ids = append(ids, fillClient(t, s, func(column string) []byte {
					words = append(words, fmt.Sprintf("planted%sword%dx", column, len(words)))
					return []byte(words[len(words)-1])
				}).client.ID)
			}
			mustClose(t, s)
		}
		saved := runAndKillSealing(t, path, rng)
		s := mustOpen(t, path, quick())
		if !s.Sealed() {
			states["not sealed yet"]++
			mustClose(t, s)
			continue
		}
		if err := s.Unlock(ctx, phrase); err != nil {
			t.Fatal(err)
		}
		checkDrafts(t, s, ids, saved)
		if s.Unfinished() {
			states["in the middle"]++
		} else {
			states["between"]++
		}
		if kill%5 == 4 {
			if err := s.Resume(ctx, nil); err != nil || s.Unfinished() {
				t.Fatal(err)
			}
			checkDrafts(t, s, ids, saved)
		}
		finished := !s.Unfinished()
		mustClose(t, s)
		if all := everyFile(t, filepath.Dir(path)); finished {
			for _, w := range words {
				if bytes.Contains(all, []byte(w)) {
					t.Fatalf("%q is readable", w)
				}
			}
		}
	}
	t.Logf("figure: %d kills during a sealing or a change of the key survived: %v", kills(t), states)
}

func checkDrafts(t *testing.T, s *Store, ids []ClientID, saved map[ClientID]int) {
	t.Helper()
	if err := s.Check(t.Context()); err != nil {
		t.Fatal(err)
	}
	if got := len(must(s.Clients(t.Context(), true))(t)); got != len(ids) {
		t.Errorf("%d clients, want %d", got, len(ids))
	}
	for id, revision := range saved {
		if d := must(s.Draft(t.Context(), id, "kills"))(t); d.Revision < revision || !bytes.Equal(d.Body, killBody(1)) {
			t.Errorf("draft %d was acknowledged, %d is there", revision, d.Revision)
		}
	}
}

// runAndKillSealing lets the other program tell some steps, kills it a random
// moment later, and returns which saves it had acknowledged.
func runAndKillSealing(t *testing.T, path string, rng *rand.Rand) map[ClientID]int {
	t.Helper()
	cmd, out := startRole(t, "seal", path)
	saved := map[ClientID]int{}
	lines, left := bufio.NewScanner(out), 1+rng.IntN(120)
	if rng.IntN(3) == 0 {
		left = 1 // before much has begun
	}
	for lines.Scan() {
		if words := strings.Fields(lines.Text()); words[0] == "draft" {
			saved[ClientID(words[1])] = must(strconv.Atoi(words[2]))(t)
		}
		if left--; left == 0 {
			time.Sleep(time.Duration(rng.IntN(20_000)) * time.Microsecond) // to land inside a page
			if err := cmd.Process.Kill(); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := cmd.Wait(); err == nil || left > 0 {
		t.Fatalf("the program ended by itself: %v", err)
	}
	return saved
}
