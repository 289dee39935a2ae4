"""Holds docs/trip.schema.json to a general validator of JSON Schema 2020-12 and to the reader.

usage: trip_schema.py ROOT READ_TRIPS

The schema itself must be valid, and every sample trip valid under it. Then one value after another
of trips that have every key of the schema is changed, renamed or taken out; READ_TRIPS tells where
the program's reader finds a problem, the validator whether the schema does:

- what the schema refuses the reader must refuse, so that no editor underlines what is right;
- what the reader refuses the schema must refuse, unless it is a text (a unit that does not fit, a
  name that nobody bears, a 30th of February: no schema sees these) or one of BEYOND_A_SCHEMA.
"""

import copy
import json
import pathlib
import re
import subprocess
import sys

from jsonschema import Draft202012Validator

NEEDED = {"tumpline": 1, "start": "2027-06-18",
          "route": {"tracks": ["a.gpx"], "legs": [{"name": "a leg"}], "places": [{"name": "Spit", "kind": "camp"}]},
          "party": [{"name": "Ada", "body": "68 kg"}], "kit": [{"item": "tent", "mass": "2 kg"}]}

# What the values below may be where any text or number of the schema would not do: names must be
# those of something, bounds of the reader hang on other values.
FITTING = {
    "/$schema": "../docs/trip.schema.json",
    "/time_zone": "Europe/Oslo",
    "/route/legs/0/instead_of": "another leg",
    "/route/legs/0/footprint": "10 cm",
    "/route/legs/0/lasts": "50 min",
    "/route/legs/0/speed": "2 km/h",
    "/route/legs/0/depth": "knee",
    "/route/legs/0/cart": False,
    "/route/legs/0/carry_by": "hands",
    "/party/0/body": "68 kg",
    "/party/0/carry_limit": "22 kg",
    "/party/0/portage_limit": "30 kg",
    "/party/0/height": "171 cm",
    "/craft/0/payload": "160 kg",
    "/craft/0/crew/0": "Ada",
    "/craft/0/waterplane": "1.3 m2",
    "/craft/0/freeboard": "20 cm",
    "/party/0/pack_length": "62 cm",
    "/craft_choices": [
        {"name": "another boat", "kind": "packraft", "mass": "2 kg", "payload": "160 kg", "seats": 1, "replaces": [],
         "price": 900, "calm_speed": "4 km/h", "bags": ["60 L", "60 L"], "wet": 0.1, "class": "II",
         "wind_ceiling": "20 km/h", "borne_by": 1, "rolled": "9 L", "rolls_up": True, "waterplane": "1.3 m2",
         "freeboard": "20 cm", "deck": "open", "thigh_straps": True, "suits": ["lake", "river", "river III", "sea"]},
        {"name": "another paddle", "kind": "paddle", "mass": "900 g", "replaces": [], "price": 200,
         "paddle": {"length": "220 cm", "pieces": 4, "packed_length": "62 cm", "stroke": "high"}}],
    "/kit/0/paddle": {"length": "220 cm", "pieces": 2, "packed_length": "112 cm", "stroke": "low"},
    "/kit/0/for": "Ada",
    "/kit/0/stays_with": "Ada",
    "/kit/0/cart_payload": "60 kg",
    "/kit/0/at_hand": False,
    "/kit/0/must": False,
    "/days/hours_limit": 24,
    "/connections": [
        {"what": "bus", "at": "a text", "departs": ["Mo 09:10", "We,Fr 17:40", "17:40"], "margin": "45 min"},
        {"what": "boat taxi", "to": "a text", "arrives": ["2027-06-18 07:35"]}],
    "/permits/0/for": "a leg",
    "/route/legs/0/fetch": "2 km",
    "/route/places/0/kind": "ford",
    "/route/legs/0/weather/hours/0": "13:00",
    "/route/legs/0/weather/hours/1": "18:00",
    "/route/legs/0/flow": {
        "gauge": "a bridge",
        "low": {"current": "3 km/h", "reading": "12 m3/s", "class": "I"},
        "normal": {"current": "5 km/h", "reading": "30 m3/s", "class": "I"},
        "high": {"current": "7 km/h", "reading": "70 m3/s", "class": "II"},
        "now": "21 m3/s", "runnable": ["8 m3/s", "90 m3/s"],
        "times": [{"hours": ["10:00", "14:00"], "now": "45 m3/s"}]},
    "/weather/hours/0": "13:00",
    "/weather/hours/1": "18:00",
    "/weather/legs/0": "a leg",
    "/leave": [{"at": "Spit", "day": 1, "pass": 1, "things": ["tent", {"food": "2 kg"}, {"fuel": "200 g"}, {"water": "2 L"}],
                "fetch_day": 2},
               {"at": "Spit", "day": 2, "all_but": ["tent"]}],
    "/days/halt/from": "12:00",
    "/days/halt/to": "16:00",
    "/food/shares/breakfast": 0.25,
    "/food/shares/trail": 0.25,
    "/food/shares/dinner": 0.5,
}

# The keys of a leg that fit one way of travel only.
FOR_TRAVEL = {
    "walk": {"terrain", "footprint", "night"},
    "portage": {"terrain", "footprint", "carries", "boat_on_carry", "carry_by", "cart"},
    "paddle": {"water", "current", "class", "river_bed", "drinkable", "shelter", "open_crossing", "scouts", "fetch"},
    "ride": {"lasts"},
    "line": {"class", "current", "drinkable", "river_bed", "scouts", "speed"},
    "wade": {"class", "current", "drinkable", "river_bed", "scouts", "speed", "depth"},
}

# A way afloat of its own: a river's levels stand in place of its current.
BY_LEVEL = {"flow"}

# The keys of a leg without a track.
UNDRAWN = {"length", "ascent", "descent"}

# Where the reader knows more than a schema can, since other values decide; and what they are.
BEYOND_A_SCHEMA = [
    ("/kit/./at_hand = true", "what is at hand lies in no bag"),
    ("/route/legs/./carry_by = (two|cart)", "there must be what two may carry, or a cart that rolls"),
    ("/kit/./must = true", "what must come is not left"),
    ("/route/legs/./cart = true", "there must be a cart, and ground on which it rolls"),
    ("/food/shares/", "the shares must sum to 1"),
    ("/leave/./(day|fetch_day) = ", "nothing is fetched before it is left"),
    ("/route/legs/./travel taken out", "the keys of a leg must fit its way of travel"),
    ("/route/legs/./terrain taken out", "feet sink into snow only"),
    ("/route/legs/8", "an alternative must be one to a leg that there is"),
]

VALUES = [None, True, False, 0, 1, -1, 2, 3, 7, 0.5, 1.5, 45, 1000, 1e9, -1e9,
          "", " ", "x", "1", "1 kg", "1 km", "1 km/h", "2 L", "18 C", "25 min", "4.4 kcal/g", "2027-06-18",
          "2027-13-01", "08:00", "25:00", "II", "VII", "auto", "energy", "party", "lake", "walk", "camp",
          "two\nlines", "W" * 200, "W" * 201,
          [], [1], ["x"], ["Ada"], [1, 2], [200, 100], [0, "x"], ["70 L"], ["70 L", "70 L"],
          ["70 L", "70 L", "70 L"], ["monday"], ["moonday"], ["2027-06-20"], [[]], [{}], [None],
          {}, {"x": 1}, {"name": "Ada"}, {"rain": True}, [{"rain": True}, {"class": "III"}]]


def without_comments(text):
    """JSON without its comments; texts are left alone."""
    pattern = r'("(?:\\.|[^"\\])*")|//[^\n]*|/\*.*?\*/'
    return re.sub(pattern, lambda match: match.group(1) or "", text, flags=re.DOTALL)


class Example:
    """A value with everything in it that the schema knows."""

    def __init__(self, schema):
        self.schema = schema

    def resolved(self, part):
        while "$ref" in part:
            name = part["$ref"].rsplit("/", 1)[1]
            part = {**self.schema["$defs"][name], **{k: v for k, v in part.items() if k != "$ref"}}
        return part

    def of(self, part, place):
        if place in FITTING:
            return FITTING[place]
        part = self.resolved(part)
        for key in ("const", "enum", "examples"):
            if key in part:
                return part[key] if key == "const" else part[key][0]
        if "anyOf" in part and "type" not in part:
            return self.of(part["anyOf"][0], place)
        kind = part["type"]
        if place == "/route/legs":
            leg = self.of(part["items"], place + "/0")
            own = set().union(*FOR_TRAVEL.values()) | UNDRAWN | BY_LEVEL
            legs = [{key: value for key, value in leg.items() if key not in own - keys}
                    for keys in FOR_TRAVEL.values()]
            return [{**one, "travel": travel, "name": travel, **({"terrain": "snow"} if "terrain" in one else {})}
                    for one, travel in zip(legs, FOR_TRAVEL)] + [
                        {"name": "levels", "travel": "paddle", "water": "river", **{key: leg[key] for key in sorted(BY_LEVEL)}},
                        {"name": "undrawn", "travel": "walk", **{key: leg[key] for key in sorted(UNDRAWN)}},
                        {"name": "another leg"}]
        if kind == "object":
            return {key: self.of(value, f"{place}/{key}") for key, value in part["properties"].items()}
        if kind == "array":
            if "prefixItems" in part:
                return [self.of(item, f"{place}/{i}") for i, item in enumerate(part["prefixItems"])]
            count = max([1] + [choice.get("maxItems", 0) for choice in part.get("anyOf", [])])
            return [self.of(part["items"], f"{place}/{i}") for i in range(count)]
        if kind == "string":
            return "a text"
        return {"number": part.get("minimum", 1), "integer": part.get("minimum", 1), "boolean": True}[kind]


def places_in(value, place):
    """The place of every value in `value`, it itself first."""
    yield place
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from places_in(inner, f"{place}/{key}")
    elif isinstance(value, list):
        for i, inner in enumerate(value):
            yield from places_in(inner, f"{place}/{i}")


def parent_of(trip, place):
    """The object or list in which the value at `place` stands, and under which key."""
    *parents, last = place.strip("/").split("/")
    at = trip
    for part in parents:
        at = at[int(part)] if isinstance(at, list) else at[part]
    return at, int(last) if isinstance(at, list) else last


def changed(trip, place, change):
    trip = copy.deepcopy(trip)
    at, key = parent_of(trip, place)
    change(at, key)
    return trip


def put(value):
    def change(at, key):
        at[key] = value

    return change


def rename(at, key):
    at[key + "x"] = at.pop(key)


def take_out(at, key):
    del at[key]


def with_section(section, value):
    return {**NEEDED, section: value}


def cases(schema):
    """Pairs of what was done and the trip that came of it, and which values were changed."""
    example = Example(schema)
    for section, part in schema["properties"].items():
        whole = with_section(section, example.of(part, f"/{section}"))
        yield f"/{section} as it is", whole, None
        for place in places_in(whole[section], f"/{section}"):
            at, key = parent_of(whole, place)
            for value in VALUES:
                yield f"{place} = {json.dumps(value)[:60]}", changed(whole, place, put(value)), value
            yield f"{place} taken out", changed(whole, place, take_out), None
            if isinstance(at, dict):
                yield f"{place} renamed", changed(whole, place, rename), None


def all_keys(schema):
    """Every key of every object of the schema, by the object's name."""
    objects = {"trip": schema, **schema["$defs"]}
    return {(name, key) for name, part in objects.items() for key in part.get("properties", {})}


def tried_keys(schema):
    """The same, of those objects that the trips above reach."""
    found, example = set(), Example(schema)

    def look(part, name):
        if "$ref" in part:
            name = part["$ref"].rsplit("/", 1)[1]
        part = example.resolved(part)
        for key, inner in part.get("properties", {}).items():
            if (name, key) not in found:
                found.add((name, key))
                look(inner, name)
        for inner in [part.get("items")] + part.get("prefixItems", []) + part.get("anyOf", []):
            if isinstance(inner, dict):
                look(inner, name)

    look(schema, "trip")
    return found


def main(root, read_trips):
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
    faults += [f"never tried: {key}" for key in sorted(all_keys(schema) - tried_keys(schema))]

    tried = list(cases(schema))
    lines = "".join(json.dumps(trip) + "\n" for _, trip, _ in tried)
    answer = subprocess.run([read_trips], input=lines, capture_output=True, check=True, encoding="utf-8")
    answers = [json.loads(line) for line in answer.stdout.splitlines()]
    if len(answers) != len(tried):
        faults.append(f"{len(answers)} answers to {len(tried)} trips")
    both_refuse = 0
    for (what, trip, value), problems in zip(tried, answers):
        right = validator.is_valid(trip)
        both_refuse += not right and bool(problems)
        if what.endswith("as it is") and (problems or not right):
            faults.append(f"{what}: schema: {right}; reader: {problems}")
        elif not right and not problems:
            faults.append(f"the schema refuses what the reader takes: {what}")
        elif right and problems and not isinstance(value, (str, list)):
            if not any(re.match(pattern, what) for pattern, _ in BEYOND_A_SCHEMA):
                faults.append(f"the reader refuses at {problems[0]} what the schema takes: {what}")
    if both_refuse < len(tried) / 4:
        faults.append(f"only {both_refuse} of {len(tried)} changes were refused by both")
    for fault in faults[:60]:
        print(fault)
    print(f"{len(tried)} trips, {both_refuse} refused by both, {len(faults)} faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(pathlib.Path(sys.argv[1]), sys.argv[2]))
