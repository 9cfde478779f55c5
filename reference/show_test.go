package reference_test

import "gopkg.in/yaml.v3"

// show writes a row as text in which equal decimals are equal.
func show(row any) string {
	raw, err := yaml.Marshal(row)
	if err != nil {
		return err.Error()
	}
	return string(raw)
}
