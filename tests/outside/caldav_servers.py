"""Starts the calendar servers that caldav.py drives the program against, and what stands between."""

import base64
import contextlib
import http.client
import json
import os
import pathlib
import socket
import subprocess
import sys
import threading
import time

import trustme

USER, PASSWORD = "ana", "pä:ss <wörd>"


def free_port():
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return one.getsockname()[1]


@contextlib.contextmanager
def running(command, port, log):
    """A process that is over when the block is; it counts as started once the port accepts."""
    with open(log, "wb") as out:
        process = subprocess.Popen(command, stdout=out, stderr=out, stdin=subprocess.DEVNULL)
    try:
        until = time.monotonic() + 30
        while True:
            if process.poll() is not None or time.monotonic() > until:
                sys.exit(f"{command} did not start:\n{pathlib.Path(log).read_text()}")
            with contextlib.suppress(OSError), socket.create_connection(("127.0.0.1", port), 1):
                break
            time.sleep(0.05)
        yield
    finally:
        process.terminate()
        try:
            process.wait(10)
        except subprocess.TimeoutExpired:
            process.kill()
            process.wait()


@contextlib.contextmanager
def radicale(folder, certificate=None):
    folder.mkdir()
    users = folder / "users"
    users.write_text(f"{USER}:{PASSWORD}\n", encoding="utf-8")
    port = free_port()
    options = {
        "server-hosts": f"127.0.0.1:{port}", "auth-type": "htpasswd", "auth-htpasswd-filename": users,
        "auth-htpasswd-encryption": "plain", "auth-delay": 0, "rights-type": "owner_only",
        "storage-filesystem-folder": folder / "collections",
    }
    if certificate:
        options |= {"server-ssl": "True", "server-certificate": certificate, "server-key": certificate}
    command = [sys.executable, "-m", "radicale", "--config", ""]
    command += [f"--{name}={value}" for name, value in options.items()]
    with running(command, port, folder / "log"):
        yield port


@contextlib.contextmanager
def xandikos(folder):
    folder.mkdir()
    port = free_port()
    command = [
        sys.executable, "-m", "xandikos", "serve", "--directory", str(folder / "calendars"), "--autocreate",
        "--defaults", "--current-user-principal", f"/{USER}/", "--listen-address", "127.0.0.1",
        "--port", str(port),
    ]
    with running(command, port, folder / "log"):
        yield port


def certificate(folder):
    """A certificate for 127.0.0.1 with its key, and the authority that signed it; two files."""
    authority = trustme.CA()
    chain, root = folder / "server.pem", folder / "authority.pem"
    authority.issue_cert("127.0.0.1").private_key_and_cert_chain_pem.write_to_path(str(chain))
    authority.cert_pem.write_to_path(str(root))
    return chain, root


class Door:
    """The program, one line in, one line out."""

    def __init__(self, program, **environment):
        self.process = subprocess.Popen(
            [program], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, encoding="utf-8",
            env=os.environ | environment,
        )

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.process.stdin.close()
        try:
            self.process.wait(10)
        except subprocess.TimeoutExpired:
            self.process.kill()
            self.process.wait()
        self.process.stdout.close()

    def ask(self, address, act, user=USER, password=PASSWORD, **more):
        line = {"act": act, "address": address, "user": user, "password": password, **more}
        self.process.stdin.write(json.dumps(line) + "\n")
        self.process.stdin.flush()
        answer = self.process.stdout.readline()
        if not answer:
            sys.exit(f"the door ended at {line}")
        return json.loads(answer)


def request(port, method, path, body=None, **headers):
    """Another client of the same server, by Python's own HTTP."""
    signed = base64.b64encode(f"{USER}:{PASSWORD}".encode()).decode()
    headers = {name.replace("_", "-"): value for name, value in headers.items()}
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=20)
    try:
        connection.request(
            method, path, body and body.encode(), headers | {"Authorization": f"Basic {signed}"})
        answer = connection.getresponse()
        return answer.status, answer.read().decode()
    finally:
        connection.close()


class Cutting:
    """Stands between, and cuts the next answers after so many bytes; all of them are heard."""

    def __init__(self, port):
        self.port, self.after = port, None
        self.listener = socket.create_server(("127.0.0.1", 0))
        self.at = self.listener.getsockname()[1]
        threading.Thread(target=self.accept, daemon=True).start()

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.listener.close()

    def accept(self):
        while True:
            try:
                one, _ = self.listener.accept()
            except OSError:
                return
            threading.Thread(target=self.carry, args=(one,), daemon=True).start()

    def carry(self, one):
        with one, socket.create_connection(("127.0.0.1", self.port)) as server:
            back = threading.Thread(target=self.answers, args=(server, one), daemon=True)
            back.start()
            self.copy(one, server)
            back.join()

    def answers(self, server, one):
        passed = 0
        with contextlib.suppress(OSError):
            while piece := server.recv(65536):
                if self.after is not None and passed + len(piece) > self.after:
                    one.sendall(piece[: self.after - passed])
                    break
                one.sendall(piece)
                passed += len(piece)
        with contextlib.suppress(OSError):
            one.shutdown(socket.SHUT_RDWR)

    @staticmethod
    def copy(here, there):
        with contextlib.suppress(OSError):
            while piece := here.recv(65536):
                there.sendall(piece)
        with contextlib.suppress(OSError):
            there.shutdown(socket.SHUT_WR)
