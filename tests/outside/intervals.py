"""Compares wilson, change and criterion with scipy and statsmodels, and with published values."""

import random

from scipy.stats import binom, binomtest
from statsmodels.stats.proportion import confint_proportions_2indep

from lines import Tally, ask, binary

LEVELS = [0.5, 0.8, 0.9, 0.95, 0.99, 0.999]


def wilson_against_scipy(program, tally, random_):
    """binomtest(...).proportion_ci(method="wilson")."""
    counts = [(k, n) for n in (1, 2, 5, 10, 20) for k in range(n + 1)]
    while len(counts) < 300:
        tries = random_.randint(1, 3000)
        counts.append((random_.randint(0, tries), tries))
    inputs = [
        {"made": k, "tries": n, "level": LEVELS[at % len(LEVELS)]}
        for at, (k, n) in enumerate(counts)
    ]
    for one, got in zip(inputs, ask(program, "wilson", inputs)):
        want = binomtest(one["made"], one["tries"]).proportion_ci(one["level"], method="wilson")
        tally.near(f"wilson {one} rate", got.get("rate"), one["made"] / one["tries"], 1e-15)
        tally.near(f"wilson {one} low", got.get("low"), want.low, 1e-12)
        tally.near(f"wilson {one} high", got.get("high"), want.high, 1e-12)


def change_against_statsmodels(program, tally, random_):
    """confint_proportions_2indep(..., method="newcomb", compare="diff")."""
    pairs = [((a, 10), (b, 10)) for a in range(11) for b in range(11)]
    while len(pairs) < 300:
        n, m = random_.randint(1, 400), random_.randint(1, 400)
        pairs.append(((random_.randint(0, n), n), (random_.randint(0, m), m)))
    inputs = [
        {"before": {"made": b[0], "tries": b[1]}, "after": {"made": a[0], "tries": a[1]}}
        for a, b in pairs
    ]
    for (a, b), one, got in zip(pairs, inputs, ask(program, "change", inputs)):
        tally.near(f"change {one}", got.get("change"), a[0] / a[1] - b[0] / b[1], 1e-14)
        bounds = {}
        for name, alpha in (("level95", 0.05), ("level90", 0.10)):
            low, high = confint_proportions_2indep(
                a[0], a[1], b[0], b[1], method="newcomb", compare="diff", alpha=alpha)
            bounds[name] = (low, high)
            tally.near(f"change {one} {name} low", got.get(name, {}).get("low"), low, 1e-12)
            tally.near(f"change {one} {name} high", got.get(name, {}).get("high"), high, 1e-12)
        word = word_of(bounds)
        tally.check(f"change {one} word", got.get("word") == word, f"{got.get('word')!r}, not {word!r}")


def word_of(bounds):
    """The word from the bounds of the other program."""
    for name, up, down in (("level95", "up", "down"), ("level90", "leaning up", "leaning down")):
        low, high = bounds[name]
        if low > 0:
            return up
        if high < 0:
            return down
    return "too few to tell"


def criterion_against_scipy(program, tally, random_):
    """binom.sf(made - 1, of, true_rate)."""
    inputs = [
        {"made": made, "of": of, "blocks": blocks, "true_rate": rate}
        for made, of in ((8, 10), (16, 20), (24, 30), (10, 10), (1, 10), (0, 5))
        for blocks in (1, 2, 5)
        for rate in (0.0, 0.3, 0.6, 0.8, 1.0)
    ]
    while len(inputs) < 300:
        of = random_.randint(1, 500)
        inputs.append({
            "made": random_.randint(0, of), "of": of,
            "blocks": random_.randint(1, 30), "true_rate": random_.random(),
        })
    for one, got in zip(inputs, ask(program, "criterion", inputs)):
        want = float(binom.sf(one["made"] - 1, one["of"], one["true_rate"]))
        tally.near(f"criterion {one} one block", got.get("one_block"), want, 1e-12)
        any_block = float(1 - binom.pmf(0, one["blocks"], want))
        tally.near(f"criterion {one} any block", got.get("any_block"), any_block, 1e-11)


def published(program, tally):
    """Values printed in the literature, to the digits printed there."""
    # R. G. Newcombe, "Two-sided confidence intervals for the single proportion", Statistics in
    # Medicine 17 (1998) 857-872: Wilson score without continuity correction, 95 %.
    cases = [(81, 263, 0.2553, 0.3662), (15, 148, 0.0624, 0.1605),
             (0, 20, 0.0000, 0.1611), (1, 29, 0.0061, 0.1718)]
    inputs = [{"made": k, "tries": n, "level": 0.95} for k, n, _, _ in cases]
    for (k, n, low, high), got in zip(cases, ask(program, "wilson", inputs)):
        tally.near(f"Newcombe 1998a {k}/{n} low", got.get("low"), low, 5e-5)
        tally.near(f"Newcombe 1998a {k}/{n} high", got.get("high"), high, 5e-5)
    # R. G. Newcombe, "Interval estimation for the difference between independent proportions",
    # Statistics in Medicine 17 (1998) 873-890, table II, method 10, 95 %. The rows after the first
    # are from memory.
    cases = [((56, 70), (48, 80), 0.0524, 0.3339), ((9, 10), (3, 10), 0.1705, 0.8090),
             ((6, 7), (2, 7), 0.0582, 0.8062), ((5, 56), (0, 29), -0.0381, 0.1926),
             ((0, 10), (0, 20), -0.1611, 0.2775), ((0, 10), (0, 10), -0.2775, 0.2775),
             ((10, 10), (0, 20), 0.6791, 1.0000), ((10, 10), (0, 10), 0.6075, 1.0000)]
    inputs = [{"after": {"made": a[0], "tries": a[1]}, "before": {"made": b[0], "tries": b[1]}}
              for a, b, _, _ in cases]
    for (a, b, low, high), got in zip(cases, ask(program, "change", inputs)):
        bounds = got.get("level95", {})
        tally.near(f"Newcombe 1998b {a} - {b} low", bounds.get("low"), low, 5e-5)
        tally.near(f"Newcombe 1998b {a} - {b} high", bounds.get("high"), high, 5e-5)
    # NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1: 26 defects in 200. Its one-sided
    # 95 % lower limit in the Wilson form, 0.095773 (the digits computed with scipy 1.17.1), is the
    # lower bound of the two-sided 90 % interval.
    [got] = ask(program, "wilson", [{"made": 26, "tries": 200, "level": 0.90}])
    tally.near("NIST 7.2.4.1, 26 of 200", got.get("low"), 0.095773, 5e-7)


def edges(program, tally):
    """What has no answer says so; nothing is written minus zero."""
    [got] = ask(program, "wilson", [{"made": 0, "tries": 0, "level": 0.95}])
    tally.check("no tries", got == {"rate": None, "low": None, "high": None}, got)
    refused = [{"made": 2, "tries": 1, "level": 0.95}, {"made": 1, "tries": 2, "level": 1},
               {"made": 1, "tries": 2, "level": 0}, {"made": 1, "tries": 2, "level": 0.9, "x": 1},
               {"made": -1, "tries": 2, "level": 0.9}, {"made": 0.5, "tries": 2, "level": 0.9}]
    for one, got in zip(refused, ask(program, "wilson", refused)):
        tally.check(f"refused {one}", len(got.get("error", {}).get("problems", [])) == 1, got)


def main():
    program = binary(__doc__)
    tally, random_ = Tally(), random.Random(17857)
    wilson_against_scipy(program, tally, random_)
    change_against_statsmodels(program, tally, random_)
    criterion_against_scipy(program, tally, random_)
    published(program, tally)
    edges(program, tally)
    tally.end()


if __name__ == "__main__":
    main()
