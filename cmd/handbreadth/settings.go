package main

import (
	"context"
	"encoding/json"
	"errors"
	"strings"
	"unicode"

	"handbreadth/store"
	"handbreadth/ui"
)

// The names of the settings of a practice.
const (
	settingPractice = "practice"
	settingLogo     = "logo"
)

// isSearch reports whether a query has anything to search by.
func isSearch(query string) bool {
	return strings.IndexFunc(query, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }) >= 0
}

func loadSettings(ctx context.Context, records *store.Store) (s ui.Settings, err error) {
	kept, err := records.Setting(ctx, settingPractice)
	if errors.Is(err, store.ErrNotFound) {
		return s, nil
	}
	if err != nil {
		return s, err
	}
	if err := json.Unmarshal(kept.Body, &s); err != nil {
		return s, err
	}
	if s.LogoName == "" {
		return s, nil
	}
	logo, err := records.Setting(ctx, settingLogo)
	s.Logo = logo.Body
	return s, err
}

// Settings returns what the practice has set.
func (d *desk) Settings() ui.Settings {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.settings
}

// SaveSettings keeps the settings; the logo only where it is another one.
func (d *desk) SaveSettings(ctx context.Context, s ui.Settings) error {
	former := d.Settings()
	if string(former.Logo) != string(s.Logo) {
		if err := d.records.PutSetting(ctx, settingLogo, s.Logo); err != nil {
			return err
		}
	}
	body, err := json.Marshal(s)
	if err != nil {
		return err
	}
	if err := d.records.PutSetting(ctx, settingPractice, body); err != nil {
		return err
	}
	d.mu.Lock()
	d.settings = s
	d.mu.Unlock()
	if d.remember != nil {
		d.remember(s)
	}
	return nil
}
