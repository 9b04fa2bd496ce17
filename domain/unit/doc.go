// Package unit holds the typed quantities that the whole program speaks in,
// and reads and prints them the way people say them.
//
// # Quantities
//
// Every type is a float64 in one fixed unit, so that a kilogram can never be
// passed where a centimetre is wanted. Conversions are named functions
// ([Kilocalorie.Kilojoules], [Kilogram.Pounds]) on exact equivalences: the pound
// and inch of 1959, the thermochemical calorie of 4.184 J, and the US customary
// volumes of NIST Handbook 44. A [Date] is a day without a clock or a time zone.
//
// # Reading
//
// ParseWeight, ParseHeight, ParseLength, ParseEnergy, ParsePercent, ParseRate and
// [ParseDate] read what people write: "11 st 6 lb", "5 ft 5½ in", "1m68", "72,5 kg",
// "8.4 MJ", "0.5 kg a week", "2 March 2026". The forms that end in In also read a
// number without a unit, in the units of the practice; where people use several
// units side by side they refuse it, as 70 could be two weights. What could be
// meant in two ways is refused and never turned round: "5.11 ft", "3/13/2026".
//
// # Saying what is wrong
//
// An error is a [Problem] (or [Problems]): the field, what was given and what is
// accepted. It fits one line.
//
// # Printing
//
// A [Style] prints quantities in the units of the practice, with its decimal
// mark. What it prints can be typed back.
//
// # Checks
//
// Fuzz tests keep the readers from crashing and from reading back another value;
// tables hold the edges and the spellings of each unit.
package unit
