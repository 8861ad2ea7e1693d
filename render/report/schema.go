package report

import (
	"encoding/json"
	"fmt"
	"io"
	"reflect"
	"strings"
)

// JSONSchema writes a description of what JSON writes, as a JSON Schema of
// draft 2020-12. It is made from the same types, so that both always agree.
func JSONSchema(w io.Writer) error {
	root := schemaOf(reflect.TypeFor[results]())
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["title"] = Schema
	root["properties"].(map[string]any)["schema"] = map[string]any{"const": Schema}
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	if err := enc.Encode(root); err != nil {
		return fmt.Errorf("writing the schema: %w", err)
	}
	return nil
}

// schemaOf describes a type: objects have just their fields, and all but those
// that may be left out.
func schemaOf(t reflect.Type) map[string]any {
	switch t.Kind() {
	case reflect.Pointer:
		return schemaOf(t.Elem())
	case reflect.String:
		return map[string]any{"type": "string"}
	case reflect.Bool:
		return map[string]any{"type": "boolean"}
	case reflect.Int, reflect.Int64:
		return map[string]any{"type": "integer"}
	case reflect.Float64:
		return map[string]any{"type": "number"}
	case reflect.Slice:
		return map[string]any{"type": "array", "items": schemaOf(t.Elem())}
	case reflect.Array:
		return map[string]any{"type": "array", "items": schemaOf(t.Elem()), "minItems": t.Len(), "maxItems": t.Len()}
	case reflect.Map:
		return map[string]any{"type": "object", "additionalProperties": schemaOf(t.Elem())}
	case reflect.Struct:
		return objectSchema(t)
	}
	panic("report: no schema for " + t.String())
}

func objectSchema(t reflect.Type) map[string]any {
	properties, required := map[string]any{}, []string{}
	for i := range t.NumField() {
		f := t.Field(i)
		name, optional := strings.CutSuffix(f.Tag.Get("json"), ",omitempty")
		s := schemaOf(f.Type)
		if doc := f.Tag.Get("doc"); doc != "" {
			s["description"] = doc
		}
		properties[name] = s
		if !optional {
			required = append(required, name)
		}
	}
	return map[string]any{"type": "object", "additionalProperties": false, "properties": properties, "required": required}
}
