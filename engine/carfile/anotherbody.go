package carfile

// AnotherBodyAnswers are the answers to whether it must be this very body. Only the second
// lets the shop count another one.
var AnotherBodyAnswers = []string{ThisOneOnly, AnotherIsAllRight, NotSure}

// The answers that say something.
const (
	ThisOneOnly       = "this_one_only"
	AnotherIsAllRight = "another_is_all_right"
)

// TakesAnotherBody says whether the customer accepts another body where the shop would
// advise it.
func (c *Car) TakesAnotherBody() bool { return c.AnotherBody == AnotherIsAllRight }
