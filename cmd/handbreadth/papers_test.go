package main

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"handbreadth/ui"
)

func TestAPaperIsSavedAndEntered(t *testing.T) {
	ctx, d := context.Background(), newDesk(t, t.TempDir())
	f := newFile(t, d, "Wren Applecart")
	form := complete()
	plan := planOf(t, form)
	kept, err := f.Keep(ctx, form, plan)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "paper.pdf")
	if err := f.Papers().Save(ctx, plan, kept, ui.Choice{Paper: "A4"}, path); err != nil {
		t.Fatal(err)
	}
	written, err := os.ReadFile(path)
	if err != nil || !bytes.HasPrefix(written, []byte("%PDF-")) {
		t.Errorf("the file begins %.8q, %v", written, err)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
	if entries, err := d.records.Handouts(ctx, f.id); err != nil || len(entries) != 1 {
		t.Errorf("%d entries, %v", len(entries), err)
	}
	if name := f.Papers().SuggestedName(plan); name != "Wren plan 2026-03-02.pdf" {
		t.Errorf("suggested %q", name)
	}
}

func TestAPaperThatCannotBeWrittenIsNotEntered(t *testing.T) {
	ctx, d := context.Background(), newDesk(t, t.TempDir())
	f := newFile(t, d, "Wren Applecart")
	form := complete()
	plan := planOf(t, form)
	kept, err := f.Keep(ctx, form, plan)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "missing", "paper.pdf")
	if err := f.Papers().Save(ctx, plan, kept, ui.Choice{Paper: "A4"}, path); err == nil {
		t.Error("saved into a folder that is not there")
	}
	if entries, err := d.records.Handouts(ctx, f.id); err != nil || len(entries) != 0 {
		t.Errorf("%d entries, %v", len(entries), err)
	}
}

func TestTheShelfIsPrivateAndEmptied(t *testing.T) {
	s := &shelf{folder: filepath.Join(t.TempDir(), "print")}
	path, err := s.put("paper.pdf", []byte("%PDF-"))
	if err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(s.folder); err != nil || info.Mode().Perm() != 0o700 {
		t.Errorf("the folder has mode %v, %v", info.Mode(), err)
	}
	if err := s.empty(); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(path); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("the paper is still there: %v", err)
	}
}
