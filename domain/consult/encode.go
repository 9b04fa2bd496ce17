package consult

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"handbreadth/domain"
)

// ErrHeld says that a plan is held: nothing of it is written.
var ErrHeld = errors.New("the plan is held until a reason is given")

// ErrPlanFile is wrapped by every error of [Decode].
var ErrPlanFile = errors.New("not a plan file")

// Encode writes the plan file, indented and in a fixed order: the targets of a
// plan that may be issued, or the findings alone where it is referred. The
// error is [ErrHeld], or says that a figure is no number.
func Encode(plan domain.Plan) ([]byte, error) {
	if !plan.Issuable() && !plan.Gate.Referred() {
		return nil, ErrHeld
	}
	return write(fileOf(plan))
}

func write(f File) ([]byte, error) {
	var out bytes.Buffer
	encoder := json.NewEncoder(&out)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	if err := encoder.Encode(f); err != nil {
		return nil, fmt.Errorf("write the plan file: %w", err)
	}
	return out.Bytes(), nil
}

// Decode reads a plan file that [Encode] wrote. The error wraps [ErrPlanFile].
func Decode(data []byte) (File, error) {
	var f File
	decoder := json.NewDecoder(bytes.NewReader(data))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&f); err != nil {
		return File{}, fmt.Errorf("%w: %w", ErrPlanFile, err)
	}
	if _, err := decoder.Token(); !errors.Is(err, io.EOF) {
		return File{}, fmt.Errorf("%w: something follows its end", ErrPlanFile)
	}
	if err := f.check(); err != nil {
		return File{}, fmt.Errorf("%w: %w", ErrPlanFile, err)
	}
	return f, nil
}

// check reports what a file must not be: targets exist just where it is issued.
func (f File) check() error {
	switch {
	case f.Status != Issued && f.Status != Referred:
		return fmt.Errorf("status %q is neither %s nor %s", f.Status, Issued, Referred)
	case f.Status == Issued && (f.Targets == nil || len(f.Meals) == 0):
		return errors.New("it is issued and has no targets")
	case f.Status == Referred && f.Targets != nil:
		return errors.New("it is referred and has targets")
	}
	return nil
}
