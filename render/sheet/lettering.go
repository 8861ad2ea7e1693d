package sheet

// A Face is one of the fonts of a sheet.
type Face uint8

// The three faces.
const (
	Regular Face = iota
	Bold
	Mono
)

// Faces lists the faces.
func Faces() []Face { return []Face{Regular, Bold, Mono} }

// A Lettering is a row of the table of letterings: it says what is written,
// and the table says how that looks.
type Lettering uint8

// The letterings, by what they write. The zero Lettering is for notes.
const (
	LetterNote Lettering = iota
	LetterSmall
	LetterTag
	LetterSmallTag
	LetterCableTag
	LetterDimension
	LetterRoom
	LetterHeading
	LetterTitle
	LetterBanner
	LetterCode
	LetterSmallCode
	letteringCount
)

// A LetteringStyle is how a lettering looks.
type LetteringStyle struct {
	Name   string // a word of ASCII letters and hyphens, unique in the table
	Face   Face
	Height Paper // of capitals, in the series of ISO 3098
	Colour Colour
}

// Style returns the row of l. A Lettering that is not in the table looks like
// LetterNote.
func (l Lettering) Style() LetteringStyle {
	if l >= letteringCount {
		l = LetterNote
	}
	return letterings[l]
}

// Heights of capitals (ISO 3098-1:2015, nominal sizes h; 2.5 mm is the
// smallest for a sheet that is read on site, common practice).
const (
	h18 = 1800 * Micrometre
	h25 = 2500 * Micrometre
	h35 = 3500 * Micrometre
	h50 = 5000 * Micrometre
	h70 = 7000 * Micrometre
)

// letterings is the table of letterings.
var letterings = [letteringCount]LetteringStyle{
	LetterNote:      {"note", Regular, h25, Black},
	LetterSmall:     {"small", Regular, h18, Black},
	LetterTag:       {"tag", Bold, h25, Black},
	LetterSmallTag:  {"small-tag", Bold, h18, Black},
	LetterCableTag:  {"cable-tag", Bold, h25, DeepBlue},
	LetterDimension: {"dimension", Regular, h25, Black},
	LetterRoom:      {"room", Regular, h35, Black},
	LetterHeading:   {"heading", Bold, h35, Black},
	LetterTitle:     {"title", Bold, h50, Black},
	LetterBanner:    {"banner", Bold, h70, Black},
	LetterCode:      {"code", Mono, h25, Black},
	LetterSmallCode: {"small-code", Mono, h18, Black},
}
