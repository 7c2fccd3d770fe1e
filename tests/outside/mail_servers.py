"""Mail servers on loopback that the program is driven against: one that takes everything, with the ways in which
servers refuse (by the recipient's name, or by a plan of faults), and servers whose certificates are wrong.

As a program of its own it runs until its standard input closes, and prints where everything is as one line of JSON:
the browser's and the window's stories use it so.
"""

import asyncio
import contextlib
import datetime
import email
import json
import logging
import pathlib
import socket
import ssl
import sys
import tempfile
import threading
import warnings

import trustme
from aiosmtpd.controller import Controller
from aiosmtpd.smtp import SMTP, AuthResult, LoginPassword

# The library warns of servers that ask for a sign-in without asking for TLS: here that is what is checked.
logging.getLogger("mail.log").setLevel(logging.CRITICAL)
warnings.filterwarnings("ignore", module="aiosmtpd")

USER, PASSWORD = "robin@hale.example", "pass wörd"

# What a recipient's name makes the server say, at which step. From the table of replies of RFC 5321 (4.2.3) and the
# enhanced codes of RFC 3463.
AT_RECIPIENT = {
    "nouser": "550 5.1.1 no such user",
    "moved": "551 5.1.6 has moved",
    "grey": "451 4.7.1 greylisted, try later",
    "quota": "452 4.2.2 mailbox full",
    "full": "552 5.2.2 mailbox full",
    "relay": "554 5.7.1 relay access denied",
}
AFTER_DATA = {
    "policy": "554 5.7.1 rejected by policy",
    "large": "552 5.3.4 message too big",
    "busy": "450 4.3.2 system not accepting messages",
    "closing": "421 4.3.2 closing down",
}


class Server(SMTP):
    """A server that does what its plan says next, where there is one."""

    def event_fault(self, stage):
        return self.event_handler.fault(self, stage)

    async def smtp_MAIL(self, arg):
        if self.event_fault("mail"):
            return
        await super().smtp_MAIL(arg)

    async def smtp_RCPT(self, arg):
        if self.event_fault("rcpt"):
            return
        await super().smtp_RCPT(arg)

    async def smtp_DATA(self, arg):
        if self.event_fault("data"):
            return
        await super().smtp_DATA(arg)

    async def smtp_AUTH(self, arg):
        if self.event_fault("auth"):
            return
        await super().smtp_AUTH(arg)


class Mailbox:
    """Keeps every message it took, and what it was told to do wrong."""

    def __init__(self, folder):
        self.folder = folder
        self.taken = []
        self.plan = None
        self.lock = threading.Lock()

    def fault(self, server, stage):
        """Drops the connection at a stage, once, where the plan says so."""
        with self.lock:
            if self.plan != stage:
                return False
            self.plan = None
        server.transport.abort()
        return True

    async def handle_RCPT(self, server, session, envelope, address, options):
        said = AT_RECIPIENT.get(address.split("@")[0])
        if said:
            return said
        envelope.rcpt_tos.append(address)
        return "250 2.1.5 OK"

    async def handle_DATA(self, server, session, envelope):
        who = envelope.rcpt_tos[0].split("@")[0]
        if who in AFTER_DATA:
            return AFTER_DATA[who]
        with self.lock:
            plan = self.plan
            if plan in ("lose", "keep", "later", "hang"):
                self.plan = None
        if plan == "lose":
            server.transport.abort()
            return "250 never heard"
        if plan == "hang":
            await asyncio.sleep(20)
        if plan == "later":
            return "451 4.3.0 try again later"
        self.take(envelope)
        if plan == "keep" or who == "drop":
            # Taken, and the answer is lost on its way.
            server.transport.abort()
        return "250 2.0.0 queued"

    def take(self, envelope):
        bytes_ = envelope.original_content
        with self.lock:
            number = len(self.taken)
            mail_id = email.message_from_bytes(bytes_)["Message-ID"]
            self.taken.append((mail_id, envelope.rcpt_tos[0], envelope.mail_from))
            (self.folder / f"{number:04}.eml").write_bytes(bytes_)

    async def handle_exception(self, error):
        # A connection that is gone is what the check is about.
        return "451 4.3.0 gone"


def signs_in(server, session, envelope, mechanism, given):
    ok = (
        isinstance(given, LoginPassword)
        and given.login == USER.encode()
        and given.password == PASSWORD.encode()
    )
    return AuthResult(success=ok, handled=False)


class Door(Controller):
    def factory(self):
        return Server(self.handler, **self.SMTP_kwargs)


def context(certificate):
    tls = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    certificate.configure_cert(tls)
    return tls


@contextlib.contextmanager
def servers(folder):
    """All servers; gives their ports by name, the mailbox and the file of the authority."""
    folder = pathlib.Path(folder)
    folder.mkdir(parents=True, exist_ok=True)
    authority, stranger = trustme.CA(), trustme.CA()
    good = authority.issue_cert("127.0.0.1", "localhost")
    wrong = authority.issue_cert("other.example.org")
    past = datetime.datetime.now(datetime.timezone.utc) - datetime.timedelta(days=2)
    expired = authority.issue_cert("127.0.0.1", not_before=past - datetime.timedelta(days=9), not_after=past)
    unknown = stranger.issue_cert("127.0.0.1")
    trusted = folder / "authority.pem"
    authority.cert_pem.write_to_path(str(trusted))
    box = Mailbox(folder)
    asks = dict(authenticator=signs_in, auth_required=True)
    # The library does not see TLS from the first byte as TLS where it asks for it before a sign-in.
    first = dict(auth_require_tls=False, **asks)
    kinds = {
        "tls": dict(ssl_context=context(good), **first),
        "start_tls": dict(tls_context=context(good), require_starttls=True, **asks),
        "wrong_name": dict(ssl_context=context(wrong), **first),
        "expired": dict(ssl_context=context(expired), **first),
        "unknown": dict(ssl_context=context(unknown), **first),
        "start_tls_wrong_name": dict(tls_context=context(wrong), require_starttls=True, **asks),
        "open": dict(auth_require_tls=False, **asks),
    }
    started, ports = [], {}
    try:
        for name, options in kinds.items():
            door = Door(box, hostname="127.0.0.1", port=0, data_size_limit=50_000_000, **options)
            # Port 0 lets the system choose; the library asks the port it was given whether it answers.
            door.port = free_port()
            door.start()
            started.append(door)
            ports[name] = door.port
        yield ports, box, trusted
    finally:
        for door in started:
            door.stop()


def free_port():
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return one.getsockname()[1]


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as place, servers(place) as (ports, box, trusted):
        where = {"ports": ports, "trusted": str(trusted), "folder": place, "user": USER, "password": PASSWORD}
        print(json.dumps(where), flush=True)
        # A line names the next fault; the end of input ends it.
        for line in sys.stdin:
            box.plan = line.strip() or None
