"""Compares the reading and writing of calendars with other people's readers.

Rules that repeat: the examples of RFC 5545 §3.8.5.3 and random rules, against python-dateutil.
Calendars read: random ones, against icalendar 7.3.2 with recurring-ical-events 3.8.2, and times in
skipped and repeated hours against zoneinfo with tzdata 2026.6. Calendars written: random ones, read
back by icalendar and by vobject 0.9.9, both of which also work out our VTIMEZONE.
"""

import datetime as dt
import random
import zoneinfo

import icalendar
import recurring_ical_events
from dateutil import rrule

from ical_rules import rules
from ical_times import DAYS, ZONES, compact, some_time, stamp, utc
from ical_written import written
from lines import Tally, ask, binary


def wrapped(events):
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Example//Outside check//EN"]
    return "\r\n".join(lines + events + ["END:VCALENDAR", ""])


def random_event(r, n):
    """The lines of one event, on its own and perhaps with times that were moved or called off."""
    zone = r.choice(ZONES + ["floating"])
    all_day = r.random() < 0.2
    start = some_time(r, (2023, 2026), (6, 20))
    minutes = r.choice([30, 45, 60, 90, 150])

    def at(name, when):
        if all_day:
            return f"{name};VALUE=DATE:{when:%Y%m%d}"
        if zone == "UTC":
            return f"{name}:{compact(when)}Z"
        return f"{name}:{compact(when)}" if zone == "floating" else f"{name};TZID={zone}:{compact(when)}"

    days = r.randint(1, 3)
    end = dt.timedelta(days=days) if all_day else dt.timedelta(minutes=minutes)
    head = ["BEGIN:VEVENT", f"UID:{n}@example.org", "DTSTAMP:20260101T000000Z"]
    lines = head + [f"SUMMARY:Event {n}", at("DTSTART", start)]
    if r.random() < 0.5:
        lines.append(at("DTEND", start + end))
    else:
        lines.append(f"DURATION:P{days}D" if all_day else f"DURATION:PT{minutes}M")
    kind = r.random()
    if kind < 0.1:
        lines.append("TRANSP:TRANSPARENT")
    elif kind < 0.2:
        lines.append("STATUS:CANCELLED")
    more = []
    if r.random() < 0.6:
        freq = r.choice(["DAILY", "WEEKLY", "MONTHLY"])
        rule = f"FREQ={freq};INTERVAL={r.randint(1, 3)}"
        if freq == "WEEKLY":
            rule += f";BYDAY={DAYS[start.weekday()]},{r.choice(DAYS)}"
        if r.random() < 0.3:
            rule += f";COUNT={r.randint(2, 300)}"
        elif r.random() < 0.4 and zone != "floating" and not all_day:
            rule += f";UNTIL={compact(utc(start + dt.timedelta(days=r.randint(30, 900)), zone))}Z"
        lines.append("RRULE:" + rule)
        # Dates the rule holds, by dateutil, to be taken out or moved.
        endless = rrule.rrulestr(rule.split(";UNTIL")[0], dtstart=start)
        held = list(endless.xafter(dt.datetime(2026, 2, 1), count=12))
        until = rule.split("UNTIL=")[1] if "UNTIL" in rule else None
        if until:
            limit = dt.datetime.strptime(until, "%Y%m%dT%H%M%SZ").replace(tzinfo=dt.timezone.utc)
            held = [h for h in held if utc(h, zone) <= limit]
        r.shuffle(held)
        for one in held[:2]:
            if r.random() < 0.5:
                lines.append(at("EXDATE", one))
        for one in held[2:4]:
            if r.random() < 0.5:
                moved = one + dt.timedelta(days=r.randint(0, 2), hours=0 if all_day else r.choice([0, 1, -1]))
                more += head + [at("RECURRENCE-ID", one), f"SUMMARY:Moved {n}"]
                more += [at("DTSTART", moved), at("DTEND", moved + end)]
                more += r.choice([[], ["STATUS:CANCELLED"], ["TRANSP:TRANSPARENT"]]) + ["END:VEVENT"]
    if r.random() < 0.2:
        lines.append(at("RDATE", start.replace(year=2026, month=3, day=r.randint(1, 28))))
    return lines + ["END:VEVENT"] + more


def instant(value, home):
    if not isinstance(value, dt.datetime):
        value = dt.datetime.combine(value, dt.time())
    return value.replace(tzinfo=value.tzinfo or zoneinfo.ZoneInfo(home)).astimezone(dt.timezone.utc)


def their_busy(text, first, last, home):
    """What recurring-ical-events finds, less what takes nobody's time."""
    calendar = icalendar.Calendar.from_ical(text)
    begin, end = first - dt.timedelta(days=2), last + dt.timedelta(days=3)
    window = (utc(dt.datetime.combine(first, dt.time()), home),
              utc(dt.datetime.combine(last + dt.timedelta(days=1), dt.time()), home))
    found = []
    for event in recurring_ical_events.of(calendar).between(begin, end):
        if str(event.get("STATUS", "")) == "CANCELLED" or str(event.get("TRANSP", "")) == "TRANSPARENT":
            continue
        start, stop = event.start, event.end
        if isinstance(start, dt.datetime):
            starts, ends, days = instant(start, home), instant(stop, home), None
            inside = ends > window[0] and starts < window[1]
        else:
            starts, ends = instant(start, home), instant(stop, home)
            final = stop - dt.timedelta(days=1)
            days, inside = [str(start), str(final)], start <= last and first <= final
        if inside:
            found.append((stamp(starts), stamp(ends), str(event.get("SUMMARY")), str(days)))
    return sorted(found)


def calendars(program, tally):
    r, cases = random.Random(4791), []
    for n in range(250):
        lines = [line for k in range(r.randint(1, 4)) for line in random_event(r, 10 * n + k)]
        first = dt.date(2026, r.choice([2, 3, 3, 10, 11]), r.randint(1, 28))
        last = first + dt.timedelta(days=r.choice([0, 6, 20]))
        cases.append((wrapped(lines), first, last, r.choice(ZONES)))
    inputs = [{"text": text, "first": str(a), "last": str(b), "home": home} for text, a, b, home in cases]
    held = 0
    for (text, first, last, home), got in zip(cases, ask(program, "ical_busy", inputs)):
        want = their_busy(text, first, last, home)
        mine = sorted((b["starts"], b["ends"], b["summary"], str(b["all_day"])) for b in got.get("busy", []))
        held += len(want)
        ours, others = sorted(set(mine) - set(want)), sorted(set(want) - set(mine))
        differ = f"{home} {first} to {last}; only here {ours}, only there {others}\n{got}\n{text}"
        tally.check("a calendar read", mine == want and got.get("skipped") == [], differ)
    tally.check("the calendars hold enough times to differ in", held > 400, held)


# Skipped and repeated times (zoneinfo, tzdata 2026.6, fold=0), and one in a zone whose rules changed
# in 2026.
HOURS = [
    ("America/New_York", "2026-03-08T02:30"), ("America/New_York", "2026-11-01T01:30"),
    ("America/New_York", "2027-03-14T02:30"), ("America/New_York", "2027-11-07T01:30"),
    ("America/Phoenix", "2026-03-08T02:30"), ("America/Phoenix", "2026-11-01T01:30"),
    ("Europe/Berlin", "2026-03-29T02:30"), ("Europe/Berlin", "2026-10-25T02:30"),
    ("Europe/Berlin", "2027-03-28T02:30"), ("Europe/Berlin", "2027-10-31T02:30"),
    ("Australia/Lord_Howe", "2026-04-05T01:45"), ("Australia/Lord_Howe", "2026-10-04T02:15"),
    ("Australia/Lord_Howe", "2026-10-04T02:30"), ("Australia/Lord_Howe", "2027-04-04T01:45"),
    ("Australia/Lord_Howe", "2027-10-03T02:15"), ("America/Vancouver", "2026-11-03T09:00"),
]


def hours(program, tally):
    inputs, want = [], []
    for zone, local in HOURS:
        at = dt.datetime.fromisoformat(local)
        start = f"DTSTART;TZID={zone}:{compact(at)}"
        text = wrapped(["BEGIN:VEVENT", "UID:a@example.org", start, "DURATION:PT1H", "END:VEVENT"])
        first, last = (str(at.date() + dt.timedelta(days=n)) for n in (-1, 1))
        inputs.append({"text": text, "first": first, "last": last, "home": "UTC"})
        want.append(stamp(utc(at, zone)))
    for (zone, local), got, starts in zip(HOURS, ask(program, "ical_busy", inputs), want):
        found = [busy["starts"] for busy in got.get("busy", [])]
        tally.check(f"{local} in {zone}", found == [starts], (got, starts))


def main():
    program, tally = binary(__doc__), Tally()
    vancouver = dt.datetime(2026, 11, 3, 9, tzinfo=zoneinfo.ZoneInfo("America/Vancouver"))
    tally.check("the zones are of 2026", vancouver.utcoffset() == dt.timedelta(hours=-7), vancouver)
    rules(program, tally)
    calendars(program, tally)
    hours(program, tally)
    written(program, tally)
    tally.end()


if __name__ == "__main__":
    main()
