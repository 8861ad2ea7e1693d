package tasks

import (
	"topplate/plan/price"
	"topplate/plan/rule"
)

// A Record is a number of this package. Every one is common practice without a
// source: no published minutes were found for them.
type Record struct {
	ID    price.ID
	Title string
	Value int64 // thousandths of a minute; of a clock limit: minutes after midnight
	Doc   string
}

// Source is what all records rest on.
var Source = rule.Source{Status: rule.CommonPractice}

// Ids of the records.
const (
	setUp        price.ID = "set-up"
	panelOpening price.ID = "panel-opening"
	cutCable     price.ID = "cut-cable"
	tagCable     price.ID = "tag-cable"
	soffitHole   price.ID = "bore-soffit"
	openStrip    price.ID = "open-vent-strip"
	closeStrip   price.ID = "close-vent-strip"
	sealBoard    price.ID = "seal-board"
	mountChannel price.ID = "mount-channel"
	makeFast     price.ID = "make-fast"
	endJack      price.ID = "end-jack"
	endPlug      price.ID = "end-plug"
	endCoax      price.ID = "end-coax"
	endScrews    price.ID = "end-screws"
	panelPort    price.ID = "panel-port"
	testLink     price.ID = "test-link"
	powerUp      price.ID = "power-up"
	cleanRoom    price.ID = "clean-room"
	cleanAttic   price.ID = "clean-attic"
	cleanCrawl   price.ID = "clean-crawl"
	cleanOutside price.ID = "clean-outside"
	cleanCloset  price.ID = "clean-closet"
	toAttic      price.ID = "to-attic"
	toCrawl      price.ID = "to-crawl"
	toOutside    price.ID = "to-outside"
	toRoom       price.ID = "to-room"
	stairs       price.ID = "stairs"
	atticCool    price.ID = "attic-cool"
	longDay      price.ID = "long-day"
)

// Records is the table, in the order in which it is printed.
var Records = []Record{
	{setUp, "Setting up at the closet", 10_000, "Spools on their stands, tools, covers on the floor."},
	{panelOpening, "Opening up behind the panel", 10_000, "As a box opening; a closet that is reached through its ceiling has the term for that."},
	{cutCable, "Cutting one cable at the spool", 1_500, "Measure, cut, coil, tape."},
	{tagCable, "Tagging one cable", 1_000, "One tag at each end."},
	{soffitHole, "Boring the hole for cable in a soffit", 3_000, "In thin board or vinyl, from the ladder."},
	{openStrip, "Opening a soffit that unclips", 3_000, "A vent strip or a panel."},
	{closeStrip, "Closing a soffit that unclips", 3_000, ""},
	{sealBoard, "Sealing one hole in board or soffit", 2_000, "Against air and weather."},
	{mountChannel, "Mounting one metre of channel", 5_000, "Cut, level, screw, cover."},
	{makeFast, "Alone: making fast what is left hanging", 1_000, "A tape, the rods or the cables, so that they are found again."},
	{endJack, "One jack", 6_000, "Strip, lay, punch, dress."},
	{endPlug, "One plug", 5_000, "Strip, sort, trim, crimp, look."},
	{endCoax, "One coaxial end", 3_000, "Strip, push on, compress."},
	{endScrews, "One end under screws", 4_000, ""},
	{panelPort, "One port of the panel", 5_000, "As a jack, many side by side."},
	{testLink, "Testing one link", 3_000, "Plug in at both ends, run, write down."},
	{powerUp, "Patching one device in and seeing it work", 4_000, "Power and data: both."},
	{cleanRoom, "Cleaning up a room", 5_000, ""},
	{cleanAttic, "Clearing the attic", 5_000, "Insulation back, tools out, nothing left on the ceiling."},
	{cleanCrawl, "Clearing the crawl space", 5_000, "Insulation and ground cover back, tools out, the door shut."},
	{cleanOutside, "Clearing up outside", 5_000, ""},
	{cleanCloset, "Clearing up at the closet", 10_000, "Left-over cable marked with its length and kept for patch cords."},
	{toAttic, "Getting into the attic", 4_000, "Ladder, lamp, mask, tools handed up."},
	{toCrawl, "Getting into the crawl space", 5_000, "Coveralls, knee pads, lamp, mask; tools handed down."},
	{toOutside, "Getting out to an eave", 4_000, "Ladder set and footed."},
	{toRoom, "Getting to a room or the closet", 1_000, ""},
	{stairs, "Up or down one storey by the stairs", 1_000, "Added to the way to a place on another level."},
	{atticCool, "The attic is cool until", 11 * 60, "Minutes after midnight: a roof in the sun heats up before noon."},
	{longDay, "A long day of work", 10 * 60_000, "Beyond it the rest is for another day or a second person."},
}

// value is the number of a record.
func value(id price.ID) int64 {
	for i := range Records {
		if Records[i].ID == id {
			return Records[i].Value
		}
	}
	panic("tasks: no record " + string(id))
}

// A share says how much of a term's minutes belongs to a kind of task, in
// thousandths (common practice, no source). What the term covers is told by its
// record in package price.
type share struct {
	term        price.ID
	kind        Kind
	thousandths int64
}

// carried is the kind that stands in shares for the task that brings cable
// through.
const carried = Fish

// shares is the table. The shares of a term sum up to 1000. Half of a patch is
// left for another day, when it is dry.
var shares = []share{
	{price.CutBox, Mark, 300},
	{price.CutBox, Open, 600},
	{price.CutBox, Clean, 100},
	{price.CutCeiling, Mark, 300},
	{price.CutCeiling, Open, 600},
	{price.CutCeiling, Clean, 100},
	{price.MountBox, Mount, 500},
	{price.MountBox, Finish, 500},
	{price.OpenSoffit, Open, 600},
	{price.OpenSoffit, Close, 400},
	{price.BoreFromAbove, Bore, 625},
	{price.BoreFromAbove, carried, 250},
	{price.BoreFromAbove, Seal, 125},
	{price.BoreFromBelow, Bore, 700},
	{price.BoreFromBelow, carried, 200},
	{price.BoreFromBelow, Seal, 100},
	{price.BoreSoleFromSpace, Bore, 625},
	{price.BoreSoleFromSpace, carried, 250},
	{price.BoreSoleFromSpace, Seal, 125},
	{price.BoreSoleFromBox, Bore, 700},
	{price.BoreSoleFromBox, carried, 200},
	{price.BoreSoleFromBox, Seal, 100},
	{price.BoreBlock, Bore, 800},
	{price.BoreBlock, Seal, 200},
	{price.BoreGable, Bore, 700},
	{price.BoreGable, Seal, 300},
	{price.BoreStud, Bore, 1000},
	{price.BoreJoist, Bore, 1000},
	{price.BoreWall, Bore, 700},
	{price.BoreWall, Seal, 300},
	{price.BoreMasonry, Bore, 800},
	{price.BoreMasonry, Seal, 200},
	{price.BoreFloor, Bore, 700},
	{price.BoreFloor, Seal, 300},
	{price.LiftBoard, Bore, 500},
	{price.LiftBoard, Seal, 500},
	{price.Patch, Bore, 100},
	{price.Patch, Patch, 400},
	{price.Patch, later, 500},
}

// later stands in shares for what is not done today.
const later Kind = 255

// Rules of this package's notes, in the style of package rule.
var Rules = []rule.Rule{
	{
		ID: AfterSunset, Title: "Outdoor work after sunset", Severity: rule.Caution, Source: Source,
		Text:   "Work on a ladder ends at sunset; hills and trees make it dark sooner.",
		Change: "an earlier start, a second person, or another day for that drop",
	},
	{
		ID: DateWithoutPlace, Title: "A date without a place", Severity: rule.Note, Source: Source,
		Text:   "Sunset depends on the date and on where the house stands.",
		Change: "latitude, longitude and utc_offset in [house]",
	},
	{
		ID: LongDay, Title: "A long day", Severity: rule.Note, Source: Source,
		Text:   "Mistakes and falls come at the end of a long day.",
		Change: "a second person, or some drops for another day",
	},
}

// Ids of the rules.
const (
	AfterSunset      rule.ID = "after-sunset"
	DateWithoutPlace rule.ID = "date-without-place"
	LongDay          rule.ID = "long-day"
)
