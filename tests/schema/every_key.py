"""Every key of the trip file matters: two values of it give two plans.

usage: every_key.py ROOT PROGRAM

PROGRAM is run_commands, which runs many command lines in one process, or tumpline itself.

Walks docs/trip.schema.json. For each key that holds a value there is a row below: what is set
beside it, two values, and the command whose JSON must differ. A key that moves nothing on purpose
stands in INFORMATION_ONLY with its reason. A key of the schema with no row fails, and so does a row
for a key that the schema does not have.
"""

import concurrent.futures
import json
import pathlib
import re
import subprocess
import sys
import tempfile

# The list of assumptions changes with every key that is given, and the others repeat the file.
NOT_COUNTED = ("defaults", "file", "version")

INFORMATION_ONLY = {
    "/$schema": "for editors",
    "/units": "what people read; the JSON of a plan is SI always",
    "/tumpline": "the version of the file's form; there is one",
    "/route/legs/*/source": "where the track is from, for those who read the file",
}

A, B = "Shelf camp", "Gravel bar"
CROSSING = "/route/legs/2"  # across a lake
CARRY = "/route/legs/4"
RIVER = "/route/legs/5"
WALK = "/route/legs/1"
PLACES = "/route/places"
NO_CURRENT = [RIVER + "/current=null"]
TENT = "/kit/0"
NO_LINE = [WALK + "/track=null"]
TWO = ['/map/layers=[{"file": "two.kml", "as": "road"}]']
LAKES = ['/map/layers=[{"file": "lakes.geojson"}]']

BUS = '/connections=[{"what": "bus", "at": "Quarry stop", "departs": ["Mo 09:10"]}]'
TAXI = '/connections=[{"what": "taxi", "to": "Road end", "arrives": ["07:00"]}]'
LAYBY = PLACES + '/1={"name": "Lay-by", "kind": "exit", "at": "km 0.1 before the end of Road bridge to Quarry stop"}'
TRAILHEAD = PLACES + '/1={"name": "Trailhead", "kind": "exit", "at": "km 0.1"}'
PERMIT = '/permits=[{"for": "Shelf camp"}]'

# A weather of its own for the rows of its keys: a list's second entry lies on the first.
BREEZE = '/weather={"high": "31 C", "wind": "5 m/s", "humidity": 0.3}'
LISTED = '/weather=[{"high": "15 C", "rain": false, "wind": "2 m/s"}, {"high": "31 C", "wind": "5 m/s", "humidity": 0.3}]'

FLOW = RIVER + '/flow={"gauge": "bridge", "low": {"current": "3 km/h", "reading": "5 m3/s"}, "normal": {"current": "5 km/h", "reading": "10 m3/s"}, "high": {"current": "7 km/h", "reading": "30 m3/s"}}'
RELEASE = RIVER + '/flow/times=[{"hours": ["06:00", "22:00"], "now": "high"}]'

# There and back twice by a camp: on day 2 up to the spring and back, on day 3 once more and home.
BACK_AND_FORTH = [
    "/route/legs=" + json.dumps([
        {"name": name, "travel": "walk", "length": "8 km", "ascent": "100 m", "descent": "100 m", "from": here, "to": there}
        for name, here, there in (("in", "Road end", A), ("up", A, "Shelf spring"), ("down", "Shelf spring", A),
                                  ("up again", A, "Shelf spring"), ("down again", "Shelf spring", A), ("out", A, "Quarry stop"))]),
    "/route/elevation=null", "/appointments=[]", "/craft=[]", f'/days/nights=["{A}", "{A}", "{A}"]']
LEAVE = BACK_AND_FORTH + [f'/leave=[{{"at": "{A}", "day": 2, "things": ["tent"]}}]']

# What each key of the weather does: two values, and what is set beside them.
WEATHER_KEYS = {
    "high": ("16 C", "36 C", []),
    "low": ("5 C", "1 C", [TENT + "/when/night_below=3 C"]),
    "wind": ("10 km/h", "20 km/h", []),
    "wind_from": ("240", "60", []),
    "gusts": ("6 m/s", "16 m/s", []),
    "rain": ("true", "false", [TENT + "/when/rain=true"]),
    "humidity": ("0.2", "0.9", []),
    "water": ("9 C", "19 C", []),
    "snow": ("true", "false", [TENT + "/when/snow=true"]),
    "snow_depth": ("0 cm", "20 cm", [TENT + "/when/snow=true"]),
    "days/*": ("[1]", "[2]", []),
    "dates": ('["2027-06-18", "2027-06-18"]', '["2027-06-18", "2027-06-30"]', []),
    "hours": ('["08:00", "09:00"]', '["08:00", "20:00"]', []),
    "legs/*": ('["Across Long Tarn"]', '["Lower river"]', []),
}


def weather_rows(key, at, base, beside, without=()):
    """The rows of one object of weather: all of it is set to `base`, then one key to two values."""
    rows = {}
    for name, (one, other, more) in WEATHER_KEYS.items():
        if name not in without:
            pointer = f"{at}/{name.split('/')[0]}"
            rows[f"{key}/{name}"] = (pointer, [*beside, base, *more], one, other, "plan")
    return rows


CHOICE = '/craft_choices=[{"name": "light boat", "mass": "2.1 kg"}]'

PADDLE = '/kit/6/paddle={"length": "220 cm", "packed_length": "65 cm"}'
PADDLE_CHOICE = '/craft_choices=[{"name": "short paddle", "kind": "paddle", "mass": "1 kg", "paddle": {}}]'

# key of the schema: (pointer, what is set beside it, one value, another, command)
ROWS = {
    "/name": ("/name", [], "One name", "Another name", "plan"),
    "/start": ("/start", [], "2027-06-18", "2027-09-18", "plan"),
    "/time_zone": ("/time_zone", [], "Europe/Oslo", "UTC", "plan"),
    "/route/tracks/*": ("/route/tracks/0", [], "saddle.gpx", "wider.gpx", "plan"),
    "/route/elevation/*": ("/route/elevation", [], '["saddle-dem.tif"]', "[]", "plan"),
    "/route/step": ("/route/step", [], "20 m", "200 m", "plan"),
    "/route/ascent_threshold": ("/route/ascent_threshold", [], "1 m", "40 m", "plan"),
    "/route/recorder": ("/route/recorder", ["/route/elevation=[]"], "gnss", "barometer", "plan"),
    "/route/legs/*/name": (WALK + "/name", [], "Over the top", "Over the saddle", "plan"),
    "/route/legs/*/travel": (CARRY + "/travel", [CARRY + "/carries=null"], "walk", "portage", "plan"),
    "/route/legs/*/track": (RIVER + "/track", [], "upper river", "lower river", "plan"),
    "/route/legs/*/length": (WALK + "/length", NO_LINE, "14 km", "19 km", "plan"),
    "/route/legs/*/ascent": (WALK + "/ascent", [*NO_LINE, WALK + "/length=14 km", WALK + "/descent=90 m"], "300 m", "900 m", "plan"),
    "/route/legs/*/descent": (WALK + "/descent", [*NO_LINE, WALK + "/length=14 km", WALK + "/ascent=90 m"], "300 m", "900 m", "plan"),
    "/route/legs/*/from": (RIVER + "/from", [RIVER + "/track=all", RIVER + "/to=Gravel bar"], "Fall pool", "Ledge rapid", "plan"),
    "/route/legs/*/to": (RIVER + "/to", [RIVER + "/track=all", RIVER + "/from=Fall pool"], "Gravel bar", "Ledge rapid", "plan"),
    "/route/legs/*/terrain": (WALK + "/terrain", [], "path", "bog", "plan"),
    "/route/legs/*/water": (CROSSING + "/water", [], "lake", "river", "plan"),
    "/route/legs/*/current": (RIVER + "/current", [], "5 km/h", "4 km/h", "plan"),
    "/route/legs/*/class": (RIVER + "/class", [], "II", "IV", "plan"),
    "/route/legs/*/carries": (CARRY + "/carries", [], "1", "2", "plan"),
    "/route/legs/*/boat_on_carry": (CARRY + "/boat_on_carry", [], "rolled", "inflated", "plan"),
    "/route/legs/*/carry_by": (
        CARRY + "/carry_by", [CARRY + "/cart=true", TENT + "/cart_payload=60 kg"], "hands", "cart", "plan"),
    "/route/legs/*/cart": (CARRY + "/cart", [TENT + "/cart_payload=60 kg"], "false", "true", "plan"),
    "/route/legs/*/river_bed/type": (
        RIVER + "/river_bed/type", NO_CURRENT, "clean-straight-full", "winding-pools-shoals", "plan"),
    "/route/legs/*/river_bed/depth": (RIVER + "/river_bed/depth", NO_CURRENT, "50 cm", "90 cm", "plan"),
    "/route/legs/*/river_bed/roughness": (RIVER + "/river_bed/roughness", NO_CURRENT, "0.03", "0.06", "plan"),
    "/route/legs/*/drinkable": (CROSSING + "/drinkable", [], "true", "false", "plan"),
    "/route/legs/*/shelter": (CROSSING + "/shelter", ["/weather/wind=6 m/s"], "0", "0.8", "plan"),
    "/route/legs/*/open_crossing": (CROSSING + "/open_crossing", [], "false", "true", "plan"),
    "/route/legs/*/footprint": (WALK + "/footprint", [WALK + "/terrain=snow"], "5 cm", "25 cm", "plan"),
    "/route/legs/*/lasts": (
        WALK + "/lasts", [*NO_LINE, WALK + "/travel=ride", WALK + "/terrain=null"], "50 min", "90 min", "plan"),
    "/route/legs/*/speed": (RIVER + "/speed", [RIVER + "/travel=line"], "1 km/h", "2 km/h", "plan"),
    "/route/legs/*/depth": (RIVER + "/depth", [RIVER + "/travel=wade"], "knee", "90 cm", "plan"),
    "/route/legs/*/scouts": (RIVER + "/scouts", [], "0", "3", "plan"),
    "/route/legs/*/night": (WALK + "/night", [], "false", "true", "plan"),
    "/route/legs/*/instead_of": (
        "/route/legs/3/instead_of", [], "Across Long Tarn", "Fall carry", "plan"),
    "/route/legs/*/note": (WALK + "/note", [], "Loose stones", "Wet stones", "plan"),
    "/route/places/*/name": (PLACES + "/0/name", [PLACES + "/0/at=[4.0, 60.9]"], "Road end", "The road", "plan"),
    "/route/places/*/kind": (PLACES + "/7/kind", [], "hazard", "cache", "plan"),
    "/route/places/*/at": (PLACES + "/2/at", [], None, "[4.0, 60.9]", "plan"),
    "/route/places/*/water": (PLACES + "/8/water", [], "true", "false", "plan"),
    "/route/places/*/closed/*": (PLACES + "/3/closed", [], "[]", '["2027-06-18"]', "plan"),
    "/route/places/*/closed_weekdays/*": (PLACES + "/3/closed_weekdays", [], "[]", '["friday"]', "plan"),
    "/route/places/*/holds": (PLACES + "/3/holds", [], "9", "1", "plan"),
    "/route/places/*/food": (PLACES + "/5/food", [PLACES + "/5/kind=cache"], "9 kg", "1 kg", "plan"),
    "/route/places/*/note": (PLACES + "/7/note", [], "A ledge", "A long ledge", "plan"),
    "/party/*/name": ("/kit/0/for", [], "Ada", "Bram", "plan"),  # a name is what others refer to
    "/party/*/body": ("/party/0/body", [], "68 kg", "58 kg", "plan"),
    "/party/*/height": ("/party/0/height", [], "171 cm", "161 cm", "plan"),
    "/party/*/age": ("/party/0/age", [], "41", "61", "plan"),
    "/party/*/sex": ("/party/0/sex", [], "female", "male", "plan"),
    "/party/*/carry_limit": ("/party/0/carry_limit", [], "22 kg", "12 kg", "plan"),
    "/party/*/portage_limit": ("/party/0/portage_limit", [], "30 kg", "12 kg", "plan"),
    "/party/*/pace": ("/party/1/pace", [], "1.05", "0.8", "plan"),
    "/party/*/level_speed": (
        "/party/1/level_speed",
        ["/models/walking=constant", "/party/0/level_speed=5 km/h", "/party/1/pace=null"],
        "4 km/h", "3 km/h", "plan"),
    "/party/*/class": ("/party/0/class", [], "I", "III", "plan"),
    "/party/*/fitness": ("/party/0/fitness", [], "15 min", "40 min", "plan"),
    "/craft/*/name": ("/craft/0/name", [], "red boat", "green boat", "plan"),
    "/craft/*/kind": ("/craft/0/kind", [], "packraft", "kayak", "plan"),
    "/craft/*/mass": ("/craft/0/mass", [], "3.3 kg", "2.3 kg", "plan"),
    "/craft/*/payload": ("/craft/0/payload", [], "160 kg", "60 kg", "plan"),
    "/craft/*/crew/*": ("/craft/0/crew", ['/craft/1/crew=["Bram"]'], '["Ada"]', '["Ada", "Bram"]', "check"),
    "/craft/*/calm_speed": ("/craft/0/calm_speed", [], "4.5 km/h", "3.5 km/h", "plan"),
    "/craft/*/bags": ("/craft/0/bags", ["/kit/13/volume=12 L"], '["70 L", "70 L"]', '["2 L", "2 L"]', "plan"),
    "/craft/*/bags/*": ("/craft/0/bags/0", ["/kit/13/volume=12 L"], "70 L", "1 L", "plan"),
    "/craft/*/wet": ("/craft/0/wet", [], "0.02", "0.3", "plan"),
    "/craft/*/class": ("/craft/0/class", [], "I", "III", "plan"),
    "/craft/*/wind_ceiling": ("/craft/0/wind_ceiling", ["/weather/wind=6 m/s"], "9 m/s", "2 m/s", "plan"),
    "/craft/*/rolls_up": ("/craft/0/rolls_up", [], "true", "false", "plan"),
    "/craft/*/waterplane": ("/craft/0/waterplane", ["/craft/0/freeboard=20 cm"], "1.3 m2", "1.0 m2", "plan"),
    "/craft/*/freeboard": ("/craft/0/freeboard", ["/craft/0/waterplane=1.3 m2"], "20 cm", "9 cm", "plan"),
    "/party/*/pack_volume": ("/party/0/pack_volume", [TENT + "/volume=9 L"], "60 L", "3 L", "plan"),
    "/party/*/pack_length": ("/party/0/pack_length", [PADDLE], "70 cm", "40 cm", "plan"),
    "/craft/*/thigh_straps": ("/craft/0/thigh_straps", [RIVER + "/class=III"], "true", "false", "plan"),
    "/craft/*/deck": ("/craft/0/deck", [], "open", "spray-deck", "plan"),
    "/craft/*/suits/*": ("/craft/0/suits", [], '["lake", "river"]', '["river"]', "plan"),
    "/kit/*/lies": (TENT + "/lies", [TENT + "/for=Ada"], "bow", "stern", "plan"),
    "/kit/*/paddle/length": ("/kit/6/paddle/length", [PADDLE], "210 cm", "230 cm", "plan"),
    "/kit/*/paddle/pieces": ("/kit/6/paddle/pieces", [PADDLE], "2", "4", "plan"),
    "/kit/*/paddle/packed_length": ("/kit/6/paddle/packed_length", [PADDLE], "62 cm", "60 cm", "plan"),
    "/kit/*/paddle/stroke": ("/kit/6/paddle/stroke", [PADDLE], "low", "high", "plan"),
    "/craft/*/rolled": ("/craft/0/rolled", ["/party/0/pack_volume=60 L"], "9 L", "19 L", "plan"),
    "/food/container": ("/food/container", ["/food/volume=2 L/kg"], "30 L", "3 L", "plan"),
    "/craft/*/borne_by": ("/craft/0/borne_by", [], "1", "2", "plan"),
    **{f"/craft_choices/*/{key}": (f"/craft_choices/0/{key}", [CHOICE, *more], one, other, "craft")
       for key, one, other, more in (
           ("name", "light boat", "lighter boat", []),
           ("kind", "packraft", "kayak", []),
           ("mass", "2.1 kg", "3.1 kg", []),
           ("payload", "160 kg", "170 kg", []),
           ("calm_speed", "4 km/h", "5 km/h", []),
           ("wet", "0.1", "0.4", []),
           ("class", "II", "III", []),
           ("wind_ceiling", "20 km/h", "25 km/h", []),
           ("rolled", "1 L", "200 L", ["/party/0/pack_volume=60 L", "/party/1/pack_volume=60 L"]),
           ("borne_by", "1", "2", ["/craft_choices/0/mass=40 kg", "/craft_choices/0/kind=solo-canoe"]),
           ("rolls_up", "true", "false", []),
           ("waterplane", "3 m2", "0.3 m2", ["/craft_choices/0/freeboard=16 cm"]),
           ("freeboard", "20 cm", "2 cm", ["/craft_choices/0/waterplane=1.3 m2"]),
           ("deck", "open", "spray-deck", []),
           ("thigh_straps", "true", "false", [RIVER + "/class=III"]),
           ("seats", "1", "2", []),
           ("price", "900", "1000", []))},
    "/craft_choices/*/bags": ("/craft_choices/0/bags", [CHOICE, "/kit/13/volume=12 L"], '["70 L", "70 L"]', '["2 L", "2 L"]', "craft"),
    "/craft_choices/*/bags/*": ("/craft_choices/0/bags", [CHOICE, "/kit/13/volume=12 L"], '["70 L", "70 L"]', '["1 L", "1 L"]', "craft"),
    "/craft_choices/*/suits/*": ("/craft_choices/0/suits", [CHOICE], '["lake", "river"]', '["river"]', "craft"),
    **{f"/craft_choices/*/paddle/{key}": (f"/craft_choices/0/paddle/{key}", [PADDLE, PADDLE_CHOICE], one, other, "craft")
       for key, one, other in (("length", "210 cm", "230 cm"), ("pieces", "2", "4"),
                               ("packed_length", "62 cm", "60 cm"), ("stroke", "low", "high"))},
    "/craft_choices/*/replaces/*": ("/craft_choices/0/replaces", [CHOICE], '["red boat"]', '["blue boat"]', "craft"),
    "/kit/*/borne_by": (TENT + "/borne_by", [], "1", "2", "plan"),
    "/kit/*/cart_payload": (TENT + "/cart_payload", [CARRY + "/cart=true"], "60 kg", "5 kg", "plan"),
    "/kit/*/item": (TENT + "/item", [], "tent", "big tent", "plan"),
    "/kit/*/mass": (TENT + "/mass", [], "1.9 kg", "2.9 kg", "plan"),
    "/kit/*/count": (TENT + "/count", [], "1", "2", "plan"),
    "/kit/*/for": (TENT + "/for", [], "Ada", "Bram", "plan"),
    "/kit/*/ashore": (TENT + "/ashore", [TENT + "/for=Ada"], "packed", "worn", "plan"),
    "/kit/*/afloat": (TENT + "/afloat", [TENT + "/for=Ada"], "packed", "worn", "plan"),
    "/kit/*/when/class": (TENT + "/when/class", [], "I", "V", "plan"),
    "/kit/*/when/rain": (TENT + "/when/rain", ["/weather/rain=false"], "true", "false", "plan"),
    "/kit/*/when/water_below": (TENT + "/when/water_below", [], "14 C", "2 C", "plan"),
    "/kit/*/when/night_below": (TENT + "/when/night_below", ["/weather/low=5 C"], "14 C", "2 C", "plan"),
    "/kit/*/when/snow": (TENT + "/when/snow", ["/weather/snow=false"], "true", "false", "plan"),
    "/kit/*/when/open_crossing": (TENT + "/when/open_crossing", [], "true", "false", "plan"),
    "/kit/*/when/*/class": (TENT + "/when", [], '[{"class": "I"}]', '[{"class": "V"}]', "plan"),
    "/kit/*/when/*/rain": (
        TENT + "/when", ["/weather/rain=false"], '[{"rain": true}]', '[{"rain": false}]', "plan"),
    "/kit/*/when/*/water_below": (
        TENT + "/when", [], '[{"water_below": "14 C"}]', '[{"water_below": "2 C"}]', "plan"),
    "/kit/*/when/*/night_below": (
        TENT + "/when", ["/weather/low=5 C"], '[{"night_below": "14 C"}]', '[{"night_below": "2 C"}]', "plan"),
    "/kit/*/when/*/snow": (
        TENT + "/when", ["/weather/snow=false"], '[{"snow": true}]', '[{"snow": false}]', "plan"),
    "/kit/*/when/*/open_crossing": (
        TENT + "/when", [], '[{"open_crossing": true}]', '[{"open_crossing": false}]', "plan"),
    "/kit/*/bring": (TENT + "/bring", [TENT + '/when={"class": "II"}'], "true", "false", "plan"),
    "/kit/*/in": (TENT + "/in", ["/kit/1/in=crate", CARRY + "/carries=2"], None, "crate", "plan"),
    "/kit/*/volume": (TENT + "/volume", ['/craft/0/bags=["9 L", "9 L"]', TENT + "/for=Ada"], "5 L", "50 L", "plan"),
    "/kit/*/at_hand": (TENT + "/at_hand", [TENT + "/for=Ada"], "false", "true", "plan"),
    "/kit/*/stays_with": (TENT + "/stays_with", [], "Ada", "Bram", "plan"),
    "/kit/*/is": (TENT + "/is", [], "shelter", "helmet", "plan"),
    "/kit/*/must": (TENT + "/must", [TENT + '/when={"class": "V"}'], "false", "true", "plan"),
    "/kit/*/bag": (TENT + "/bag", [TENT + "/for=Ada"], "left", "right", "plan"),
    "/kit/*/gets_wet": (TENT + "/gets_wet", [], "false", "true", "plan"),
    "/kit/*/wet": (TENT + "/wet", [TENT + "/gets_wet=true"], "0.1", "0.4", "plan"),
    "/food/ration": ("/food/ration", [], "energy", "700 g", "plan"),
    "/food/energy_density": ("/food/energy_density", [], "4.4 kcal/g", "3.4 kcal/g", "plan"),
    "/food/replace": ("/food/replace", [], "0.9", "0.7", "plan"),
    "/food/packaging": ("/food/packaging", [], "0.06", "0.16", "plan"),
    "/food/reserve_days": ("/food/reserve_days", [], "1", "2", "plan"),
    "/food/shares/breakfast": (
        "/food/shares", [], '{"breakfast": 0.2, "trail": 0.5, "dinner": 0.3}',
        '{"breakfast": 0.3, "trail": 0.4, "dinner": 0.3}', "plan"),
    "/food/shares/trail": (
        "/food/shares", [], '{"breakfast": 0.2, "trail": 0.5, "dinner": 0.3}',
        '{"breakfast": 0.2, "trail": 0.4, "dinner": 0.4}', "plan"),
    "/food/shares/dinner": (
        "/food/shares", [], '{"breakfast": 0.2, "trail": 0.5, "dinner": 0.3}',
        '{"breakfast": 0.3, "trail": 0.5, "dinner": 0.2}', "plan"),
    "/food/first_meal": ("/food/first_meal", [], "breakfast", "dinner", "plan"),
    "/food/last_meal": ("/food/last_meal", [], "breakfast", "dinner", "plan"),
    "/food/in": ("/food/in", [], None, "food barrel", "plan"),
    "/food/volume": ("/food/volume", ['/craft/0/bags=["9 L", "9 L"]'], "1 L/kg", "20 L/kg", "plan"),
    "/water/walking": ("/water/walking", [], "0.5 L/h", "0.8 L/h", "plan"),
    "/water/paddling": ("/water/paddling", [CROSSING + "/drinkable=false"], "0.3 L/h", "0.8 L/h", "plan"),
    "/water/camp": ("/water/camp", [PLACES + "/8/water=false"], "3 L", "5 L", "plan"),
    "/water/capacity": ("/water/capacity", [], "4 L", "0.4 L", "plan"),
    "/water/reserve": ("/water/reserve", [], "0.5 L", "1.5 L", "plan"),
    "/water/stow": ("/water/stow", [], "bags", "at-hand", "plan"),
    "/fuel/boiled": ("/fuel/boiled", [], "2.5 L", "3.5 L", "plan"),
    "/fuel/per_litre": ("/fuel/per_litre", [], "12 g", "22 g", "plan"),
    "/fuel/stove": ("/fuel/stove", ["/fuel/per_litre=null"], "gas", "ethanol", "plan"),
    "/fuel/start": ("/fuel/start", ["/fuel/per_litre=null"], "15 C", "2 C", "plan"),
    "/fuel/altitude": ("/fuel/altitude", ["/fuel/per_litre=null"], "0 m", "3000 m", "plan"),
    "/fuel/container": ("/fuel/container", [], "150 g", "250 g", "plan"),
    "/fuel/container_holds": ("/fuel/container_holds", [], "230 g", "100 g", "plan"),
    "/fuel/reserve": ("/fuel/reserve", [], "0.1", "0.6", "plan"),
    "/fuel/melt_snow": ("/fuel/melt_snow", ["/fuel/per_litre=null"], "false", "true", "plan"),
    "/changeovers/boots_to_boat": ("/changeovers/boots_to_boat", [], "35 min", "55 min", "plan"),
    "/changeovers/boat_to_boots": ("/changeovers/boat_to_boots", [], "60 min", "90 min", "plan"),
    "/changeovers/landing": ("/changeovers/landing", [CARRY + "/boat_on_carry=inflated"], "10 min", "20 min", "plan"),
    "/changeovers/scout": ("/changeovers/scout", [RIVER + "/scouts=2"], "15 min", "25 min", "plan"),
    "/changeovers/break_camp": ("/changeovers/break_camp", [], "60 min", "120 min", "plan"),
    "/appointments/*/what": ("/appointments/0/what", [], "last bus", "last train", "plan"),
    "/appointments/*/at": ("/appointments/0/at", [], "Quarry stop", "Road bridge", "plan"),
    "/appointments/*/day": ("/appointments/0/day", [], "4", "3", "plan"),
    "/appointments/*/by": ("/appointments/0/by", [], "18:05", "17:05", "plan"),
    "/appointments/*/margin": ("/appointments/0/margin", [], "30 min", "90 min", "plan"),
    "/appointments/*/hard": ("/appointments/0/hard", ["/appointments/0/by=09:30"], "false", "true", "plan"),
    "/connections/*/what": ("/connections/0/what", [BUS], "bus", "train", "plan"),
    "/connections/*/at": ("/connections/0/at", [BUS, LAYBY], "Quarry stop", "Lay-by", "plan"),
    "/connections/*/departs/*": ("/connections/0/departs/0", [BUS], "Mo 09:10", "Th 07:40", "plan"),
    "/connections/*/to": ("/connections/0/to", [TAXI, TRAILHEAD], "Road end", "Trailhead", "plan"),
    "/connections/*/arrives/*": ("/connections/0/arrives/0", [TAXI], "07:00", "Mo-Su 09:30", "plan"),
    "/connections/*/margin": ("/connections/0/margin", [BUS], "30 min", "23 h", "plan"),
    "/permits/*/for": ("/permits/0/for", [], "Shelf camp", "Upper river", "plan"),
    "/permits/*/dates": ("/permits/0/dates", [PERMIT], '["2027-06-01", "2027-07-31"]', '["2027-07-01", "2027-07-31"]', "plan"),
    "/permits/*/people": ("/permits/0/people", [PERMIT], "6", "1", "plan"),
    "/permits/*/note": ("/permits/0/note", [PERMIT], "by post", "by telephone", "plan"),
    "/leave/*/at": ("/leave/0/at", LEAVE + ["/leave/0/day=null"], "Shelf spring", A, "plan"),
    "/leave/*/day": ("/leave/0/day", LEAVE, "2", "3", "plan"),
    "/leave/*/pass": ("/leave/0/pass", LEAVE + ["/leave/0/day=null"], "1", "2", "plan"),
    "/leave/*": ("/leave", BACK_AND_FORTH, "[]", f'[{{"at": "{A}", "things": ["tent"]}}]', "plan"),
    "/leave/*/things/*": ("/leave/0/things/0", LEAVE, "tent", "stove and pots", "plan"),
    "/leave/*/things/*/food": ("/leave/0/things/0/food", LEAVE + ['/leave/0/things=[{"food": "1 kg"}]'], "1 kg", "2 kg", "plan"),
    "/leave/*/things/*/fuel": ("/leave/0/things/0/fuel", LEAVE + ['/leave/0/things=[{"fuel": "10 g"}]'], "10 g", "20 g", "plan"),
    "/leave/*/things/*/water": ("/leave/0/things/0/water", LEAVE + ['/leave/0/things=[{"water": "1 L"}]'], "1 L", "2 L", "plan"),
    "/leave/*/all_but/*": ("/leave/0/all_but", LEAVE + ["/leave/0/things=null"], '["tent"]', '["tent", "stove and pots"]', "plan"),
    "/leave/*/fetch_day": ("/leave/0/fetch_day", LEAVE, "2", "4", "plan"),
    "/days/set_off": ("/days/set_off", [], "08:00", "07:00", "plan"),
    "/days/first_set_off": ("/days/first_set_off", [], "08:00", "10:00", "plan"),
    "/days/hours": ("/days/hours", ["/days/nights=null"], "8", "2", "plan"),
    "/days/hours_limit": ("/days/hours_limit", ["/days/hours=1"], "24", "1", "plan"),
    "/days/nights": ("/days/nights", [], "auto", '["Shelf camp", "Gravel bar"]', "plan"),
    "/days/nights/*": ("/days/nights/1", [], "Birch spit", "Fall pool", "plan"),
    "/days/rest_days_after/*": ("/days/rest_days_after", [], "[]", "[1]", "plan"),
    "/days/weather_days": ("/days/weather_days", [], "0", "2", "plan"),
    "/days/rest_per_hour": ("/days/rest_per_hour", [], "10 min", "5 min", "plan"),
    "/days/most_days": ("/days/most_days", ["/days/nights=auto", "/days/hours=2"], "9", "1", "plan"),
    "/days/dusk_is_limit": (
        "/days/dusk_is_limit", ["/days/nights=auto", "/days/first_set_off=20:00", "/start=2027-12-18"],
        "false", "true", "plan"),
    **weather_rows("/weather", "/weather", BREEZE, []),
    **weather_rows("/weather/*", "/weather/1", LISTED, []),
    **weather_rows("/route/legs/*/weather", CROSSING + "/weather", CROSSING + '/weather={"high": "31 C", "wind": "6 m/s"}', ["/weather/rain=false", "/weather/water=20 C"], {"legs/*"}),
    **{f"/route/legs/*/flow/{key}": (RIVER + f"/flow/{key}", [*NO_CURRENT, FLOW, *more], one, other, "plan")
       for key, one, other, more in (
           ("gauge", "bridge", "mill", []),
           ("low/current", "1 km/h", "2 km/h", [RIVER + "/flow/now=low"]),
           ("low/reading", "6 m3/s", "8 m3/s", [RIVER + "/flow/now=low"]),
           ("low/class", "I", "II", [RIVER + "/flow/now=low"]),
           ("normal/current", "4 km/h", "5 km/h", []),
           ("normal/reading", "12 m3/s", "20 m3/s", []),
           ("normal/class", "I", "II", []),
           ("high/current", "7 km/h", "8 km/h", [RIVER + "/flow/now=high"]),
           ("high/reading", "30 m3/s", "35 m3/s", [RIVER + "/flow/now=high"]),
           ("high/class", "I", "II", [RIVER + "/flow/now=high"]),
           ("now", "normal", "high", []),
           )},
    "/route/legs/*/flow/runnable": (RIVER + "/flow/runnable", [*NO_CURRENT, FLOW], '["1 m3/s", "60 m3/s"]', '["25 m3/s", "60 m3/s"]', "plan"),
    "/route/legs/*/flow/times/*/hours": (RIVER + "/flow/times/0/hours", [*NO_CURRENT, FLOW, RELEASE], '["01:00", "02:00"]', '["06:00", "22:00"]', "plan"),
    "/route/legs/*/flow/times/*/now": (RIVER + "/flow/times/0/now", [*NO_CURRENT, FLOW, RELEASE], "high", "low", "plan"),
    "/route/legs/*/fetch": (CROSSING + "/fetch", [], "1 km", "8 km", "plan"),
    "/route/places/*/depth": (PLACES + "/7/depth", [PLACES + "/7/kind=ford", PLACES + "/7/speed=1 m/s"], "20 cm", "90 cm", "plan"),
    "/route/places/*/speed": (PLACES + "/7/speed", [PLACES + "/7/kind=ford", PLACES + "/7/depth=50 cm"], "0.2 m/s", "2 m/s", "plan"),
    "/days/halt/from": ("/days/halt/from", ["/days/halt/to=16:00"], "09:00", "12:00", "plan"),
    "/days/halt/to": ("/days/halt/to", ["/days/halt/from=09:00"], "10:00", "13:00", "plan"),
    "/days/halt/above": ("/days/halt/above", ["/days/halt/from=09:00", "/days/halt/to=11:00"], "10 C", "30 C", "plan"),
    "/days/in_camp_before_dark": ("/days/in_camp_before_dark", ["/start=2027-09-18"], "10 min", "12 h", "plan"),
    "/models/walking": ("/models/walking", [], "swiss-signpost", "tobler", "plan"),
    "/models/load_effect": ("/models/load_effect", [], "equal-effort", "none", "plan"),
    "/models/energy": ("/models/energy", [], "lcda-backpacking-2022", "pandolf-santee", "plan"),
    "/models/resting": ("/models/resting", [], "mifflin-st-jeor-1990", "schofield-1985", "plan"),
    "/models/paddling": ("/models/paddling", [], "power-balance", "constant", "plan"),
    "/spread/pace": ("/spread/pace", [], "0.1", "0.3", "odds"),
    "/spread/day_form": ("/spread/day_form", [], "0.1", "0.3", "odds"),
    "/spread/wind": ("/spread/wind", [], "0.1", "0.9", "odds"),
    "/spread/current": ("/spread/current", [], "0.1", "0.3", "odds"),
    "/spread/changeovers": ("/spread/changeovers", [], "0.1", "0.3", "odds"),
    "/spread/drinking": ("/spread/drinking", [], "0.1", "0.3", "odds"),
    "/spread/eating": ("/spread/eating", [], "0.1", "0.3", "odds"),
    "/map/layers/*/file": ("/map/layers", [], '[{"file": "lakes.geojson"}]', '[{"file": "paths.geojson"}]', "book"),
    "/map/layers/*/layer": ("/map/layers/0/layer", TWO, "lakes", "paths", "book"),
    "/map/layers/*/as": ("/map/layers/0/as", TWO, "river", "road", "book"),
    "/map/layers/*/where": ("/map/layers/0/where", LAKES, "name = 'One'", "name = 'Two'", "book"),
    "/map/layers/*/name": ("/map/layers/0/name", LAKES, "name", "label", "book"),
    "/map/layers/*/credit": ("/map/layers/0/credit", LAKES, "survey of 2024", "survey of 2025", "book"),
    "/map/relief": ("/map/relief", [], "true", "false", "book"),
    "/contact/alarm_after": ("/contact/alarm_after", [], "6 h", "12 h", "book"),
    "/contact/text": ("/contact/text", [], "Call the post", "Call the hut", "book"),
}


def keys(schema):
    """Every key that holds a value, lists as '*'; in the order of the schema."""
    found = []

    def walk(node, path):
        if "$ref" in node:
            target = schema
            for part in node["$ref"][2:].split("/"):
                target = target[part]
            node = {**target, **{key: value for key, value in node.items() if key != "$ref"}}
        for way in node.get("oneOf", []) + node.get("anyOf", []):
            walk(way, path)
        if "properties" in node:
            for key, inner in node["properties"].items():
                walk(inner, path + "/" + key)
        elif isinstance(node.get("items"), dict):
            walk(node["items"], path + "/*")
        elif "oneOf" not in node and "anyOf" not in node and path not in found:
            found.append(path)

    walk(schema, "")
    return found


def edited(trip, setting):
    """The trip with "POINTER=VALUE" set; null takes the key out, a value that is no JSON is a text."""
    pointer, value = setting.split("=", 1)
    try:
        value = json.loads(value)
    except json.JSONDecodeError:
        pass
    *parents, last = pointer[1:].split("/")
    at = trip
    for part in parents:
        if isinstance(at, list):
            at = at[int(part)]
        else:
            at = at.setdefault(part, [{}] if part in ("appointments", "permits") else {})
    if isinstance(at, list):
        at[int(last)] = value
    elif value is None:
        at.pop(last, None)
    else:
        at[last] = value
    return trip


class Commands:
    """Runs command lines: through one process of run_commands, or each in a process of tumpline."""

    def __init__(self, program):
        self.program = program
        self.process = None
        if pathlib.Path(program).stem == "run_commands":
            self.process = subprocess.Popen([program], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)

    def run(self, arguments):
        """Exit code, output and messages."""
        if self.process is None:
            done = subprocess.run([self.program, *arguments], capture_output=True, text=True)
            return done.returncode, done.stdout, done.stderr
        self.process.stdin.write(json.dumps(arguments) + "\n")
        self.process.stdin.flush()
        line = self.process.stdout.readline()
        if not line:
            raise RuntimeError(f"ended with {self.process.wait()}: {' '.join(arguments)}")
        answer = json.loads(line)
        return answer["code"], answer["out"], answer["err"]

    def end(self):
        if self.process is not None:
            self.process.stdin.close()
            self.process.wait()


def plan(commands, folder, command, settings):
    """The answer of a command to the trip so set, as a comparable text; None where it refuses."""
    lines = (folder / "trip.json").read_text().splitlines()
    trip = json.loads("\n".join(line for line in lines if not line.lstrip().startswith("//")))
    for setting in settings:
        edited(trip, setting)
    with tempfile.NamedTemporaryFile("w", suffix=".json", dir=folder, delete=False) as file:
        json.dump(trip, file)
    arguments = [command, file.name]
    if command == "book":
        out = pathlib.Path(file.name + ".html")
        code, _, _ = commands.run(arguments + ["-o", str(out)])
        # the name of the file stands in the book
        return out.read_text().replace(pathlib.Path(file.name).name, "") if code in (0, 3) else None
    if command == "check":
        _, told, messages = commands.run(arguments)
        return (told + messages).replace(file.name, "")
    if command == "odds":
        arguments += ["--draws", "30"]
    code, told, messages = commands.run(arguments + ["--format", "json"])
    if code not in (0, 3):
        print(messages[:400])
        return None
    answer = json.loads(told)
    for key in NOT_COUNTED:
        answer.pop(key, None)
    return json.dumps(answer, sort_keys=True)


def look(commands, folder, key):
    """What is wrong with a key, or an empty text."""
    pointer, beside, one, other, command = ROWS[key]
    answers = []
    for value in (one, other):
        settings = list(beside) + ([] if value is None else [f"{pointer}={value}"])
        answers.append(plan(commands, folder, command, settings))
    if None in answers:
        return f"{key}: {'one' if answers[0] is None else 'another'} value is refused by {command}"
    if answers[0] == answers[1]:
        return f"{key}: {one} and {other} give the same {command}"
    return ""


def halves():
    keys_to_look_at = list(ROWS)
    return [keys_to_look_at[0::2], keys_to_look_at[1::2]]


def look_at(folder, keys_to_look_at):
    """What is wrong with some keys, asked of one process."""
    commands = Commands(sys.argv[2])
    try:
        return [text for key in keys_to_look_at if (text := look(commands, folder, key))]
    finally:
        commands.end()


def ground_beside(folder, gpx):
    """Layers around the trip: two lakes and a path as GeoJSON, two lines as KML with two layers."""
    lon, lat = (float(re.search(f'{key}="([-0-9.]+)"', gpx)[1]) for key in ("lon", "lat"))

    def lake(name, label, east):
        ring = [[lon + east + x, lat + y] for x, y in ((0, 0), (0.05, 0), (0.05, 0.03), (0, 0.03), (0, 0))]
        return {"type": "Feature", "properties": {"natural": "water", "name": name, "label": label},
                "geometry": {"type": "Polygon", "coordinates": [ring]}}

    path = {"type": "Feature", "properties": {"highway": "path"},
            "geometry": {"type": "LineString", "coordinates": [[lon, lat], [lon + 0.02, lat + 0.01]]}}
    for name, features in (("lakes", [lake("One", "Broad water", 0.01), lake("Two", "Long water", 0.1)]), ("paths", [path])):
        (folder / f"{name}.geojson").write_text(json.dumps({"type": "FeatureCollection", "features": features}))
    placemarks = [
        f"<Folder><name>{name}</name><Placemark><LineString><coordinates>{lon},{lat} {lon + 0.05},{lat + up}"
        "</coordinates></LineString></Placemark></Folder>" for name, up in (("lakes", 0.01), ("paths", 0.03))]
    (folder / "two.kml").write_text(
        '<?xml version="1.0" encoding="UTF-8"?>\n<kml xmlns="http://www.opengis.net/kml/2.2"><Document>'
        + "".join(placemarks) + "</Document></kml>\n")


def main():
    root = pathlib.Path(sys.argv[1])
    schema = json.loads((root / "docs/trip.schema.json").read_text())
    known = keys(schema)
    faults = [f"{key}: no row says what it does" for key in known if key not in ROWS and key not in INFORMATION_ONLY]
    faults += [f"{key}: a row for no key of the schema" for key in [*ROWS, *INFORMATION_ONLY] if key not in known]
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        for file in (root / "sample-routes/saddle").iterdir():
            (folder / file.name).write_bytes(file.read_bytes())
        # the same lines, somewhat wider apart from west to east
        lines = (folder / "saddle.gpx").read_text()
        wider = re.sub(r'lon="([-0-9.]+)"', lambda at: f'lon="{1.01 * float(at[1]):.7f}"', lines)
        (folder / "wider.gpx").write_text(wider)
        ground_beside(folder, lines)
        with concurrent.futures.ThreadPoolExecutor(2) as pool:
            faults += [text for texts in pool.map(lambda half: look_at(folder, half), halves()) for text in texts]
    print("\n".join(faults) or f"{len(known)} keys, {len(INFORMATION_ONLY)} of them information only")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
