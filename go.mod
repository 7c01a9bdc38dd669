module underpaint

go 1.26.0

require (
	github.com/andybalholm/brotli v1.3.0
	github.com/evanw/esbuild v0.28.2
	github.com/go-json-experiment/json v1.27.2
	github.com/hack-pad/safejs v0.1.0
	github.com/leanovate/gopter v0.2.11
	github.com/shopspring/decimal v1.6.0
	github.com/spf13/cobra v1.10.2
	github.com/spf13/pflag v1.0.9
	gonum.org/v1/gonum v0.17.0
)

require (
	github.com/inconshreveable/mousetrap v1.1.0 // indirect
	golang.org/x/sys v0.50.0 // indirect
)
