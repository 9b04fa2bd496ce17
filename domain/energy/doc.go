// Package energy works out what a person spends and what a goal asks them to
// take in: resting energy, activity, maintenance energy and target energy.
//
// # Resting energy
//
// [Resting] uses the chosen equation, or the measured value, which wins.
// [Compare] puts the published equations side by side: whom each was made from,
// how near it came in validation, whether it is meant for this client and why
// not. [AgreementOf] counts how many fall in the band of the one that is used.
//
//	Mifflin-St Jeor 1990        the default; 19 to 78 years, half of them with obesity
//	Henry 2005                  weight, or weight and height, by age band
//	Schofield (FAO/WHO/UNU)     weight, by age band
//	Harris-Benedict             as revised by Roza and Shizgal 1984
//	Owen 1986, 1987             weight; small groups
//	Müller 2004                 weight, age, sex; Germany
//	Cunningham 1980             lean mass
//	Katch-McArdle               lean mass; the line of Cunningham 1991
//
// The band is 10 % either side: for the default about eight in ten people
// measure inside it. Where lean mass is put in, its standard error joins the
// band; where it is only estimated from body mass index, the equation is said
// not to suit, as it then adds nothing. Published age bands overlap at their
// edges ("18-30", "30-60"): here a band begins at its lower age, our convention.
//
// # Activity
//
// A level (PAL) is told in one of four ways ([Activity]): a class in words, with
// the limits of NASEM 2023 and the levels of EFSA 2013; a number, with 8 % either
// side; a customary factor, which is a convention without a primary source; or a
// day ([LevelOfDay]): hours times METs of the Compendium 2011 over 24 hours, and
// a tenth for food. What was not told counts as sitting quietly and is named. A
// day has a tenth either side: common practice, no source. [DayFaults] says what
// cannot be: more than 24 hours, no hours, an unknown activity, a level over 2.5.
//
// # Maintenance
//
// [Maintenance] is resting energy times the level; the two errors join as
// independent ones. [WithReproduction] adds what pregnancy (70, 260 and 500 kcal
// by trimester) and breastfeeding (500, then 380 kcal) take, for holding weight
// only. [CrossChecks] shows the Dietary Reference Intakes 2005 and 2023 beside it
// and uses them for nothing.
//
// # Goal
//
// [Work] turns a goal into a target. How a weight answers to energy is handed in
// as [Dynamics], because package body is a sibling; without it the static rule
// decides. The static rule is always there to be shown: 3500 kcal a pound
// (Wishnofsky 1958), a straight line where bodies slow down. Guards and the
// nearest safe wish: see package domain.
//
// # Checks
//
// testdata/reference/energy.txt: worked examples of FAO/WHO/UNU 2004 and of
// teaching handouts, the printed table of the Dietary Reference Intakes 2005,
// average requirements of EFSA 2013, and rows of every equation. Coefficients
// that were seen in a copy of the publication: Mifflin, Owen (women), DRI 2005
// (women; the men's reproduce the printed table). In secondary copies: Schofield,
// Harris-Benedict 1984. From memory: Henry (its MJ and kcal forms agree within
// 8 kcal, and it reproduces EFSA's requirements), Müller, Cunningham,
// Katch-McArdle, Owen (men), DRI 2005 overweight, DRI 2023.
package energy
