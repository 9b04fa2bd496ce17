// Package body knows the body: its composition, reference weights, and how its
// weight answers to energy over time.
//
// # Weight over time
//
// [Course] steps the adult model of Hall et al. 2011 (Lancet 378:826-837) day by
// day; [EnergyFor] turns it round; [HoldingEnergy] gives the energy that holds a
// weight once it is reached; [LinearOf] is its linear form with the half-time;
// [Fan] adds the range. The static rule of 3500 kcal a pound stands beside it in
// package energy, as what most people expect.
package body
