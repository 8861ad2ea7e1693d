package parts

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/connector"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// A Group is what a part is for, in the order of the list.
type Group uint8

// Groups.
const (
	Cable    Group = iota // cable itself
	Places                // boxes and plates
	Ends                  // jacks, plugs, panels
	Sealing               // what closes and protects holes
	Outdoors              // what is wanted where cable goes out
	Sundries              // what is used up on the way
	Bits                  // tools that are bought for this job
)

var groupNames = [...]string{"cable", "boxes and plates", "jacks, plugs and panel", "sealing and protection", "out of doors", "sundries", "drill bits"}

func (g Group) String() string { return groupNames[g] }

// A Part is one record of the catalogue.
type Part struct {
	ID    string
	Title string
	Group Group
	Unit  string // what one is: "piece", "tube of 300 ml"
	// Price of one, in thousandths of the currency's unit; Priced is false if
	// none is known.
	Price  int64
	Priced bool
	Source rule.Source // of the price
}

// practice is where every number of the catalogue comes from.
var practice = rule.Source{Status: rule.CommonPractice}

func part(group Group, id, title, unit string, price int64) Part {
	return Part{ID: id, Title: title, Group: group, Unit: unit, Price: price, Priced: true, Source: practice}
}

const piece = "piece"

// fixed are the parts that don't come in sizes.
var fixed = []Part{
	part(Places, "ceiling-bracket", "Old-work bracket for a round ceiling opening", piece, 3_500),
	part(Places, "ceiling-bushing", "Bushing where cables come through the closet's ceiling", piece, 4_000),
	part(Places, "box-gasket", "Gasket against draughts, behind a plate in an outer or insulated wall", piece, 800),
	part(Ends, "blank-insert", "Blank for an unused opening of a plate", piece, 300),
	part(Ends, "post-insert-2", "Posts for one 2-core speaker cable", piece, 4_000),
	part(Ends, "post-insert-4", "Posts for one 4-core speaker cable", piece, 7_000),
	part(Sealing, "shield-plate", "Steel plate against nails and screws, 1/16 in (1.6 mm)", piece, 700),
	part(Sealing, "plate-strap", "Metal tie across a cut in a plate", piece, 3_000),
	part(Sealing, "fire-sealant", "Sealant that resists flame and smoke", "tube of 300 ml", 11_000),
	part(Sealing, "air-sealant", "Sealant against draughts", "tube of 300 ml", 6_000),
	part(Outdoors, "weather-sealant", "Sealant for outdoor use", "tube of 300 ml", 8_000),
	part(Outdoors, "soffit-bushing", "Bushing for a hole in a soffit", piece, 2_000),
	part(Outdoors, "wall-sleeve", "Sleeve through an outer wall, with a hood", piece, 5_000),
	part(Outdoors, "drip-clip", "Clip that holds a drip loop, outdoor", piece, 500),
	part(Outdoors, "surge-data", "Surge protector for four-pair cable, with its earth lead", piece, 35_000),
	part(Outdoors, "surge-coax", "Surge protector for coaxial cable, with its earth lead", piece, 15_000),
	part(Sundries, "label", "Label, printed", piece, 150),
	part(Sundries, "tape-roll", "Electrical tape for pulling", "roll", 3_000),
	part(Sundries, "cable-strap", "Strap or staple that does not pinch cable", piece, 250),
	part(Sundries, "cable-hook", "Hook or ring for a bundle, screwed to a joist", piece, 1_800),
	part(Outdoors, "outdoor-clip", "Clip that holds a bundle on an outer wall", piece, 600),
	part(Outdoors, "wall-anchor", "Anchor with its screw, for a clip on brick, stone or stucco", piece, 400),
	part(Sundries, "wall-channel", "Channel with a cover for cables on the face of a wall, with its corners", "length of 2 m (6-1/2 ft)", 12_000),
	part(Sundries, "pull-string", "Pull string", "spool of 150 m (500 ft)", 12_000),
	// Speaker cable out of doors is rare, and no usual price is known.
	{ID: "surge-speaker", Title: "Surge protector for speaker cable, with its earth lead", Group: Outdoors, Unit: piece},
}

// A sized part is one of a row of sizes: gangs, and ports per piece.
type sized struct {
	gangs, ports int
	price        int64
}

// Sizes as they are usually sold.
var (
	brackets = []sized{{1, 0, 2_000}, {2, 0, 3_500}, {3, 0, 6_000}, {4, 0, 9_000}}
	brushes  = []sized{{1, 0, 5_000}, {2, 0, 8_000}}
	plates   = []sized{
		{1, 1, 1_500},
		{1, 2, 1_500},
		{1, 3, 1_500},
		{1, 4, 1_500},
		{1, 6, 1_800},
		{2, 4, 3_000},
		{2, 6, 3_000},
		{2, 8, 3_000},
		{2, 12, 3_500},
		{3, 12, 6_000},
		{3, 18, 6_500},
		{4, 16, 9_000},
		{4, 24, 9_500},
	}
	housings = []sized{{0, 1, 2_500}, {0, 2, 3_500}, {0, 4, 5_000}, {0, 6, 7_000}}
	panels   = []sized{{0, 12, 25_000}, {0, 24, 35_000}, {0, 48, 60_000}}
)

func bracketID(gangs int) string      { return fmt.Sprintf("bracket-%d-gang", gangs) }
func brushID(gangs int) string        { return fmt.Sprintf("brush-plate-%d-gang", gangs) }
func plateID(gangs, ports int) string { return fmt.Sprintf("plate-%d-gang-%d-port", gangs, ports) }
func housingID(ports int) string      { return fmt.Sprintf("housing-%d-port", ports) }
func panelID(ports int) string        { return fmt.Sprintf("panel-%d-port", ports) }

// The names of parts in sizes, which there may be no record of.
func bracketPart(gangs int) Part {
	return Part{ID: bracketID(gangs), Title: fmt.Sprintf("Old-work bracket, %d-gang", gangs), Group: Places, Unit: piece}
}

func brushPart(gangs int) Part {
	return Part{ID: brushID(gangs), Title: fmt.Sprintf("Plate that cables pass through, %d-gang", gangs), Group: Places, Unit: piece}
}

func platePart(gangs, ports int) Part {
	return Part{ID: plateID(gangs, ports), Title: fmt.Sprintf("Wall plate, %d-gang, for %d inserts", gangs, ports), Group: Places, Unit: piece}
}

func housingPart(ports int) Part {
	return Part{ID: housingID(ports), Title: fmt.Sprintf("Surface housing for %d jacks", ports), Group: Places, Unit: piece}
}

func panelPart(ports int) Part {
	return Part{ID: panelID(ports), Title: fmt.Sprintf("Patch panel for %d jacks, empty", ports), Group: Ends, Unit: piece}
}

func priced(p Part, price int64) Part {
	p.Price, p.Priced, p.Source = price, true, practice
	return p
}

// connectorPrices are those of the built-in plugs and jacks.
var connectorPrices = map[string]int64{
	"jack-5e": 3_000, "jack-6": 4_500, "jack-6a": 8_000, "plug-5e": 400, "plug-6": 700, "pass-through-6": 800,
	"plug-6a-narrow": 2_500, "plug-6a-wide": 2_500, "coax-jack": 2_500, "coax-plug": 1_200,
}

// connectorPart is the part of a plug or jack. The job's own costs what the
// built-in one does that it is like.
func connectorPart(job *plan.Job, c connector.Type) Part {
	p := Part{ID: c.ID, Title: c.Title, Group: Ends, Unit: piece}
	like := c.ID
	for i := range job.OwnConnectors {
		if own := &job.OwnConnectors[i]; own.Type.ID == c.ID {
			like = own.Like
		}
	}
	if price, ok := connectorPrices[like]; ok {
		p = priced(p, price)
	}
	return p
}

// A bitSize is a size of drill bit that is usually sold.
type bitSize struct {
	id, title string
	diameter  measure.Length
	// Of a short one; a long flexible one costs longBit more, one for masonry masonryBit.
	price int64
}

const (
	longBit    = 35_000
	masonryBit = 6_000
)

var (
	inchBits = []bitSize{
		{"3-8in", "3/8 in", 3 * measure.Inch / 8, 8_000},
		{"1-2in", "1/2 in", measure.Inch / 2, 9_000},
		{"5-8in", "5/8 in", 5 * measure.Inch / 8, 10_000},
		{"3-4in", "3/4 in", 3 * measure.Inch / 4, 12_000},
		{"7-8in", "7/8 in", 7 * measure.Inch / 8, 14_000},
		{"1in", "1 in", measure.Inch, 16_000},
		{"1-1-4in", "1-1/4 in", 5 * measure.Inch / 4, 20_000},
		{"1-1-2in", "1-1/2 in", 3 * measure.Inch / 2, 24_000},
	}
	metricBits = []bitSize{
		{"10mm", "10 mm", 10 * measure.Millimetre, 8_000},
		{"12mm", "12 mm", 12 * measure.Millimetre, 9_000},
		{"16mm", "16 mm", 16 * measure.Millimetre, 10_000},
		{"20mm", "20 mm", 20 * measure.Millimetre, 12_000},
		{"22mm", "22 mm", 22 * measure.Millimetre, 14_000},
		{"25mm", "25 mm", 25 * measure.Millimetre, 16_000},
		{"32mm", "32 mm", 32 * measure.Millimetre, 20_000},
		{"38mm", "38 mm", 38 * measure.Millimetre, 24_000},
	}
)

func bitPart(b bitSize, long bool) Part {
	if long {
		return part(Bits, "long-bit-"+b.id, "Long flexible drill bit, "+b.title, piece, b.price+longBit)
	}
	return part(Bits, "bit-"+b.id, "Drill bit, "+b.title, piece, b.price)
}

// masonryPart is a bit for masonry, which bores what no bit of a job's own list is for.
func masonryPart(b bitSize) Part {
	return part(Bits, "masonry-bit-"+b.id, "Bit for masonry, for a hammer drill, "+b.title, piece, b.price+masonryBit)
}

// Catalogue lists all parts that a job may name: the built-in ones, and its own
// plugs and jacks.
func Catalogue(job *plan.Job) []Part {
	var out []Part
	for _, s := range brackets {
		out = append(out, priced(bracketPart(s.gangs), s.price))
	}
	for _, s := range plates {
		out = append(out, priced(platePart(s.gangs, s.ports), s.price))
	}
	for _, s := range brushes {
		out = append(out, priced(brushPart(s.gangs), s.price))
	}
	for _, s := range housings {
		out = append(out, priced(housingPart(s.ports), s.price))
	}
	for _, s := range panels {
		out = append(out, priced(panelPart(s.ports), s.price))
	}
	for _, id := range connector.IDs() {
		c, _ := connector.Lookup(id)
		out = append(out, connectorPart(job, c))
	}
	for i := range job.OwnConnectors {
		out = append(out, connectorPart(job, job.OwnConnectors[i].Type))
	}
	out = append(out, fixed...)
	for _, b := range append(append([]bitSize{}, inchBits...), metricBits...) {
		out = append(out, bitPart(b, false), bitPart(b, true), masonryPart(b))
	}
	return out
}
