package consult

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"handbreadth/domain"
	"handbreadth/domain/unit"
)

// reader walks the JSON and collects what is wrong with it.
type reader struct {
	problems unit.Problems
}

// value is one JSON value as it was written, with the path that leads to it.
type value struct {
	path string
	raw  json.RawMessage
}

// field is a key of an object with what reads its value. Together the fields
// are the schema.
type field struct {
	key  string
	read func(r *reader, v value, in *domain.Intake)
}

func (r *reader) refuse(path, given, accepted string) { r.problems.Add(path, given, accepted) }

// wholeFile stands for the path of what is not inside any key.
const wholeFile = "consult file"

// longestFile is the most bytes that are read: a full consult file has a few
// thousand, so more is another file.
const longestFile = 1 << 20

// document returns the value that the file holds; false where there is none
// that could be read.
func (r *reader) document(data []byte) (value, bool) {
	if len(data) > longestFile {
		r.refuse(wholeFile, fmt.Sprintf("%d bytes", len(data)), "a JSON object of at most 1 MiB")
		return value{}, false
	}
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	decoder := json.NewDecoder(bytes.NewReader(data))
	var raw json.RawMessage
	if err := decoder.Decode(&raw); err != nil {
		r.notJSON(data, decoder.InputOffset(), err)
		return value{}, false
	}
	if rest := bytes.TrimSpace(data[decoder.InputOffset():]); len(rest) > 0 {
		r.refuse(wholeFile, string(rest), "nothing after the end of the JSON object")
	}
	return value{raw: raw}, true
}

func (r *reader) notJSON(data []byte, offset int64, err error) {
	const accepted = "one JSON object in UTF-8"
	if len(bytes.TrimSpace(data)) == 0 {
		r.refuse(wholeFile, "", accepted)
		return
	}
	why := "the text ends too early"
	var syntax *json.SyntaxError
	switch {
	case errors.As(err, &syntax):
		offset, why = syntax.Offset, syntax.Error()
	case errors.Is(err, io.ErrUnexpectedEOF):
		offset = int64(len(data))
	}
	before := data[:min(max(offset, 0), int64(len(data)))]
	line := bytes.Count(before, []byte("\n")) + 1
	lead := before[bytes.LastIndexByte(before, '\n')+1:]
	const shown = 30
	r.refuse(wholeFile, string(lead[max(0, len(lead)-shown):]),
		fmt.Sprintf("%s; line %d, character %d cannot be read: %s", accepted, line, utf8.RuneCount(lead), why))
}

// fields reads an object by its schema: every key that is given once and known.
// It returns how many of the known keys were there; false where the value is no
// object.
func (r *reader) fields(v value, in *domain.Intake, schema []field) (known int, ok bool) {
	if v.raw[0] != '{' {
		r.refuse(v.named(), v.given(), "an object with "+keysOf(schema))
		return 0, false
	}
	seen := map[string]bool{}
	for _, m := range r.members(v) {
		f, isKnown := find(schema, m.key)
		switch {
		case seen[m.key]:
			r.refuse(m.path, "a second time", "each key once")
		case !isKnown:
			r.refuse(m.path, m.given(), "no such key, but "+keysOf(schema))
		default:
			known++
			f.read(r, m.value, in)
		}
		seen[m.key] = true
	}
	return known, true
}

type member struct {
	key string
	value
}

// members splits an object. The text was found to be JSON before, so reading
// on cannot fail.
func (r *reader) members(v value) []member {
	decoder := json.NewDecoder(bytes.NewReader(v.raw))
	_, _ = decoder.Token()
	var all []member
	for decoder.More() {
		from := decoder.InputOffset()
		token, err := decoder.Token()
		key, isText := token.(string)
		if err != nil || !isText {
			break
		}
		m := member{key: key, value: value{path: v.inside(key)}}
		if !wellFormed(v.raw[from:decoder.InputOffset()]) {
			r.refuse(m.path, key, "a key in valid Unicode")
		}
		if decoder.Decode(&m.raw) != nil {
			break
		}
		all = append(all, m)
	}
	return all
}

// items splits an array.
func (v value) items() []value {
	var raws []json.RawMessage
	_ = json.Unmarshal(v.raw, &raws)
	items := make([]value, len(raws))
	for i, raw := range raws {
		items[i] = value{path: fmt.Sprintf("%s[%d]", v.path, i), raw: raw}
	}
	return items
}

func (v value) named() string {
	if v.path == "" {
		return wholeFile
	}
	return v.path
}

// inside returns the path of a key. A key that is no plain word is quoted, so
// that a problem stays on its line.
func (v value) inside(key string) string {
	const longest = 60
	plain := strings.Trim(strings.ToLower(key), "abcdefghijklmnopqrstuvwxyz0123456789_") == ""
	if !plain || key == "" || len(key) > longest {
		key = fmt.Sprintf("%.*q", longest, key)
	}
	if v.path == "" {
		return key
	}
	return v.path + "." + key
}

// given returns what a problem tells back: the text itself, or the JSON.
func (v value) given() string {
	var text string
	if v.raw[0] == '"' && json.Unmarshal(v.raw, &text) == nil {
		return text
	}
	return string(v.raw)
}

// wellFormed reports whether a JSON string is valid Unicode: UTF-8 without
// halves of surrogate pairs. Decoding replaces both by U+FFFD without a word, so
// there are more of that than were written.
func wellFormed(raw []byte) bool {
	var text string
	if at := bytes.IndexByte(raw, '"'); at < 0 || json.Unmarshal(bytes.TrimSpace(raw[at:]), &text) != nil {
		return false
	}
	escapes := strings.ToLower(strings.ReplaceAll(string(raw), `\\`, ""))
	written := strings.Count(string(raw), "\uFFFD") + strings.Count(escapes, `\ufffd`)
	return strings.Count(text, "\uFFFD") == written
}

func find(schema []field, key string) (field, bool) {
	for _, f := range schema {
		if f.key == key {
			return f, true
		}
	}
	return field{}, false
}

func keysOf(schema []field) string {
	keys := make([]string, len(schema))
	for i, f := range schema {
		keys[i] = f.key
	}
	return "the keys " + strings.Join(keys, ", ")
}
