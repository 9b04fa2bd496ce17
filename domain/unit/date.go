package unit

import (
	"fmt"
	"time"
)

// Date is a day of the Gregorian calendar without a time or a zone. Dates
// compare with ==; the zero Date means that no date was given.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// The years that a date may have.
const (
	firstYear = 1
	lastYear  = 9999
)

// NewDate returns the day, or a [Problem] when the calendar has no such day or
// its year is not 1 to 9999.
func NewDate(year int, month time.Month, day int) (Date, error) {
	d := Date{Year: year, Month: month, Day: day}
	if year < firstYear || year > lastYear || FromTime(d.midnight()) != d {
		return Date{}, Problem{
			Field:    "date",
			Given:    fmt.Sprintf("%04d-%02d-%02d", year, int(month), day),
			Accepted: "a day that the calendar has, in the years 1 to 9999",
		}
	}
	return d, nil
}

// FromTime returns the day that the time has in its own zone.
func FromTime(t time.Time) Date {
	year, month, day := t.Date()
	return Date{Year: year, Month: month, Day: day}
}

// IsZero reports whether no date was given.
func (d Date) IsZero() bool { return d == Date{} }

// String returns the date as ISO 8601 has it, "2026-03-02", or nothing for a
// date that was not given.
func (d Date) String() string {
	if d.IsZero() {
		return ""
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, int(d.Month), d.Day)
}

// Long returns the date in words, "2 March 2026", or nothing for a date that
// was not given.
func (d Date) Long() string {
	if d.IsZero() {
		return ""
	}
	return fmt.Sprintf("%d %s %d", d.Day, d.Month, d.Year)
}

// AddDays returns the date so many days later, or earlier when days is
// negative. A date that was not given stays so.
func (d Date) AddDays(days int) Date {
	if d.IsZero() {
		return d
	}
	return FromTime(d.midnight().AddDate(0, 0, days))
}

// DaysUntil counts the days from d to other: 1 for tomorrow, negative when
// other is earlier, 0 when either date was not given.
func (d Date) DaysUntil(other Date) int {
	if d.IsZero() || other.IsZero() {
		return 0
	}
	const secondsPerDay = 24 * 60 * 60
	return int((other.midnight().Unix() - d.midnight().Unix()) / secondsPerDay)
}

// Before reports whether d is earlier than other. A date that was not given is
// neither before nor after any other.
func (d Date) Before(other Date) bool { return d.DaysUntil(other) > 0 }

// After reports whether d is later than other. A date that was not given is
// neither before nor after any other.
func (d Date) After(other Date) bool { return d.DaysUntil(other) < 0 }

// AgeOn returns the completed years on the other day of someone born on d.
// Whoever was born on 29 February completes a year on 1 March where the year
// has no 29 February (common practice, no source). The result is negative when
// the other day is before birth or when either date was not given.
func (d Date) AgeOn(other Date) Year {
	if d.IsZero() || other.IsZero() {
		return -1
	}
	years := other.Year - d.Year
	if other.Month < d.Month || (other.Month == d.Month && other.Day < d.Day) {
		years--
	}
	return Year(years)
}

// Weekday returns the day of the week.
func (d Date) Weekday() time.Weekday { return d.midnight().Weekday() }

// MarshalText writes the date as [Date.String] does.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads what [ParseDate] accepts; nothing is a date not given.
func (d *Date) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*d = Date{}
		return nil
	}
	read, err := ParseDate("date", string(text))
	if err != nil {
		return err
	}
	*d = read
	return nil
}

func (d Date) midnight() time.Time {
	return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC)
}
