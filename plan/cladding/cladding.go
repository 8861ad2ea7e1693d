// Package cladding is data: what outer walls are clad with, how cable is fastened to
// it, and how it is bored. All of it is common practice, no source.
package cladding

// A Kind is one cladding.
type Kind struct {
	ID string // as it stands in a house file; empty if it is not known
	// Hard is true of brick, stone and stucco: clips want anchors, and a hole a bit for
	// masonry in a hammer drill.
	Hard bool
	// Clips says how clips for cable are fastened to it, Bore how a hole through a framed
	// wall goes through it.
	Clips, Bore string
}

// Kinds lists the claddings, in the order in which they are printed.
var Kinds = []Kind{
	{
		ID: "wood", Clips: "screwed into the boards or shingles",
		Bore: "with a wood bit, through the middle of a board",
	},
	{
		ID: "vinyl", Clips: "screwed through it into the sheathing, and not tight: it moves with the heat",
		Bore: "with a wood bit, slowly, through the flat of a panel",
	},
	{
		ID: "metal", Clips: "screwed with sealing washers",
		Bore: "with a bit for metal first, its edge smoothed and the cable sleeved, then with a wood bit",
	},
	{
		ID: "fiber cement", Clips: "screwed through it into the studs, in holes bored first; boards from before 1990 may hold asbestos: leave them alone until they are tested",
		Bore: "with a carbide bit, outdoors, with a mask for the dust; boards from before 1990 may hold asbestos: leave them alone until they are tested",
	},
	{
		ID: "stucco", Hard: true, Clips: "screwed into plugs, each hole sealed",
		Bore: "with a masonry bit through the stucco and its lath, then with a wood bit",
	},
	{
		ID: "brick", Hard: true, Clips: "screwed into anchors in the mortar joints, not in the bricks",
		Bore: "with a masonry bit through a mortar joint, clear of the weep holes, then with a wood bit",
	},
	{
		ID: "stone", Hard: true, Clips: "screwed into anchors in the mortar joints, not in the stones",
		Bore: "with a masonry bit through a mortar joint, then with a wood bit",
	},
}

// Lookup returns the kind with an id.
func Lookup(id string) (Kind, bool) {
	for _, k := range Kinds {
		if k.ID == id {
			return k, true
		}
	}
	return Kind{}, false
}

// IDs lists the ids of all kinds, in their order.
func IDs() []string {
	var out []string
	for _, k := range Kinds {
		out = append(out, k.ID)
	}
	return out
}
