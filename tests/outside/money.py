"""Compares the sums of invoices and splits with a second reading of EN 16931 by Python's fractions and
decimal, with worked examples of public files, and the decimals of currencies with another library."""

import random
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import iso4217

from lines import Tally, ask, binary

DECIMALS = {"EUR": 2, "JPY": 0, "BHD": 3}


def rounded(value, decimals):
    """Half away from zero, of an exact fraction."""
    units = abs(value) * 10**decimals
    whole, rest = divmod(units.numerator, units.denominator)
    whole += 2 * rest >= units.denominator
    return Fraction(whole if value >= 0 else -whole, 10**decimals)


def written(value, decimals):
    text = Decimal(value.numerator) / Decimal(value.denominator)
    text = text.quantize(Decimal(1).scaleb(-decimals), ROUND_HALF_UP)
    return str(abs(text) if text == 0 else text)


def exact(text):
    return Fraction(Decimal(text))


def second_reading(invoice):
    """BR-CO-10 to BR-CO-17 of EN 16931-1, and for gross prices the tax taken out of the sum."""
    decimals = DECIMALS[invoice["currency"]]
    gross_prices = invoice["prices"] == "gross"
    lines, groups = [], {}

    def group(tax, amount):
        key = (tax["category"], exact(tax["rate"]))
        groups[key] = groups.get(key, Fraction(0)) + amount

    for line in invoice["lines"]:
        amount = rounded(
            exact(line["quantity"]) * exact(line["unit_price"]) / exact(line["base_quantity"]), decimals
        ) - exact(line["allowance"]) + exact(line["charge"])
        lines.append(amount)
        group(line["tax"], amount)
    for extra in invoice["allowances"]:
        group(extra["tax"], -exact(extra["amount"]))
    for extra in invoice["charges"]:
        group(extra["tax"], exact(extra["amount"]))
    rows = []
    for (category, rate), amount in groups.items():
        if gross_prices:
            tax = rounded(amount * rate / (100 + rate), decimals)
            rows.append((category, rate, amount - tax, tax))
        else:
            rows.append((category, rate, amount, rounded(amount * rate / 100, decimals)))
    net, tax_total = sum(row[2] for row in rows), sum(row[3] for row in rows)
    open_ = net + tax_total - exact(invoice["paid"])
    due = open_
    if invoice["payable_rounding"] is not None:
        step = exact(invoice["payable_rounding"])
        due = rounded(open_ / step, 0) * step
    say = lambda value: written(Fraction(value), decimals)
    return {
        "lines": [say(line) for line in lines],
        "lines_total": say(sum(lines)),
        "allowances_total": say(sum(exact(e["amount"]) for e in invoice["allowances"])),
        "charges_total": say(sum(exact(e["amount"]) for e in invoice["charges"])),
        "net": say(net),
        "tax": [
            {"category": c, "rate": f"{Decimal(r.numerator) / Decimal(r.denominator):f}", "base": say(b), "amount": say(t)}
            for c, r, b, t in rows
        ],
        "tax_total": say(tax_total),
        "gross": say(net + tax_total),
        "paid": say(exact(invoice["paid"])),
        "rounding": say(due - open_),
        "due": say(due),
    }


def any_invoice(random_):
    currency = random_.choice(list(DECIMALS))
    decimals = DECIMALS[currency]
    taxes = [{"category": "S", "rate": rate} for rate in ("20", "19", "7", "5.5", "8.875")]
    taxes += [{"category": "Z", "rate": "0"}, {"category": "E", "rate": "0"}]
    taxes = random_.sample(taxes, random_.randint(1, 3))

    def amount(most):
        return written(Fraction(random_.randint(0, most), 10**decimals), decimals)

    def extra():
        return {"amount": amount(5000), "tax": random_.choice(taxes)}

    def line():
        # Prices with more decimals than the currency, and quantities that meet a half.
        return {
            "quantity": random_.choice(["1", "3", "10", "0.5", "1.25", "-2", "0.125", str(random_.randint(1, 400))]),
            "unit_price": written(Fraction(random_.randint(0, 10**7), 10**4), 4),
            "base_quantity": random_.choice(["1", "1", "1", "10", "3", "7", "0.25"]),
            "allowance": random_.choice(["0", amount(300)]),
            "charge": random_.choice(["0", amount(300)]),
            "tax": random_.choice(taxes),
        }

    return {
        "currency": currency,
        "prices": random_.choice(["net", "gross"]),
        "lines": [line() for _ in range(random_.randint(1, 8))],
        "allowances": [extra() for _ in range(random_.choice([0, 0, 1, 2]))],
        "charges": [extra() for _ in range(random_.choice([0, 0, 1]))],
        "paid": random_.choice(["0", amount(20000)]),
        "payable_rounding": random_.choice([None, None, written(Fraction(5, 10**decimals), decimals)]),
    }


def against_fractions(program, tally, random_):
    invoices = [any_invoice(random_) for _ in range(2000)]
    for invoice, got in zip(invoices, ask(program, "invoice", invoices)):
        want = second_reading(invoice)
        tally.check(f"invoice {invoice}", got == want, f"{got} where {want} is expected")


def plain(lines, prices="net", paid="0", allowances=(), charges=(), currency="EUR", step=None):
    """An invoice of lines (quantity, price, rate or category, and what else a line has)."""

    def tax(rate):
        return {"category": rate, "rate": "0"} if rate in ("E", "Z") else {"category": "S", "rate": rate}

    return {
        "currency": currency, "prices": prices, "paid": paid, "payable_rounding": step,
        "lines": [
            {"quantity": q, "unit_price": p, "tax": tax(r), **(more[0] if more else {})}
            for q, p, r, *more in lines
        ],
        "allowances": [{"amount": a, "tax": tax(r)} for a, r in allowances],
        "charges": [{"amount": a, "tax": tax(r)} for a, r in charges],
    }


def examples(program, tally):
    """Public worked examples. ConnectingEurope/eInvoicing-EN16931, examples: ubl-tc434-example1 and 2,
    and the Swedish sets Forskott_slutreglering and Kreditering_med_kreditnota; OpenPEPPOL/
    peppol-bis-invoice-3: Allowance-example and sample-discount-price. GOV.UK, VAT guide (Notice 700),
    section 17: an amount with 20 % tax in it. The others are worked by hand."""
    take = lambda allowance="0", charge="0", base="1": {
        "allowance": allowance, "charge": charge, "base_quantity": base,
    }
    cases = [
        ("example 1, its lines summed by rate", plain([("1", "183.23", "6"), ("1", "46.37", "21")]),
         {"net": "229.60", "tax_total": "20.73", "gross": "250.33", "due": "250.33"}),
        ("a line that is taken back", plain([("-6", "18.33", "21")]), {"lines": ["-109.98"]}),
        # 25 % on 1460.50 is 365.125; the lines at 15 % come to 1.00.
        ("example 2: a half in the tax", plain(
            [("1", "1273.00", "25"), ("1", "4.96", "15"), ("-1", "3.96", "15"), ("-1", "25.00", "E"),
             ("1", "187.50", "25")],
            paid="1000.00", allowances=[("100", "25")], charges=[("100", "25")], currency="NOK"),
         {"net": "1436.50", "tax_total": "365.28", "gross": "1801.78", "due": "801.78"}),
        ("prepaid", plain([("1", "200000", "25"), ("180", "1000", "25")], paid="400000", currency="SEK"),
         {"net": "380000.00", "tax_total": "95000.00", "gross": "475000.00", "due": "75000.00"}),
        ("credited, rounded to the crown", plain(
            [("2000", "10", "25", take("300", "500", "2")), ("-800", "4", "25", take(base="5"))],
            paid="834.90", allowances=[("1912", "25")], charges=[("1020", "25")], currency="SEK", step="1"),
         {"lines": ["10200.00", "-640.00"], "net": "8668.00", "tax_total": "2167.00", "gross": "10835.00",
          "rounding": "-0.10", "due": "10000.00"}),
        ("allowances", plain(
            [("10", "410", "25", take("101", "1")), ("10", "200", "E", take(base="2")),
             ("10", "100", "25", take("101", "1"))],
            paid="1000", allowances=[("200", "25")], charges=[("200", "25")]),
         {"lines": ["4000.00", "1000.00", "900.00"], "lines_total": "5900.00", "tax_total": "1225.00",
          "gross": "7125.00", "due": "6125.00"}),
        ("a price with four decimals", plain([("100", "0.1212", "25")]),
         {"net": "12.12", "tax_total": "3.03", "gross": "15.15"}),
        ("no net price comes to 45.00 at 19 %", plain([("1", "45.00", "19")], prices="gross"),
         {"net": "37.82", "tax_total": "7.18", "gross": "45.00"}),
        ("nor to 35.00 at 21 %", plain([("1", "35.00", "21")], prices="gross"), {"gross": "35.00", "net": "28.93"}),
        ("tax once, not by line", plain([("3", "33.33", "20")]), {"net": "99.99", "tax_total": "20.00"}),
        ("tax once, on many small lines", plain([("1", "0.50", "7")] * 10), {"tax_total": "0.35"}),
        ("20 % in 65.00", plain([("1", "65.00", "20")], prices="gross", currency="GBP"),
         {"net": "54.17", "tax_total": "10.83"}),
        ("four lines at 20 %", plain([("3", "12.99", "20"), ("1", "7.33", "20")], currency="GBP"),
         {"net": "46.30", "tax_total": "9.26"}),
    ]
    for (what, _, want), got in zip(cases, ask(program, "invoice", [case[1] for case in cases])):
        got = {name: got.get(name) for name in want}
        tally.check(what, got == want, f"{got} where {want} is expected")


def splits(program, tally, random_):
    """Largest remainder, ties to the first, worked with fractions."""
    asks = [
        {"amount": "100.00", "currency": "USD", "shares": [1, 1, 1]},
        {"amount": "-47.50", "currency": "EUR", "shares": [1, 1, 1, 1]},
        {"amount": "7", "currency": "JPY", "shares": [1, 0, 1]},
    ]
    for _ in range(1000):
        currency = random_.choice(list(DECIMALS))
        units = random_.choice([-1, 1]) * random_.randint(0, 10**random_.randint(0, 9))
        shares = [random_.randint(0, 10**random_.randint(0, 5)) for _ in range(random_.randint(1, 12))]
        if sum(shares):
            amount = written(Fraction(units, 10**DECIMALS[currency]), DECIMALS[currency])
            asks.append({"amount": amount, "currency": currency, "shares": shares})
    answers = ask(program, "split", asks)
    tally.check("three shares", answers[0] == {"parts": ["33.34", "33.33", "33.33"]}, answers[0])
    tally.check("a refund mirrors", answers[1] == {"parts": ["-11.88", "-11.88", "-11.87", "-11.87"]}, answers[1])
    for one, got in zip(asks, answers):
        decimals = DECIMALS.get(one["currency"], 2)
        amount = exact(one["amount"])
        whole = [abs(amount) * 10**decimals * share / sum(one["shares"]) for share in one["shares"]]
        parts = [int(part) for part in whole]
        order = sorted(range(len(parts)), key=lambda at: (-(whole[at] - parts[at]), at))
        for at in order[: int(abs(amount) * 10**decimals) - sum(parts)]:
            parts[at] += 1
        sign = -1 if amount < 0 else 1
        want = {"parts": [written(Fraction(sign * part, 10**decimals), decimals) for part in parts]}
        tally.check(f"split {one}", got == want, f"{got} where {want} is expected")


def currencies(program, tally):
    """The minor units of ISO 4217 list one, as another library has them."""
    codes = [c for c in iso4217.Currency if c.exponent is not None]
    answers = ask(program, "split", [{"amount": "1", "currency": c.code, "shares": [1]} for c in codes])
    known = 0
    for currency, got in zip(codes, answers):
        if "parts" not in got:
            continue
        known += 1
        want = written(Fraction(1), currency.exponent)
        tally.check(f"decimals of {currency.code}", got["parts"] == [want], got)
    tally.check("nearly every currency is known", known >= 150, f"{known} of {len(codes)}")


def refused(program, tally):
    def invoice(**changed):
        return plain([("1", "10", "20")]) | changed

    def lines(**changed):
        one = plain([("1", "10", "20")])
        one["lines"][0] |= changed
        return one

    cases = [
        (lines(unit_price="-1"), "lines[0].unit_price"),
        (lines(tax={"category": "S", "rate": "190"}), "lines[0].tax.rate"),
        (lines(tax={"category": "S", "rate": "0"}), "lines[0].tax.rate"),
        (lines(tax={"category": "E", "rate": "5"}), "lines[0].tax.rate"),
        (lines(tax={"category": "X", "rate": "5"}), "lines[0].tax.category"),
        (lines(base_quantity="0"), "lines[0].base_quantity"),
        (lines(allowance="0.005"), "lines[0].allowance"),
        (lines(quantity=1), "lines[0].quantity"),
        (lines(quantity="1e3"), "lines[0].quantity"),
        (lines(quantity="99999999999999999999999", unit_price="9999999999999"), "lines[0]"),
        (invoice(paid="-1"), "paid"),
        (invoice(lines=[]), "lines"),
        (invoice(payable_rounding="0"), "payable_rounding"),
        (invoice(currency="EURO"), "currency"),
        (invoice(currency="XAU"), "currency"),
        (invoice(tip="5"), "tip"),
    ]
    for (one, field), got in zip(cases, ask(program, "invoice", [one for one, _ in cases])):
        fields = [problem["field"] for problem in got.get("error", {}).get("problems", [])]
        tally.check(f"refused {field}", fields == [field], got)
    cases = [
        ({"amount": "1", "currency": "EUR", "shares": [0, 0]}, "shares"),
        ({"amount": "1", "currency": "EUR", "shares": []}, "shares"),
        ({"amount": "1", "currency": "EUR", "shares": [1, -1]}, "shares[1]"),
        ({"amount": "1.001", "currency": "EUR", "shares": [1]}, "amount"),
        ({"amount": 1, "currency": "EUR", "shares": [1]}, "amount"),
    ]
    for (one, field), got in zip(cases, ask(program, "split", [one for one, _ in cases])):
        fields = [problem["field"] for problem in got.get("error", {}).get("problems", [])]
        tally.check(f"refused split {one}", fields == [field], got)


def main():
    program = binary(__doc__)
    tally = Tally()
    against_fractions(program, tally, random.Random(16931))
    examples(program, tally)
    splits(program, tally, random.Random(100))
    currencies(program, tally)
    refused(program, tally)
    tally.end()


if __name__ == "__main__":
    main()
