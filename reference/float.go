package reference

import (
	"math"
	"strconv"

	"gopkg.in/yaml.v3"

	"assize/reference/sheet"
)

// Float is a figure of the mechanisms, where floating point is at home.
type Float float64

// DecodeSheet reads the figure from a sheet.
func (f *Float) DecodeSheet(n *yaml.Node, r *sheet.Reader) {
	text, ok := r.Text(n)
	if !ok {
		return
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		r.Add(n, "", "%q is not a number", text)
		return
	}
	*f = Float(v)
}
