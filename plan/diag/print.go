package diag

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// maxPrinted is how many diagnostics of each severity are printed in full. Who
// has more to mend than that starts at the top and runs the check again.
const maxPrinted = 50

// Print writes the diagnostics, sorted and without repetitions:
//
//	hall.toml:14:16: error: wall[0].hole[0].d: found "40mm"; want 1/4in to 1in
//	   14 | hole = [{ d = "40mm", at = "1100mm" }]
//	      |              ^
//	hall.toml:5:9: note: the stud is set here
//
// lineText returns a line of a file by its number, counted from 1; it may be
// nil. After 50 errors only the number of the others is written, and likewise
// for warnings. The error is that of w.
func (l *List) Print(w io.Writer, lineText func(file string, line int) (string, bool)) error {
	out := bufio.NewWriter(w)
	var count [Warning + 1]int
	for _, d := range l.Sorted() {
		count[d.Severity]++
		if count[d.Severity] <= maxPrinted {
			d.print(out, lineText)
		}
	}
	for severity, n := range count {
		if more := n - maxPrinted; more > 0 {
			fmt.Fprintf(out, "and %d more %s\n", more, plural(more, Severity(severity).String()))
		}
	}
	return out.Flush()
}

func plural(n int, word string) string {
	if n == 1 {
		return word
	}
	return word + "s"
}

func (d *Diagnostic) print(out *bufio.Writer, lineText func(file string, line int) (string, bool)) {
	key := ""
	if d.Key != "" {
		key = visible(d.Key) + ": "
	}
	fmt.Fprintf(out, "%s: %s: %s%s\n", visible(d.Pos.String()), d.Severity, key, visible(d.Msg))
	if lineText != nil && d.Pos.Line > 0 {
		if text, ok := lineText(d.Pos.File, d.Pos.Line); ok {
			printLine(out, d.Pos, text)
		}
	}
	for _, n := range d.Notes {
		fmt.Fprintf(out, "%s: note: %s\n", visible(n.Pos.String()), visible(n.Msg))
	}
}

// printLine writes the source line and a caret under the byte of pos.
func printLine(out *bufio.Writer, pos Pos, text string) {
	before, after := clip(text, min(max(pos.Col-1, 0), len(text)))
	number := strconv.Itoa(pos.Line)
	fmt.Fprintf(out, "%5s | %s\n", number, strings.TrimRight(before+after, " "))
	fmt.Fprintf(out, "%*s | %*s\n", max(5, len(number)), "", cells(before)+1, "^")
}
