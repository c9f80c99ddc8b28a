#!/usr/bin/env python3
"""Makes tests/fixtures/locked again with another implementation of the age format, and checks that it opens ours.

    python3 tools/age-fixtures.py make  PATH-TO-AGE      writes both fixtures from tests/fixtures/jobs/cylinder-h.json
    python3 tools/age-fixtures.py check PATH-TO-AGE FILE opens a file that Shearsight locked with "brass and steel"

age asks for a passphrase at a terminal only, so this gives it one. Needs a Unix.
"""
import os
import pty
import sys

PASSPHRASE = b"brass and steel\n"


def run(command):
    """Runs a command at a terminal of its own, answers every question with the passphrase; gives its exit code."""
    child, terminal = pty.fork()
    if child == 0:
        os.execv(command[0], command)
    while True:
        try:
            asked = os.read(terminal, 1024)
        except OSError:
            break
        if not asked:
            break
        if b":" in asked:
            os.write(terminal, PASSPHRASE)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


def main(what, age, *files):
    here = os.path.dirname(os.path.abspath(__file__))
    fixtures = os.path.join(here, "..", "tests", "fixtures")
    if what == "check":
        return run([age, "--decrypt", "--output", files[0] + ".opened", files[0]])
    job = os.path.join(fixtures, "jobs", "cylinder-h.json")
    out = os.path.join(fixtures, "locked")
    os.makedirs(out, exist_ok=True)
    plain = run([age, "--passphrase", "--output", os.path.join(out, "by-another-program.age"), job])
    armoured = run([age, "--armor", "--passphrase", "--output", os.path.join(out, "by-another-program-armoured.age"), job])
    return plain or armoured


sys.exit(main(*sys.argv[1:]))
