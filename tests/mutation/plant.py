#!/usr/bin/env python3
"""Plants the faults of faults.txt in a copy of the tree and asks the tests for each.

usage: plant.py FOLDER [--only N,N-M] [--without-build] [--jobs N] [--seconds S] [--list]

FOLDER (build/mutation, say) gets the copy and its build. Every fault becomes
`(planted(N) ? (faulty) : (right))`, so that the copy is built once; TUMPLINE_PLANTED=N switches fault N
on. The tests first run without a fault, and tell which faults each of them passes; then, fault by
fault, those that pass it run until an assertion fails: those of the file of the source's own name first,
then those of its room, then the others, quick ones first (with --seconds only so much of those). Which
tests use a constant made before the first of them is not seen: its file, its room and the quick ones are
asked. A test that crashes is left out and the others go on: what crashes is killed only where an assertion
fails elsewhere. Tests that hold output to stored output know only
that something changed: they do not count, and are asked only about faults that all others let live.
The report says for each fault which assertion killed it, and names the living.
"""

import argparse
import collections
import concurrent.futures
import os
import pathlib
import re
import shutil
import signal
import subprocess
import sys

HERE = pathlib.Path(__file__).resolve().parent
ROOT = HERE.parent.parent

# Suites that compare with what is stored: screens, pages, headline figures of the sample trips.
STORED_OUTPUT = ("Screens", "Pages", "ChoosingPage", "SampleRoutes", "SamplePlans")

Fault = collections.namedtuple("Fault", "number file before right after faulty name")
Test = collections.namedtuple("Test", "name file milliseconds passes")

# The words of a constant number up to its value: the group is its name.
NUMBER = r"(?:double|int|long|std::size_t|auto|seconds|days)\s+(\w+)\s*="

# How many crashes of one fault are waited for before the fault is called crashed.
MOST_CRASHES = 12


def read_faults(text):
    """The faults of a table: a line with a file, then lines "before«right»after ~ faulty ~ name"."""
    faults = []
    file = None
    number = 0
    for line in text.splitlines():
        if not line.strip() or line.startswith("#"):
            continue
        if not line.startswith(" "):
            file = line.strip()
            continue
        number += 1
        where, faulty, *name = line.strip().split(" ~ ")
        before, rest = where.split("«")
        right, after = rest.split("»")
        faults.append(Fault(number, file, before, right, after, faulty, name[0] if name else ""))
    return faults


def spaced(text):
    """A pattern for a piece of source, wherever its lines are broken."""
    return r"\s*".join(re.escape(word) for word in re.findall(r"\w+|[^\w\s]", text))


def place_of(fault, source):
    """Where the right text stands in a source; None unless it stands there once."""
    parts = [spaced(fault.before), f"(?P<right>{spaced(fault.right)})", spaced(fault.after)]
    found = list(re.finditer(r"\s*".join(part for part in parts if part), source))
    return found[0].span("right") if len(found) == 1 else None


def planted_text(fault, right):
    if right.rstrip().endswith(";"):
        return f"if (planted({fault.number})) {{ {fault.faulty} }} else {{ {right} }}"
    return f"(planted({fault.number}) ? ({fault.faulty}) : ({right}))"


def plant(tree, faults):
    """Writes the faults into the copy; returns those whose place is not found, or no longer alone."""
    lost = []
    switched = set()
    for file in sorted({fault.file for fault in faults}):
        path = tree / file
        source = path.read_text() if path.exists() else ""
        spans = []
        for fault in faults:
            if fault.file != file:
                continue
            span = place_of(fault, source)
            if span is None or any(span[0] < end and start < span[1] for start, end, _ in spans):
                lost.append(fault)
            else:
                spans.append((*span, fault))
        edits = {(start, end): planted_text(fault, source[start:end]) for start, end, fault in spans}
        for start, _, _ in spans:
            # what is switched at run time is no constant of the compiler
            begins = source.rfind(";", 0, start) + 1
            for word in re.finditer(r"\bconstexpr\b", source[begins:start]):
                edits[begins + word.start(), begins + word.end()] = "const"
                switched |= set(re.findall(r"^\s*" + NUMBER, source[begins + word.end() : start]))
        for (start, end), text in sorted(edits.items(), reverse=True):
            source = source[:start] + text + source[end:]
        if spans:
            path.write_text(source)
    unfix_constants(tree, switched)
    return lost


def unfix_constants(tree, names):
    """What is made of a constant that is switched at run time is no constant of the compiler either."""
    declaration = re.compile(r"\bconstexpr(?P<rest>\s+" + NUMBER + r"(?P<value>[^;]*);)")
    sources = {path: path.read_text() for folder in ("geo", "planner", "cli")
               for path in (tree / folder).rglob("*") if path.suffix in (".h", ".cpp")}
    more = bool(names)
    while more:
        more = False
        uses = re.compile(r"\b(" + "|".join(sorted(names)) + r")\b")
        for path, source in sources.items():
            for found in reversed(list(declaration.finditer(source))):
                if uses.search(found["value"]):
                    names.add(found[2])
                    source = source[: found.start()] + "const" + source[found.start("rest") :]
                    more = True
            if source != sources[path]:
                sources[path] = source
                path.write_text(source)


def copy_tree(tree):
    """The files that git knows, as they lie here; a file that did not change keeps its time."""
    names = subprocess.run(["git", "-C", ROOT, "ls-files", "-co", "--exclude-standard"], check=True, capture_output=True,
                           text=True).stdout.split("\n")
    kept = set()
    for name in filter(None, names):
        source, target = ROOT / name, tree / name
        if not source.is_file():
            continue
        kept.add(target)
        target.parent.mkdir(parents=True, exist_ok=True)
        if not target.exists() or target.read_bytes() != source.read_bytes():
            shutil.copy2(source, target)
    return kept


def write_copy(tree, faults):
    """Copies and plants beside the copy, then moves over what differs: only that compiles again."""
    fresh = tree.with_name("fresh")
    shutil.rmtree(fresh, ignore_errors=True)
    copy_tree(fresh)
    lost = plant(fresh, faults)
    shutil.copy2(HERE / "planted_listener.cpp", fresh / "tests/planner/planted_listener_test.cpp")
    for file in sorted(fresh.rglob("*")):
        target = tree / file.relative_to(fresh)
        if file.is_file() and (not target.exists() or target.read_bytes() != file.read_bytes()):
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(file, target)
    for target in sorted(tree.rglob("*.*")):
        name = target.relative_to(tree)
        if name.parts[0] != "build" and target.is_file() and not (fresh / name).exists():
            target.unlink()
    shutil.rmtree(fresh)
    return lost


def build(tree, folder):
    header = tree / "tests/mutation/planted.h"
    subprocess.run(["cmake", "-S", tree, "-B", folder, "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Release",
                    "-DCMAKE_CXX_FLAGS_RELEASE=-O1", f"-DCMAKE_CXX_FLAGS=-w -include {header}",
                    "-DTUMPLINE_BENCH=OFF", "-DCMAKE_UNITY_BUILD=ON",
                    *os.environ.get("TUMPLINE_MUTATION_CMAKE", "").split()], check=True, stdout=subprocess.DEVNULL)
    subprocess.run(["cmake", "--build", folder, "--target", "tumpline", "tumpline_tests"], check=True)


class Program:
    """The test program of the copy."""

    def __init__(self, tree, folder, jobs, limit_ms=float("inf")):
        self.program = folder / "tests/tumpline_tests"
        self.tree = tree
        self.folder = folder
        self.jobs = jobs
        self.limit_ms = limit_ms
        self.constants = set()

    def answers(self, shard):
        return self.folder / f"passed-{shard}.tsv"

    def tests(self, again):
        """Every test that passes without a fault, with the faults that it passes; `again`: as told before."""
        if not (again and self.answers(0).exists()):
            for shard in range(self.jobs):
                self.answers(shard).unlink(missing_ok=True)
            shards = [subprocess.Popen(
                [self.program, "--gtest_brief=1"],
                env={**os.environ, "TUMPLINE_PASSED": str(self.answers(shard)), "GTEST_SHARD_INDEX": str(shard),
                     "GTEST_TOTAL_SHARDS": str(self.jobs)},
                stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) for shard in range(self.jobs)]
            for shard in shards:
                shard.wait()
        tests = []
        lines = [line for file in sorted(self.folder.glob("passed-*.tsv")) for line in file.read_text().splitlines()]
        for line in lines:
            name, file, milliseconds, passed, faults = line.split("\t")
            numbers = {int(number) for number in faults.split()}
            if name == "constants":
                self.constants |= numbers
                continue
            if passed != "1":
                print(f"does not pass without a fault, and is not asked: {name}")
                continue
            tests.append(Test(name, file.replace(f"{self.tree}/tests/", ""), int(milliseconds), numbers))
        return tests

    def ask(self, number, tests):
        """The assertion that fails when a fault is on: "Suite.Test file:line"; None if none does."""
        crash = None
        waits = MOST_CRASHES
        while tests and waits > 0:
            answer, running = self.run(number, tests)
            if not answer or not answer.startswith("without"):
                return answer or crash
            crash = crash or f"{answer} in {running}"
            tests = [test for test in tests if test.name != running]
            waits -= 4 if answer.endswith("does not end") else 1
        return crash

    def run(self, number, tests):
        """One run of the program: its answer, and the test that was running."""
        files = {name: self.folder / f"{name}-{number}.txt" for name in ("killed", "running", "names")}
        for file in files.values():
            file.unlink(missing_ok=True)
        files["names"].write_text("--gtest_filter=" + ":".join(test.name for test in tests) + "\n")
        process = subprocess.Popen(
            [self.program, "--gtest_brief=1", f"--gtest_flagfile={files['names']}"],
            env={**os.environ, "TUMPLINE_PLANTED": str(number), "TUMPLINE_KILLED": str(files["killed"]),
                 "TUMPLINE_RUNNING": str(files["running"])},
            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True)
        answer = None
        try:
            code = process.wait(timeout=30 + 6 * sum(test.milliseconds for test in tests) / 1000)
            answer = f"without an assertion: ends with {code}" if code else None
        except subprocess.TimeoutExpired:
            os.killpg(process.pid, signal.SIGKILL)
            process.wait()
            answer = "without an assertion: does not end"
        if files["killed"].exists():
            name, place = files["killed"].read_text().strip().split("\t")
            answer = f"{name} {place.replace(str(self.tree) + '/', '')}"
        running = files["running"].read_text().strip() if files["running"].exists() else ""
        for file in files.values():
            file.unlink(missing_ok=True)
        return answer, running


def is_own(fault, test):
    """Whether a test stands in the file of the source's own name."""
    return test.file == str(pathlib.Path(fault.file).with_suffix("")) + "_test.cpp"


def is_near(fault, test):
    """Whether a test stands in the room of the source."""
    return pathlib.PurePosixPath(test.file).parent == pathlib.PurePosixPath(fault.file).parent


def batches(fault, tests, limit_ms=float("inf")):
    """The tests that pass a fault: those of its own file, those of its room, the quick ones, the rest."""
    own = [test for test in tests if is_own(fault, test)]
    near = [test for test in tests if is_near(fault, test) and not is_own(fault, test)]
    far = [test for test in tests if not is_near(fault, test)]
    quick, slow, sum_ms = [], [], 0
    for test in sorted(far, key=lambda test: test.milliseconds):
        sum_ms += test.milliseconds
        if sum_ms < min(4000, limit_ms):
            quick.append(test)
        elif sum_ms < limit_ms:
            slow.append(test)
    return [batch for batch in (own, near, quick, slow) if batch]


def is_stored_output(test):
    return re.split(r"[/.]", test.name.removeprefix("Seeds/"))[0] in STORED_OUTPUT or \
        any(f"{suite}." in test.name or f"{suite}/" in test.name for suite in STORED_OUTPUT)


def judge(program, fault, tests):
    """Verdict and assertion: "killed", "crashed", "stored output", "lives" or "not passed"."""
    passing = [test for test in tests if fault.number in test.passes]
    limit_ms = program.limit_ms
    if fault.number in program.constants:
        if not passing:
            limit_ms = min(limit_ms, 4000)
        passing = [test for test in tests if not passing or fault.number in test.passes or is_near(fault, test)]
    if not passing:
        return "not passed", ""
    crash = None
    for batch in batches(fault, [test for test in passing if not is_stored_output(test)], limit_ms):
        answer = program.ask(fault.number, batch)
        if answer and not answer.startswith("without"):
            return "killed", answer
        crash = crash or answer
    if crash:
        return "crashed", crash
    stored = [test for test in passing if is_stored_output(test)]
    answer = program.ask(fault.number, stored) if stored else None
    return ("stored output", answer) if answer else ("lives", "")


def wanted(text, faults):
    if not text:
        return faults
    numbers = set()
    for part in text.split(","):
        first, _, last = part.partition("-")
        numbers.update(range(int(first), int(last or first) + 1))
    return [fault for fault in faults if fault.number in numbers]


def words_of(fault):
    change = f"{fault.before}«{fault.right}»{fault.after} ~ {fault.faulty}"
    return f"{fault.number:4} {fault.file}: {fault.name + ': ' if fault.name else ''}{change}"


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("folder", type=pathlib.Path)
    parser.add_argument("--only", default="", help="numbers of faults: 3,10-20")
    parser.add_argument("--without-build", action="store_true")
    parser.add_argument("--jobs", type=int, default=os.cpu_count())
    parser.add_argument("--seconds", type=float, default=float("inf"),
                        help="how much of the tests outside a fault's room to ask")
    parser.add_argument("--list", action="store_true", help="print the faults, and which have lost their place")
    arguments = parser.parse_args()
    faults = read_faults((HERE / "faults.txt").read_text())
    if arguments.list:
        for fault in faults:
            source = ROOT / fault.file
            lost = not source.exists() or place_of(fault, source.read_text()) is None
            print(words_of(fault) + ("   HAS LOST ITS PLACE" if lost else ""))
        return 0
    folder = arguments.folder.resolve()
    tree, build_folder = folder / "tree", folder / "build"
    tree.mkdir(parents=True, exist_ok=True)
    lost = [] if arguments.without_build else write_copy(tree, faults)
    for fault in lost:
        print("has lost its place:", words_of(fault))
    if not arguments.without_build:
        build(tree, build_folder)
    program = Program(tree, build_folder, arguments.jobs, 1000 * arguments.seconds)
    tests = program.tests(arguments.without_build)
    count = collections.Counter()
    asked = [fault for fault in wanted(arguments.only, faults) if fault not in lost]
    with concurrent.futures.ThreadPoolExecutor(arguments.jobs) as pool:
        for fault, (verdict, answer) in zip(asked, pool.map(lambda fault: judge(program, fault, tests), asked)):
            count[verdict] += 1
            print(f"{verdict:13} {words_of(fault)}{'  BY ' + answer if answer else ''}", flush=True)
    total = sum(count.values())
    print(f"{total} faults:", ", ".join(f"{many} {verdict}" for verdict, many in count.most_common()))
    print(f"killed by an assertion that knows the figure: {100 * count['killed'] / max(1, total):.0f} of 100")
    return 0


if __name__ == "__main__":
    sys.exit(main())
