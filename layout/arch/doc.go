// Package arch turns the builder's arch (sticks, fittings, stakes, lights) into an elastic rod, has it solved, and says in
// the builder's terms how it stands.
//
// An arch goes through it in this order: Shape finds its curve as raised, and the third of sticks, span and height; Stand its season, load factors,
// give and take and its stakes in still air; Judge says what is wrong. Body is for those who load it further. Sizes is for choosing before anything is bought.
package arch
