// Package places finds sites on the project's list of places ("Sallowmere
// Resrve" is Sallowmere Reserve), fills what the list knows of them, and says
// where a reference lies too far from the place it is said to be at.
package places
