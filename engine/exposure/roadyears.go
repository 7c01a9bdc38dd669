package exposure

// RoadYears is how many years a car was on the road, where it is told to the middle of
// each answer: the middle age, the likeliest years of an answer, those of the climate
// where the customer is not sure or was not asked. The periods are as for [Histories].
func RoadYears(ages Ages, told []ToldPeriod) (sum float64) {
	left := 0.0
	for _, a := range ages {
		left += float64(a.Chance * a.Years)
	}
	for _, t := range told {
		left -= t.Years
	}
	for _, t := range told {
		length := t.Years
		if length == 0 {
			length = max(0, left)
		}
		if answer, ok := data().roadYears[t.RoadYears]; ok {
			sum += min(length, likeliest(answer))
			continue
		}
		for _, c := range t.Climates {
			climate, _ := ClimateOf(c.ID)
			sum += float64(c.Chance * min(length, climate.RoadYears))
		}
	}
	return sum
}

func likeliest(list chances) float64 {
	best := list[0]
	for _, one := range list {
		if one.chance > best.chance {
			best = one
		}
	}
	return best.value
}
