"""Hands messages over through the program's own desk (the example mail_door) to real servers on loopback
(aiosmtpd), with certificates of an authority made for the purpose (trustme):

1. Each way in which a server refuses, and each certificate that is wrong, is told as what it is. The replies are
   those of RFC 5321 (4.2.3) with the enhanced codes of RFC 3463; nothing reaches a server that is not to be trusted.
2. Every message that arrived is read by Python's email package: names, addresses and file names of all scripts,
   plain text and HTML that say the same, attachments byte for byte, no header of the machine's. Invitations are read
   by icalendar and vobject, and the method in the part's type is the one in the calendar object (RFC 6047, 2.4).
3. Faults: the connection is cut at each stage, the answer is lost, the program is killed at any moment. Counted at
   the server: no message is there twice, and none is gone: each is there, or stands in the tray as not sent or unsure.
4. Two hundred letters with an attachment each: how many a second.
"""

import base64
import email
import email.policy
import json
import os
import random
import sqlite3
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import icalendar
import vobject

from lines import Tally
from mail_servers import PASSWORD, USER, free_port, servers

if len(sys.argv) < 3:
    sys.exit(__doc__ + "\nmail.py DOOR PROGRAM [FAULTS]")
DOOR, PROGRAM = sys.argv[1], sys.argv[2]
FAULTS = int(sys.argv[3]) if len(sys.argv) > 3 else 300
TALLY = Tally()


def check(agrees, what):
    TALLY.check(what, agrees)


class Coach:
    """A coach file and a coach at it."""

    def __init__(self, folder, name):
        self.file = str(Path(folder) / f"{name}.carryover")
        subprocess.run([PROGRAM, "sample", self.file, "--years", "1", "--students", "0"], check=True,
                       capture_output=True)
        me = {"name": "Robin Hale", "email": USER, "closing": "See you on court,"}
        self.call("settings.change", me)
        self.call("outtray.set_rules", {"quiet": False})

    def ask(self, name, given=None):
        done = subprocess.run([PROGRAM, "--file", self.file, "call", name], input=json.dumps(given or {}),
                              capture_output=True, text=True, timeout=60, check=False)
        return done.returncode == 0, json.loads(done.stdout)

    def call(self, name, given=None):
        fine, said = self.ask(name, given)
        if not fine:
            raise SystemExit(f"{name} {given}: {said}")
        return said["value"]

    def account(self, port, how="tls"):
        given = {"host": "127.0.0.1", "port": port, "encryption": how}
        self.call("outtray.set_account", given)

    def student(self, name, address, **more):
        return self.call("students.add", {"name": name, "email": address, **more})["id"]

    def word(self, student, words="Dear all,\n\nsee you.", subject="About Tuesday"):
        put = self.call("outtray.put", {"of": {"kind": "words", "student": student}})["messages"][0]
        self.call("outtray.edit", {"message": put, "subject": subject, "words": words})
        return put

    def release(self, *messages):
        self.call("outtray.release", {"messages": list(messages)})

    def send(self, trusted, password=PASSWORD, kill=None):
        """Hands over; with `kill`, the program is killed after so many seconds."""
        told = {**os.environ, "MAIL_PASSWORD": password, "SSL_CERT_FILE": str(trusted)}
        run = subprocess.Popen([DOOR, self.file], env=told, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        try:
            out, wrong = run.communicate(timeout=60 if kill is None else kill)
        except subprocess.TimeoutExpired:
            run.kill()
            run.communicate()
            return None
        if run.returncode != 0:
            raise SystemExit(f"the door: {wrong.decode()}")
        return json.loads(out)

    def state(self, message):
        return self.call("outtray.show", {"message": message})

    def rows(self):
        """All messages as the file has them; nobody has it open now."""
        with sqlite3.connect(self.file) as db:
            return dict(db.execute("SELECT mail_id, state FROM message").fetchall())


def refusals(folder, ports, box, trusted):
    coach = Coach(folder, "refusals")
    wanted = {
        "nouser": ("stopped", "no such address"), "moved": ("stopped", "no such address"),
        "grey": ("again", "tried again later"), "quota": ("again", "mailbox is full"),
        "full": ("stopped", "mailbox is full"), "relay": ("stopped", "The mail server"),
        "policy": ("stopped", "does not want the message"), "large": ("stopped", "too large"),
        "busy": ("again", "tried again later"), "closing": ("again", "tried again later"),
        "drop": ("unsure", "may have been sent"), "ana": ("accepted", "took it"),
    }
    for how in ("tls", "start_tls"):
        coach.account(ports[how], how)
        messages = {}
        for who in wanted:
            messages[who] = coach.word(coach.student(f"{who} of {how}", f"{who}@example.org"))
            coach.release(messages[who])
        coach.send(trusted)
        for who, (state, words) in wanted.items():
            shown = coach.state(messages[who])
            fine = shown["state"] == state and words in shown["stands"]
            check(fine, f"{how} {who}: {shown['state']} {shown['stands']}")
        for who in ("grey", "quota", "busy", "closing"):
            coach.call("outtray.withdraw", {"message": messages[who]})
    untrusted = {
        "wrong_name": "cannot prove that it is the one", "expired": "cannot prove that it is the one",
        "unknown": "cannot prove that it is the one", "start_tls_wrong_name": "cannot prove that it is the one",
        "open": "offers no encryption",
    }
    before = len(box.taken)
    message = coach.word(coach.student("Bo", "bo@example.org"))
    coach.release(message)
    for name, words in untrusted.items():
        ways = ["start_tls"] if name in ("start_tls_wrong_name",) else ["tls"]
        if name == "open":
            ways = ["start_tls", "tls"]
        for how in ways:
            coach.account(ports[name], how)
            said = coach.send(trusted)
            check(said["stage"] == "failed" and words in said["trouble"], f"{name} {how}: {said}")
            check(coach.state(message)["state"] == "waiting", f"{name}: it waits")
    coach.account(ports["tls"])
    said = coach.send(trusted, password="wrong")
    check(said["password"] and "name and password" in said["trouble"], f"a wrong password: {said}")
    check(len(box.taken) == before, "nothing reached a server that is not to be trusted")
    coach.account(free_port())
    said = coach.send(trusted)
    check(said["stage"] == "pausing" and "does not answer" in said["trouble"], f"nobody there: {said}")
    coach.account(ports["tls"])
    coach.call("outtray.again", {"message": message})
    coach.send(trusted)
    check(coach.state(message)["state"] == "accepted", "it goes out once the account is right")


def contents(folder, ports, box, trusted):
    coach = Coach(folder, "contents")
    coach.account(ports["tls"])
    names = ["渡辺 はるか", "Łukasz \"Luke\" Żak", "Ana, of <Porto>", "O'Neil; Seán", "משה כהן",
             "A very long name " * 4 + "end"]
    words = "Dear you,\n\n<b>not bold</b> & “quotes” – 渡辺.\n\n.\nA line with one dot above.\n" + "long " * 300
    for at, name in enumerate(names):
        student = coach.student(name, f"who{at}@example.org")
        message = coach.word(student, words, f"Über {name}")
        data = bytes(range(256)) * 40
        file = f"Rechnung 2026-{at} – {name}.bin"
        given = {"message": message, "name": file, "base64": base64.b64encode(data).decode()}
        coach.call("outtray.attach", given)
        coach.release(message)
        looked = coach.call("outtray.look", {"message": message})["look"]
        before = len(box.taken)
        coach.send(trusted)
        check(len(box.taken) == before + 1, f"{name}: it is there")
        raw = (box.folder / f"{before:04}.eml").read_bytes()
        mail = email.message_from_bytes(raw, policy=email.policy.default)
        name = " ".join(name.split())
        to = mail["To"].addresses[0]
        check((to.display_name, to.addr_spec) == (name, f"who{at}@example.org"), f"{name}: {mail['To']}")
        check(mail["From"].addresses[0].addr_spec == USER, f"{name}: from")
        check(mail["Subject"] == f"Über {name}", f"{name}: {mail['Subject']}")
        check(not mail.defects and all(not part.defects for part in mail.walk()), f"{name}: {mail.defects}")
        allowed = {"message-id", "date", "from", "to", "subject", "content-language", "mime-version", "content-type"}
        check({key.lower() for key in mail.keys()} <= allowed, f"{name}: {mail.keys()}")
        domain = USER.split("@")[1]
        check(mail["Message-ID"].endswith(f"@{domain}>"), "the id names no machine")
        plain = mail.get_body(("plain",)).get_content().replace("\r\n", "\n").rstrip("\n")
        check(plain == words.strip(), f"{name}: the plain text is what was written")
        check(looked["text"].rstrip("\n") == plain, f"{name}: what the coach saw is what arrived")
        html = mail.get_body(("html",)).get_content()
        check("&lt;b&gt;not bold&lt;/b&gt; &amp;" in html and "<b>" not in html, f"{name}: HTML")
        [part] = list(mail.iter_attachments())
        check(part.get_content() == data, f"{name}: the attachment byte for byte")
        check(part.get_filename().startswith(f"Rechnung 2026-{at} – ".strip()), f"{part.get_filename()}")
        check(max(len(line) for line in raw.split(b"\r\n")) <= 998, "no line is too long (RFC 5322, 2.1.1)")
        check(raw.isascii(), "seven bits only, which every server takes")
    invitation(coach, box, trusted)


def invitation(coach, box, trusted):
    hall = coach.call("facilities.add", {"name": "Hall, of Ångström", "zone": "Europe/Dublin"})["id"]
    student = coach.student("Ana \"A\" Silva", "ana@example.org", zone="Asia/Tokyo", language="de")
    today = coach.call("outtray.follow_ups") and time.strftime("%Y-%m-%d", time.localtime(time.time() + 9 * 86400))
    visit = coach.call("visits.plan", {"student": student, "facility": hall, "first_day": today, "last_day": today})
    lesson = {"visits": [visit["id"]], "facility": hall, "day": today, "starts": "09:00", "minutes": 60}
    lesson = coach.call("lessons.plan", lesson)["id"]
    uid = None
    steps = [("REQUEST", None), ("REQUEST", ("lessons.change", {"lesson": lesson, "facility": hall, "day": today,
                                                                  "starts": "11:00", "minutes": 60})),
             ("CANCEL", ("lessons.call_off", {"lesson": lesson, "reason": "Rain"}))]
    for sequence, (method, act) in enumerate(steps):
        if act:
            coach.call(*act)
        put = coach.call("outtray.put", {"of": {"kind": "invitations", "visit": visit["id"]}})
        coach.release(*put["messages"])
        before = len(box.taken)
        coach.send(trusted)
        raw = (box.folder / f"{before:04}.eml").read_bytes()
        mail = email.message_from_bytes(raw, policy=email.policy.default)
        parts = [part for part in mail.walk() if part.get_content_type() == "text/calendar"]
        check(len(parts) == 1, "one calendar object")
        text = parts[0].get_content()
        check(parts[0].get_param("method") == method, f"the part's method: {parts[0]['Content-Type']}")
        calendar = icalendar.Calendar.from_ical(text)
        [event] = calendar.walk("VEVENT")
        check(str(calendar["METHOD"]) == method, "the same in the object")
        check(int(event.get("SEQUENCE", 0)) == sequence, f"SEQUENCE {event.get('SEQUENCE')}")
        uid = uid or str(event["UID"])
        check(str(event["UID"]) == uid, "one UID for the lesson's whole life")
        check(str(event["ORGANIZER"]).lower() == f"mailto:{USER}", "the organizer is the sender")
        check((str(event.get("STATUS")) == "CANCELLED") == (method == "CANCEL"), f"{event.get('STATUS')}")
        other = vobject.readOne(text)
        check(other.vevent.uid.value == uid and other.method.value == method, "another reader agrees")


def faults(folder, ports, box, trusted, count):
    """Messages are released in batches; each batch meets a fault at random, and then goes on without one."""
    coach = Coach(folder, "faults")
    coach.account(ports["tls"])
    dice = random.Random(20260302)
    students = [coach.student(f"Student {at}", f"s{at}@example.org") for at in range(4)]
    before = len(box.taken)
    kinds = ["mail", "rcpt", "data", "auth", "lose", "keep", "later", "kill", "kill", "kill"]
    released, unsure = [], 0
    for number in range(count):
        for student in students[: dice.choice([1, 2])]:
            message = coach.word(student, f"Number {number}")
            coach.release(message)
            released.append(message)
        kind = kinds[number % len(kinds)]
        if kind == "kill":
            box.plan = None
            coach.send(trusted, kill=dice.uniform(0.0, 0.12))
        else:
            box.plan = kind
            coach.send(trusted)
        box.plan = None
        # The coach has what was not taken tried again at once; what is unsure stays so.
        tray = coach.call("outtray.list")
        for line in tray["on_its_way"]["messages"]:
            if line["state"] == "again":
                coach.call("outtray.again", {"message": line["id"]})
        coach.send(trusted)
        tray = coach.call("outtray.list")
        for line in tray["needs"]["messages"]:
            unsure += line["state"] == "unsure"
            # To keep the tray short; it may have been sent, and that is all that is known.
            coach.call("outtray.tell", {"message": line["id"], "how": "phone"})
    there = {}
    for mail_id, _, _ in box.taken[before:]:
        there[mail_id.strip("<>")] = there.get(mail_id.strip("<>"), 0) + 1
    twice = [mail_id for mail_id, many in there.items() if many > 1]
    check(not twice, f"sent twice: {twice}")
    kept = coach.rows()
    check(len(kept) == len(released), "every message is in the file")
    for mail_id, state in kept.items():
        # "told" is what was unsure: it may be there or not. Accepted is there; nothing else is left.
        fine = there.get(mail_id) == 1 if state == "accepted" else state == "told"
        check(fine, f"{mail_id} is {state}, at the server {there.get(mail_id, 0)} times")
    sound = subprocess.run([PROGRAM, "--file", coach.file, "check"], capture_output=True, text=True, check=False)
    check(sound.returncode == 0, f"the file is sound: {sound.stdout}")
    print(f"{count} faults, {len(released)} messages, {len(there)} at the server, {unsure} unsure, {len(twice)} twice")


def speed(folder, ports, box, trusted):
    coach = Coach(folder, "speed")
    coach.account(ports["tls"])
    data = base64.b64encode(random.Random(1).randbytes(60_000)).decode()
    messages = []
    for at in range(200):
        message = coach.word(coach.student(f"Student {at}", f"many{at}@example.org"))
        coach.call("outtray.attach", {"message": message, "name": "letter.pdf", "base64": data})
        messages.append(message)
    coach.release(*messages)
    before, began = len(box.taken), time.monotonic()
    coach.send(trusted)
    took = time.monotonic() - began
    check(len(box.taken) == before + 200, f"{len(box.taken) - before} of 200 arrived")
    print(f"200 letters in {took:.1f} s: {200 / took:.0f} a second")


with tempfile.TemporaryDirectory() as place, servers(Path(place) / "mail") as (at, mailbox, authority):
    refusals(place, at, mailbox, authority)
    contents(place, at, mailbox, authority)
    speed(place, at, mailbox, authority)
    faults(place, at, mailbox, authority, FAULTS)
TALLY.end()
