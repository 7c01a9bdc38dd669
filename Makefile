# One verb per line of DEVELOPERS.md. Needs Go, Node and make; `make test` also
# installs Chromium from Debian's packages when it is not there, `make bench` a C
# compiler, `make growth` gnuplot, `make load` nginx and wrk.

RATES ?= engine/rates/data/sample.json
ADDR  ?= 127.0.0.1:8080
OUT   ?= site/dist
WASM_EXEC = $(shell go env GOROOT)/lib/wasm/go_js_wasm_exec

# The tables of the peers are laid into the engine (tests/bench/doc.go).
BENCH = -tags bench -overlay tests/bench/overlay.json

# Its version stands in a go.mod of its own, so that the program's lists only what the
# program uses. Every check but one: ST1016, one receiver name for all methods of a type,
# would take the short name from the car that many methods are about.
STATICCHECK = go tool -modfile=tests/lint.mod staticcheck -checks all,-ST1016

RELEASE   ?= site/dist-release
PLATFORMS ?= linux/amd64 linux/arm64 darwin/amd64 darwin/arm64 windows/amd64 windows/arm64
VERSION   ?= $(shell git describe --tags --always --dirty 2>/dev/null)

CARS  ?= 2000
ADDRESS ?=

.PHONY: sweeps calibrate faults yardstick growth load pace run dist release test test-go test-wasm test-page page-test site-built lint bench bench-go fuzz prompt pictures

run: ## build everything and serve the pages with the sample shop
	go run ./site serve -addr $(ADDR) -rates $(RATES)

dist: ## the folder for a web host, compressed variants included
	go run ./site build -out $(OUT) -rates $(RATES) $(if $(ADDRESS),-address $(ADDRESS))

# Each program has the engines in it, so that it needs neither Go nor the sources.
release: ## the command for each system and its manual page, into site/dist-release
	rm -rf site/build/ready && go run ./site engines -out site/build/ready
	rm -rf $(RELEASE) && mkdir -p $(RELEASE)
	go run ./engine/cmd/underpaint man > $(RELEASE)/underpaint.1
	set -e; for p in $(PLATFORMS); do \
		os=$${p%/*}; end=; name=$$os; case $$os in darwin) name=macos ;; windows) end=.exe ;; esac; \
		echo "$$name, $${p#*/}"; \
		CGO_ENABLED=0 GOOS=$$os GOARCH=$${p#*/} go build -tags release -trimpath -ldflags '-s -w -X main.released=$(VERSION)' \
			-o $(RELEASE)/underpaint-$$name-$${p#*/}$$end ./engine/cmd/underpaint; \
	done

test: lint test-go test-wasm test-page

test-go:
	go test ./...
	go test ./engine/damage -run 'GridsHaveConverged|ImaginedGrids' -timeout 1h -args -slow
	go test ./engine/pastjobs ./engine/exposure ./engine/rates ./engine/evidence ./engine/cmd/underpaint -run 'LearnFrom|Joining|SchemaRequired|Properties|SiteIsThatOfTheBuild|SamplePastJobs|TestRelease' -timeout 1h -args -slow
	go test $(BENCH) ./tests/bench

# The engine's own tests once more where its customers run it, and whole questions
# through what the built engines export.
test-wasm:
	GOOS=js GOARCH=wasm go test -exec="$(WASM_EXEC)" ./engine/chance ./engine/network ./engine/damage ./engine/estimate ./engine/session ./engine/message
	node --test --test-timeout=1800000 wasm/test/shipped.test.mjs tests/vectors/node.test.mjs

# The most that one file of tests may take is a quiet machine's, times its pace
# (site/test/pace.mjs), as every wait in them is.
PAGE_TESTS = cd site && SITE_BUILT=$(CURDIR)/site/.built node --import tsx --test --test-timeout=$$(node test/pace.mjs 2400000)

test-page: site-built
	$(PAGE_TESTS) --test-concurrency=2 test/unit/*.test.mjs test/browser/*.test.mjs

page-test: site-built ## one page test: make page-test NAME="a mistake inside the sums" (FILE=test/browser/pages.test.mjs looks there only)
	@test -n '$(NAME)' || { echo 'page-test: expected NAME="part of a name"'; exit 1; }
	$(PAGE_TESTS) --test-reporter=spec --test-reporter-destination=stdout --test-reporter=tap --test-reporter-destination=.built/tap --test-name-pattern='$(NAME)' $(or $(FILE),test/unit/*.test.mjs test/browser/*.test.mjs)
	@grep -v '# SKIP' site/.built/tap | grep -q '^ *ok [0-9]* - ' || { echo 'page-test: no test has "$(NAME)" in its name'; exit 1; }

site-built: /usr/bin/chromium site/node_modules/.package-lock.json
	rm -rf site/.built && mkdir site/.built && go build -o site/.built/site ./site
	site/.built/site build -out site/.built/built -rates engine/rates/data/sample.json

pictures: /usr/bin/chromium site/node_modules/.package-lock.json ## those of the README, from the running pages
	cd site && node --import tsx test/browser/pictures.mjs

/usr/bin/chromium:
	apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq chromium

site/node_modules/.package-lock.json: site/package-lock.json
	cd site && npm ci --no-audit --no-fund

lint: site/node_modules/.package-lock.json
	@test -z "$$(gofmt -l engine site tests wasm)" || { gofmt -l engine site tests wasm; echo "gofmt: the files above need it"; exit 1; }
	go vet ./...
	GOOS=js GOARCH=wasm go vet ./wasm/... ./engine/message
	go vet $(BENCH) ./tests/bench/... ./engine/chance ./engine/damage ./engine/network ./engine/pricing
	$(STATICCHECK) ./...
	echo "browser: GOOS=js GOARCH=wasm" | $(STATICCHECK) -matrix ./wasm/... ./engine/message
	cd site && npx --no-install tsc -p . && npx --no-install tsc -p tsconfig.workers.json && npx --no-install biome check --error-on-warnings

bench: /usr/bin/gcc ## the engine against programs written by hand, into DEVELOPERS.md
	go run $(BENCH) ./tests/bench/race -readme DEVELOPERS.md

/usr/bin/gcc:
	apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq gcc libc6-dev

growth: /usr/bin/gnuplot ## how time grows with items, histories, cars, records, files; into DEVELOPERS.md
	go run ./tests/bench/growth -readme DEVELOPERS.md -plot tests/bench/growth.svg

/usr/bin/gnuplot:
	apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq gnuplot-nox

load: /usr/bin/wrk ## the folder served by our own server and by nginx, asked by wrk
	go run ./tests/load

/usr/bin/wrk:
	apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq wrk nginx-light libnginx-mod-http-brotli-static

# Two outputs of bench-go are compared with the statistics of the Go project:
# go run golang.org/x/perf/cmd/benchstat@v0.0.0-20260908200009-22c9c6c9d4da before.txt after.txt
bench-go: ## Go's own benchmarks
	go test -run '^$$' -bench . -benchmem ./engine/...

fuzz: ## a minute on each decoder, and on the engine as a whole
	go test -run '^$$' -fuzz FuzzParse -fuzztime 60s -fuzzminimizetime 1x ./engine/strict
	go test -run '^$$' -fuzz FuzzParse -fuzztime 60s -fuzzminimizetime 1x ./engine/money
	go test -run '^$$' -fuzz FuzzDecode -fuzztime 60s -fuzzminimizetime 1x ./engine/rates
	go test -run '^$$' -fuzz FuzzDecode -fuzztime 60s -fuzzminimizetime 1x ./engine/carfile
	go test -run '^$$' -fuzz FuzzDecode -fuzztime 60s -fuzzminimizetime 1x ./engine/pastjobs
	go test -run '^$$' -fuzz FuzzFromLooks -fuzztime 60s -fuzzminimizetime 1x ./engine/evidence
	go test -run '^$$' -fuzz 'FuzzRead$$' -fuzztime 60s -fuzzminimizetime 1x ./engine/columns
	go test -run '^$$' -fuzz FuzzWrittenIsReadBack -fuzztime 60s -fuzzminimizetime 1x ./engine/columns
	go test -run '^$$' -fuzz FuzzAsk -fuzztime 60s -fuzzminimizetime 1x ./engine/message
	go test -run '^$$' -fuzz FuzzCar -fuzztime 60s -fuzzminimizetime 1x ./engine/message

faults: ## how many mistakes put into three packages their own tests see; long
	go run ./tests/faults -package ./engine/money -n 150
	go run ./tests/faults -package ./engine/network -n 150
	go run ./tests/faults -package ./engine/pricing -n 150

sweeps: ## whether more damage ever costs less: every part of every body, after three surveys; long
	go test ./tests -run MoreDamage -v -timeout 6h -args -slow

calibrate: ## whether the ranges hold what they say, on thousands of simulated cars
	go test ./tests -run 'TestCalibration|TestWrongModels' -v -timeout 120m -args -calibration-cars=$(CARS)

yardstick: ## sampled ends beside exact ones, for all bodies
	go test ./tests -run TestYardstick -v -timeout 60m -args -yardstick-bodies=6

pace: /usr/bin/chromium site/node_modules/.package-lock.json ## how soon a range is there in a browser, into DEVELOPERS.md
	cd site && node --import tsx pace/pace.mjs --readme ../DEVELOPERS.md

prompt: ## the command, into ./underpaint
	go build -o underpaint ./engine/cmd/underpaint
