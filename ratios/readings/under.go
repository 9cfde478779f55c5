package readings

import "assize/ratios/bake"

// Under reports whether the mean share of every texture stays under its limit,
// by the same readings as Shares. It stops as soon as nothing that is still to
// come can change the answer, so that what is far over its limit costs a part
// of the readings and what is far under it nearly all. limits are in the order
// of the kernel's textures; over 1 there is none.
func Under(k *bake.Kernel, o Options, limits []float64) bool {
	w := newWork(k, Options{Seed: o.Seed})
	n := float64(o.N)
	for i := range o.N {
		w.draw(i)
		k.Run(w.values, &w.out)
		left := float64(o.N - 1 - i)
		sure := true
		for t := range limits {
			w.shares[t] += w.out.Shares[t]
			if w.shares[t] >= limits[t]*n {
				return false
			}
			sure = sure && w.shares[t]+left < limits[t]*n
		}
		if sure {
			return true
		}
	}
	return true
}
