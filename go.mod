module underpaint

go 1.26

require (
	github.com/andybalholm/brotli v1.2.1
	github.com/go-json-experiment/json v1.27.2
	github.com/leanovate/gopter v0.2.11
	github.com/shopspring/decimal v1.4.0
	gonum.org/v1/gonum v0.17.0
)

require github.com/hack-pad/safejs v0.1.0 // indirect

require (
	golang.org/x/image v0.32.0
	golang.org/x/text v0.30.0 // indirect
)
