// Package people reads who recorded, determined and verified ("IC & TA",
// "Calloway, I. det. T. Achterberg", "self") with the help of a list of
// people, and keeps e-mail addresses, telephone numbers and private addresses
// out of whatever goes out.
//
// Names in a list are joined as Darwin Core recommends: "separate the values
// in a list with space vertical bar space ( | )"
// (https://dwc.tdwg.org/terms/#dwc:recordedBy).
package people
