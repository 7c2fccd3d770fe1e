"""Compares rules that repeat with python-dateutil, and with what RFC 5545 prints; called by ical.py."""

import datetime as dt
import random

from dateutil import rrule

from ical_times import DAYS, compact, some_time
from lines import ask

# The examples of RFC 5545 §3.8.5.3 with their DTSTART (09:00), in its order.
RFC = [
    ("19970902", "FREQ=DAILY;COUNT=10"),
    ("19970902", "FREQ=DAILY;UNTIL=19971224T000000Z"),
    ("19970902", "FREQ=DAILY;INTERVAL=2"),
    ("19970902", "FREQ=DAILY;INTERVAL=10;COUNT=5"),
    ("19980101", "FREQ=YEARLY;UNTIL=20000131T140000Z;BYMONTH=1;BYDAY=SU,MO,TU,WE,TH,FR,SA"),
    ("19980101", "FREQ=DAILY;UNTIL=20000131T140000Z;BYMONTH=1"),
    ("19970902", "FREQ=WEEKLY;COUNT=10"),
    ("19970902", "FREQ=WEEKLY;UNTIL=19971224T000000Z"),
    ("19970902", "FREQ=WEEKLY;INTERVAL=2;WKST=SU"),
    ("19970902", "FREQ=WEEKLY;UNTIL=19971007T000000Z;WKST=SU;BYDAY=TU,TH"),
    ("19970902", "FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH"),
    ("19970901", "FREQ=WEEKLY;INTERVAL=2;UNTIL=19971224T000000Z;WKST=SU;BYDAY=MO,WE,FR"),
    ("19970902", "FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH"),
    ("19970905", "FREQ=MONTHLY;COUNT=10;BYDAY=1FR"),
    ("19970905", "FREQ=MONTHLY;UNTIL=19971224T000000Z;BYDAY=1FR"),
    ("19970907", "FREQ=MONTHLY;INTERVAL=2;COUNT=10;BYDAY=1SU,-1SU"),
    ("19970922", "FREQ=MONTHLY;COUNT=6;BYDAY=-2MO"),
    ("19970928", "FREQ=MONTHLY;BYMONTHDAY=-3"),
    ("19970902", "FREQ=MONTHLY;COUNT=10;BYMONTHDAY=2,15"),
    ("19970930", "FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1"),
    ("19970910", "FREQ=MONTHLY;INTERVAL=18;COUNT=10;BYMONTHDAY=10,11,12,13,14,15"),
    ("19970902", "FREQ=MONTHLY;INTERVAL=2;BYDAY=TU"),
    ("19970610", "FREQ=YEARLY;COUNT=10;BYMONTH=6,7"),
    ("19970310", "FREQ=YEARLY;INTERVAL=2;COUNT=10;BYMONTH=1,2,3"),
    ("19970101", "FREQ=YEARLY;INTERVAL=3;COUNT=10;BYYEARDAY=1,100,200"),
    ("19970519", "FREQ=YEARLY;BYDAY=20MO"),
    ("19970512", "FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO"),
    ("19970313", "FREQ=YEARLY;BYMONTH=3;BYDAY=TH"),
    ("19970605", "FREQ=YEARLY;BYDAY=TH;BYMONTH=6,7,8"),
    ("19970902", "FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13"),
    ("19970913", "FREQ=MONTHLY;BYDAY=SA;BYMONTHDAY=7,8,9,10,11,12,13"),
    ("19961105", "FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;BYMONTHDAY=2,3,4,5,6,7,8"),
    ("19970904", "FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3"),
    ("19970929", "FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2"),
    ("19970902", "FREQ=HOURLY;INTERVAL=3;UNTIL=19970902T170000Z"),
    ("19970902", "FREQ=MINUTELY;INTERVAL=15;COUNT=6"),
    ("19970902", "FREQ=MINUTELY;INTERVAL=90;COUNT=4"),
    ("19970902", "FREQ=DAILY;BYHOUR=9,10,11,12,13,14,15,16;BYMINUTE=0,20,40"),
    ("19970902", "FREQ=MINUTELY;INTERVAL=20;BYHOUR=9,10,11,12,13,14,15,16"),
    ("19970805", "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO"),
    ("19970805", "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU"),
    ("20070115", "FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5"),
]

# The dates the RFC prints below some of them, so that two readers cannot be wrong together.
PRINTED = {
    "FREQ=MONTHLY;COUNT=6;BYDAY=-2MO":
        "1997-09-22 1997-10-20 1997-11-17 1997-12-22 1998-01-19 1998-02-16",
    "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO":
        "1997-08-05 1997-08-10 1997-08-19 1997-08-24",
    "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU":
        "1997-08-05 1997-08-17 1997-08-19 1997-08-31",
    "FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5":
        "2007-01-15 2007-01-30 2007-02-15 2007-03-15 2007-03-30",
    "FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;BYMONTHDAY=2,3,4,5,6,7,8":
        "1996-11-05 2000-11-07 2004-11-02",
}


def theirs(rule, starts, first, last):
    """python-dateutil's times in those days, and the start, which always counts as one."""
    zoned = rule.replace("Z", "")
    begin = dt.datetime.combine(first, dt.time())
    end = dt.datetime.combine(last, dt.time(23, 59, 59))
    try:
        found = set(rrule.rrulestr(zoned, dtstart=starts).between(begin, end, inc=True))
    except ValueError as empty:
        # Its word for a rule that can never hold, such as every 4th hour from 1 o'clock at 2 o'clock.
        assert "empty set" in str(empty), empty
        found = set()
    if begin <= starts <= end:
        found.add(starts)
    return [at.isoformat() for at in sorted(found)]


def random_rule(r):
    """A rule that RFC 5545 allows, without what python-dateutil reads otherwise than the RFC has it:
    BYWEEKNO without BYDAY is every day of the week there, and of BYDAY=MO,1TU only what is both."""
    freq = r.choice(["YEARLY", "MONTHLY", "WEEKLY", "WEEKLY", "DAILY", "DAILY", "HOURLY", "MINUTELY"])
    parts = [f"FREQ={freq}"]
    if r.random() < 0.6:
        every = [15, 45, 90, 135] if freq == "MINUTELY" else [1, 2, 3, 4, 5, 13]
        parts.append(f"INTERVAL={r.choice(every)}")
    elif freq == "MINUTELY":
        parts.append("INTERVAL=30")
    some = lambda pool, most: ",".join(str(x) for x in sorted(r.sample(pool, r.randint(1, most)), key=str))
    if r.random() < 0.3:
        parts.append("BYMONTH=" + some(range(1, 13), 4))
    if freq != "WEEKLY" and r.random() < 0.3:
        parts.append("BYMONTHDAY=" + some([n for n in range(-31, 32) if n], 5))
    weeks = freq == "YEARLY" and r.random() < 0.3
    if weeks:
        parts.append("BYWEEKNO=" + some([n for n in range(-53, 54) if n], 4))
    if weeks or r.random() < 0.5:
        numbers = [""]
        if freq == "MONTHLY":
            numbers = r.choice([[""], ["1", "2", "-1", "5", "-2"]])
        elif freq == "YEARLY" and not weeks:
            numbers = r.choice([[""], ["1", "-1"] if "BYMONTH=" in ";".join(parts) else ["1", "-1", "20"]])
        parts.append("BYDAY=" + ",".join(r.choice(numbers) + day for day in r.sample(DAYS, r.randint(1, 4))))
    if freq == "YEARLY" and not weeks and r.random() < 0.2:
        parts.append("BYYEARDAY=" + some([n for n in range(-366, 367) if n], 6))
    if freq in ("DAILY", "WEEKLY", "HOURLY", "MINUTELY") and r.random() < 0.3:
        parts.append("BYHOUR=" + some(range(24), 3))
    if freq != "MINUTELY" and r.random() < 0.2:
        parts.append("BYMINUTE=" + some(range(60), 2))
    if len(parts) > 2 and "BY" in parts[-1] and r.random() < 0.3:
        # One that can always be met; the other reader looks for others until the year 9999.
        parts.append("BYSETPOS=" + some([1, 2, 3, -1, -2] if freq in ("YEARLY", "MONTHLY") else [1, -1], 2))
    end = r.random()
    if end < 0.3:
        parts.append(f"COUNT={r.randint(1, 60)}")
    elif end < 0.5:
        parts.append(f"UNTIL={compact(some_time(r, (2024, 2027), (0, 23), [0]))}")
    if r.random() < 0.3:
        parts.append("WKST=" + r.choice(DAYS))
    return ";".join(parts)


def rules(program, tally):
    cases = []
    for day, rule in RFC:
        starts = dt.datetime.strptime(day, "%Y%m%d").replace(hour=9)
        days = 40 if "MINUTELY" in rule or "BYHOUR" in rule else 2930
        cases.append((rule, starts, starts.date(), starts.date() + dt.timedelta(days=days)))
    r = random.Random(5545)
    for _ in range(400):
        rule = random_rule(r)
        starts = some_time(r, (2019, 2025), (0, 23))
        first = dt.date(r.randint(2019, 2026), r.randint(1, 12), r.randint(1, 28))
        if "HOURLY" in rule or "MINUTELY" in rule:
            # The other reader counts through every minute.
            first = starts.date() + dt.timedelta(days=r.randint(-3, 60))
        cases.append((rule, starts, first, first + dt.timedelta(days=r.choice([0, 6, 30, 90]))))
    inputs = [
        {"rule": rule, "starts": starts.isoformat(), "except": [], "first": str(first), "last": str(last)}
        for rule, starts, first, last in cases
    ]
    held = 0
    for (rule, starts, first, last), got in zip(cases, ask(program, "ical_recur", inputs)):
        want = theirs(rule, starts, first, last)
        held += len(want)
        differ = f"{str(got)[:300]} where {want[:6]} is expected"
        tally.check(f"{rule} from {starts}", got.get("times") == want, differ)
        if rule in PRINTED:
            dates = [time[:10] for time in got.get("times", [])]
            count = len(PRINTED[rule].split())
            tally.check(f"{rule} as printed", dates[:count] == PRINTED[rule].split(), dates)
    tally.check("the rules hold enough times to differ in", held > 3000, held)
    one = {"except": [], "starts": "2020-01-01T00:00:00", "first": "2026-01-01", "last": "2026-12-31"}
    bad = ["", "FREQ=NEVER", "FREQ=DAILY;INTERVAL=0", "FREQ=DAILY;COUNT=x", "FREQ=WEEKLY;BYDAY=1MO",
           "FREQ=WEEKLY;BYMONTHDAY=1", "FREQ=DAILY;BYHOUR=24", "FREQ=SECONDLY", "FREQ=DAILY;FREQ=DAILY",
           "FREQ=SECONDLY;COUNT=4000000000", "RSCALE=CHINESE;FREQ=YEARLY"]
    for rule, got in zip(bad, ask(program, "ical_recur", [{**one, "rule": rule} for rule in bad])):
        tally.check(f"“{rule}” is refused", "error" in got, str(got)[:200])
