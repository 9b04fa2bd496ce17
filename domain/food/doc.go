// Package food is the food table: what common foods of the world's kitchens
// bring, how much of each fills a hand measure, who eats it and who must not.
// It makes the baskets that the hand measures are filled from, the lists of
// foods for a measure, and what any amount of a food counts as.
//
// # Where the figures come from
//
// foods.csv has one line a food. The figures for a hundred grams are those of
// the USDA National Nutrient Database for Standard Reference 28 (2016, public
// domain), carried over row by row under the NDB number in the line, as they
// stand there: an empty cell is a figure that the source does not give, never
// nought. Carbohydrate is by difference, with fibre inside it; energy is the
// source's own and is not reckoned again from the macros. The weights of the
// household measures are the source's too, each with its number in the list of
// that food. A test compares every line with the reference where that is at
// hand, and a part of it with a copy of the source's rows kept beside the test.
//
// # What is own judgement
//
//   - The names, the other words a food is found by, its class, its kitchens,
//     and which of the source's household measures is one portion.
//   - Allergens, of the fourteen groups of EU law and the nine of US law, by what
//     a food is made of and by what is usual in recipes that differ: bread may
//     hold milk and soya, a sausage mustard, dried fruit sulphite. Where a recipe
//     cannot be known, as in restaurants, the cell says unknown and the food
//     counts as containing all of them. A label always knows better.
//   - Origin, which decides the eating patterns. It is the strictest reading:
//     meat also for gelatine, lard, meat stock and cheeses whose protected recipe
//     has calf rennet; fish also for kimchi and oyster sauce; dairy or egg also
//     for honey. What wine is fined with does not count, nor does milk that plain
//     bread may hold: the allergens tell of it.
//   - The shares of the usual basket: common practice, no source. Nought means
//     that a food is not in the usual basket, but may be chosen.
//
// # How much fills a measure
//
// A measure of the reference hand is a palm of 85 g cooked (3 oz), a fist of
// 240 ml, a cupped hand of 120 ml or a thumb of 15 ml. The cup of the source is
// taken for 240 ml and its tablespoon for 15 ml, as US food labels do. So the
// portion of a food is a household measure times a factor, and the line says
// which: "2 x 0.5" is half of measure 2, "01088/1 x 1" is measure 1 of another
// food that is as dense, and "weight" is the palm's 85 g where the source weighs
// no 3 oz. Some foods have portions of their own: eggs are two; pulses and soya
// are half a cup to the palm; bread, and fruit that the source does not tell by
// volume, is the piece, or part of it, that comes near a cupped hand of the rest
// in energy. Where half a cup would bring more than one and
// a half times what a cupped hand usually does, as of dried fruit, the volume is
// halved until it does not.
//
// [Food.Fills] says which measure a food fills alone. The hand shape that it is
// told by is judgement; whether its figures bear that out is computed, and
// [Food.FillStep] shows it: a palm needs protein and not mostly fat, a fist is
// dilute (starchy vegetables are not and go to the cupped hand), a cupped hand
// is not fat, a thumb is.
//
// # What everything else counts as
//
// Milk, most cheese, soups, dishes, sweets and drinks fill no measure alone.
// [Food.CountsAs] finds the whole and half measures that bring what an amount of
// the food brings, against what the measures of this client bring, and shows
// how. So a cup of chilli with beans is half a palm, one and a half cupped hands
// and half a thumb, and an amount too small to count is nothing. What fills a
// palm or a fist counts by its size; berries and avocado, which fill more than
// they bring, count by what they bring. Alcohol counts by its energy.
// [PortionOf] does the same for a class: a fist of milk, a glass of wine.
//
// # Baskets
//
// [Basket] is the usual basket of a measure for an eating pattern without what
// is avoided; it is never empty. [BasketChoice] is what the practitioner puts in
// its place for a client; where none of it is fit to eat for this client the
// usual basket stands in, and [Filling.Words] says so.
//
// # To add a food
//
// Write its line, with a code that is never changed afterwards because choices
// keep it, and run the tests with HANDBREADTH_REFERENCE naming the folder of the
// source: they say which cell is not what it should be, and the new sum to note.
package food
