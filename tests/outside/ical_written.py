"""Reads calendars the program wrote with icalendar and vobject, both of which also work out the
VTIMEZONE; called by ical.py."""

import datetime as dt
import random

import icalendar
import vobject

from ical_times import ZONES, some_time, utc
from lines import ask

NAMES = [
    "Zoë Ångström", 'Coach, Pat: "PJ"', "O'Neil; Ana", "李 小龙", "^hat ^n", "🎾🏸 Sam", "<b>Bo</b>", "",
    "Anna\r\nATTENDEE:mailto:x@example.org",
]
MAILS = ["ana@example.org", "j.o+x@example.org", "o'neil@example.org", "jörg@example.org"]
WORDS = [
    "Lesson", "Backhand, forehand; serve \\ volley", "Zwei\nZeilen", "🎾" * 60, "ü" * 90, "a:b=c",
    "x" * 200, "BEGIN:VEVENT", "", " two  blanks ",
]


def written(program, tally):
    r, inputs = random.Random(5546), []
    for n in range(200):
        zone = r.choice(ZONES)
        starts = some_time(r, (2025, 2028), (6, 20))
        ends = starts + dt.timedelta(minutes=r.choice([30, 60, 95]))

        def person():
            return {"name": r.choice(NAMES), "email": r.choice(MAILS)}

        inputs.append({
            "method": r.choice(["request", "cancel", "publish", None]),
            "events": [{
                "uid": f"{n}@example.org",
                "sequence": r.randint(0, 9),
                "stamp": "2026-01-02T03:04:05Z",
                "zone": zone,
                "starts": starts.isoformat(),
                "ends": ends.isoformat(),
                "second": False,
                "summary": r.choice(WORDS),
                "place": r.choice(WORDS),
                "words": r.choice(WORDS),
                "organizer": person(),
                "attendees": [person() for _ in range(r.randint(1, 3))],
                "cancelled": r.random() < 0.2,
            }],
        })
    for given, got in zip(inputs, ask(program, "ical_write", inputs)):
        text, event = got.get("text", ""), given["events"][0]
        name = f"written {event['uid']}"
        raw = text.encode()
        tally.check(f"{name} folds", all(len(line) <= 75 for line in raw.split(b"\r\n")), text)
        tally.check(f"{name} line ends", raw.count(b"\n") == raw.count(b"\r\n"), text)
        read_by_icalendar(tally, name, given["method"], event, text)
        read_by_vobject(tally, name, event, text)


def meant(text):
    return text.replace("\r\n", "\n")


def read_by_icalendar(tally, name, method, event, text):
    calendar = icalendar.Calendar.from_ical(text)
    tally.check(f"{name} method", calendar.get("METHOD") == (method and method.upper()), text)
    tally.check(f"{name} zones", not calendar.get_missing_tzids(), calendar.get_missing_tzids())
    (one,) = calendar.events
    tally.check(f"{name} faults", not one.errors, one.errors)
    for key, field in (("SUMMARY", "summary"), ("LOCATION", "place"), ("DESCRIPTION", "words")):
        tally.check(f"{name} {key}", str(one.get(key, "")) == event[field], (one.get(key), event[field]))
    zone = event["zone"]
    for key, field in (("DTSTART", "starts"), ("DTEND", "ends")):
        want = utc(dt.datetime.fromisoformat(event[field]), zone)
        tally.check(f"{name} {key}", one[key].dt.astimezone(dt.timezone.utc) == want, (one[key].dt, want))
        for described in calendar.timezones:
            # The VTIMEZONE alone, without the zone's name.
            clock = described.to_tz(lookup_tzid=False)
            at = dt.datetime.fromisoformat(event[field]).replace(tzinfo=clock)
            tally.check(f"{name} {key} by VTIMEZONE", at.astimezone(dt.timezone.utc) == want, (at, want))
    cancelled = event["cancelled"] or method == "cancel"
    tally.check(f"{name} status", one["STATUS"] == ("CANCELLED" if cancelled else "CONFIRMED"), one["STATUS"])
    tally.check(f"{name} sequence", one["SEQUENCE"] == event["sequence"], one["SEQUENCE"])
    people = one.get("ATTENDEE", [])
    people = people if isinstance(people, list) else [people]
    wanted = [] if method == "publish" else event["attendees"]
    mail = lambda person: "mailto:" + person["email"].replace("ö", "%C3%B6")
    tally.check(f"{name} attendees", [str(p) for p in people] == [mail(p) for p in wanted], (people, wanted))
    for person, want in [(one["ORGANIZER"], event["organizer"]), *zip(people, wanted)]:
        tally.check(f"{name} name", person.params.get("CN", "") == meant(want["name"]), (person.params, want))
    if method == "request":
        asked = all(p.params["RSVP"] == "TRUE" and p.params["PARTSTAT"] == "NEEDS-ACTION" for p in people)
        tally.check(f"{name} asks", asked, text)


def read_by_vobject(tally, name, event, text):
    # It would go by the first VTIMEZONE of that name that it ever read.
    if event["zone"] != "UTC":
        vars(vobject.icalendar)["__tzidMap"].pop(event["zone"], None)
    calendar = vobject.readOne(text)
    tally.check(f"{name} vobject valid", calendar.validate(), text)
    (one,) = calendar.vevent_list
    tally.check(f"{name} vobject summary", one.summary.value == event["summary"], one.summary.value)
    for value, field in ((one.dtstart.value, "starts"), (one.dtend.value, "ends")):
        want = utc(dt.datetime.fromisoformat(event[field]), event["zone"])
        tally.check(f"{name} vobject {field}", value.astimezone(dt.timezone.utc) == want, (value, want))
