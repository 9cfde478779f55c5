package reference

// Link turns an index of the texture judge into a share of probability:
// p = 1 / (1 + exp(-(index - Mid) / Width)). Links are taken in the order of
// Order, each of what the ones before have left, so that the shares of a part
// sum to 1.
type Link struct {
	ID    string `yaml:"id" sheet:"required"`   // texture id it gives, or heat
	Kind  string `yaml:"kind" sheet:"required"` // filling | pastry
	Index string `yaml:"index" sheet:"required"`
	Order int    `yaml:"order"` // 0: stands apart from the shares

	Mid   Float `yaml:"mid" sheet:"required"`
	Width Float `yaml:"width" sheet:"required"`

	// What the values rest on.
	Cases  int    `yaml:"cases"`            // published formulas with this outcome among those fitted on
	Fitted string `yaml:"fitted,omitempty"` // date of the fit
	Corpus string `yaml:"corpus,omitempty"` // edition of the published table fitted on
	// Said counts the formulas on which the texture was called likely in
	// cross-validation, Right those on which it was so.
	Said        int  `yaml:"said,omitempty"`
	Right       int  `yaml:"right,omitempty"`
	MostlyPrior bool `yaml:"mostly_prior,omitempty"` // too few cases to move far from the starting belief

	// The prior belief the fit starts from: Gaussian on Mid and on ln Width.
	PriorMid     Float `yaml:"prior_mid" sheet:"required"`
	PriorMidSD   Float `yaml:"prior_mid_sd" sheet:"required"`
	PriorWidth   Float `yaml:"prior_width" sheet:"required"`
	PriorWidthSD Float `yaml:"prior_width_sd" sheet:"required"` // of ln width

	Provenance `yaml:",inline"`
}
