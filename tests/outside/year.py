"""Adds a year up again, from the rows of the coach file alone and with nothing of the program, and
compares it with the table that the program saved, what was spent among it: usage year.py FILE TABLE YEAR.
Also that every entry balances, that the books do, and that no number is missing from a series."""

import csv
import sqlite3
import sys
from collections import Counter
from decimal import Decimal

MONEY = {"bank", "cash", "card", "cheque"}
NAMES = {"tax_due": "tax charged", "lapsed": "lessons that ran out", "written_off": "given up"}
INCOME = {"earned", "lapsed", "tax_due", "rounding"}


def main():
    path, table, year = sys.argv[1:]
    db = sqlite3.connect(f"file:{path}?mode=ro", uri=True)
    want = Counter()
    rows = db.execute(
        "SELECT p.day, p.account, p.amount, e.currency FROM posting p JOIN entry e ON e.id = p.entry")
    whole = Counter()
    for day, account, amount, currency in rows:
        whole[currency] += amount
        if day.startswith(year) and account in MONEY | INCOME | {"written_off"}:
            sign = -1 if account in INCOME else 1
            want[day[:7], NAMES.get(account, account), currency] += sign * amount
    for day, amount, tax, currency in db.execute("SELECT day, amount, tax, currency FROM cost WHERE taken_back IS NULL"):
        if day.startswith(year):
            want[day[:7], "spent", currency] += amount
            want[day[:7], "tax contained", currency] += tax or 0
    got = Counter()
    with open(table, newline="", encoding="utf-8") as lines:
        for row in csv.DictReader(lines):
            got[row["month"], row["account"], row["currency"]] += int(Decimal(row["amount"]) * 100)
            if row["view"] == "spent":
                got[row["month"], "tax contained", row["currency"]] += int(Decimal(row["tax contained"] or 0) * 100)
    for name, found in (("more in the table", got - want), ("more in the file", want - got)):
        if any(found.values()):
            sys.exit(f"{name}: {found}")
    if any(whole.values()):
        sys.exit(f"the ledger is out by {whole}")
    out = db.execute("SELECT entry FROM posting GROUP BY entry HAVING sum(amount) <> 0").fetchall()
    if out:
        sys.exit(f"entries that do not balance: {out}")
    for series, many, last in db.execute(
            "SELECT series, count(*), max(place) FROM invoice WHERE issued IS NOT NULL GROUP BY series"):
        if many != last:
            sys.exit(f"the series {series} has a gap")
    if not want:
        sys.exit("there was nothing to add up")
    print(f"{len(want)} sums agree")


main()
