"""Compares the readiness table with the published one, ages with dateutil, and names the eyewear standards.

The table: Riebe D, Franklin BA, Thompson PD, Garber CE, Whitfield GP, Magal M, Pescatello LS. Updating ACSM's
Recommendations for Exercise Preparticipation Health Screening. Med Sci Sports Exerc 2015;47(11):2473-2479, figure 2.
Eyewear: ASTM F3164 (edition of 2024: racquetball, squash, tennis, pickleball) and the older ASTM F803.
"""

import json
import subprocess
import tempfile
from datetime import date, timedelta
from itertools import product

from dateutil.relativedelta import relativedelta

from lines import Tally, ask, binary

# Row by row as published: active, known disease, signs or symptoms.
PUBLISHED = {
    ("no", "no", "no"): "not_necessary_light",
    ("no", "yes", "no"): "clearance_first",
    ("no", "no", "yes"): "clearance_first",
    ("no", "yes", "yes"): "clearance_first",
    ("yes", "no", "no"): "not_necessary_continue",
    ("yes", "yes", "no"): "clearance_for_vigorous",
    ("yes", "no", "yes"): "stop_and_ask",
    ("yes", "yes", "yes"): "stop_and_ask",
}
NEVER = ["fit to", "cleared", "safe to", "healthy", "give up", "no risk"]


def readiness(program, tally):
    cases = list(product(["yes", "no", "not_known"], repeat=3))
    answers = ask(program, "readiness", [dict(zip(("active", "disease", "symptoms"), c)) for c in cases])
    for case, answer in zip(cases, answers):
        says = answer["outcome"]
        if case in PUBLISHED:
            tally.check(f"readiness {case}", says == PUBLISHED[case], says)
        else:
            # Whatever the unknown turns out to be, nobody goes on unasked.
            could = {PUBLISHED[full] for full in PUBLISHED if all(c in ("not_known", f) for c, f in zip(case, full))}
            asks = says == "ask" or (says in could and not says.startswith("not_necessary"))
            tally.check(f"readiness {case}", asks, f"{says}, could be {sorted(could)}")
        words = answer["words"].lower()
        tally.check(f"words {case}", not any(never in words for never in NEVER), words)


def ages(program, tally):
    births = [date(2008, 2, 28), date(2008, 2, 29), date(2008, 3, 1), date(1900, 3, 1), date(2000, 2, 29),
              date(2011, 12, 31), date(2012, 1, 1)]
    births += [date(1950, 1, 1) + timedelta(days=97 * n) for n in range(260)]
    asked = []
    for born in births:
        for years in (0, 1, 4, 13, 17, 18, 21, 80):
            for shift in (-1, 0, 1):
                try:
                    at = born.replace(year=born.year + years)
                except ValueError:
                    at = date(born.year + years, 3, 1)
                asked.append((born, at + timedelta(days=shift)))
    answers = ask(program, "age", [{"born": str(b), "on": str(on)} for b, on in asked])
    for (born, on), answer in zip(asked, answers):
        if on < born:
            tally.check(f"{born} on {on}", answer["years"] is None, answer)
            continue
        years = relativedelta(on, born).years
        # dateutil lets who was born on 29 February be older on the 28th; here, as in many laws, on 1 March.
        leap = (born.month, born.day) == (2, 29) and (on.month, on.day) == (2, 28)
        if leap and (on + timedelta(days=1)).month == 3:
            years = max(0, years - 1)
        tally.check(f"{born} on {on}", answer["years"] == years, f"{answer} and {years}")


def eyewear(program, tally):
    with tempfile.TemporaryDirectory() as folder:
        path = f"{folder}/one.carryover"
        subprocess.run([program, "sample", path, "--students", "1"], capture_output=True, check=True)
        done = subprocess.run([program, "--file", path, "call", "intake.eyewear"], input="{}",
                              capture_output=True, text=True, check=True)
    named = {one["name"]: one for one in json.loads(done.stdout)["value"]}
    tally.check("F3164, the edition of 2024", named["ASTM F3164"]["edition"] == "2024", named)
    for sport in ("racquetball", "squash", "tennis", "pickleball"):
        tally.check(f"F3164 names {sport}", sport in named["ASTM F3164"]["about"], named)
    tally.check("F803 is called the older one", "older" in named["ASTM F803"]["about"], named)


def main():
    program = binary(__doc__)
    tally = Tally()
    readiness(program, tally)
    ages(program, tally)
    eyewear(program, tally)
    tally.end()


main()
