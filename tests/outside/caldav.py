"""Drives the program's CalDAV against two servers, Radicale 3.9.0 and Xandikos 0.4.10, each a real one on
this machine, while another client changes the same calendars by Python's own HTTP.

Asks the example calendar_door of the package carryover-wire.
"""

import pathlib
import tempfile

import icalendar

from caldav_servers import USER, Cutting, Door, certificate, radicale, request, xandikos
from lines import Tally, binary

NAME = 'Stunden & <b>Zoë</b> "Müller"'
SPAN = {"first": "2026-03-01", "last": "2026-03-31"}


def event(uid, summary="Backhand", start="20260310T160000", more=(), others=()):
    head = ["BEGIN:VEVENT", f"UID:{uid}", "DTSTAMP:20260101T000000Z"]
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Example//Outside check//EN"]
    lines += [*head, f"DTSTART:{start}Z", "DURATION:PT1H", f"SUMMARY:{summary}", *more, "END:VEVENT"]
    for other in others:
        lines += [*head, *other, "END:VEVENT"]
    return "\r\n".join([*lines, "END:VCALENDAR", ""])


def meaning(text):
    """What a calendar says, whatever the order of its lines."""
    events = icalendar.Calendar.from_ical(text).walk("VEVENT")
    # Where a component begins and ends is told as bytes.
    plain = lambda value: value if isinstance(value, bytes) else value.to_ical()
    return sorted(sorted((name, plain(value)) for name, value in one.property_items()) for one in events)


class Check:
    """One server."""

    def __init__(self, name, port, door, tally):
        self.name, self.port, self.door, self.tally = name, port, door, tally
        self.root = f"http://127.0.0.1:{port}/"

    def agrees(self, what, got, want):
        self.tally.check(f"{self.name}: {what}", got == want, f"{got!r} where {want!r} is expected")

    def ask(self, act, **more):
        return self.door.ask(self.root, act, **more)

    def changes(self, calendar, token=None):
        answer = self.ask("changes", href=calendar, token=token, **SPAN)
        self.tally.check(f"{self.name}: changes", "ok" in answer, answer)
        return answer.get("ok") or {"token": None, "whole": None, "changed": [], "gone": []}

    def version(self, href):
        return (self.ask("get", href=href).get("ok") or {}).get("etag")


def finds(check):
    """Makes calendars, and finds them from every address a person may have."""
    made = check.ask("make", name=NAME).get("ok", {})
    check.agrees("a calendar is made", (made.get("name"), made.get("writable")), (NAME, True))
    again = check.ask("make", name=NAME).get("ok", {})
    check.agrees("a second of that name is another", again.get("href", "").endswith("-2/"), True)
    href = made.get("href", "/")
    home = href.rstrip("/").rpartition("/")[0] + "/"
    for path in ["", f"{USER}/", USER, home[1:], "no/such/page"]:
        found = check.door.ask(check.root + path, "calendars").get("ok", [])
        there = [one["name"] for one in found if one["href"] in (href, again.get("href"))]
        check.agrees(f"calendars from /{path}", there, [NAME, NAME])
    found = check.door.ask(check.root + href[1:], "calendars").get("ok")
    check.agrees("a calendar by its own address", found, [made])
    gone = check.ask("changes", href=home + "nothing/", **SPAN)
    check.agrees("no calendar", gone.get("trouble"), "NoCalendar")
    return href


def writes(check, calendar):
    """Everything is written under a condition, and nothing of another's is written over."""
    href, first = calendar + "lesson-1.ics", event("lesson-1")
    put = check.ask("put", href=href, text=first)
    check.agrees("an event is written", list(put), ["ok"])
    got = check.ask("get", href=href).get("ok") or {}
    check.agrees("and read", (got.get("href"), meaning(got["text"])), (href, meaning(first)))
    if put["ok"] is not None:
        check.agrees("a version is that of the text sent", (put["ok"], got["text"]), (got["etag"], first))
    again = check.ask("put", href=href, text=first)
    check.agrees("not twice", again.get("trouble"), "OtherVersion")

    moved = event("lesson-1", start="20260311T160000")
    check.agrees("a change", list(check.ask("put", href=href, text=moved, version=got["etag"])), ["ok"])
    stale = check.ask("put", href=href, text=first, version=got["etag"])
    check.agrees("not over another version", stale.get("trouble"), "OtherVersion")
    check.agrees("which stays", meaning(check.ask("get", href=href)["ok"]["text"]), meaning(moved))
    removed = check.ask("remove", href=href, version=got["etag"])
    check.agrees("nor removed by an old version", removed.get("trouble"), "OtherVersion")
    check.agrees("removed", check.ask("remove", href=href, version=check.version(href)), {"ok": None})
    check.agrees("and gone", check.ask("get", href=href), {"ok": None})
    removed = check.ask("remove", href=href, version=got["etag"])
    check.agrees("nothing to remove", removed.get("trouble"), "Gone")
    lost = check.ask("put", href=calendar.rstrip("/") + "-none/a.ics", text=first)
    check.agrees("no calendar to write into", lost.get("trouble"), "NoCalendar")

    summary = "Zoë\\, „Ñandú“ & <script>x</script> 🎾"
    series = event(
        "series", summary, "20260302T170000", ["RRULE:FREQ=WEEKLY;COUNT=5", "EXDATE:20260309T170000Z"],
        [["RECURRENCE-ID:20260316T170000Z", "DTSTART:20260317T180000Z", "DURATION:PT1H", "SUMMARY:Moved"]],
    )
    check.agrees("a series", list(check.ask("put", href=calendar + "zo%C3%AB@1.ics", text=series)), ["ok"])
    whole = {one["href"]: one["text"] for one in check.changes(calendar)["changed"]}
    check.agrees("its path has one spelling", list(whole), [calendar + "zo%C3%AB@1.ics"])
    for name in ("zo%c3%ab%401.ics", "zoë@1.ics"):
        got = check.ask("get", href=calendar + name).get("ok") or {"text": event("nothing")}
        check.agrees(f"the series with its exceptions by {name}", meaning(got["text"]), meaning(series))


def follows(check, calendar):
    """What became of a calendar, also by another client's hand."""
    whole = check.changes(calendar)
    check.agrees("everything at first", (whole["whole"], len(whole["changed"])), (True, 1))
    token = whole["token"]
    check.tally.check(f"{check.name}: a token", token is not None, whole)
    since = check.changes(calendar, token)
    check.agrees("nothing since", (since["whole"], since["changed"], since["gone"]), (False, [], []))

    for number in (1, 2, 3):
        path = f"{calendar}other-{number}.ics"
        status, _ = request(check.port, "PUT", path, event(f"other-{number}"), Content_Type="text/calendar")
        check.agrees("another client writes", status, 201)
    far = event("far", start="20300310T160000")
    check.agrees("far away", list(check.ask("put", href=calendar + "far.ics", text=far)), ["ok"])
    since = check.changes(calendar, token)
    paths = sorted(one["href"].rpartition("/")[2] for one in since["changed"])
    check.agrees("what it wrote", paths, ["far.ics", "other-1.ics", "other-2.ics", "other-3.ics"])
    token = since["token"]
    request(check.port, "DELETE", calendar + "other-1.ics")
    request(check.port, "PUT", calendar + "other-2.ics", event("other-2", "Moved by it"),
            Content_Type="text/calendar")
    since = check.changes(calendar, token)
    check.agrees("what it removed", (since["whole"], since["gone"]), (False, [calendar + "other-1.ics"]))
    check.agrees("what it changed", ["Moved by it" in one["text"] for one in since["changed"]], [True])
    version = check.version(calendar + "other-2.ics")
    check.agrees("with its version", [one["etag"] for one in since["changed"]], [version])

    # As long as the server's own, and of no state it ever had.
    forgotten = since["token"][:-40] + "f00d" * 10
    anew = check.changes(calendar, forgotten)
    paths = sorted(one["href"].rpartition("/")[2] for one in anew["changed"])
    check.agrees("a forgotten token means everything", (anew["whole"], paths),
                 (True, ["other-2.ics", "other-3.ics", "zo%C3%AB@1.ics"]))
    check.agrees("and a new one", anew["token"], since["token"])

    for number in range(120):
        path = f"{calendar}many-{number}.ics"
        request(check.port, "PUT", path, event(f"many-{number}"), Content_Type="text/calendar")
    check.agrees("many at once", len(check.changes(calendar, since["token"])["changed"]), 120)
    check.agrees("and anew", len(check.changes(calendar)["changed"]), 123)


def is_cut(check, calendar):
    """A connection that is lost half-way leaves nothing half done."""
    with Cutting(check.port) as between:
        address, href = f"http://127.0.0.1:{between.at}/", calendar + "cut.ics"

        def ask(act, **more):
            return check.door.ask(address, act, **more)

        check.agrees("through it", ask("get", href=href), {"ok": None})
        token = check.changes(calendar)["token"]
        between.after = 20
        # The server gets the event, but what it says of it is lost.
        put = ask("put", href=href, text=event("cut"))
        check.agrees("a put cut", put.get("trouble"), "Away")
        for after in (0, 20, 120, 400):
            between.after = after
            for more in ({"token": None}, {"token": token}):
                changes = ask("changes", href=calendar, **more, **SPAN)
                check.agrees(f"changes cut after {after} bytes", changes.get("trouble"), "Away")
        between.after = None
        again = ask("put", href=href, text=event("cut"))
        check.agrees("written again, it is there", again.get("trouble"), "OtherVersion")
        there = ask("get", href=href)["ok"]["text"]
        check.agrees("as it was sent", meaning(there), meaning(event("cut")))
        since = ask("changes", href=calendar, token=token, **SPAN)["ok"]
        check.agrees("and told once", [one["href"] for one in since["changed"]], [href])


def drives(name, port, program, tally):
    with Door(program) as door:
        check = Check(name, port, door, tally)
        calendar = finds(check)
        writes(check, calendar)
        follows(check, calendar)
        is_cut(check, calendar)


def signs_in(port, program, tally):
    with Door(program) as door:
        check = Check("sign-in", port, door, tally)
        for user, password in ((USER, "wrong"), ("bo", "wrong"), ("", "")):
            answer = check.ask("calendars", user=user, password=password)
            check.agrees(f"{user or 'nobody'}", answer.get("trouble"), "SignIn")
        other = check.ask("changes", href="/bo/calendar/", **SPAN)
        check.agrees("another's calendar", other.get("trouble"), "Forbidden")


def is_protected(folder, program, tally):
    """Over TLS, by the authorities the machine trusts."""
    chain, root = certificate(folder)
    with radicale(folder / "tls", chain) as port:
        address = f"https://127.0.0.1:{port}/"
        with Door(program, SSL_CERT_FILE=str(root)) as door:
            made = door.ask(address, "make", name=NAME)
            tally.check("TLS: a calendar is made", made.get("ok", {}).get("name") == NAME, made)
            found = door.ask(address, "calendars")
            tally.check("TLS: and found", found.get("ok") == [made.get("ok")], found)
            other = door.ask(f"https://localhost:{port}/", "calendars")
            tally.check("TLS: not by another name", other.get("trouble") == "Certificate", other)
        with Door(program) as door:
            unknown = door.ask(address, "calendars")
            tally.check("TLS: from nobody known", unknown.get("trouble") == "Certificate", unknown)


def main():
    program, tally = binary(__doc__), Tally()
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        with radicale(folder / "radicale") as port:
            drives("Radicale", port, program, tally)
            signs_in(port, program, tally)
        with xandikos(folder / "xandikos") as port:
            drives("Xandikos", port, program, tally)
        is_protected(folder, program, tally)
    tally.end()


if __name__ == "__main__":
    main()
