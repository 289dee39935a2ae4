#!/usr/bin/env python3
"""Plans a trip over one GPX file of a million points, and reads the same file with ogrinfo.

    tests/bench/against_ogrinfo.py build/release/cli/tumpline [POINTS]

The file is made up from a fixed seed. Prints for both the time by the clock, the processor's time and the
peak memory, best of three, then the ratio; fails if planning takes longer than reading with ogrinfo, needs
300 MB or more, or grows faster than the number of points from a hundredth of it on. Needs ogrinfo (Debian:
gdal-bin).
"""
import os
import random
import shutil
import subprocess
import sys
import tempfile
import time

SEED = 20270618
MOST_MB = 300
RUNS = 3

TRIP = """{
  "tumpline": 1,
  "name": "A long recording",
  "start": "2027-06-18",
  "time_zone": "UTC",
  "route": {"tracks": ["long.gpx"]},
  "party": [{"name": "Ada", "body": "70 kg"}],
  "weather": {"rain": false}
}
"""


def write_track(path, points):
    """A walk that wanders up and down, a point every second and every metre or so."""
    draw = random.Random(SEED)
    lat, lon, height, at = 45.0, -40.0, 800.0, 0
    with open(path, "w", encoding="utf-8") as out:
        out.write('<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" creator="bench" '
                  'xmlns="http://www.topografix.com/GPX/1/1">\n<trk><name>Long</name>'
                  '<type>walk</type><trkseg>\n')
        for _ in range(points):
            lat += 1e-5 + 4e-6 * draw.random()
            lon += 1e-5 * (draw.random() - 0.5)
            if lat > 80.0:
                lat = 45.0  # one leap of the line; it must not run over the pole
            height = min(2500.0, max(100.0, height + draw.gauss(0.0, 0.2)))
            at += 1
            day, rest = divmod(at, 86400)
            out.write(f'<trkpt lat="{lat:.7f}" lon="{lon:.7f}"><ele>{height:.1f}</ele>'
                      f'<time>2027-{1 + day // 28:02}-{1 + day % 28:02}T{rest // 3600:02}:'
                      f'{rest // 60 % 60:02}:{rest % 60:02}Z</time></trkpt>\n')
        out.write("</trkseg></trk></gpx>\n")


def measure(command):
    """Least clock time and processor time in seconds, most memory in MB, over some runs."""
    wall, cpu, memory = [], [], []
    for _ in range(RUNS):
        began = time.perf_counter()
        pid = os.spawnvp(os.P_NOWAIT, "/bin/sh", ["sh", "-c", f"exec {command} >/dev/null 2>&1"])
        _, status, usage = os.wait4(pid, 0)
        wall.append(time.perf_counter() - began)
        cpu.append(usage.ru_utime + usage.ru_stime)
        memory.append(usage.ru_maxrss / 1024.0)
        code = os.waitstatus_to_exitcode(status)
        if code not in (0, 3):
            sys.exit(f"{command}: exit {code}")
    return min(wall), min(cpu), max(memory)


def show(name, measured):
    wall, cpu, memory = measured
    print(f"{name:<34} {wall:7.2f} s by the clock {cpu:7.2f} s of processor {memory:6.0f} MB")


def main():
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    program = os.path.abspath(sys.argv[1])
    points = int(sys.argv[2]) if len(sys.argv) > 2 else 1_000_000
    with tempfile.TemporaryDirectory() as folder:
        times = {}
        for count in (points // 100, points // 10, points):
            where = os.path.join(folder, str(count))
            os.mkdir(where)
            write_track(os.path.join(where, "long.gpx"), count)
            with open(os.path.join(where, "trip.json"), "w", encoding="utf-8") as out:
                out.write(TRIP)
            times[count] = measure(f"{program} plan {where}/trip.json")
            show(f"tumpline plan, {count} points", times[count])
        failed = []
        growth = times[points][1] / max(times[points // 10][1], 1e-3)
        print(f"ten times the points take {growth:.1f} times as long")
        if growth > 12.0:
            failed.append("time grows faster than the points")
        if times[points][2] >= MOST_MB:
            failed.append(f"memory is {MOST_MB} MB or more")
        if shutil.which("ogrinfo") is None:
            sys.exit("ogrinfo is not here (apt-get install gdal-bin): nothing to compare with")
        file = os.path.join(folder, str(points), "long.gpx")
        size = os.path.getsize(file) / 1e6
        other = measure(f"ogrinfo -ro -al -so {file}")
        show(f"ogrinfo -ro -al -so, {size:.0f} MB", other)
        version = subprocess.run(["ogrinfo", "--version"], capture_output=True, text=True, check=True)
        ratio = times[points][0] / other[0]
        print(f"planning takes {ratio:.2f} of ogrinfo's time ({version.stdout.strip()})")
        if ratio > 1.0:
            failed.append("planning takes longer than ogrinfo")
        sys.exit("; ".join(failed) or 0)


if __name__ == "__main__":
    main()
