"""Holds docs/trip.schema.json to a general validator of JSON Schema 2020-12.

usage: trip_schema.py ROOT

The schema itself must be valid; every sample trip must be valid under it; each wrong value below
must not be. Leaves with code 77, which CTest counts as skipped, where Python has no validator.
"""

import copy
import json
import pathlib
import re
import sys

try:
    from jsonschema import Draft202012Validator
except ImportError:
    print("skipped: Python's jsonschema (Debian: python3-jsonschema) is not installed")
    sys.exit(77)


def without_comments(text):
    """JSON without its comments; texts are left alone."""
    pattern = r'("(?:\\.|[^"\\])*")|//[^\n]*|/\*.*?\*/'
    return re.sub(pattern, lambda match: match.group(1) or "", text, flags=re.DOTALL)


def with_value(trip, pointer, value):
    """A copy of the trip with one value changed."""
    changed = copy.deepcopy(trip)
    *parents, last = pointer.strip("/").split("/")
    at = changed
    for part in parents:
        at = at[int(part)] if isinstance(at, list) else at.setdefault(part, {})
    if isinstance(at, list):
        at[int(last)] = value
    else:
        at[last] = value
    return changed


WRONG = [
    ("/tumpline", 2),
    ("/bogus", 1),
    ("/start", "18.06.2027"),
    ("/party", []),
    ("/party/0/body", 68),
    ("/party/0/body", "68"),
    ("/party/0/pace", 0),
    ("/party/0/sexe", "female"),
    ("/party/0", {"name": "Ada"}),
    ("/route/tracks", []),
    ("/route/places/0/kind", "campsite"),
    ("/route/places/0/at", [13.1]),
    ("/route/places/0/at", [13.1, 95]),
    ("/route/legs/0/travel", "fly"),
    ("/route/legs/0/class", "VII"),
    ("/route/legs/0/carries", 4),
    ("/kit/0/mass", 1.9),
    ("/kit/0/when", {"clas": "III"}),
    ("/kit/0/when", {}),
    ("/craft/0/bags", ["70 L"]),
    ("/days/hours", "8 h"),
    ("/days/set_off", "25:00"),
    ("/days/nights", "Birch spit"),
    ("/food/ration", 700),
    ("/models/walking", "swis-signpost"),
    ("/weather/rain", "yes"),
]

RIGHT = [
    ("/$schema", "../docs/trip.schema.json"),
    ("/days/nights", "auto"),
    ("/food/ration", "700 g"),
    ("/kit/0/when", [{"class": "III-"}, {"rain": True}]),
    ("/party/0/body", "7 st 4 lb"),
    ("/route/legs/0/class", 3),
    ("/route/legs/0/current", "-2 km/h"),
    ("/craft/0/bags", []),
]


def main(root):
    schema = json.loads((root / "docs/trip.schema.json").read_text(encoding="utf-8"))
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema)
    faults = []
    files = sorted(root.glob("sample-routes/*/trip.json"))
    for file in files:
        trip = json.loads(without_comments(file.read_text(encoding="utf-8")))
        faults += [f"{file}: {error.json_path}: {error.message}" for error in validator.iter_errors(trip)]
    if not files:
        faults.append("no sample trip was found")
    saddle = root / "sample-routes/saddle/trip.json"
    trip = json.loads(without_comments(saddle.read_text(encoding="utf-8")))
    for pointer, value in WRONG:
        if validator.is_valid(with_value(trip, pointer, value)):
            faults.append(f"taken as right: {pointer} = {value!r}")
    for pointer, value in RIGHT:
        if not validator.is_valid(with_value(trip, pointer, value)):
            faults.append(f"taken as wrong: {pointer} = {value!r}")
    for fault in faults:
        print(fault)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(pathlib.Path(sys.argv[1])))
