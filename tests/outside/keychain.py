"""Asks the program for a keychain where there is none: without a session bus, and on one where nobody keeps
secrets. It says so in words and keeps nothing anywhere else.

Asks the example keychain_door of the package carryover-wire.
"""

import json
import os
import pathlib
import subprocess
import tempfile

from lines import Tally, binary

ACTS = [
    {"act": "ready"}, {"act": "keep", "name": "ana", "password": "Geheimnis"}, {"act": "get", "name": "ana"},
    {"act": "forget", "name": "ana"},
]


def asked(command, home):
    """The words for each act, in a home where everything that is written can be seen."""
    environment = {name: value for name, value in os.environ.items() if name != "DBUS_SESSION_BUS_ADDRESS"}
    environment |= {"HOME": home, "XDG_RUNTIME_DIR": home, "XDG_DATA_HOME": home, "XDG_CONFIG_HOME": home}
    # No keychain that happens to be installed may be started by the bus.
    environment |= {"XDG_DATA_DIRS": home}
    lines = "".join(json.dumps(act) + "\n" for act in ACTS)
    done = subprocess.run(
        command, input=lines, capture_output=True, text=True, timeout=60, env=environment, check=True)
    return [json.loads(line).get("words", "") for line in done.stdout.splitlines()]


def main():
    program, tally = binary(__doc__), Tally()
    states = {
        "there is no desktop session": [program],
        "No keychain runs on this desktop": ["dbus-run-session", "--", program],
    }
    for words, command in states.items():
        with tempfile.TemporaryDirectory() as home:
            said = asked(command, home)
            tally.check(words, len(said) == len(ACTS) and all(words in one for one in said), said)
            tally.check("the secret is not told", "Geheimnis" not in "".join(said), said)
            written = [path for path in pathlib.Path(home).rglob("*") if path.is_file()]
            kept = [path for path in written if b"Geheimnis" in path.read_bytes()]
            tally.check("nor kept in a file", not kept, kept)
    tally.end()


if __name__ == "__main__":
    main()
