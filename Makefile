# The commands of the project. Each checks first what it needs and says how to get it.
.PHONY: run test bench package package-check

run:
	@tests/ci/run.sh

test:
	@tests/ci/test.sh

bench:
	@tests/ci/bench.sh

package:
	@tests/ci/package.sh

package-check:
	@tests/ci/package.sh --check
