"""Compares load with numpy, and with weeks worked out beforehand."""

import random

import numpy

from lines import Tally, ask, binary


def expected(days):
    """Foster et al. 2001, Journal of Strength and Conditioning Research 15:109-115, with the sample
    standard deviation (ddof = 1), as the paper does not say which."""
    array = numpy.array(days, dtype=float)
    total, mean = array.sum(), array.mean()
    if len(days) == 1:
        return total, mean, None, None, None
    # Equal days have no spread, where numpy may keep a rounding error of the mean.
    sd = 0.0 if array.min() == array.max() else array.std(ddof=1)
    if sd == 0.0:
        return total, mean, sd, None, None
    return total, mean, sd, mean / sd, total * mean / sd


def compare(tally, days, got):
    for name, want in zip(("total", "mean", "sd", "monotony", "strain"), expected(days)):
        if want is None:
            tally.check(f"load {days} {name}", name in got and got[name] is None, got)
        else:
            tally.near(f"load {days} {name}", got.get(name), want, 1e-12, relative=want != 0)


def any_days(random_):
    count = random_.choice([1, 2, 7, 7, 7, 7, 14, 28])
    kind = random_.randint(0, 4)
    if kind == 0:
        return [random_.choice([0, 0.1, 300, 77.7])] * count
    if kind == 1:
        return [random_.uniform(0, 1500) for _ in range(count)]
    # Minutes times effort, with days of rest.
    return [random_.choice([0, 1, 1]) * random_.randrange(0, 241, 5) * random_.randint(0, 10)
            for _ in range(count)]


def against_numpy(program, tally, random_):
    weeks = [any_days(random_) for _ in range(500)]
    for days, got in zip(weeks, ask(program, "load", [{"days": days} for days in weeks])):
        compare(tally, days, got)


def weeks(program, tally):
    """Weeks of our own, to the digits computed with numpy 2.4."""
    cases = [
        ([0, 0, 0, 780, 930, 840, 240], 2790, 398.5714, 432.9137, 0.9207, 2568.6742),
        ([300, 320, 310, 300, 330, 300, 0], 1860, 265.7143, 117.7366, 2.2569, 4197.7483),
        ([300] * 7, 2100, 300, 0, None, None),
        ([600, 0, 0, 0, 0, 0, 0], 600, 85.7143, 226.7787, 0.3780, 226.7787),
        ([0] * 7, 0, 0, 0, None, None),
        ([300], 300, 300, None, None, None),
    ]
    answers = ask(program, "load", [{"days": days} for days, *_ in cases])
    for (days, *wants), got in zip(cases, answers):
        for name, want in zip(("total", "mean", "sd", "monotony", "strain"), wants):
            if want is None:
                tally.check(f"week {days} {name}", got.get(name, 0) is None, got)
            else:
                tally.near(f"week {days} {name}", got.get(name), want, 5e-5)


def refused(program, tally):
    cases = [
        ({"days": []}, "days"), ({}, "days"), ({"days": 300}, "days"), ({"days": None}, "days"),
        ({"days": [1, -1]}, "days[1]"), ({"days": [1, "2"]}, "days[1]"),
        ({"days": [None, 1]}, "days[0]"), ({"days": [1, 2], "sd": "sample"}, "sd"),
        ({"days": [1e308, 1e308]}, "days"),
    ]
    for (one, field), got in zip(cases, ask(program, "load", [one for one, _ in cases])):
        fields = [problem["field"] for problem in got.get("error", {}).get("problems", [])]
        tally.check(f"refused {one}", fields == [field], got)
    answer = ask(program, "load", [{"days": [-0.0, -0.0]}])
    tally.check("no minus zero", "-0" not in repr(answer[0].get("total")), answer)


def main():
    program = binary(__doc__)
    tally = Tally()
    against_numpy(program, tally, random.Random(2001))
    weeks(program, tally)
    refused(program, tally)
    tally.end()


if __name__ == "__main__":
    main()
