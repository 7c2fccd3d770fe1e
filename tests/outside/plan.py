"""Compares plan with the optima that OR-tools' CP-SAT solver found, and reads each plan with rules
written down once more.

`plan_optima.jsonl` holds random asks, small and of a real trip's size, tight and loose, each with the
optimum that ortools 9.15.6755 proved (`plan_solver.py make`), or null where it did not within 120
seconds a wish; such plans are only read by the rules.
"""

import json
import os
import time

from lines import Tally, ask, binary


def up(minutes, grid):
    return -(-minutes // grid) * grid


def broken(given, plan):
    """The first rule that a plan breaks, by the contract's words; None when it keeps them all."""
    g, coach = given["grid"], given["coach"]
    lessons = []
    for one in plan["lessons"]:
        student = given["students"][one["student"]]
        lessons.append({**one, "end": one["start"] + up(student["length"], g)})
    for one in lessons:
        student, court = given["students"][one["student"]], given["courts"][one["court"]]
        place = given["facilities"][court["facility"]]
        day, start, end = one["day"], one["start"], one["end"]
        if start % g:
            return "off the grid"
        if not (student["hours"][0] <= start and end <= student["hours"][1]):
            return "outside the student's hours"
        if [day, start] < student["arrive"] or [day, end] > student["depart"]:
            return "while the student is away"
        if not (place["hours"][day][0] <= start and end <= place["hours"][day][1]):
            return "while the facility is closed"
        if day >= place["days_bookable"]:
            return "on a day that cannot be booked"
        for name, taken in (("court", court["taken"]), ("coach", coach["busy"])):
            if any(d == day and a < end and start < b for d, a, b in taken):
                return f"while the {name} is taken"
    for a in lessons:
        for b in lessons:
            if a is b or a["day"] != b["day"] or (a["start"], id(a)) > (b["start"], id(b)):
                continue
            facilities = {given["courts"][x["court"]]["facility"] for x in (a, b)}
            gap = up(coach["travel"], g) if len(facilities) > 1 else 0
            if a["student"] == b["student"]:
                gap = max(gap, up(given["students"][a["student"]]["rest"], g))
            if b["start"] < a["end"] + gap:
                return "too close together"
    for day in range(given["days"]):
        today = sorted((x for x in lessons if x["day"] == day), key=lambda x: x["start"])
        minutes = [x["end"] - x["start"] for x in today]
        if sum(minutes) > coach["day_limit"]:
            return "over the coach's day"
        for n, place in enumerate(given["facilities"]):
            here = [m for x, m in zip(today, minutes) if given["courts"][x["court"]]["facility"] == n]
            if sum(here) > place["day_limit"]:
                return "over a facility's day"
        for s, student in enumerate(given["students"]):
            if sum(x["student"] == s for x in today) > student["per_day"]:
                return "over a student's day"
        for apart, limit in [
            (lambda a, b: a["end"] < b["start"], lambda x: coach["longest_run"]),
            (
                lambda a, b: a["end"] < b["start"] or a["court"] != b["court"],
                lambda x: given["facilities"][given["courts"][x["court"]]["facility"]]["longest_run"],
            ),
        ]:
            began = None
            for n, x in enumerate(today):
                if n == 0 or apart(today[n - 1], x):
                    began = x["start"]
                if x["end"] - began > limit(x):
                    return "too long a run"
    for s, student in enumerate(given["students"]):
        if sum(x["student"] == s for x in lessons) > student["lessons"]:
            return "more lessons than wished for"
    return None


def sums(given, plan):
    """The four wishes."""
    g, lessons = given["grid"], plan["lessons"]
    missing = spread = cost = off = 0
    for s, student in enumerate(given["students"]):
        theirs = [x for x in lessons if x["student"] == s]
        missing += student["priority"] * (student["lessons"] - len(theirs))
        there = student["depart"][0] - student["arrive"][0] + 1
        spread += 3 * (min(student["lessons"], there) - len({x["day"] for x in theirs}))
        for x in theirs:
            court = given["courts"][x["court"]]
            peak = given["facilities"][court["facility"]]["peak"]
            end = x["start"] + up(student["length"], g)
            slots = range(x["start"], end, g)
            cost += sum((court["peak_rate"] if peak[0] <= t < peak[1] else court["rate"]) * g for t in slots) // 60
            early, late = student["prefer"][0] - x["start"], end - student["prefer"][1]
            off += max(0, early, late) // g + 2 * (student["prefer_court"] not in (None, x["court"]))
    spread += 2 * len({(x["day"], given["courts"][x["court"]]["facility"]) for x in lessons})
    return [missing, spread, cost, off]


def the_reading_sees(tally, cases, plans):
    """A plan made worse on purpose must not pass the reading above."""
    seen = 0
    for case, plan in zip(cases, plans):
        if not plan["lessons"]:
            continue
        first = plan["lessons"][0]
        twice = {**plan, "lessons": [*plan["lessons"], first]}
        early = {**plan, "lessons": [{**first, "start": first["start"] - 15 * case["ask"]["grid"]}]}
        late = {**plan, "lessons": [{**first, "start": first["start"] + 1}]}
        seen += all(broken(case["ask"], worse) for worse in (twice, early, late))
    tally.check("the reading sees plans made worse", seen > 200, seen)


def refused(program, tally):
    """Asks that cannot be answered name every field that is wrong."""
    good = {
        "grid": 30,
        "days": 1,
        "facilities": [
            {"hours": [[480, 1260]], "peak": [0, 0], "longest_run": 60, "day_limit": 60, "days_bookable": 1}
        ],
        "courts": [{"facility": 0, "rate": 0, "peak_rate": 0, "taken": []}],
        "coach": {"busy": [], "travel": 0, "day_limit": 60, "longest_run": 60},
        "students": [
            {
                "arrive": [0, 0],
                "depart": [0, 1440],
                "hours": [0, 1440],
                "lessons": 1,
                "length": 60,
                "per_day": 1,
                "rest": 0,
                "prefer": [0, 1440],
                "prefer_court": None,
                "priority": 1,
            }
        ],
    }

    def changed(path, value):
        one = json.loads(json.dumps(good))
        at = one
        for step in path[:-1]:
            at = at[step]
        at[path[-1]] = value
        return one

    cases = [
        (changed(["grid"], 0), ["grid"]),
        (changed(["students", 0, "depart"], [1, 0]), ["students[0].depart"]),
        (changed(["students", 0, "arrive"], [0, 1441]), ["students[0].arrive"]),
        (changed(["students", 0, "hours"], [600, 540]), ["students[0].hours"]),
        (changed(["students", 0, "prefer_court"], 1), ["students[0].prefer_court"]),
        (changed(["students", 0, "lessons"], -1), ["students[0].lessons"]),
        (changed(["courts", 0, "facility"], 1), ["courts[0].facility"]),
        (changed(["courts", 0, "taken"], [[0, 60]]), ["courts[0].taken[0]"]),
        (changed(["courts", 0, "taken"], [[0, 600, 540]]), ["courts[0].taken[0]"]),
        (changed(["facilities", 0, "hours"], []), ["facilities[0].hours"]),
        (changed(["coach", "busy"], [[1, 0, 60], [0, 0, 1441]]), ["coach.busy[0]", "coach.busy[1]"]),
        (changed(["coach", "hurry"], True), ["coach.hurry"]),
        ({}, ["grid", "days", "facilities", "courts", "coach", "students"]),
    ]
    for (one, fields), got in zip(cases, ask(program, "plan", [one for one, _ in cases])):
        named = [problem["field"] for problem in got.get("error", {}).get("problems", [])]
        tally.check(f"refused {fields}", named == fields, got)
    closed = changed(["facilities", 0, "hours"], [[0, 0]])
    got = ask(program, "plan", [good, closed])
    tally.check("one lesson fits", got[0]["objectives"] == [0, 2, 0, 0], got[0])
    because = got[1]["unplaced"][0]["because"]
    tally.check("a closed club is the reason", because == [{"day": 0, "code": "closed", "starts": 47}], because)


def main():
    program, tally = binary(__doc__), Tally()
    with open(os.path.join(os.path.dirname(__file__), "plan_optima.jsonl")) as lines:
        cases = [json.loads(line) for line in lines]
    start = time.perf_counter()
    plans = ask(program, "plan", [case["ask"] for case in cases])
    took = time.perf_counter() - start
    for case, plan in zip(cases, plans):
        name = f"plan {case['kind']} {case['seed']}"
        tally.check(f"{name} is proven", plan.get("proven") is True, plan)
        tally.check(f"{name} keeps the rules", broken(case["ask"], plan) is None, broken(case["ask"], plan))
        tally.check(f"{name} sums", sums(case["ask"], plan) == plan["objectives"], plan["objectives"])
        if case["optimum"] is not None:
            tally.check(f"{name} optimum", plan["objectives"] == case["optimum"], (plan["objectives"], case["optimum"]))
    solved = [case["took"] for case in cases if case["optimum"] is not None]
    print(f"plan: {len(cases)} asks in {took:.1f} s; {len(solved)} proven by CP-SAT in {sum(solved):.0f} s")
    the_reading_sees(tally, cases, plans)
    refused(program, tally)
    tally.end()


if __name__ == "__main__":
    main()
