# The commands of the project. Each checks first what it needs and says how to get it.
.PHONY: run test bench

run:
	@tests/ci/run.sh

test:
	@tests/ci/test.sh

bench:
	@tests/ci/bench.sh
