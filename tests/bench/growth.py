#!/usr/bin/env python3
"""How planning grows with a trip that is too heavy, and how long a long traverse takes.

    tests/bench/growth.py build/release/cli/tumpline

Doubles portages, people and things of a made-up trip (tests/bench/write_trips.py) one after the other and
prints the processor's time of `plan` for each, best of three, with its ratio to the one before; then the
long traverse and the heaviest trip, whole. Fails if a doubling takes more than 2.6 times as long, beside the
time that the program takes to start.
"""
import os
import subprocess
import sys
import tempfile
import time

RUNS = 3
MOST_RATIO = 2.6
WRITER = os.path.join(os.path.dirname(os.path.abspath(__file__)), "write_trips.py")


def seconds(command):
    """Least processor's time of some runs, and least time by the clock."""
    cpu, wall = [], []
    for _ in range(RUNS):
        before, start = os.times(), time.monotonic()
        done = subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, check=False)
        if done.returncode not in (0, 3):
            sys.exit(done.stderr.decode())
        after = os.times()
        wall.append(time.monotonic() - start)
        cpu.append(after.children_user + after.children_system
                   - before.children_user - before.children_system)
    return min(cpu), min(wall)


def plan(program, folder, *asked):
    subprocess.run([WRITER, folder, *asked], check=True)
    return seconds([program, "plan", os.path.join(folder, "trip.json")])


def heavy(program, folder, **sizes):
    asked = [word for key, value in sizes.items() for word in (f"--{key}", str(value))]
    return plan(program, folder, "heavy", *asked)


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    program = sys.argv[1]
    start_s, _ = seconds([program, "--version"])
    worst = 0.0
    with tempfile.TemporaryDirectory() as folder:
        base = {"days": 20, "legs": 240, "people": 4, "things": 20, "portages": 10}
        for key in ("portages", "people", "things"):
            sizes, before_s = dict(base), None
            for _ in range(3):
                cpu_s, _ = heavy(program, folder, **sizes)
                own_s = cpu_s - start_s
                ratio = own_s / before_s if before_s else 1.0
                worst = max(worst, ratio)
                print(f"{sizes[key]:4} {key:9} {cpu_s:6.2f} s  x {ratio:4.2f}")
                sizes[key] *= 2
                before_s = own_s
        for what, asked in (("long traverse", ["long-traverse"]), ("60 days, 500 legs, 12 people of 60 "
                            "things, 40 portages, too heavy", ["heavy"])):
            cpu_s, wall_s = plan(program, folder, *asked)
            print(f"{what}: {cpu_s:.2f} s of processor, {wall_s:.2f} s by the clock")
    if worst > MOST_RATIO:
        sys.exit(f"a doubling took {worst:.2f} times as long")


if __name__ == "__main__":
    main()
