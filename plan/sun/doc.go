// Package sun tells when the sun rises, stands highest and sets at a place on
// a date, so that work outside can be planned for daylight.
//
// In come a date, a latitude and longitude in degrees and the clock's offset
// from UTC in minutes. Out come three clock times and whether the sun rises
// and sets at all. The package reads no clock, no file and no time zone data:
// daylight saving is the caller's business, as part of the offset.
//
// The equations are those of NOAA's solar calculator (NOAA Global Monitoring
// Laboratory, "Solar Calculation Details"), which follow J. Meeus,
// Astronomical Algorithms. A rise or set is the moment at which the centre of
// the sun is 90.833 degrees from the zenith: 34 minutes of arc for refraction
// at a level horizon and 16 for the sun's own radius.
//
// NOAA gives the accuracy as about a minute between the latitudes of 72
// degrees and ten minutes beyond. Hills, trees, a neighbour's roof and the
// weather make it dark sooner; they are not known here.
package sun
