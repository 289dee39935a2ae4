#!/usr/bin/env python3
"""Every figure of docs/performance.md, in one run, each beside its peer.

    tests/bench/every_figure.py build/release

Takes the folder of a build, runs its benchmarks and its program, and prints one line a figure. Processor's
time, the least of some runs; some minutes. Needs gdalinfo and ogrinfo (Debian: gdal-bin).
"""
import json
import os
import subprocess
import sys
import tempfile

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, HERE)

from against_ogrinfo import TRIP, measure, write_track  # noqa: E402
from growth import WRITER  # noqa: E402

SAMPLES = os.path.join(HERE, "..", "..", "sample-routes")
MILLION = 1_000_000


def row(what, value, peer=""):
    print(f"| {what} | {value} | {peer} |", flush=True)


def span(time_s):
    return f"{time_s:.2f} s" if time_s >= 1.0 else f"{time_s * 1e3:.3g} ms"


def benchmarks(build):
    """Processor's time in seconds by the name of a benchmark, the least of three."""
    done = subprocess.run([os.path.join(build, "tests/bench/tumpline_bench"), "--benchmark_format=json",
                           "--benchmark_repetitions=3", "--benchmark_min_time=0.1"],
                          check=True, capture_output=True, text=True)
    unit = {"ns": 1e-9, "us": 1e-6, "ms": 1e-3, "s": 1.0}
    times = {}
    for one in json.loads(done.stdout)["benchmarks"]:
        if one["run_type"] == "iteration":
            name, cpu_s = one["run_name"], one["cpu_time"] * unit[one["time_unit"]]
            times[name] = min(times.get(name, cpu_s), cpu_s)
    return times


def of_benchmarks(build):
    times = benchmarks(build)
    for days in (3, 15, 60):
        row(f"book of {days} days after the plan is made", span(times[f"book_of_days/{days}"]))
    row("map of a route of a million points", span(times["map_of_a_million_points"]))
    energy_s = max(time for name, time in times.items() if name.startswith("energy/"))
    walk_s = max(time for name, time in times.items() if name.startswith("walking_time/"))
    for what, time in (("walking time over a million steps, slowest of twenty models", walk_s),
                       ("the sums of a million steps (`lcda_sums`)", times["lcda_sums"]),
                       ("a million load factors", times["load_effect_of_a_million_loads"])):
        row(what, span(time), f"{time / energy_s:.2f} of the energy")
    row("energy of a million steps, slowest of four models", span(energy_s))
    for count in (MILLION, MILLION // 10, MILLION // 100):
        row(f"GPX of {count} points, read and repaired", span(times[f"read_gpx/{count}"]))
    row("length of a line of a million points", span(times[f"measure_line/{MILLION}"]))
    row("nearest point and all passes of a place on it", span(times[f"snap_to_line/{MILLION}"]))
    row("daylight of a day", span(times["daylight_of_a_day"]))
    row("plan again: 14 days, 30 legs, 4 people (`plan_again`)", span(times["plan_again"]),
        f"{times['plan_again'] / times['settle_once']:.1f} of settling it once more (`settle_once`)")
    weeks_s = times["ten_thousand_weeks_for_four/1/process_time/real_time"]
    row("10 000 draws of a made-up week for four (`ten_thousand_weeks_for_four`)", span(weeks_s))


def of_a_million_points(program, folder):
    file = os.path.join(folder, "long.gpx")
    peer_s = 0.0
    for count in (MILLION // 100, MILLION // 10, MILLION):
        write_track(file, count)
        with open(os.path.join(folder, "trip.json"), "w", encoding="utf-8") as out:
            out.write(TRIP)
        if count == MILLION:
            peer_s = measure(f"ogrinfo -ro -al -so {file}")[1]
            row(f"`ogrinfo -ro -al -so` of it, {os.path.getsize(file) / 1e6:.0f} MB", span(peer_s))
        _, cpu_s, memory = measure(f"{program} plan {folder}/trip.json")
        row(f"`plan` of a GPX of {count} points, {memory:.0f} MB of memory", span(cpu_s),
            f"{cpu_s / peer_s:.2f} of ogrinfo" if peer_s else "")
    for command, rest in (("check", ""), ("export", "--gpx"), ("export", "--geojson")):
        to = f"{rest} {folder}/out" if rest else ""
        cpu_s = measure(f"{program} {command} {folder}/trip.json {to}")[1]
        row(f"`{f'{command} {rest}'.strip()}` of that trip", span(cpu_s), f"{cpu_s / peer_s:.2f} of ogrinfo")
    row("`pace` from that recording", span(measure(f"{program} pace {file}")[1]))


def of_long_trips(program, folder):
    def plan(*asked, how=""):
        os.makedirs(folder, exist_ok=True)
        subprocess.run([sys.executable, WRITER, folder, *asked], check=True)
        return measure(f"{program} plan {folder}/trip.json {how}")[1]

    what = "60 days, 500 legs, 12 people with 60 things each, 40 portages, too heavy"
    row(f"`plan`: {what}", span(plan("heavy")))
    row("the same with `--format json`", span(plan("heavy", how="--format json")))
    row("`plan`: 94 days, 240 legs, 308 places", span(plan("long-traverse")))


def of_samples(program, folder):
    def sample(name):
        return os.path.join(SAMPLES, name, "trip.json")

    floor_s = measure("gdalinfo --version")[1]
    row("`gdalinfo --version`", span(floor_s))
    cpu_s = measure(f"{program} plan {sample('saddle')}")[1]
    row("`plan` of saddle", span(cpu_s), f"{cpu_s / floor_s:.2f} of `gdalinfo --version`")
    for name in ("lake-chain", "saddle"):
        plan_s = measure(f"{program} plan {sample(name)} --format json")[1]
        cpu_s = measure(f"{program} book {sample(name)} -o {folder}/book.html")[1]
        row(f"`book` of {name}", span(cpu_s), f"{cpu_s / plan_s:.2f} of its `plan`")
    for name in ("saddle", "lake-chain", "five-over-two-passes", "fourteen-portages"):
        row(f"`odds` of {name}, 10 000 draws", span(measure(f"{program} odds {sample(name)}")[1]))


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    build = os.path.abspath(sys.argv[1])
    program = os.path.join(build, "cli/tumpline")
    with tempfile.TemporaryDirectory() as folder:
        of_samples(program, folder)
        of_benchmarks(build)
        of_a_million_points(program, folder)
        of_long_trips(program, os.path.join(folder, "long"))


if __name__ == "__main__":
    main()
