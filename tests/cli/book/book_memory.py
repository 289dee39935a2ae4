#!/usr/bin/env python3
"""What memory a book takes beside its plan: 150 MB more at the most.

    book_memory.py TUMPLINE SAMPLES FOLDER

Runs `plan` and `book` of samples with and without a raster and of a traverse of 94 days, each in a process of
its own, and compares the most memory that each ever held (getrusage of the child). Prints the processor's
time as well, which is not judged here: tests/bench/every_figure.py has it. The program may be slowed and
swollen by sanitizers; both runs are.
"""
import os
import subprocess
import sys

MOST_MB = 150.0
MOST_BYTES = 1_500_000
SIXTY_DAYS = ("saddle", "lake-chain")  # of sixty days or less, for which the size is held
WRITER = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "bench", "write_trips.py")


def run(command):
    """Most memory held in MB, and processor's time in seconds."""
    child = os.fork()
    if child == 0:
        null = os.open(os.devnull, os.O_WRONLY)
        os.dup2(null, 1)
        os.execv(command[0], command)
    _, status, used = os.wait4(child, 0)
    code = os.waitstatus_to_exitcode(status)
    if code not in (0, 3):  # 3: the plan cannot be done; it has its book as well
        sys.exit(f"{' '.join(command)} ends with {code}")
    return used.ru_maxrss / 1024.0, used.ru_utime + used.ru_stime


def main():
    if len(sys.argv) != 4:
        sys.exit(__doc__)
    program, samples, folder = sys.argv[1:]
    os.makedirs(folder, exist_ok=True)
    subprocess.run([sys.executable, WRITER, folder, "long-traverse"], check=True)
    trips = {name: os.path.join(samples, name, "trip.json") for name in ("saddle", "lake-chain")}
    trips["94 days"] = os.path.join(folder, "trip.json")
    wrong = 0
    for name, trip in trips.items():
        book = os.path.join(folder, "book.html")
        if os.path.exists(book):
            os.remove(book)
        plan_mb, plan_s = run([program, "plan", trip, "--format", "json"])
        book_mb, book_s = run([program, "book", trip, "-o", book])
        size = os.path.getsize(book)
        print(f"{name}: plan {plan_mb:.0f} MB, book {book_mb:.0f} MB of memory; book {book_s / plan_s:.2f} times "
              f"the time of plan; {size / 1e3:.0f} kB")
        if plan_mb < 5.0 or size < 50_000:
            print("WRONG: nothing was measured")
            wrong += 1
        if book_mb - plan_mb > MOST_MB:
            print(f"WRONG: the book takes {book_mb - plan_mb:.0f} MB more than the plan")
            wrong += 1
        if name in SIXTY_DAYS and size > MOST_BYTES:
            print(f"WRONG: the book is of {size} bytes")
            wrong += 1
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
