"""Makes trips at random through the program (lessons alone and shared, prepaid and invoiced, costs in three
currencies, shares of them passed on, credit notes), and works each trip's result out again from the rows of
the coach file alone, in fractions: what was earned and charged, what it cost, what is left of that for an
hour on court and an hour away. Also that shares of a cost add up to it, by largest remainder. Rounding is
half away from zero, once (EN 16931's way, common practice for an hourly figure, no source)."""

import json
import random
import sqlite3
import subprocess
import tempfile
from collections import defaultdict
from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from lines import Tally, binary

PROGRAM = binary(__doc__)
TODAY = "2026-06-01"
DECIMALS = {"EUR": 2, "JPY": 0, "BHD": 3}
TRIPS = 8


def half_up(value):
    """Half away from zero, to a whole number."""
    whole, rest = divmod(abs(value).numerator, abs(value).denominator)
    whole += 2 * rest >= abs(value).denominator
    return whole if value >= 0 else -whole


def written(minor, currency):
    places = DECIMALS[currency]
    return f"{Decimal(minor).scaleb(-places):.{places}f}"


def parts(amount, weights):
    """Largest remainder, of equal ones the first."""
    exact = [Fraction(amount * weight, sum(weights)) for weight in weights]
    whole = [share.numerator // share.denominator for share in exact]
    order = sorted(range(len(exact)), key=lambda at: whole[at] - exact[at])
    for at in order[: amount - sum(whole)]:
        whole[at] += 1
    return whole


class Program:
    def __init__(self, folder):
        self.file = str(Path(folder) / "trips.carryover")
        subprocess.run([PROGRAM, "sample", self.file, "--years", "1", "--students", "0", "--today", TODAY],
                       check=True, capture_output=True)

    def call(self, name, given=None):
        done = subprocess.run([PROGRAM, "--file", self.file, "call", name], input=json.dumps(given or {}),
                              capture_output=True, text=True, timeout=60, check=False)
        said = json.loads(done.stdout)
        if done.returncode != 0:
            raise SystemExit(f"{name} {given}: {said}")
        return said["value"]


def second_reading(path, first, last):
    """A trip from the rows: minutes of court, and by currency what was earned, charged and spent."""
    db = sqlite3.connect(f"file:{path}?mode=ro", uri=True)
    lessons = db.execute(
        "SELECT coalesce(given, minutes) FROM lesson WHERE day BETWEEN ? AND ? AND state IN ('given', 'cut_short')",
        (first, last)).fetchall()
    sums = defaultdict(lambda: [0, 0, 0])
    given_back = {entry for (entry,) in db.execute(
        "SELECT m.entry FROM unit_move m JOIN entry e ON e.id = m.entry WHERE e.kind = 'credit_note'")}
    for entry, currency, what, amount in db.execute(
            "SELECT e.id, e.currency, p.what, p.amount FROM posting p JOIN entry e ON e.id = p.entry "
            "WHERE p.account = 'earned' AND p.day BETWEEN ? AND ?", (first, last)):
        if what in ("lesson", "late", "court") and entry not in given_back:
            sums[currency][0] -= amount
        elif what == "travel":
            sums[currency][1] -= amount
    for currency, amount in db.execute(
            "SELECT currency, amount FROM cost WHERE taken_back IS NULL AND day BETWEEN ? AND ?", (first, last)):
        sums[currency][2] += amount
    db.close()
    return len(lessons), sum(minutes for (minutes,) in lessons), sums


def same(tally, program, first, last):
    many, minutes, sums = second_reading(program.file, first, last)
    said = program.call("trips.result", {"first": first, "last": last})
    what = f"the trip of {first}"
    tally.check(f"{what}: lessons", (said["lessons"], said["court_minutes"]) == (many, minutes), said["lessons"])
    days = (date.fromisoformat(last) - date.fromisoformat(first)).days + 1
    tally.check(f"{what}: away", said["away"]["minutes"] == days * 1440, said["away"])
    told = {one["currency"]: one for one in said["money"]}
    for currency, (earned, charged, costs) in sums.items():
        result = earned + charged - costs
        hour = half_up(Fraction(result * 60, minutes)) if minutes else None
        want = {
            "earned": written(earned, currency), "charged": written(charged, currency),
            "costs": written(costs, currency), "result": written(result, currency),
            "per_court_hour": None if hour is None else written(hour, currency),
            "per_hour_away": written(half_up(Fraction(result, days * 24)), currency),
        }
        got = {key: told.get(currency, {}).get(key) for key in want}
        tally.check(f"{what}: {currency}", got == want, f"{got} where {want} is expected")
        rows = sum(Decimal(row["amount"]) for row in said["rows"] if row["currency"] == currency)
        tally.check(f"{what}: rows of {currency}", rows == Decimal(want["result"]), rows)
    for currency, one in told.items():
        empty = not any(c in "123456789" for c in one["result"])
        tally.check(f"{what}: no {currency} from nowhere", currency in sums or empty, one)


def compared(tally, program, trips):
    """The trips beside the last one: the same figures, the best hour on court first."""
    last = trips[-1]
    said = program.call("trips.others", {"first": last[0], "last": last[1]})
    tally.check("all trips of the year stand side by side",
                {(one["days"]["first"], one["days"]["last"]) for one in said} <= set(trips), said)
    for currency in DECIMALS:
        hours = [one["money"]["per_court_hour"] for one in said if one["money"]["currency"] == currency]
        known = [Decimal(hour) for hour in hours if hour is not None]
        tally.check(f"the best hour in {currency} comes first", known == sorted(known, reverse=True), hours)
        tally.check(f"no hour in {currency} comes last", None not in hours[: len(known)], hours)


def shared(tally, program, cost, passed):
    """Shares of one cost over everyone, in the order of names, in equal parts."""
    shares = [one for one in passed["costs"] if one["id"] == cost["id"]][0]["passed"]
    unit = 10 ** DECIMALS[cost["currency"]]
    got = sorted(int(Decimal(one["amount"]) * unit) for one in shares)
    whole = int(Decimal(cost["amount"]) * unit)
    people = len(program.call("costs.split_proposal", {"costs": [program.spare]})["students"])
    tally.check("shares add up", sum(got) == whole, (got, whole))
    want = sorted(part for part in parts(whole, [1] * people) if part)
    tally.check("by largest remainder", got == want, (got, want))


def main():
    tally, chance = Tally(), random.Random(20260601)
    with tempfile.TemporaryDirectory() as folder:
        program = Program(folder)
        run(tally, chance, program)
    tally.end()


def run(tally, chance, program):
    halls = program.call("facilities.list")
    hall = halls[0]["id"] if halls else program.call(
        "facilities.add", {"name": "Hall", "town": "Saltmere", "zone": "Europe/Dublin"})["id"]
    program.call("invoices.set_seller", {"name": "Robin Hale", "address": "1 Quay", "tax_id": "7", "prices": "gross"})
    program.call("prices.set_tax", {"category": "S", "rate": "19"})
    for minutes, sharing, amount in [(60, 1, "55"), (90, 1, "79.99"), (60, 2, "80.01"), (90, 2, "110"),
                                     (60, 3, "99.99"), (90, 3, "140.01")]:
        program.call("prices.add", {"price": {"what": "lesson", "minutes": minutes, "sharing": sharing,
                                              "currency": "EUR", "amount": amount, "since": "2025-01-01"}})
    trips, day = [], date(2025, 9, 1)
    for number in range(TRIPS):
        days = chance.randrange(1, 5)
        first, last = str(day), str(day + timedelta(days=days - 1))
        trips.append((first, last))
        one_trip(tally, chance, program, hall, number, (day, days))
        day += timedelta(days=days + chance.randrange(3, 20))
    for first, last in trips:
        same(tally, program, first, last)
    same(tally, program, "2025-01-01", "2025-01-02")
    compared(tally, program, trips)
    tally.check("the ledger balances", program.call("accounts.balanced")["wrong"] == [])


def one_trip(tally, chance, program, hall, number, when):
    day, days = when
    first, last = str(day), str(day + timedelta(days=days - 1))
    guests = []
    for n in range(chance.randrange(1, 4)):
        name = f"Guest {number}-{n}"
        student = program.call("students.add", {"name": name})["id"]
        payer = program.call("payers.choose", {"student": student})["id"]
        program.call("payers.change", {"id": payer, "payer": {"name": name, "address": "2 Mole"}})
        visit = program.call("visits.plan", {"student": student, "facility": hall, "first_day": first, "last_day": last})
        guests.append((student, visit["id"]))
        if chance.random() < 0.3:
            program.call("packages.sell", {"student": student, "lessons": 3, "currency": "EUR", "price": "140",
                                           "issue": True})
    for n in range(chance.randrange(0, 6)):
        who = chance.sample(guests, chance.randrange(1, len(guests) + 1))
        on = str(day + timedelta(days=chance.randrange(days)))
        lesson = program.call("lessons.plan", {
            "visits": [visit for _, visit in who], "facility": hall, "day": on, "starts": f"{8 + 2 * n:02}:00",
            "minutes": chance.choice([60, 90])})["id"]
        if chance.random() < 0.2:
            program.call("lessons.call_off", {"lesson": lesson, "reason": "Rain"})
            continue
        program.call("lessons.give", {"lesson": lesson})
        for student, _ in who:
            if chance.random() < 0.15:
                continue
            ask = {"lesson": lesson, "student": student}
            how = program.call("accounts.propose", ask)["proposal"]["how"]
            program.call("accounts.settle", {"lessons": [{**ask, "how": how, "court": "0"}]})
    costs = []
    for _ in range(chance.randrange(1, 4)):
        currency = chance.choice(list(DECIMALS))
        amount = written(chance.randrange(1, 30_000), currency)
        on = str(day + timedelta(days=chance.randrange(days)))
        costs.append(program.call("costs.note", {"cost": {
            "kind": "fare", "day": on, "words": "Ferry", "amount": amount, "currency": currency}}))
    # A cost that is never passed on, to ask who is there.
    program.spare = costs[-1]["id"]
    if len(costs) > 1:
        passed = program.call("costs.pass_on", {"costs": [costs[0]["id"]], "first": costs[-1]["day"], "last": costs[-1]["day"]})
        shared(tally, program, costs[0], passed)
    if chance.random() < 0.3:
        program.call("costs.take_back", {"id": costs[-1]["id"], "reason": "A slip"})
    for draft in [one for one in program.call("invoices.list")["invoices"] if not one["number"]]:
        if chance.random() < 0.2:
            continue
        invoice = program.call("invoices.issue", {"invoice": draft["id"]})
        if chance.random() < 0.25:
            line = chance.choice(invoice["lines"])["id"]
            program.call("invoices.credit", {"invoice": invoice["id"], "reason": "A slip", "lines": [{"line": line}]})


main()
