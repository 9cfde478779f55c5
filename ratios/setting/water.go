package setting

// Evaporated is the share of water lost in a long bake:
//
//	min(.40, .10 (minutes - 45) / 60), halved in a water bath
//
// for a dish baked longer than an hour, else nothing. Confidence medium;
// judgement: an open pudding dish dries at about a tenth of its water an hour.
func Evaporated(baked bool, minutes float64, bath bool) float64 {
	if !baked || minutes <= 60 {
		return 0
	}
	lost := min(.40, .10*(minutes-45)/60)
	if bath {
		lost /= 2
	}
	return lost
}
