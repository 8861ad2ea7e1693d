package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strconv"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"topplate/plan/randomhouse"
)

func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	var b bytes.Buffer
	if err := JSONSchema(&b); err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(&b)
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("result.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("result.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// An independent validator finds that the results of all samples, and of random
// houses, are as the schema says; and that they are not once something is
// missing, added or of another type.
func TestResultsAreAsTheSchemaSays(t *testing.T) {
	schema := compiled(t)
	check := func(name string, data []byte) map[string]any {
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(doc); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		return doc.(map[string]any)
	}
	var last []byte
	for _, path := range jobs {
		var b bytes.Buffer
		if err := JSON(&b, sample(t, path)); err != nil {
			t.Fatal(err)
		}
		last = b.Bytes()
		check(path, last)
	}
	var b bytes.Buffer
	office := sample(t, "../../samples/small-office/job.toml")
	if err := JSON(&b, office); err != nil {
		t.Fatal(err)
	}
	checkDays(t, office.Tasks.Days, check("several days", b.Bytes())["order"].(map[string]any))
	for seed := range uint64(8) {
		var b bytes.Buffer
		if err := JSON(&b, worked(t, "job.toml", randomhouse.Generate(seed, randomhouse.Options{}).Read)); err != nil {
			t.Fatal(err)
		}
		check("a random house", b.Bytes())
	}
	for what, change := range map[string]func(m map[string]any){
		"a missing key":  func(m map[string]any) { delete(m, "holes") },
		"another key":    func(m map[string]any) { m["more"] = true },
		"another type":   func(m map[string]any) { m["drops"].([]any)[0].(map[string]any)["count"] = "two" },
		"another schema": func(m map[string]any) { m["schema"] = "topplate-result/1" },
		"a place of two": func(m map[string]any) {
			m["holes"].([]any)[0].(map[string]any)["at"] = []any{json.Number("1"), json.Number("2")}
		},
		"a missing length": func(m map[string]any) {
			delete(m["drops"].([]any)[0].(map[string]any)["lengths"].(map[string]any), "cut")
		},
	} {
		doc, _ := jsonschema.UnmarshalJSON(bytes.NewReader(last))
		m := doc.(map[string]any)
		change(m)
		if schema.Validate(m) == nil {
			t.Errorf("%s is not noticed", what)
		}
	}
}

// checkDays holds an order of work of several days against what its results
// promise: a day at each visit and step, never earlier than the one before, and
// times of the day.
func checkDays(t *testing.T, days int, order map[string]any) {
	t.Helper()
	number := func(x any) int {
		n, err := strconv.Atoi(fmt.Sprint(x))
		if err != nil {
			t.Fatalf("%v is no day", x)
		}
		return n
	}
	last := 1
	for _, v := range order["visits"].([]any) {
		visit := v.(map[string]any)
		day := number(visit["day"])
		if day < last || day > days || visit["arrive"].(string) >= "24:00" || visit["arrive"].(string) > visit["leave"].(string) {
			t.Errorf("visit on day %v, %v to %v, after day %d", visit["day"], visit["arrive"], visit["leave"], last)
		}
		last = day
		for _, s := range visit["steps"].([]any) {
			if step := s.(map[string]any); number(step["day"]) != day || step["start"].(string) > step["end"].(string) {
				t.Errorf("step %v", step)
			}
		}
	}
	if days < 2 || last != days || number(order["days"]) != days {
		t.Errorf("%v days, the last is %d, want %d", order["days"], last, days)
	}
}
