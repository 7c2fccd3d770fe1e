"""Reads invitations and calendar files with two foreign readers, icalendar and vobject, and compares
their instants with Python's zoneinfo (tzdata 2026.6).

A lesson is invited to, moved and called off; what must hold is RFC 5546: one UID for life (2.1.4),
a SEQUENCE that rises (2.1.4), the METHOD, one event each (3.2), a VTIMEZONE for each TZID (RFC 5545,
3.6.5).
"""

import json
import os
import subprocess
import tempfile
from datetime import datetime
from pathlib import Path

os.environ["PYTHONTZPATH"] = ""  # the tzdata package, not the machine's copy

from zoneinfo import ZoneInfo  # noqa: E402

import icalendar  # noqa: E402
import vobject  # noqa: E402

from lines import Tally, binary  # noqa: E402

# Names as people have them, and as they should not: quotes, commas, markup, line breaks, long emoji.
NAMES = ['Ana Prior', 'Coach, Pat: "PJ"', "<b>Zoë</b>; O'Hara \\ & co", "Jörg Müller-Ößwald " + "🎾" * 30]
# Until 2037, where the zones of the other reader end. Zone, day, time: plain days, the days around a change of the clocks, half-hour zones.
TIMES = [
    ("Europe/Dublin", "2027-07-10", "09:00"),
    ("America/New_York", "2027-03-14", "03:30"),
    ("America/New_York", "2027-11-07", "09:00"),
    ("America/Vancouver", "2026-12-03", "09:00"),
    ("Australia/Lord_Howe", "2027-04-04", "09:15"),
    ("Asia/Kathmandu", "2027-05-05", "18:45"),
    ("Etc/UTC", "2027-05-05", "23:30"),
]


class File:
    """A coach file in a folder of its own, asked through the command line."""

    def __init__(self, program, folder):
        self.program, self.folder = program, Path(folder)
        self.path = self.folder / "outside.carryover"
        self.run("sample", str(self.path), "--students", "0", "--years", "0")

    def run(self, *words, sent=None):
        named = [] if words[0] == "sample" else ["--file", str(self.path)]
        done = subprocess.run(
            [self.program, *named, *words],
            input=sent, capture_output=True, text=True, timeout=120, check=False,
        )
        if done.returncode != 0:
            raise SystemExit(f"{words} ended with {done.returncode}: {done.stderr}")
        return json.loads(done.stdout)

    def act(self, command, **given):
        return self.run("call", command, sent=json.dumps(given))["value"]

    def invitations(self, visit, into):
        names = self.run("invitations", "--visit", visit, str(self.folder / into))["files"]
        return [(self.folder / into / name).read_bytes() for name in names]


def read(tally, what, text, zone, starts, name, method, sequence):
    """One object, by both readers; gives its UID."""
    tally.check(f"{what}: every line ends in CRLF", b"\n" not in text.replace(b"\r\n", b""))
    tally.check(f"{what}: 75 octets", all(len(line) <= 75 for line in text.split(b"\r\n")))
    calendar = icalendar.Calendar.from_ical(text)
    events = list(calendar.walk("VEVENT"))
    tally.check(f"{what}: one event", len(events) == 1, len(events))
    tally.check(f"{what}: no zone is missing", not list(calendar.get_missing_tzids()))
    event = events[0]
    tally.check(f"{what}: method", calendar.get("METHOD") == method, calendar.get("METHOD"))
    tally.check(f"{what}: sequence", event["SEQUENCE"] == sequence, event["SEQUENCE"])
    want = starts.replace(tzinfo=ZoneInfo(zone)).timestamp()
    got = event["DTSTART"].dt.timestamp()
    tally.check(f"{what}: instant", got == want, f"{got} where {want} is expected")
    attendee = event["ATTENDEE"]
    told = attendee.params["CN"]
    clean = name.replace("\n", " ")
    tally.check(f"{what}: the name comes back", told == clean, f"{told!r} for {clean!r}")
    tally.check(f"{what}: the address", str(attendee).lower() == "mailto:ana@example.org", attendee)
    tally.check(f"{what}: cancelled", (event.get("STATUS") == "CANCELLED") == (method == "CANCEL"))
    other = vobject.readOne(text.decode())
    other.validate(raiseException=True)
    also = other.vevent.dtstart.value.timestamp()
    tally.check(f"{what}: the other reader's instant", also == want, f"{also} for {want}")
    tally.check(f"{what}: the other reader's UID", other.vevent.uid.value == str(event["UID"]))
    return str(event["UID"])


def life(tally, file, n, name, zone, day, time):
    """A lesson from its invitation to its calling-off."""
    what = f"{zone} {day} {time}"
    facility = file.act("facilities.add", name=f"Hall {n}", zone=zone)["id"]
    student = file.act("students.add", name=name, email="ana@example.org")["id"]
    visit = file.act("visits.plan", student=student, facility=facility, first_day=day, last_day=day)["id"]
    lesson = file.act(
        "lessons.plan", visits=[visit], facility=facility, day=day, starts=time, minutes=60
    )["id"]
    starts = datetime.fromisoformat(f"{day}T{time}")
    [text] = file.invitations(visit, f"{n} new")
    uid = read(tally, f"{what} new", text, zone, starts, name, "REQUEST", 0)
    tally.check(f"{what}: nothing more is due", file.act("calendar.due", visit=visit) == [])
    later = starts.replace(hour=12, minute=0)
    file.act(
        "lessons.change", lesson=lesson, facility=facility, day=day, starts="12:00", minutes=60
    )
    [text] = file.invitations(visit, f"{n} changed")
    again = read(tally, f"{what} changed", text, zone, later, name, "REQUEST", 1)
    file.act("lessons.call_off", lesson=lesson, reason="ill")
    [text] = file.invitations(visit, f"{n} off")
    last = read(tally, f"{what} off", text, zone, later, name, "CANCEL", 2)
    tally.check(f"{what}: one UID for life", uid == again == last, (uid, again, last))
    return student


def main():
    program, tally = binary(__doc__), Tally()
    with tempfile.TemporaryDirectory() as folder:
        file = File(program, folder)
        settings = file.act("settings.show")
        file.act("settings.change", **{**settings, "name": 'Robin "R" Hale', "email": "robin@example.org"})
        for n, (zone, day, time) in enumerate(TIMES):
            life(tally, file, n, NAMES[n % len(NAMES)], zone, day, time)
        # A calendar file of three lessons, without a method.
        facility = file.act("facilities.add", name="Hall of all", zone="Europe/Dublin")["id"]
        student = file.act("students.add", name="Bea")["id"]
        days = {"first_day": "2099-01-05", "last_day": "2099-01-07"}
        visit = file.act("visits.plan", student=student, facility=facility, **days)["id"]
        for day in ("2099-01-05", "2099-01-06", "2099-01-07"):
            file.act("lessons.plan", visits=[visit], facility=facility, day=day, starts="09:00", minutes=90)
        to = Path(folder) / "lessons.ics"
        file.run("calendar", "--student", student, str(to))
        calendar = icalendar.Calendar.from_ical(to.read_bytes())
        events = list(calendar.walk("VEVENT"))
        tally.check("the file holds the three lessons", len(events) == 3, len(events))
        tally.check("the file has no method", calendar.get("METHOD") is None)
        tally.check("no zone is missing in the file", not list(calendar.get_missing_tzids()))
        long = {e["DTEND"].dt - e["DTSTART"].dt for e in events}
        tally.check("each is as long as planned", {d.total_seconds() for d in long} == {5400.0}, long)
    tally.end()


main()
