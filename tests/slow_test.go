package tests

import "flag"

// slow includes the sweeps that take too long to wait for; make test sets it.
var slow = flag.Bool("slow", false, "run the long sweeps as well")
