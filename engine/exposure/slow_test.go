package exposure

import "flag"

// slow also runs the tests that take too long to wait for; make test sets it.
var slow = flag.Bool("slow", false, "run the long tests as well")
