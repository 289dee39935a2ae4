#!/usr/bin/env python3
"""Writes made-up trips that are long, heavy or crowded, the same on every machine.

    tests/bench/write_trips.py FOLDER long-traverse
    tests/bench/write_trips.py FOLDER heavy [--days 60] [--legs 500] [--people 12] [--things 60]
                                            [--portages 40] [--limit "14 kg"]
    tests/bench/write_trips.py FOLDER crowded [--places 0] [--appointments 0] [--people 2] [--kit 0]

`long-traverse` is 94 days and about 2,095 km for two: 240 legs of 300 points, 308 places. `heavy` is a trip
on which packs and carries are over their limits. `crowded` is one day with far too many of something. Each
writes trip.json and track.gpx into FOLDER.
"""
import argparse
import json
import math
import os
import random

EARTH_M = 6371008.8


class Track:
    """A line that bends as ways do, out in the ocean, where nobody has ever walked."""

    def __init__(self, seed, points_of_leg):
        self.draw = random.Random(seed)
        self.points_of_leg = points_of_leg
        self.lat, self.lon, self.height = 30.0, -40.0, 400.0
        self.legs = []

    def leg(self, name, travel, length_m):
        step_m = length_m / (self.points_of_leg - 1)
        points = [(self.lat, self.lon, self.height)]
        heading = 0.35 * math.sin(0.7 * len(self.legs))
        for index in range(self.points_of_leg - 1):
            turned = heading + 0.8 * math.sin(0.11 * index + len(self.legs))
            self.lat += math.degrees(step_m * math.cos(turned) / EARTH_M)
            self.lon += math.degrees(step_m * math.sin(turned) / EARTH_M
                                     / math.cos(math.radians(self.lat)))
            if travel != "paddle":
                self.height += step_m * 0.03 * math.sin(0.09 * index)
            points.append((self.lat, self.lon, self.height))
        self.legs.append((name, points))

    def at(self, leg, share):
        points = self.legs[leg][1]
        lat, lon, _ = points[int(share * (len(points) - 1))]
        return [round(lon, 7), round(lat, 7)]

    def write(self, path):
        with open(path, "w", encoding="utf-8") as out:
            out.write('<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" creator="bench" '
                      'xmlns="http://www.topografix.com/GPX/1/1">\n')
            for name, points in self.legs:
                out.write(f"<trk><name>{name}</name><trkseg>\n")
                for lat, lon, height in points:
                    out.write(f'<trkpt lat="{lat:.7f}" lon="{lon:.7f}"><ele>{height:.1f}</ele>'
                              '</trkpt>\n')
                out.write("</trkseg></trk>\n")
            out.write("</gpx>\n")


def leg_of(number, travel):
    leg = {"name": f"leg {number + 1}", "travel": travel, "track": f"leg {number + 1}"}
    if travel == "paddle":
        leg["water"] = "lake"
    return leg


def trip_of(name, legs, places, party, nights):
    trip = {
        "tumpline": 1,
        "name": name,
        "start": "2027-06-05",
        "time_zone": "UTC",
        "route": {"tracks": ["track.gpx"], "legs": legs, "places": places},
        "party": party,
        "days": {"set_off": "08:00", "nights": nights} if nights else {"set_off": "08:00"},
        "weather": {"rain": False, "high": "16 C", "low": "6 C", "wind": "3 m/s", "wind_from": 270},
    }
    return trip


def boats_for(party):
    return [{"name": f"boat {k + 1}", "kind": "packraft", "mass": "3.2 kg", "crew": [m["name"]]}
            for k, m in enumerate(party)]


def long_traverse(_):
    legs, days, places = [], 94, []
    track = Track(9, 300)
    ways = ["walk", "walk", "paddle", "walk", "portage", "paddle"]
    for number in range(240):
        travel = ways[number % len(ways)]
        track.leg(f"leg {number + 1}", travel, 2_000.0 if travel == "portage" else 10_048.0)
        legs.append(leg_of(number, travel))
    nights = []
    for night in range(1, days):
        where = night * 240 / days
        place = {"name": f"camp {night}", "kind": "resupply" if night % 9 == 0 else "camp",
                 "at": track.at(int(where), where % 1.0)}
        if place["kind"] == "camp":
            place["water"] = True
        places.append(place)
        nights.append(place["name"])
    kinds = ["water", "exit", "hazard", "water", "camp"]
    for other in range(308 - len(places)):
        where = (other + 0.37) * 240 / 216.0
        places.append({"name": f"place {other + 1}", "kind": kinds[other % len(kinds)],
                       "at": track.at(min(239, int(where)), where % 1.0)})
    party = [{"name": "Ada", "body": "66 kg", "carry_limit": "24 kg"},
             {"name": "Bram", "body": "81 kg", "carry_limit": "28 kg"}]
    trip = trip_of("The long traverse", legs, places, party, nights)
    trip["craft"] = boats_for(party)
    trip["kit"] = [{"item": f"thing {k + 1}", "mass": f"{100 + 37 * k} g"} for k in range(24)]
    return trip, track


def heavy(asked):
    legs, places, nights = [], [], []
    track = Track(11, 20)
    apart = max(3, asked.legs // asked.portages)
    for number in range(asked.legs):
        travel = {0: "paddle", 1: "portage", 2: "paddle"}.get(number % apart, "walk")
        if number // apart >= asked.portages:
            travel = "walk"
        track.leg(f"leg {number + 1}", travel, 900.0 if travel == "portage" else 2_200.0)
        legs.append(leg_of(number, travel))
    for night in range(1, asked.days):
        where = night * asked.legs / asked.days
        places.append({"name": f"camp {night}", "kind": "resupply" if night % 15 == 0 else "camp",
                       "at": track.at(int(where), where % 1.0)})
        nights.append(f"camp {night}")
    party = [{"name": f"member {k + 1}", "body": f"{58 + 3 * (k % 9)} kg",
              "carry_limit": asked.limit} for k in range(asked.people)]
    trip = trip_of("Too heavy", legs, places, party, nights)
    trip["craft"] = boats_for(party)
    draw = random.Random(5)
    trip["kit"] = []
    for k in range(asked.people * asked.things):
        thing = {"item": f"thing {k + 1}", "mass": f"{draw.randrange(60, 600)} g"}
        if k % 3 != 0:
            thing["for"] = party[k % asked.people]["name"]
        trip["kit"].append(thing)
    return trip, track


def crowded(asked):
    track = Track(3, 300)
    track.leg("leg 1", "walk", 14_000.0)
    places = [{"name": f"place {k + 1}", "kind": "camp" if k % 2 else "water",
               "at": track.at(0, (k % 299) / 299)} for k in range(asked.places)]
    if asked.appointments and not places:
        places = [{"name": "place 1", "kind": "camp", "at": track.at(0, 0.5)}]
    party = [{"name": f"member {k + 1}", "body": f"{58 + 3 * (k % 9)} kg"}
             for k in range(asked.people)]
    trip = trip_of("A crowd", [leg_of(0, "walk")], places, party, [])
    trip["kit"] = [{"item": f"thing {k + 1}", "mass": f"{5 + 7 * (k % 31)} g"}
                   for k in range(asked.kit)]
    trip["appointments"] = [{"what": f"appointment {k + 1}", "at": places[k % len(places)]["name"],
                             "day": 1, "by": f"{10 + k % 9}:{k % 60:02}"}
                            for k in range(asked.appointments)]
    return trip, track


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    parser.add_argument("folder")
    kinds = parser.add_subparsers(dest="kind", required=True)
    kinds.add_parser("long-traverse")
    one = kinds.add_parser("heavy")
    for key, value in {"days": 60, "legs": 500, "people": 12, "things": 60, "portages": 40}.items():
        one.add_argument(f"--{key}", type=int, default=value)
    one.add_argument("--limit", default="14 kg")
    one = kinds.add_parser("crowded")
    for key, value in {"places": 0, "appointments": 0, "people": 2, "kit": 0}.items():
        one.add_argument(f"--{key}", type=int, default=value)
    asked = parser.parse_args()
    make = {"long-traverse": long_traverse, "heavy": heavy, "crowded": crowded}[asked.kind]
    trip, track = make(asked)
    os.makedirs(asked.folder, exist_ok=True)
    track.write(os.path.join(asked.folder, "track.gpx"))
    with open(os.path.join(asked.folder, "trip.json"), "w", encoding="utf-8") as out:
        json.dump(trip, out, indent=1)
        out.write("\n")


if __name__ == "__main__":
    main()
