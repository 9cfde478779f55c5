package reference

import (
	"bytes"
	"encoding/gob"
	"maps"
	"slices"
)

// Named holds values by name. It is a map whose compact form is always the
// same, so that the snapshot of unchanged tables does not change.
type Named[V any] map[string]V

// GobEncode writes the values in the order of their names.
func (n Named[V]) GobEncode() ([]byte, error) {
	names := slices.Sorted(maps.Keys(n))
	values := make([]V, len(names))
	for i, name := range names {
		values[i] = n[name]
	}
	var b bytes.Buffer
	e := gob.NewEncoder(&b)
	if err := e.Encode(names); err != nil {
		return nil, err
	}
	err := e.Encode(values)
	return b.Bytes(), err
}

// GobDecode reads what GobEncode wrote.
func (n *Named[V]) GobDecode(raw []byte) error {
	var names []string
	var values []V
	d := gob.NewDecoder(bytes.NewReader(raw))
	if err := d.Decode(&names); err != nil {
		return err
	}
	if err := d.Decode(&values); err != nil {
		return err
	}
	*n = make(Named[V], len(names))
	for i, name := range names {
		(*n)[name] = values[i]
	}
	return nil
}
