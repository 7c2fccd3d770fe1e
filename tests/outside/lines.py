"""Asks the program's calculations over standard input and output, and keeps the tally."""

import json
import math
import subprocess
import sys


def binary(about):
    """The path of carryover-cli, the one argument of every check."""
    if len(sys.argv) != 2:
        sys.exit(f"usage: {sys.argv[0]} PATH-OF-carryover-cli\n{about}")
    return sys.argv[1]


def ask(program, name, inputs):
    """One answer for each input, in the same order."""
    sent = "".join(json.dumps(one) + "\n" for one in inputs)
    done = subprocess.run(
        [program, "calc", "--lines", name],
        input=sent, capture_output=True, text=True, timeout=120, check=False,
    )
    if done.returncode != 0:
        sys.exit(f"calc --lines {name} ended with {done.returncode}: {done.stderr}")
    answers = [json.loads(line) for line in done.stdout.splitlines()]
    if len(answers) != len(inputs):
        sys.exit(f"calc --lines {name} gave {len(answers)} answers to {len(inputs)} lines")
    return answers


class Tally:
    """Counts what agreed and shows what did not."""

    def __init__(self):
        self.passed = 0
        self.failed = 0

    def check(self, what, agrees, detail=""):
        if agrees:
            self.passed += 1
        else:
            self.failed += 1
            print(f"FAILED {what}: {detail}")

    def near(self, what, got, want, within, relative=False):
        scale = abs(want) if relative else 1.0
        agrees = isinstance(got, (int, float)) and math.isfinite(got) \
            and abs(got - want) <= within * scale
        self.check(what, agrees, f"{got!r} where {want!r} is expected")

    def end(self):
        print(f"{self.passed} passed, {self.failed} failed")
        sys.exit(1 if self.failed or not self.passed else 0)
