package reference

// Doneness is how a cook tells that a thing is done: the heat at its centre
// when it leaves the oven, and what it looks like.
type Doneness struct {
	ID    string   `yaml:"id" sheet:"required"`
	Name  string   `yaml:"name" sheet:"required"`
	Kind  string   `yaml:"kind" sheet:"required"` // part kind: filling, cake, bread ...
	For   []string `yaml:"for,omitempty"`         // words of titles, classes and dishes it is for
	Roles []string `yaml:"roles,omitempty"`       // only for what holds one of these: a cheesecake without curd is none
	// Floor marks a safety floor: the heat the centre must reach, not the heat
	// at which the thing is set.
	Floor bool `yaml:"floor,omitempty"`

	C          Span     `yaml:"c" sheet:"required"` // centre, degrees Celsius, to a whole degree
	F          Span     `yaml:"f" sheet:"required"` // the same in Fahrenheit, as the works print it
	Minutes    Span     `yaml:"minutes,omitempty"`  // usual time in the oven
	Signs      []string `yaml:"signs,omitempty"`    // what to look for
	TooFar     string   `yaml:"too_far,omitempty"`  // what happens beyond it
	Carry      Span     `yaml:"carry,omitempty"`    // how far the centre still climbs out of the oven, degrees Celsius
	Cooling    string   `yaml:"cooling,omitempty"`  // how it is cooled and kept until it is eaten
	Provenance `yaml:",inline"`
}
