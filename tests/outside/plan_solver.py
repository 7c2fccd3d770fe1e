"""The planner's model written down once more, for OR-tools' CP-SAT solver, and random asks for it.

`make` solves random asks and writes ask, optimum and the seconds it took, one JSON object a line:
that is how `plan_optima.jsonl` was made. `live` solves small ones afresh and compares them with the
program. `race` solves every so-manieth of those of the file with both, one after the other, and says
how many times as long CP-SAT took. None is part of the test run: OR-tools is large, and minutes go by.

    python plan_solver.py make FILE
    python plan_solver.py live CARRYOVER-CLI
    python plan_solver.py race CARRYOVER-CLI [EVERY]

`pip install ortools==9.15.6755` into an environment of its own first.

The model is from the statement of the planner's rules alone; it shares no code with the program.
"""

import json
import pathlib
import random
import statistics
import sys
import time

from lines import ask
from ortools.sat.python import cp_model


def some_ask(rng, kind):
    """A random ask: `tiny`, `small`, `real` (six students, three lessons, five days, four courts),
    `tight` (more lessons wished for than fit) or `fine` (a grid of a quarter of an hour)."""
    grid = 15 if kind == "fine" else 30
    days = {"tiny": rng.randint(2, 3), "small": rng.randint(3, 4)}.get(kind, 5)
    students = {"tiny": rng.randint(2, 3), "small": rng.randint(3, 4), "fine": rng.randint(3, 5)}.get(kind, 6)
    places = 1 if rng.random() < 0.3 else 2

    def span(first, last, least, most):
        length = rng.randint(least // grid, most // grid) * grid
        start = rng.randint(first // grid, max(first // grid, (last - length) // grid)) * grid
        return [start, min(start + length, 1440)]

    facilities = []
    for _ in range(places):
        hours = []
        for _ in range(days):
            closed = rng.random() < 0.08
            opens = rng.choice([480, 540, 600])
            hours.append([0, 0] if closed else [opens, rng.choice([1080, 1200, 1260])])
        facilities.append(
            {
                "hours": hours,
                "peak": [1020, 1260],
                "longest_run": rng.choice([60, 120, 180]),
                "day_limit": rng.choice([120, 180, 240, 360]),
                "days_bookable": days if rng.random() < 0.7 else rng.randint(1, days),
            }
        )
    courts = []
    for n in range(2 if kind == "tiny" else 4):
        rate = rng.choice([0, 1200, 1600, 2000])
        courts.append(
            {
                "facility": n % places,
                "rate": rate,
                "peak_rate": rate + rng.choice([0, 400, 801]),
                "taken": [
                    [rng.randrange(days), *span(480, 1260, 60, 240)] for _ in range(rng.randint(0, 2 * days))
                ],
            }
        )
    tight = kind == "tight"
    coach = {
        "busy": [[rng.randrange(days), *span(480, 1260, 60, 240)] for _ in range(rng.randint(0, days + 2))],
        "travel": rng.choice([0, 20, 30, 60]),
        "day_limit": rng.choice([120, 180]) if tight else rng.choice([240, 300, 360]),
        "longest_run": rng.choice([120, 180, 240, 1440]),
    }
    wished = []
    for _ in range(students):
        arrive, depart = sorted((rng.randrange(days), rng.randrange(days)))
        if rng.random() < 0.5:
            arrive, depart = 0, days - 1
        per_day = rng.choice([1, 1, 2]) if kind != "tiny" else rng.randint(1, 3)
        opens = rng.choice([480, 540, 720])
        wished.append(
            {
                "arrive": [arrive, rng.choice([0, 480, 720])],
                "depart": [depart, rng.choice([1080, 1440])],
                "hours": [opens, opens + rng.choice([300, 420, 540])],
                "lessons": rng.randint(1, 4) if kind != "real" else 3,
                "length": rng.choice([60, 60, 90]) if grid == 30 else rng.choice([45, 60, 75]),
                "per_day": per_day,
                "rest": rng.choice([0, 50, 60, 120]),
                "prefer": span(480, 1260, 120, 300),
                "prefer_court": None if rng.random() < 0.5 else rng.randrange(len(courts)),
                "priority": rng.choice([1, 1, 1, 2, 3]),
            }
        )
    return {
        "grid": grid,
        "days": days,
        "facilities": facilities,
        "courts": courts,
        "coach": coach,
        "students": wished,
    }


def up(minutes, grid):
    return -(-minutes // grid)


def options(ask):
    """Every lesson that nothing forbids by itself: student, day, first slot, court, slots."""
    g = ask["grid"]
    for s, student in enumerate(ask["students"]):
        slots = up(student["length"], g)
        for day in range(ask["days"]):
            for first in range(1440 // g):
                start, end = first * g, (first + slots) * g
                if (day, start) < tuple(student["arrive"]) or (day, end) > tuple(student["depart"]):
                    continue
                if start < student["hours"][0] or end > student["hours"][1]:
                    continue
                if any(d == day and a < end and start < b for d, a, b in ask["coach"]["busy"]):
                    continue
                for c, court in enumerate(ask["courts"]):
                    place = ask["facilities"][court["facility"]]
                    opens, closes = place["hours"][day]
                    if start < opens or end > closes or day >= place["days_bookable"]:
                        continue
                    if any(d == day and a < end and start < b for d, a, b in court["taken"]):
                        continue
                    yield s, day, first, c, slots


def wishes(ask, option):
    """What a lesson costs, and how far it is from what is preferred."""
    s, _, first, c, slots = option
    g, student, court = ask["grid"], ask["students"][s], ask["courts"][c]
    peak = ask["facilities"][court["facility"]]["peak"]
    times = [(first + n) * g for n in range(slots)]
    rate = sum((court["peak_rate"] if peak[0] <= t < peak[1] else court["rate"]) * g for t in times)
    start, end = first * g, (first + slots) * g
    off = max(0, student["prefer"][0] - start, end - student["prefer"][1]) // g
    liked = student["prefer_court"]
    return rate // 60, off + (2 if liked is not None and liked != c else 0)


def build(ask):
    """The model, and its four sums in the order of the wishes."""
    g, model = ask["grid"], cp_model.CpModel()
    all_options = list(options(ask))
    take = {o: model.new_bool_var(str(o)) for o in all_options}
    slots_a_day = 1440 // g
    coach = ask["coach"]
    travel, run = up(coach["travel"], g), coach["longest_run"] // g
    spread = []

    def covering(day, slot, which=lambda o: True, before=0):
        """Lessons that cover a slot, or ended less than `before` slots ago."""
        return [
            take[o] for o in all_options if o[1] == day and o[2] <= slot < o[2] + o[4] + before and which(o)
        ]

    for day in range(ask["days"]):
        today = [o for o in all_options if o[1] == day]
        model.add(sum(take[o] * o[4] for o in today) <= coach["day_limit"] // g)
        for slot in range(slots_a_day):
            model.add(sum(covering(day, slot)) <= 1)
            if slot + run < slots_a_day:
                model.add(sum(sum(covering(day, slot + n)) for n in range(run + 1)) <= run)
        for n, place in enumerate(ask["facilities"]):
            here = [o for o in today if ask["courts"][o[3]]["facility"] == n]
            model.add(sum(take[o] * o[4] for o in here) <= place["day_limit"] // g)
            used = model.new_bool_var(f"used {day} {n}")
            for o in here:
                model.add_implication(take[o], used)
            spread.append(2 * used)
            # Whoever taught here less than the travel time ago teaches nowhere else.
            if travel:
                for o in today:
                    if ask["courts"][o[3]]["facility"] != n:
                        near = [
                            p for p in here if o[2] < p[2] + p[4] + travel and p[2] < o[2] + o[4] + travel
                        ]
                        for p in near:
                            model.add_bool_or(take[o].negated(), take[p].negated())
        for c, court in enumerate(ask["courts"]):
            longest = ask["facilities"][court["facility"]]["longest_run"] // g
            for slot in range(slots_a_day - longest):
                on = [covering(day, slot + n, lambda o, c=c: o[3] == c) for n in range(longest + 1)]
                model.add(sum(sum(part) for part in on) <= longest)
    missing = []
    for s, student in enumerate(ask["students"]):
        theirs = [o for o in all_options if o[0] == s]
        model.add(sum(take[o] for o in theirs) <= student["lessons"])
        missing.append(student["priority"] * (student["lessons"] - sum(take[o] for o in theirs)))
        there = student["depart"][0] - student["arrive"][0] + 1
        spread.append(3 * min(student["lessons"], there))
        for day in range(ask["days"]):
            today = [o for o in theirs if o[1] == day]
            model.add(sum(take[o] for o in today) <= student["per_day"])
            with_one = model.new_bool_var(f"with one {s} {day}")
            model.add(sum(take[o] for o in today) >= with_one)
            spread.append(-3 * with_one)
            rest = up(student["rest"], g)
            for slot in range(slots_a_day):
                model.add(sum(covering(day, slot, lambda o, s=s: o[0] == s, rest)) <= 1)
    cost = sum(take[o] * wishes(ask, o)[0] for o in all_options)
    off = sum(take[o] * wishes(ask, o)[1] for o in all_options)
    return model, [sum(missing), sum(spread), cost, off]


def optimum(ask, seconds=120):
    """The four sums of the best plan, one after the other; None when time ran out."""
    model, sums = build(ask)
    found = []
    for wish in sums:
        solver = cp_model.CpSolver()
        solver.parameters.max_time_in_seconds = seconds
        solver.parameters.num_workers = 2
        model.minimize(wish)
        if solver.solve(model) != cp_model.OPTIMAL:
            return None
        best = round(solver.objective_value)
        found.append(best)
        model.add(wish == best)
    return found


def make(path):
    kinds = ["tiny"] * 100 + ["small"] * 80 + ["real"] * 60 + ["tight"] * 30 + ["fine"] * 30
    with open(path, "w") as out:
        for seed, kind in enumerate(kinds):
            ask = some_ask(random.Random(seed), kind)
            start = time.perf_counter()
            best = optimum(ask)
            took = round(time.perf_counter() - start, 2)
            out.write(json.dumps({"kind": kind, "seed": seed, "ask": ask, "optimum": best, "took": took}) + "\n")
            out.flush()


def live(program):
    """Ten small asks, solved here and by the program."""
    asks = [some_ask(random.Random(f"live {n}"), "small" if n % 2 else "tiny") for n in range(10)]
    failed = 0
    for number, (ask_, plan) in enumerate(zip(asks, ask(program, "plan", asks))):
        best = optimum(ask_)
        agrees = plan["proven"] and plan["objectives"] == best
        failed += not agrees
        print(f"{number}: {best} {'agrees' if agrees else plan}")
    sys.exit(1 if failed else 0)


def race(program, every):
    """Both on the same asks, each by itself. The program's time is that of ten more of the same ask, so
    that its start is left out, as Python's is."""
    file = pathlib.Path(__file__).with_name("plan_optima.jsonl")
    rows = [json.loads(line) for line in file.read_text(encoding="utf-8").splitlines()]
    took, failed = {}, 0
    for row in rows[::every]:
        start = time.perf_counter()
        plan = ask(program, "plan", [row["ask"]])[0]
        once = time.perf_counter() - start
        start = time.perf_counter()
        ask(program, "plan", [row["ask"]] * 11)
        ours = max((time.perf_counter() - start - once) / 10, 1e-6)
        start = time.perf_counter()
        best = optimum(row["ask"])
        theirs = time.perf_counter() - start
        if best is not None and plan["objectives"] != best:
            failed += 1
            print(f"{row['seed']}: {plan['objectives']} where CP-SAT has {best}")
        took.setdefault(row["kind"], []).append((ours, theirs))
    for kind, pairs in took.items():
        ratio = statistics.median(theirs / ours for ours, theirs in pairs)
        print(
            f"{kind}: {len(pairs)} asks, CP-SAT took {ratio:.0f} times as long at the median; "
            f"the program's worst {max(ours for ours, _ in pairs):.3f} s"
        )
    every_ratio = [theirs / ours for pairs in took.values() for ours, theirs in pairs]
    print(f"all: {statistics.median(every_ratio):.0f} times at the median of {len(every_ratio)}")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    if len(sys.argv) in (3, 4) and sys.argv[1] == "race":
        race(sys.argv[2], int(sys.argv[3]) if len(sys.argv) == 4 else 1)
    elif len(sys.argv) == 3 and sys.argv[1] == "make":
        make(sys.argv[2])
    elif len(sys.argv) == 3 and sys.argv[1] == "live":
        live(sys.argv[2])
    else:
        sys.exit(__doc__)
