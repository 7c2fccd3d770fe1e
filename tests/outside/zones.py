"""Compares clock with Python's zoneinfo reading the tzdata package, around every clock change."""

import random
from datetime import datetime, timedelta, timezone
from importlib import resources
from zoneinfo import ZoneInfo, available_timezones, reset_tzpath

from lines import Tally, ask, binary

# The zones of the machine are left aside: only the tzdata package is read.
reset_tzpath(to=())

ZONES = ["America/New_York", "America/Chicago", "America/Denver", "America/Los_Angeles",
         "America/Phoenix", "America/St_Johns", "America/Sao_Paulo", "America/Santiago",
         "Europe/London", "Europe/Lisbon", "Europe/Berlin", "Europe/Athens", "Europe/Istanbul",
         "Africa/Casablanca", "Africa/Cairo", "Asia/Kathmandu", "Asia/Tokyo", "Asia/Tehran",
         "Australia/Sydney", "Australia/Lord_Howe", "Pacific/Auckland", "Pacific/Apia", "UTC"]


def instant(local, zone, fold):
    """The instant Python gives a civil time."""
    return local.replace(tzinfo=zone, fold=fold).astimezone(timezone.utc)


def told(local, zone):
    """What Python says of a civil time, in the shape of clock's answer."""
    first, second = instant(local, zone, 0), instant(local, zone, 1)
    if first == second:
        return {"kind": "once", "at": first}
    if first < second:
        return {"kind": "twice", "first": first, "second": second}
    # In a gap the two folds lie on either side of the change; look for its second.
    low, high = second, first
    start = low.astimezone(zone).utcoffset()
    while high - low > timedelta(seconds=1):
        middle = low + timedelta(seconds=int((high - low).total_seconds()) // 2)
        if middle.astimezone(zone).utcoffset() == start:
            low = middle
        else:
            high = middle
    return {"kind": "gap", "next": high}


def changes(zone, years):
    """The instants at which the offset of a zone changes, to the second."""
    at = datetime(years.start, 1, 1, tzinfo=timezone.utc)
    end = datetime(years.stop, 1, 1, tzinfo=timezone.utc)
    step = timedelta(days=1)
    while at < end:
        if at.astimezone(zone).utcoffset() != (at + step).astimezone(zone).utcoffset():
            low, high = at, at + step
            while high - low > timedelta(seconds=1):
                middle = low + timedelta(seconds=int((high - low).total_seconds()) // 2)
                if middle.astimezone(zone).utcoffset() == at.astimezone(zone).utcoffset():
                    low = middle
                else:
                    high = middle
            yield high
        at += step


def cases(random_):
    """Civil times before, in and after each change, and ordinary ones between."""
    for name in ZONES:
        zone = ZoneInfo(name)
        for change in changes(zone, range(2010, 2012)):
            yield from around(change, zone, name)
        for change in changes(zone, range(2024, 2031)):
            yield from around(change, zone, name)
        for _ in range(20):
            minutes = random_.randint(0, 60 * 24 * 365 * 60)
            yield datetime(1975, 1, 1) + timedelta(minutes=minutes), name


def around(change, zone, name):
    for side in (change - timedelta(seconds=1), change):
        local = side.astimezone(zone).replace(tzinfo=None, second=0, microsecond=0)
        for minutes in (-61, -60, -31, -30, -1, 0, 1, 29, 30, 31, 59, 60, 61):
            yield local + timedelta(minutes=minutes), name


def compare(program, tally, pairs):
    inputs = [{"local": local.strftime("%Y-%m-%dT%H:%M"), "zone": name} for local, name in pairs]
    kinds = {}
    for (local, name), got in zip(pairs, ask(program, "clock", inputs)):
        zone = ZoneInfo(name)
        want = told(local, zone)
        kinds[want["kind"]] = kinds.get(want["kind"], 0) + 1
        agrees = got.keys() == want.keys() and got["kind"] == want["kind"]
        for part in want.keys() - {"kind"}:
            text = got.get(part, "")
            agrees = agrees and "[" not in text and not text.endswith("Z") and (
                datetime.fromisoformat(text) == want[part]
                and datetime.fromisoformat(text).utcoffset()
                == want[part].astimezone(zone).utcoffset())
        tally.check(f"{name} {local}", agrees, f"{got} where {want} is expected")
    for kind in ("once", "twice", "gap"):
        tally.check(f"cases of kind {kind}", kinds.get(kind, 0) >= 50, kinds)


def known(program, tally):
    """Days set by law: 15 U.S.C. 260a for the United States; Directive 2000/84/EC for the European
    Union, whose hours the United Kingdom keeps (from memory)."""
    cases_ = [
        ("2026-03-08T02:30", "America/New_York",
         {"kind": "gap", "next": "2026-03-08T03:00:00-04:00"}),
        ("2026-11-01T01:30", "America/New_York",
         {"kind": "twice", "first": "2026-11-01T01:30:00-04:00",
          "second": "2026-11-01T01:30:00-05:00"}),
        ("2026-03-29T01:00", "Europe/London",
         {"kind": "gap", "next": "2026-03-29T02:00:00+01:00"}),
        ("2026-10-25T02:00", "Europe/Paris",
         {"kind": "twice", "first": "2026-10-25T02:00:00+02:00",
          "second": "2026-10-25T02:00:00+01:00"}),
    ]
    inputs = [{"local": local, "zone": zone} for local, zone, _ in cases_]
    for (local, zone, want), got in zip(cases_, ask(program, "clock", inputs)):
        tally.check(f"{zone} {local}", got == want, f"{got} where {want} is expected")


def every_zone(program, tally):
    """The program knows each zone of the tzdata package, a time after 2038 included."""
    names = sorted(available_timezones() - {"Factory", "localtime", "posixrules"})
    inputs = [{"local": "2045-07-01T12:00", "zone": name} for name in names]
    for name, got in zip(names, ask(program, "clock", inputs)):
        want = instant(datetime(2045, 7, 1, 12), ZoneInfo(name), 0)
        agrees = got.get("kind") == "once" and datetime.fromisoformat(got["at"]) == want
        tally.check(f"{name} in 2045", agrees, f"{got} where {want} is expected")


def main():
    program = binary(__doc__)
    tally = Tally()
    version = resources.files("tzdata").joinpath("zones").is_file()
    tally.check("the tzdata package is installed", version)
    compare(program, tally, list(cases(random.Random(260))))
    known(program, tally)
    every_zone(program, tally)
    tally.end()


if __name__ == "__main__":
    main()
