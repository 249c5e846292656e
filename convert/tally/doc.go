// Package tally reads counts, sexes and life stages as recorders write them
// ("2m 1f", "c.20 larvae", "3 (1 dead)", "several") and says what they mean in
// Darwin Core's terms.
//
// A whole number of individuals fills individualCount. Whatever is no such
// number ("c.20", "20+", "several", "2 mines") is kept as written in
// organismQuantity, with its organismQuantityType: no number is ever made up.
// Darwin Core's own example of a quantity in words is "many" with the type
// "individuals" (https://dwc.tdwg.org/terms/#dwc:organismQuantityType); signs
// of an animal that are counted (mines, cases, spinnings) are named as the
// type, for their number is not a number of animals.
//
// Values of sex (male, female), lifeStage (adult, larva, juvenile), caste
// (queen, worker) and vitality (dead, alive) follow the examples of
// https://dwc.tdwg.org/terms/; egg, pupa, nymph and subadult, which
// have no example there, are common practice, no source.
package tally
