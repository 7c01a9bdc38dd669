package exposure

// referenceCase is a history and μ of ten items under each of its levels, rates
// as told, × .75 and × 1.33.
type referenceCase struct {
	name    string
	periods []Period
	items   []referenceItem
}

// referenceItem has the constants of the part in the six body patterns of
// package car (a test compares) and the expected μ.
type referenceItem struct {
	item                   string
	m, b, life, splash, mm float64
	mu                     [3]float64
}

// referenceCases were worked out by a separate calculation in another language
// that shares no code with this package, to nine digits.
var referenceCases = []referenceCase{
	{"two_door_unitary: no evidence, two-period history, answer about earlier work", []Period{{"salt", 9, "driven_all_year"}, {"dry", 47, "garage"}}, []referenceItem{
		{"outer_sill.left", 3.6, 0.85, 4, 0.8, 1.21, [3]float64{-0.158237808, -0.44591988, 0.126941135}},
		{"outer_sill.right", 3.6, 0.85, 4, 0.8, 1.21, [3]float64{-0.158237808, -0.44591988, 0.126941135}},
		{"inner_sill.right", 3.2, 0.85, 5, 0.7, 1.52, [3]float64{-0.626056094, -0.913738166, -0.340877152}},
		{"cowl_lower.whole", 2.9, 0.85, 5, 0.1, 0.91, [3]float64{-0.488065369, -0.775747441, -0.202886426}},
		{"front_rail.left", 3, 0.85, 4, 0.8, 1.9, [3]float64{-0.791792891, -1.079474964, -0.506613949}},
		{"roof_skin.whole", 1.4, 0.523, 10, 0, 0.91, [3]float64{-2.27761635, -2.565298423, -1.992437408}},
		{"post_foot.rear_left", 2.4, 0.85, 5, 0.6, 1.21, [3]float64{-0.73239948, -1.020081553, -0.447220538}},
		{"quarter_skin.left", 1.7, 0.575, 8, 0.6, 0.91, [3]float64{-1.541948613, -1.829630686, -1.256769671}},
		{"trunk_dropoff.right", 2.8, 0.85, 4, 0.8, 0.91, [3]float64{-0.124621197, -0.412303269, 0.160557745}},
		{"seat_pan.whole", 1.7, 0.575, 8, 0.6, 0.91, [3]float64{-1.541948613, -1.829630686, -1.256769671}},
	}},
	{"hardtop_on_frame: side tests on both sides, separate chassis", []Period{{"salt", 8, "driven_all_year"}, {"salt", 52, "garage"}}, []referenceItem{
		{"outer_sill.left", 3.6, 0.85, 4, 0.8, 1.21, [3]float64{0.275498729, -0.012183343, 0.560677672}},
		{"outer_sill.right", 3.6, 0.85, 4, 0.8, 1.21, [3]float64{0.275498729, -0.012183343, 0.560677672}},
		{"inner_sill.left", 3.2, 0.85, 5, 0.7, 1.52, [3]float64{-0.165660911, -0.453342984, 0.119518031}},
		{"inner_sill.right", 3.2, 0.85, 5, 0.7, 1.52, [3]float64{-0.165660911, -0.453342984, 0.119518031}},
		{"chassis_rail.left", 2, 0.85, 6, 0.85, 3.04, [3]float64{-1.298817484, -1.586499556, -1.013638542}},
		{"chassis_rail.right", 2, 0.85, 6, 0.85, 3.04, [3]float64{-1.298817484, -1.586499556, -1.013638542}},
		{"body_mount.left_1", 2.5, 0.85, 5, 0.8, 1.9, [3]float64{-0.584581978, -0.87226405, -0.299403036}},
		{"outrigger.right_1", 3.2, 0.85, 4, 0.8, 2.66, [3]float64{-0.629990069, -0.917672142, -0.344811127}},
		{"fender_upper.left", 1.6, 0.85, 6, 0.6, 0.91, [3]float64{-0.443499246, -0.731181319, -0.158320304}},
		{"post_foot.front_left", 2.4, 0.85, 5, 0.6, 1.21, [3]float64{-0.276335571, -0.564017643, 0.008843372}},
	}},
	{"two_door_unitary: partial survey, cavities recorded from outside", []Period{{"damp", 12, "driven_all_year"}, {"damp", 43, "garage"}}, []referenceItem{
		{"inner_sill.left", 3.2, 0.85, 5, 0.7, 1.52, [3]float64{-0.28768721, -0.575369282, -0.002508267}},
		{"inner_sill.right", 3.2, 0.85, 5, 0.7, 1.52, [3]float64{-0.28768721, -0.575369282, -0.002508267}},
		{"cowl_lower.whole", 2.9, 0.85, 5, 0.1, 0.91, [3]float64{-0.116385333, -0.404067405, 0.168793609}},
		{"front_floor.right", 2.7, 0.85, 5, 0.6, 0.91, [3]float64{0.014888257, -0.272793815, 0.300067199}},
		{"rear_floor.right", 2, 0.85, 5, 0.6, 0.91, [3]float64{-0.285216335, -0.572898408, -3.7393e-05}},
		{"front_rail.left", 3, 0.85, 4, 0.8, 1.9, [3]float64{-0.484660726, -0.772342798, -0.199481783}},
		{"front_rail.right", 3, 0.85, 4, 0.8, 1.9, [3]float64{-0.484660726, -0.772342798, -0.199481783}},
		{"outer_sill.left", 3.6, 0.85, 4, 0.8, 1.21, [3]float64{0.148894358, -0.138787715, 0.4340733}},
		{"outer_sill.right", 3.6, 0.85, 4, 0.8, 1.21, [3]float64{0.148894358, -0.138787715, 0.4340733}},
		{"sill_web.left", 3.2, 0.85, 5, 0.7, 1.52, [3]float64{-0.28768721, -0.575369282, -0.002508267}},
	}},
}
