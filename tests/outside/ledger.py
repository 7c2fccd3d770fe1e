"""Runs a coach's money through the program, step by step at random, beside a second and simple model of
it (cumulative rounding in fractions, accounts in a dictionary), and compares every balance after every
step: what is open, kept, to be paid back and owed in lessons, and the year. The entries follow the
worked example of a prepaid package (IFRS 15 B44 to B47); the invariants are those of any ledger."""

import json
import random
import re
import subprocess
import tempfile
from fractions import Fraction
from pathlib import Path

from lines import Tally, binary

PROGRAM = binary(__doc__)
DAY = "2026-06-01"
STEPS = 140


def half_up(value):
    """Half away from zero, to whole cents."""
    whole, rest = divmod(abs(value).numerator, abs(value).denominator)
    whole += 2 * rest >= abs(value).denominator
    return whole if value >= 0 else -whole


def cents(text):
    return round(Fraction(text) * 100)


class Program:
    def __init__(self, folder):
        self.file = str(Path(folder) / "money.carryover")
        subprocess.run([PROGRAM, "sample", self.file, "--years", "1", "--students", "0", "--today", DAY],
                       check=True, capture_output=True)

    def call(self, name, given=None):
        done = subprocess.run([PROGRAM, "--file", self.file, "call", name], input=json.dumps(given or {}),
                              capture_output=True, text=True, timeout=60, check=False)
        said = json.loads(done.stdout)
        return said["value"] if done.returncode == 0 else said

    def now(self):
        return self.call("accounts.overview")


class Model:
    """Accounts and packages as sums, nothing else."""

    def __init__(self):
        self.open, self.kept, self.back, self.money, self.earned, self.tax = 0, 0, 0, 0, 0, 0
        self.lost = 0
        self.invoices, self.packages, self.payments = {}, {}, {}

    def deferred(self):
        return sum(p["owed"] for p in self.packages.values())

    def invoice(self, number, gross):
        """A gross price at 19 percent: the tax is taken out of the sum."""
        tax = half_up(Fraction(gross * 19, 119))
        self.open += gross
        self.tax += tax
        self.invoices[number] = {"open": gross, "gross": gross, "net": gross - tax, "credited": 0}
        return gross - tax

    def use_kept(self, number):
        used = min(self.kept, self.invoices[number]["open"])
        self.kept -= used
        self.open -= used
        self.invoices[number]["open"] -= used

    def receive(self, amount):
        self.money += amount
        for one in self.invoices.values():
            part = min(one["open"], amount)
            one["open"] -= part
            self.open -= part
            amount -= part
        self.kept += amount

    def release(self, package, many):
        p = self.packages[package]
        p["gone"] += many
        left = p["of"] - half_up(Fraction(p["of"] * p["gone"], p["lessons"]))
        released, p["owed"] = p["owed"] - left, left
        p["left"] -= many
        return released

    def spread(self, package, many):
        """Lessons on top: what is owed is spread over all that are open."""
        p = self.packages[package]
        p["left"] += many
        p.update(of=p["owed"], lessons=p["left"], gone=0)

    def credit(self, number, gross):
        one = self.invoices[number]
        tax = half_up(Fraction(gross * 19, 119))
        self.tax -= tax
        part = max(0, min(one["open"], gross))
        one["open"] -= part
        one["credited"] += gross
        self.open -= part
        self.back += gross - part
        return gross - tax


def same(tally, what, program, model):
    stands = (program.now()["stands"] or [dict.fromkeys(["open", "kept", "to_pay_back", "deferred"], "0")])[0]
    got = [cents(stands[key]) for key in ("open", "kept", "to_pay_back", "deferred")]
    want = [model.open, model.kept, model.back, model.deferred()]
    tally.check(what, got == want, f"{got} where {want} is expected")
    year = (program.call("accounts.year", {"year": 2026})["stands"] or [None])[0]
    if year:
        got = [cents(year[key]) for key in ("received", "earned", "tax", "written_off")]
        want = [model.money, model.earned, model.tax, model.lost]
        tally.check(f"{what}: the year", got == want, f"{got} where {want} is expected")
        # What came in is earned, taxed, owed or kept; nothing else becomes of it.
        [received, earned, tax, lost] = got
        opened, kept, back, deferred = [cents(stands[key]) for key in ("open", "kept", "to_pay_back", "deferred")]
        rest = earned + tax + deferred + kept + back - opened - lost
        tally.check(f"{what}: cash", received == rest, f"{received} is not {rest}")


def main():
    tally, chance = Tally(), random.Random(20260601)
    with tempfile.TemporaryDirectory() as folder:
        program = Program(folder)
        hall = program.call("facilities.list")
        hall = hall[0]["id"] if hall else program.call("facilities.add", {"name": "Hall", "town": "Saltmere", "zone": "Europe/Dublin"})["id"]
        run(tally, chance, program, hall)
    tally.end()


def run(tally, chance, program, hall):
    model = Model()
    before = program.now()
    tally.check("a fresh file", before["stands"] == [], before["stands"])
    program.call("invoices.set_seller", {"name": "Robin Hale", "address": "1 Quay", "tax_id": "7", "prices": "gross"})
    program.call("prices.set_tax", {"category": "S", "rate": "19"})
    student = program.call("students.add", {"name": "Ana Silva"})["id"]
    payer = program.call("payers.choose", {"student": student})["id"]
    program.call("payers.change", {"id": payer, "payer": {"name": "Ana Silva", "address": "2 Mole"}})
    visit = program.call("visits.plan", {"student": student, "facility": hall, "first_day": "2026-05-01", "last_day": "2026-05-31"})
    visit = visit["id"]
    program.call("visits.open", {"visit": visit})
    pay = {"payer": payer, "method": "transfer", "currency": "EUR"}
    lessons, numbers, settled = 0, [], []
    for step in range(STEPS):
        act = chance.choice(["sell", "draft", "receive", "deposit", "use", "use", "use", "bonus", "credit", "back",
                             "refund", "write_off", "unsettle"])
        amount = chance.randrange(1, 90_000)
        text = f"{amount // 100}.{amount % 100:02}"
        what = f"step {step}, {act} {text}"
        live = [p for p, one in model.packages.items() if one["left"] > 0]
        if act == "sell":
            many = chance.randrange(1, 13)
            invoice = program.call("packages.sell", {"student": student, "lessons": many, "currency": "EUR", "price": text, "issue": True})
            net = model.invoice(invoice["id"], amount)
            model.packages[invoice["lines"][0]["package"]] = {
                "owed": net, "of": net, "lessons": many, "left": many, "gone": 0, "used": 0, "whole": many, "price": amount, "sale": invoice["id"]}
            model.use_kept(invoice["id"])
            numbers.append(invoice["number"])
        elif act == "draft":
            draft = program.call("invoices.draft", {"payer": payer, "currency": "EUR", "lines": [
                {"what": "analysis", "words": "A game", "price": text}, {"what": "travel", "words": "Travel", "price": "0.01"}]})
            if chance.random() < 0.3:
                program.call("invoices.discard", {"invoice": draft["id"]})
            else:
                invoice = program.call("invoices.issue", {"invoice": draft["id"], "use_credit": True})
                model.earned += model.invoice(invoice["id"], amount + 1)
                model.use_kept(invoice["id"])
                numbers.append(invoice["number"])
        elif act == "receive":
            program.call("payments.receive", {**pay, "amount": text})
            model.receive(amount)
        elif act == "deposit":
            program.call("payments.receive", {**pay, "amount": text, "deposit": True})
            model.money += amount
            model.kept += amount
        elif act == "use" and live:
            # The one sold first is used first: none of them runs out.
            package = live[0]
            lessons += 1
            day, hour = 1 + lessons % 28, 8 + lessons // 28
            lesson = program.call("lessons.plan", {"visits": [visit], "facility": hall, "day": f"2026-05-{day:02}", "starts": f"{hour:02}:00", "minutes": 60})["id"]
            program.call("lessons.give", {"lesson": lesson})
            said = program.call("accounts.settle", {"lessons": [{"lesson": lesson, "student": student, "how": "package", "court": "0"}]})
            tally.check(f"{what}: by the package", said.get("by_package") == 1, said)
            released = model.release(package, 1)
            model.earned += released
            model.packages[package]["used"] += 1
            settled.append((lesson, package, released))
        elif act == "bonus" and live:
            package = chance.choice(live)
            program.call("packages.give_bonus", {"package": package, "lessons": 1, "reason": "A friend"})
            model.spread(package, 1)
            model.packages[package]["whole"] += 1
        elif act == "credit":
            sales = {one["sale"] for one in model.packages.values()}
            plain = [n for n, one in model.invoices.items() if n not in sales and one["gross"] - one["credited"] > 1]
            if not plain:
                continue
            number = chance.choice(plain)
            left = model.invoices[number]["gross"] - model.invoices[number]["credited"] - 1
            part = min(amount, left)
            line = program.call("invoices.show", {"invoice": number})["lines"][0]["id"]
            note = program.call("invoices.credit", {"invoice": number, "reason": "A slip", "lines": [
                {"line": line, "amount": f"{part // 100}.{part % 100:02}"}]})
            model.earned -= model.credit(number, part)
            numbers.append(note["number"])
        elif act == "back" and live:
            package = chance.choice(live)
            one = model.packages[package]
            note = program.call("packages.give_back", {"package": package, "reason": "Moved away"})
            tally.check(f"{what}: given back", "error" not in note, note)
            if "error" in note:
                continue
            gross = half_up(Fraction(one["price"] * one["left"], one["whole"]))
            gross = min(gross, one["price"] - model.invoices[one["sale"]]["credited"])
            released = model.release(package, one["left"])
            model.earned += released - model.credit(one["sale"], gross)
            numbers.append(note["number"])
        elif act == "refund":
            there = model.back + model.kept
            said = program.call("payments.pay_back", {**pay, "amount": text})
            tally.check(f"{what}: no more than is there", ("error" in said) == (amount > there), said)
            if amount <= there:
                owed = min(model.back, amount)
                model.back -= owed
                model.kept -= amount - owed
                model.money -= amount
        elif act == "write_off" and chance.random() < 0.4:
            number = next((n for n, one in model.invoices.items() if one["open"] > 0), None)
            if number is None:
                continue
            program.call("payments.write_off", {"invoice": number, "reason": "Cannot be reached"})
            lost = model.invoices[number]["open"]
            model.invoices[number]["open"] = 0
            model.open -= lost
            model.lost += lost
        elif act == "unsettle" and settled:
            lesson, package, released = settled.pop(chance.randrange(len(settled)))
            said = program.call("accounts.unsettle", {"lesson": lesson, "student": student, "reason": "Another lesson"})
            tally.check(f"{what}: taken back", "error" not in said, said)
            one = model.packages[package]
            one["owed"] += released
            one["used"] -= 1
            model.earned -= released
            model.spread(package, 1)
            # It is settled for nothing, so that it does not wait.
            program.call("accounts.settle", {"lessons": [{"lesson": lesson, "student": student, "how": "free", "court": "0", "reason": "Waived"}]})
        else:
            continue
        same(tally, what, program, model)
    tally.check("the ledger balances", program.call("accounts.balanced")["wrong"] == [])
    want = [f"2026-{n + 1:04}" for n in range(len(numbers))]
    tally.check("the series has no gap", numbers == want, numbers)
    tally.check("numbers are numbers", all(re.fullmatch(r"2026-\d{4}", number) for number in numbers))


main()
