package sheet

import (
	"errors"
	"fmt"
	"iter"
	"slices"
	"strings"
)

// A Sheet is one sheet of paper with what is drawn on it.
type Sheet struct {
	ID            string // such as "floor-1"; names the file and starts derived ids
	Title         string // what it shows; the accessible name
	Desc          string // the same in a sentence or two, for who cannot see it
	Lang          string // BCP 47 tag of the language of the texts, such as "en"
	Width, Height Paper
	// View is how the sheet shows the house, if it shows it in one view only.
	View   View
	Groups []*Group
}

// New returns an empty sheet in English.
func New(id, title string, f Format) *Sheet {
	return &Sheet{ID: id, Title: title, Lang: "en", Width: f.Width, Height: f.Height}
}

// Group appends an empty group to the sheet and returns it.
func (s *Sheet) Group(id, class, title string) *Group {
	g := &Group{ID: id, Class: class, Title: title}
	s.Groups = append(s.Groups, g)
	return g
}

// Box is the whole sheet, from the origin.
func (s *Sheet) Box() Box { return Bx(0, 0, s.Width, s.Height) }

// All visits every item in the order of drawing, but not the groups.
func (s *Sheet) All() iter.Seq[Item] {
	return func(yield func(Item) bool) {
		for _, g := range s.Groups {
			if !g.visit(yield) {
				return
			}
		}
	}
}

// Pens returns the pens that the sheet uses, in the order of their table. A
// legend explains those whose style has a Meaning.
func (s *Sheet) Pens() []Pen {
	var used []Pen
	for item := range s.All() {
		switch item := item.(type) {
		case Line:
			used = append(used, item.Pen)
		case Poly:
			used = append(used, item.Pen)
		case Circle:
			used = append(used, item.Pen)
		case Arc:
			used = append(used, item.Pen)
		}
	}
	return sortUnique(used)
}

// Letterings returns the letterings that the sheet uses, in the order of their
// table.
func (s *Sheet) Letterings() []Lettering {
	var used []Lettering
	for item := range s.All() {
		if t, ok := item.(Text); ok {
			used = append(used, t.Lettering)
		}
	}
	return sortUnique(used)
}

func sortUnique[T ~uint8](s []T) []T {
	slices.Sort(s)
	return slices.Compact(s)
}

// TitleID is the id of the sheet's title in a file that has ids.
func (s *Sheet) TitleID() string { return s.ID + "-title" }

// DescID is the id of the sheet's description in a file that has ids.
func (s *Sheet) DescID() string { return s.ID + "-desc" }

// Check returns what keeps a back end from drawing the sheet, all at once: a
// size that is no size, an id that is taken or malformed, an item that lies
// out of range or has a pen that is not in the table. Nil means all is well.
// Check says nothing of how the sheet looks.
func (s *Sheet) Check() error {
	c := checker{ids: map[string]bool{}, reserved: s.TitleID()}
	if s.Width <= 0 || s.Height <= 0 || !Pt(s.Width, s.Height).onPaper() {
		c.add("sheet %q has no size that paper has: %d µm by %d µm", s.ID, s.Width, s.Height)
	}
	c.id(s.ID)
	c.id(s.TitleID())
	c.id(s.DescID())
	for _, g := range s.Groups {
		c.group(g)
	}
	return errors.Join(c.faults...)
}

// A checker gathers the faults of a sheet.
type checker struct {
	ids      map[string]bool
	reserved string // what the id of no group starts with: back ends add to it
	faults   []error
}

func (c *checker) add(format string, args ...any) {
	c.faults = append(c.faults, fmt.Errorf("sheet: "+format, args...))
}

func (c *checker) id(id string) {
	switch {
	case !validID(id):
		c.add("%q cannot be an id", id)
	case c.ids[id]:
		c.add("id %q is used twice", id)
	}
	c.ids[id] = true
}

func (c *checker) group(g *Group) {
	if g == nil {
		c.add("a group is nil")
		return
	}
	if strings.HasPrefix(g.ID, c.reserved) {
		c.add("id %q is reserved", g.ID)
	} else if g.ID != "" {
		c.id(g.ID)
	}
	if f := g.fault(); f != "" {
		c.add("group %q: %s", g.ID, f)
	}
	for _, item := range g.Items {
		c.item(g, item)
	}
}

func (c *checker) item(g *Group, item Item) {
	if child, ok := item.(*Group); ok {
		c.group(child)
		return
	}
	if item == nil {
		c.add("group %q: an item is nil", g.ID)
	} else if f := item.fault(); f != "" {
		c.add("group %q: %s", g.ID, f)
	}
}
