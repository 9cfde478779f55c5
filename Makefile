# What a person or the checks run. `make demo` runs the main job, `make test`
# passes the tests; both need Go, make and git alone.

GO ?= go
STATICCHECK = honnef.co/go/tools/cmd/staticcheck@v0.8.2

.PHONY: help demo build install test race lint fmt generate bench fuzz validate calibrate update clean

help: ## list the targets
	@grep -E '^[a-z]+:.*##' $(MAKEFILE_LIST) | sed 's/:.*##/\t/' | expand -t 12

demo: build ## check the demo pudding of the Millrace House manuscript
	./assize check testdata/demo/millrace/rich-lemon-pudding.yaml

build: ## build ./assize
	$(GO) build -o assize ./cmd/assize

install: ## install assize where go installs programs
	$(GO) install ./cmd/assize

test: ## run every test
	$(GO) test ./...

race: ## run every test with the race detector, in shuffled order
	$(GO) test -race -shuffle=on ./...

lint: ## formatting, vet, staticcheck, tidy modules
	@test -z "$$(gofmt -l .)" || { gofmt -l .; echo "run make fmt"; exit 1; }
	$(GO) vet ./...
	$(GO) run $(STATICCHECK) ./...
	$(GO) mod tidy -diff

fmt: ## format the code
	gofmt -w .

generate: ## make the compact form of the tables anew
	$(GO) generate ./reference

bench: ## run the benchmarks
	$(GO) test -run '^$$' -bench . -benchmem ./...

fuzz: ## fuzz every parser for FUZZTIME (60s)
	@for target in $$(grep -rlE '^func Fuzz' --include='*_test.go' . | xargs -n1 dirname | sort -u); do \
		for name in $$(grep -hoE '^func Fuzz[A-Za-z]*' $$target/*_test.go | sed 's/func //'); do \
			$(GO) test -run '^$$' -fuzz "^$$name$$" -fuzztime $${FUZZTIME:-60s} -fuzzminimizetime 10x $$target || exit 1; \
		done; \
	done

validate: ## hold the judge against the published formulas, beside both baselines
	$(GO) run ./cmd/trial validate

calibrate: generate ## fit the links to the published formulas anew
	$(GO) run ./cmd/trial calibrate reference/data/links.yaml
	$(GO) generate ./reference

update: ## rewrite the expected outputs from what the program prints now; read the difference
	UPDATE=1 $(GO) test ./cmd/... ./formula/...

clean: ## remove what was built
	rm -f assize
