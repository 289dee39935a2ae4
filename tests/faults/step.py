#!/usr/bin/env python3
"""Lets the calls of a run fail one after the other, and looks at what stays behind.

usage: step.py PROGRAM LIBRARY ROOT [--runs N] [--kind KIND] [--command NAME]

LIBRARY (faults.cpp) is loaded before the others and lets the N-th call of one kind fail. First each
command runs without a fault: that is the answer, and that many calls there are. Then for each kind N
steps through them, `--runs` of them evenly spread (0: every one). After each run
 - every output is either the answer's or as it was before, and outputs of a set are so together;
 - inputs are what they were; nothing else lies in the folders, no temporary file;
 - the exit code is one of the four, and 0 and 3 come only with the answer on the screen.
"""

import argparse
import collections
import json
import os
import pathlib
import shutil
import signal
import subprocess
import sys
import tempfile

KINDS = ("malloc", "new", "open:EIO", "read:EIO", "read:short", "read:EINTR", "write:ENOSPC", "write:EIO",
         "write:EINTR", "write:short", "fsync:EIO", "close:EIO", "rename:EIO", "make:ENOSPC")
# These change nothing that a program may notice.
HARMLESS = ("read:short", "read:EINTR", "write:EINTR", "write:short")

INPUTS = ("trip.json", "saddle.gpx", "tarn-shore.gpx", "saddle-dem.tif", "saddle-ground.geojson")
COMMANDS = {
    "plan": ["plan", "trip.json"],
    "book": ["book", "trip.json", "-o", "out/trip.html", "--overwrite"],
    "export": ["export", "trip.json", "--gpx", "out/trip.gpx", "--geojson", "out/trip.geojson", "--csv", "out/tables",
               "--overwrite"],
    "new": ["new", "saddle.gpx", "--elevation", "saddle-dem.tif", "-o", "out/new.json"],
}
# What stands there beforehand; "new" replaces nothing.
BEFORE = {
    "plan": [],
    "book": ["out/trip.html"],
    "export": ["out/trip.gpx", "out/tables/days.csv", "out/tables/legs.csv"],
    "new": [],
}

Answer = collections.namedtuple("Answer", "code out files calls")


def contents(folder):
    return {str(file.relative_to(folder)): file.read_bytes() for file in sorted(folder.rglob("*")) if file.is_file()}


def is_poorer_as_documented(name, here, wanted):
    """Whether a GeoJSON file lacks but the heights that it has where the geoid's grid can be read."""
    if not name.endswith(".geojson") or here is None:
        return False

    def without_heights(text):
        def bare(value):
            if isinstance(value, list):
                is_position = len(value) in (2, 3) and all(isinstance(one, float | int) for one in value)
                return value[:2] if is_position else [bare(one) for one in value]
            if isinstance(value, dict):
                return {key: bare(inner) for key, inner in value.items() if key != "mark"}
            return value

        return bare(json.loads(text))

    try:
        return without_heights(here) == without_heights(wanted)
    except ValueError:
        return False


class Stepper:
    def __init__(self, arguments, folder):
        self.arguments = arguments
        self.folder = folder
        self.calls = folder.parent / "calls.txt"
        self.wrong = 0
        self.runs = 0

    def prepare(self, command):
        """A fresh folder: inputs, and old files where the outputs will stand."""
        shutil.rmtree(self.folder, ignore_errors=True)
        self.folder.mkdir()
        sample = pathlib.Path(self.arguments.root) / "sample-routes/saddle"
        for name in INPUTS:
            shutil.copy(sample / name, self.folder / name)
        (self.folder / "out").mkdir()
        if command == "export":
            (self.folder / "out/tables").mkdir()
        for name in BEFORE[command]:
            (self.folder / name).write_text("old\n")
        return contents(self.folder)

    def run(self, command, fault=None, closed_pipe=False):
        self.calls.unlink(missing_ok=True)
        environment = {**os.environ, "LD_PRELOAD": str(pathlib.Path(self.arguments.library).resolve()),
                       "TUMPLINE_CALLS": str(self.calls), "ASAN_OPTIONS": "verify_asan_link_order=0"}
        if fault:
            environment["TUMPLINE_FAULT"] = fault
        out = subprocess.PIPE
        if closed_pipe:
            reader, out = os.pipe()
            os.close(reader)
        process = subprocess.run([pathlib.Path(self.arguments.program).resolve(), *COMMANDS[command]], cwd=self.folder,
                                 env=environment, stdout=out, stderr=subprocess.PIPE, timeout=300, check=False)
        if closed_pipe:
            os.close(out)
        calls = {}
        if self.calls.exists():
            for line in self.calls.read_text().splitlines():
                kind, count = line.split()
                calls[kind] = int(count)
        self.message = process.stderr.decode(errors="replace").strip()
        return Answer(process.returncode, process.stdout, contents(self.folder), calls)

    def complain(self, what):
        self.wrong += 1
        print("WRONG", what, "|", self.message.replace("\n", " ")[:160])

    def look(self, where, before, answer, now, kind):
        """What is wrong after a run."""
        for name in INPUTS:
            if now.files.get(name) != before[name]:
                self.complain(f"{where}: the input {name} has changed")
        outputs = [name for name in answer.files if name not in INPUTS and answer.files[name] != before.get(name)]
        for name in now.files:
            if name not in answer.files and name not in before:
                self.complain(f"{where}: {name} stays behind")
        for name in before:
            if name not in now.files:
                self.complain(f"{where}: {name} is gone")
        states = set()
        for name in outputs:
            here = now.files.get(name)
            if here == answer.files[name] or is_poorer_as_documented(name, here, answer.files[name]):
                states.add("new")
            elif here == before.get(name):
                states.add("old")
            else:
                self.complain(f"{where}: {name} is neither the old nor the whole new file")
        if len(states) > 1:
            self.complain(f"{where}: some outputs are new and some old")
        # a library that finds no memory may stop the program itself; that leaves the files alone as well
        stopped_by_library = kind == "malloc" and now.code == -signal.SIGABRT
        if now.code not in (0, 1, 2, 3) and not stopped_by_library:
            self.complain(f"{where}: ends with {now.code}")
        if now.code in (0, 3) and (now.out != answer.out or now.code != answer.code or "old" in states):
            self.complain(f"{where}: answers {now.code} with something else than without the fault")
        if kind in HARMLESS and now.code != answer.code:
            self.complain(f"{where}: ends with {now.code}, and not as it should with {answer.code}")

    def step(self, command):
        before = self.prepare(command)
        answer = self.run(command)
        if answer.code != 0 or not answer.calls:
            self.complain(f"{command}: without a fault ends with {answer.code}, calls {answer.calls}")
            return
        before = self.prepare(command)
        now = self.run(command, closed_pipe=True)
        if now.code not in (0, 1, 2, 3, -signal.SIGPIPE):
            self.complain(f"{command} into a closed pipe: ends with {now.code}")
        self.look(f"{command} into a closed pipe", before, answer, now._replace(code=2), "pipe")
        told = []
        for kind in KINDS:
            count = answer.calls.get(kind, 0)
            if self.arguments.kind not in ("", kind) or count == 0:
                continue
            runs = min(count, self.arguments.runs or count)
            told.append(f"{kind} {runs} of {count}")
            for k in range(runs):
                # the first and the last call, and evenly between
                number = 1 + (k * (count - 1)) // max(1, runs - 1) if runs > 1 else count
                before = self.prepare(command)
                now = self.run(command, f"{kind}:{number}")
                self.runs += 1
                self.look(f"{command}, {kind}:{number}", before, answer, now, kind)
        print(f"{command}: " + ", ".join(told), flush=True)


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("program")
    parser.add_argument("library")
    parser.add_argument("root")
    parser.add_argument("--runs", type=int, default=0, help="of each kind and command; 0: every call")
    parser.add_argument("--kind", default="", choices=("", *KINDS))
    parser.add_argument("--command", default="", choices=("", *COMMANDS))
    arguments = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        stepper = Stepper(arguments, pathlib.Path(name) / "trip")
        for command in COMMANDS:
            if arguments.command in ("", command):
                stepper.step(command)
    print(f"{stepper.runs} runs, {stepper.wrong} wrong")
    return 1 if stepper.wrong else 0


if __name__ == "__main__":
    sys.exit(main())
