package source

import (
	"errors"
	"strconv"

	"github.com/pelletier/go-toml/v2/unstable"

	"topplate/plan/diag"
)

// A builder makes the tables of a document with their places and without their
// values, from the expressions of the parser.
type builder struct {
	*document
	parser  unstable.Parser
	root    *Table
	current *Table // of the last header
	opened  map[*Table]diag.Pos
	keys    int  // parts of keys so far, those that are set twice among them
	values  int  // keys and elements so far
	stopped bool // at a limit
}

// A part is one part of a dotted key, or the number of an element of an array.
type part struct {
	name   string
	offset int // of its first byte in the document
	end    int // behind its last byte
}

// build reads the document up to the first fault of syntax or to a limit. Keys
// that are set twice are reported, all of them; what else is not TOML is left
// to the decoders.
func (d *document) build() *Table {
	b := &builder{document: d, opened: map[*Table]diag.Pos{}}
	b.root = &Table{doc: d, pos: d.pos(0), entries: map[string]*entry{}, handed: true}
	b.current = b.root
	b.parser.Reset(d.src)
	for !b.stopped && b.parser.NextExpression() {
		b.expression(b.parser.Expression())
	}
	var fault *unstable.ParserError
	if errors.As(b.parser.Error(), &fault) {
		b.syntaxErrorAt(int(b.parser.Range(fault.Highlight).Offset), fault.Message)
	}
	return b.root
}

// expression reads a header, or a key with its value.
func (b *builder) expression(n *unstable.Node) {
	if n.Kind == unstable.KeyValue {
		b.keyValue(b.current, n)
		return
	}
	t, last := b.descend(b.root, b.parts(n))
	switch {
	case t == nil:
	case n.Kind == unstable.ArrayTable:
		b.openElement(t, last)
	default:
		b.openTable(t, last)
	}
}

// parts returns the parts of the key of n.
func (b *builder) parts(n *unstable.Node) []part {
	var parts []part
	for it := n.Key(); it.Next(); {
		raw := it.Node().Raw
		p := part{name: string(it.Node().Data), offset: int(raw.Offset), end: int(raw.Offset + raw.Length)}
		if b.keys++; b.keys > maxKeys {
			b.stop(p.offset, "found more than %d keys in one file", maxKeys)
		}
		if len(p.name) > maxKey {
			b.stop(p.offset, "found a key of %d bytes; a key has at most %d", len(p.name), maxKey)
		}
		parts = append(parts, p)
	}
	return parts
}

// stop ends the reading at a limit.
func (b *builder) stop(offset int, format string, args ...any) {
	if !b.stopped {
		b.errorAt(offset, format, args...)
	}
	b.stopped = true
}

// descend walks down the tables of a dotted key to the one that its last part
// belongs to, and makes those that are missing. In an array of tables it takes
// the last. The table is nil where something else is in the way, which is
// reported, and at a limit: a key of a million parts would make as many tables,
// each with a longer path.
func (b *builder) descend(t *Table, parts []part) (*Table, part) {
	last := len(parts) - 1
	for _, p := range parts[:last] {
		if b.stopped {
			break
		}
		e, ok := t.entries[p.name]
		if !ok {
			e = b.addTable(t, p, KindTable)
		}
		if e.kind == KindArray && len(e.table.order) > 0 {
			e = e.table.entries[e.table.order[len(e.table.order)-1]]
		}
		if e.kind != KindTable {
			b.twice(t, p, e)
			return nil, part{}
		}
		t = e.table
	}
	if b.stopped {
		return nil, part{}
	}
	return t, parts[last]
}

// openTable reads [name].
func (b *builder) openTable(t *Table, p part) {
	e, ok := t.entries[p.name]
	if !ok {
		e = b.addTable(t, p, KindTable)
	} else if e.kind != KindTable {
		b.twice(t, p, e)
		return
	}
	if first, again := b.opened[e.table]; again {
		b.errorAt(p.offset, "the table [%s] is opened twice; put all of it under one header", e.table.path).
			Note(first, "it was first opened here")
	}
	e.table.pos = b.pos(p.offset)
	b.open(e.table)
}

// openElement reads [[name]].
func (b *builder) openElement(t *Table, p part) {
	e, ok := t.entries[p.name]
	if !ok {
		e = b.addTable(t, p, KindArray)
	} else if e.kind != KindArray {
		b.twice(t, p, e)
		return
	}
	p.name = strconv.Itoa(len(e.table.order))
	b.open(b.addTable(e.table, p, KindTable).table)
}

func (b *builder) open(t *Table) {
	b.opened[t] = t.pos
	b.current = t
}

// twice reports that p is set again in t.
func (b *builder) twice(t *Table, p part, first *entry) {
	b.diags.Errorf(b.pos(p.offset), t.Path(p.name), "this key is set twice").
		Note(first.keyPos, "it was first set here")
}

// keyValue reads a key, which may be dotted, and its value into t.
func (b *builder) keyValue(t *Table, n *unstable.Node) {
	t, last := b.descend(t, b.parts(n))
	if t == nil {
		return
	}
	if first, ok := t.entries[last.name]; ok {
		b.twice(t, last, first)
		return
	}
	b.value(t, last, n.Value(), b.valueStart(last.end))
}

// valueStart is the offset of the value after a key that ends at end. The
// parser gives none for arrays.
func (b *builder) valueStart(end int) int {
	for b.src[end] == ' ' || b.src[end] == '\t' || b.src[end] == '=' {
		end++
	}
	return end
}

// value reads a value that starts at offset into t.
func (b *builder) value(t *Table, p part, n *unstable.Node, offset int) {
	switch n.Kind {
	case unstable.Array:
		array := b.addTable(t, p, KindArray)
		array.pos = b.pos(offset)
		for it := n.Children(); !b.stopped && it.Next(); {
			start := b.elementStart(it.Node(), offset)
			element := part{name: strconv.Itoa(len(array.table.order)), offset: start}
			b.value(array.table, element, it.Node(), start)
		}
	case unstable.InlineTable:
		table := b.addTable(t, p, KindTable)
		table.pos, table.table.pos = b.pos(offset), b.pos(offset)
		for it := n.Children(); !b.stopped && it.Next(); {
			b.keyValue(table.table, it.Node())
		}
	default:
		b.add(t, p, &entry{kind: kinds[n.Kind], pos: b.pos(offset), offset: offset, length: int(n.Raw.Length)})
	}
}

var kinds = map[unstable.Kind]Kind{
	unstable.String:        KindText,
	unstable.Integer:       KindInteger,
	unstable.Float:         KindFloat,
	unstable.Bool:          KindBoolean,
	unstable.LocalDate:     KindDate,
	unstable.LocalTime:     KindTime,
	unstable.LocalDateTime: KindTime,
	unstable.DateTime:      KindTime,
}

// elementStart is the offset of an element of the array at outer. The parser
// gives none for an array in an array: it is found before its first element,
// or, where there is none or a comment is between, taken from that or outer.
func (b *builder) elementStart(n *unstable.Node, outer int) int {
	if n.Kind != unstable.Array {
		return int(n.Raw.Offset)
	}
	if !n.Child().Valid() {
		return outer
	}
	inner := b.elementStart(n.Child(), outer)
	for i := inner - 1; i > outer; i-- {
		switch b.src[i] {
		case '[':
			return i
		case ' ', '\t', '\r', '\n':
		default:
			return inner
		}
	}
	return inner
}

// addTable puts an empty table, or an empty array, into t.
func (b *builder) addTable(t *Table, p part, kind Kind) *entry {
	pos := b.pos(p.offset)
	e := &entry{kind: kind, pos: pos, table: &Table{
		doc: b.document, path: t.Path(p.name), pos: pos, array: kind == KindArray,
		depth: t.depth + 1, entries: map[string]*entry{},
	}}
	b.add(t, p, e)
	return e
}

// add puts an entry into t, and minds the limits.
func (b *builder) add(t *Table, p part, e *entry) {
	if b.values++; b.values > maxValues {
		b.stop(p.offset, "found more than %d keys and values in one file", maxValues)
	}
	if t.depth >= maxDepth {
		b.stop(p.offset, "found tables and arrays more than %d deep", maxDepth)
	}
	e.keyPos = b.pos(p.offset)
	t.order = append(t.order, p.name)
	t.entries[p.name] = e
}
