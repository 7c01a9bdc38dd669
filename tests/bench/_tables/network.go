package network

import "errors"

// Flat passes to put, list by list, what [NestedPosterior.SampleGiven] reads where
// nothing was seen under any pocket: the probabilities of the levels of each group and
// each pocket, row by row. Where something was seen, the rows depend on the levels
// above and are not one list; that is an error.
func Flat(post *NestedPosterior, put func(name string, values []float64)) error {
	var groups, pockets, count []float64
	for g := range post.groups {
		group := &post.groups[g]
		groups = append(groups, group.prior...)
		count = append(count, float64(len(group.pockets)))
		for k := range group.pockets {
			pocket := &group.pockets[k]
			if len(pocket.leaves) > 0 || pocket.inner > 0 {
				return errors.New("network: expected a posterior of which nothing was seen")
			}
			pockets = append(pockets, pocket.prior...)
		}
	}
	put("group_chance", groups)
	put("group_pockets", count)
	put("pocket_chance", pockets)
	return nil
}
