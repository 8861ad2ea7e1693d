package price

import (
	"fmt"
	"strconv"
	"strings"
)

// Page writes the table for people, in Markdown: what each term is, what it
// costs with the user's values, where those are, and how often it is paid. Money
// is in the user's currency. The result of from is empty for a default.
func (t Table) Page(from func(ID) string) string {
	var b strings.Builder
	b.WriteString("# What the work costs\n\n")
	fmt.Fprintf(&b, "Labour is minutes at %s an hour. Every default is %s: set your own.\n\n", thousandths(t.hour), Source)
	b.WriteString("| id | what | price | from | paid | covers |\n|---|---|---|---|---|---|\n")
	for i := range Terms {
		term := t.terms[Terms[i].ID]
		price := term.Unit.String()
		if term.Unit != Elsewhere {
			price = thousandths(term.Value) + " " + price
		}
		paid := "once for all cables"
		if term.PerCable {
			paid = "by each cable"
		}
		fmt.Fprintf(&b, "| %s | %s | %s | %s | %s | %s |\n", term.ID, term.Title, price, from(term.ID), paid, term.Doc)
	}
	return b.String()
}

// thousandths writes n/1000 without trailing zeros; n is not negative.
func thousandths(n int64) string {
	text := strconv.FormatInt(n/1000, 10)
	if rest := n % 1000; rest != 0 {
		text += strings.TrimRight(fmt.Sprintf(".%03d", rest), "0")
	}
	return text
}
