package reports

import (
	"handbreadth/domain/energy"
	"handbreadth/domain/hand"
)

// The sentences on the page of reasons; the same test keeps them plain.
const (
	wordsWhy     = "All are for one day. The small print shows each sum and its source."
	wordsResting = "Your body uses this at rest, to breathe and stay warm. " +
		"It comes from your weight, height, age and sex. Yours may be a tenth more or less."
	wordsRestingMeasured = "We measured this. It is what your body uses at rest: to breathe, to stay warm, to keep your heart at work."
	wordsRestingOthers   = "Other published equations give {} to {}."
	wordsActivity        = "You do more in a day than rest, so you use this many times as much."
	wordsActivityGiven   = "We chose it from what you told us of your days."
	wordsMaintenance     = "Eat about this much and your weight should stay as it is. Yours may be from {} to {}."
	wordsMaintenanceBaby = "This counts what your baby needs too."
	wordsGoalLower       = "You want to weigh less, so we take this much off. At first, you may lose {}. " +
		"With time it slows down."
	wordsGoalRaise = "You want to weigh more, so we add this much. At first, you may gain {}. " +
		"With time it slows down."
	wordsGoalHold     = "You want your weight to stay as it is. So we add nothing and take nothing off."
	wordsTarget       = "Start from what holds your weight. Then add your goal. This is the sum."
	wordsTargetBy     = "This should bring you to {} by {}. We worked it out day by day, as your body needs more or less when your weight moves."
	wordsTargetModel  = "We worked this out day by day, as your body needs more or less when your weight moves."
	wordsTargetRule   = "An old rule of thumb says {}. It leaves that out."
	wordsCourse       = "The line is how we expect your weight to go. We think that eight in ten people like you stay in the hatched part."
	wordsCourseShort  = "With this much food your weight comes to rest near {}. That is not your goal yet, so we will look at it with you."
	wordsCourseRule   = "An old rule of thumb says that {} brings you to {} by {}. We expect {}."
	wordsNeedsLess    = "A body that weighs less needs less, so the loss slows down."
	wordsNeedsMore    = "A body that weighs more needs more, so the gain slows down."
	wordsHoldingLess  = "Once you are there, eat about this much to stay there. It is less than what holds your weight now, as you weigh less."
	wordsHoldingMore  = "Once you are there, eat about this much to stay there. It is more than what holds your weight now, as you weigh more."
	wordsLegendLine   = "what we expect"
	wordsLegendBand   = "eight in ten stay here"
	wordsChartHold    = "then hold: "
	wordsWeeks        = "Weeks from "
	wordsLegendRule   = "old rule of thumb"
	wordsWhatRange    = "The right amount may lie from {} to {}. So this is a start. We look at how you do and change it with you."
	wordsProtein      = "This builds and mends your body and helps you feel full. It comes first in the plan."
	wordsFat          = "You need some fat to stay well. So we never go under {} a day. That is {} of your energy. We call it the fat floor."
	wordsFatByWeight  = "It is set by your weight."
	wordsCarbohydrate = "Starch and fruit are your fuel. They get what is left. " +
		"You can swap some of them for fat, or some fat for them, down to the fat floor."
	wordsFibre                 = "This is the part of plants that feeds your gut and helps you feel full. It is in greens, fruit, beans and whole grains."
	wordsFibreSlowly           = "Add it bit by bit."
	wordsFibreEnough           = "You eat that much now. Keep it up."
	wordsFibreSoon             = "Now you eat about {}. Add the rest over a week."
	wordsFibreRise             = "Now you eat about {}. Add no more than {} each week. Then you are there in {} weeks."
	wordsCarbohydrateAvailable = "Fibre is not counted in it, as on food labels in Europe."
	wordsMeasures              = "These are the hands that come close to your target, with the foods you eat. A day of them brings this."
)

// wordsProteinOn tells the weight that protein was counted on; the client's own
// needs no word.
var wordsProteinOn = map[string]string{
	"adjusted weight": "We count it on a weight between yours and a lower one, so that it is not too much.",
	"lean weight":     "We count it on your weight without its fat.",
}

// wordsActivityClass tells the class that was chosen.
var wordsActivityClass = map[energy.Category]string{
	energy.Inactive:   "We chose it for days with a lot of sitting.",
	energy.LowActive:  "We chose it for days with some walks or light work on your feet.",
	energy.Active:     "We chose it for days on your feet or with an hour of brisk sport.",
	energy.VeryActive: "We chose it for days of hard work or long, hard sport.",
}

// The sentences on the page of reasons without numbers.
const (
	wordsWhyMeasures = "Your hand is always with you, and it fits you. Here is what each measure does for you."
	wordsStart       = "Your hand is a good guide, not a law. Some days you will eat more, some days less. " +
		"That is fine. Next time we look at how you feel and change the plan with you."
)

var wordsWhyMeasure = [...]string{
	hand.Palm:       "These foods build and mend your body. They help you feel full, so each meal has some.",
	hand.Fist:       "These fill your plate and feed your gut. Pick all kinds and colours through the week.",
	hand.CuppedHand: "These are your fuel for the day. Whole grains and whole fruit keep you going for longer.",
	hand.Thumb:      "Your body needs some fat to stay well. A little goes a long way, so a thumb is the guide.",
}
