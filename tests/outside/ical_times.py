"""What the checks of calendars share: times, and zones from the package tzdata alone."""

import datetime as dt
import zoneinfo

# Only the package tzdata, never the machine's own, older zones.
zoneinfo.reset_tzpath(())
zoneinfo.ZoneInfo.clear_cache()

ZONES = [
    "America/New_York", "America/Phoenix", "America/Vancouver", "America/Sao_Paulo", "Europe/Berlin",
    "Europe/London", "Europe/Dublin", "Africa/Casablanca", "Asia/Kolkata", "Asia/Tokyo",
    "Australia/Lord_Howe", "Pacific/Auckland", "UTC",
]
DAYS = ["MO", "TU", "WE", "TH", "FR", "SA", "SU"]


def utc(local, zone):
    return local.replace(tzinfo=zoneinfo.ZoneInfo(zone)).astimezone(dt.timezone.utc)


def some_time(r, years, hours, minutes=(0, 15, 30)):
    day = (r.randint(*years), r.randint(1, 12), r.randint(1, 28))
    return dt.datetime(*day, r.randint(*hours), r.choice(minutes))


def stamp(at):
    return at.strftime("%Y-%m-%dT%H:%M:%SZ")


def compact(at):
    return at.strftime("%Y%m%dT%H%M%S")
