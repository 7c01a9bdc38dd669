package pastjobs

import (
	"testing"

	"underpaint/engine/car"
	"underpaint/tests/schemas"
)

// TestSchema: the groups of the schema have the members that the program knows, and the
// test compares every group.
func TestSchema(t *testing.T) {
	want := map[string][]string{
		"":                                  fileKeys,
		"$defs.job":                         jobKeys,
		"$defs.job.properties.said":         saidKeys,
		"$defs.job.properties.hours":        car.TradeIDs[:],
		"$defs.job.properties.more_because": CauseIDs[:],
	}
	s := schemas.Compare(t, "../../site/schema/past-jobs.schema.json", want)
	if format := schemas.At(s, "properties.format")["const"]; format != Format {
		t.Errorf("format %v", format)
	}
}
