"""Words that electricians say, and what a job file writes for them.

They are not read in silence: there is one way to write each thing. A refusal names it as nearest.
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from linter.text import nearest

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping

# What is written, and what is said for it. Several may fit a word; those that can stand at the
# place are named. Capitals, hyphens and underscores do not matter.
VALUES: Mapping[str, str] = {
    "ground-fault": "gfci, gfi, gfci protected, ground fault, rcd, residual current",
    "arc-fault": "afci, arc fault, afdd, cafci",
    "receptacle": "outlet, duplex, duplex outlet, duplex receptacle, plug, socket, recep, recept",
    "luminaire": "light, lights, lamp, fixture, light fixture, can, can light, pendant, downlight, "
    "recessed light, sconce, ceiling light, ceiling rose, batten holder",
    "fan": "ceiling fan, exhaust fan, bath fan, paddle fan",
    "alarm": "smoke, smoke alarm, smoke detector, detector, co alarm",
    "appliance outlet": "hard wired, hardwired, direct wired, wired in, whip, fused spur, spur, "
    "connection unit",
    "nothing": "splice, splices, splice only, junction, j box, jbox, junction box, blank, empty",
    "single pole": "1 pole, one pole, sp, spst, toggle, rocker, standard, single pole switch",
    "double pole": "2 pole, two pole, dpst",
    "three-way": "3 way, 3way, three way switch, 3 way switch",
    "four-way": "4 way, 4way, four way switch, 4 way switch",
    "three-way dimmer": "3 way dimmer, dimmer 3 way",
    "nonmetallic": "plastic, pvc, fiberglass, fibreglass, fiber, thermoset, non metallic, bakelite",
    "metal": "steel, metallic, galvanized",
    "device": "single gang, one gang, 1 gang, two gang, 2 gang, three gang, 3 gang, switch box, "
    "outlet box, old work, new work",
    "square": "4 square, four square, 4 sq, 4 inch square",
    "octagon": "octagonal, oct",
    "pan": "pancake, ceiling pan",
    "external": "connector, connectors, external clamp, external clamps",
    "internal": "built in, integral, internal clamp, internal clamps, yes",
    "feed": "home run, homerun, line, power, supply, feed through, jumper, branch",
    "switched": "switch leg, switched leg, leg",
    "switch loop": "switch leg, loop, drop, switch drop",
    "travellers": "traveler, travelers, traveller, 3 way, three way, 4 way",
    "travellers and hot": "travelers and hot, travellers and line",
    "spare": "unused, dead, abandoned, future, extra",
    "bond": "ground, grounding, equipment ground, egc, bare, green, earth",
    "neutral": "grounded, grounded conductor, return, common neutral",
    "hot": "line, live, power, ungrounded, phase",
    "switched hot": "switch leg, switched, switched leg, return hot, load",
    "traveller 1": "traveler, traveller, traveler 1",
    "traveller 2": "traveler 2",
    "signal": "interconnect, interconnected, alarm wire",
    "copper": "cu",
    "aluminium": "al, aluminum, alum",
    "copper-clad aluminium": "cca, copper clad, copper clad aluminum",
    "grey": "gray, natural gray",
    "yes": "y, true, ok",
    "no": "n, false",
    "none": "no, nil",
    "bathroom": "bath, half bath, powder room, shower room, toilet, ensuite, restroom",
    "living": "living room, family room, den, great room, rec room, parlor, library, office, study",
    "dining": "dining room, breakfast room, pantry",
    "bedroom": "bed, bed room, master, nursery, guest room, loft",
    "hall": "hallway, corridor, landing",
    "stairs": "stair, stairway, staircase, stairwell",
    "foyer": "entry, entryway, mud room, mudroom, vestibule",
    "utility": "mechanical, mechanical room, boiler room, furnace room, utility room",
    "outdoor": "outside, outdoors, exterior, yard, patio, deck, garden, dock",
    "crawl space": "crawlspace, crawl",
    "accessory building": "shed, barn, outbuilding, detached garage",
    "unfinished basement": "cellar",
    "laundry": "washer, washing machine, laundry room, clothes washer",
    "small appliance": "kitchen, counter, countertop, sabc, small appliances, dining",
    "lighting": "light, lights, lighting circuit",
    "general": "general purpose, general use, receptacles, outlets, plugs, convenience",
    "cooling": "ac, a/c, air conditioner, air conditioning, heat pump",
    "heating": "heat, heater, baseboard, furnace, boiler",
    "range": "stove, cooker",
    "cooktop": "hob, cook top",
    "dryer": "clothes dryer, tumble dryer",
    "feeder": "subpanel, sub panel",
    "general use": "general, convenience, any, all purpose",
    "basin": "vanity, lav, lavatory, bathroom sink",
    "refrigerator": "fridge, refrig, ice box",
    "disposer": "disposal, garbage disposal",
    "hood": "range hood, vent hood",
    "sump": "sump pump",
    "car charger": "ev, ev charger, evse, charger, vehicle charger, electric vehicle",
    "air conditioner": "ac, a/c, air conditioning, mini split, minisplit, cooling",
    "space heating": "baseboard, electric heat, electric heater, heater, wall heater, heating",
    "central heating": "furnace, boiler, gas furnace, oil furnace",
    "supplementary heating": "backup heat, heat strip, heat strips, auxiliary heat, aux heat",
    "compactor": "trash compactor",
    "washer": "washing machine, clothes washer",
    "hot tub": "spa, jacuzzi, whirlpool",
    "rod": "ground rod, grounding rod, driven rod",
    "concrete-encased": "ufer, footing, rebar, foundation",
    "building steel": "structural steel, steel frame",
    "corrugated tubing": "csst, corrugated",
    "sub-panel": "subpanel, sub panel, distribution",
    "one-family": "single family, house, detached",
    "two-family": "duplex, semi detached",
    "multifamily": "apartment, condo, flat",
    "accessory": "adu, granny flat, guest house, in law",
    "mobile home": "manufactured, manufactured home, trailer",
    "car": "ev, charger, car charger, vehicle",
    "garage door": "garage door opener, door opener, opener",
    "counter": "countertop, counter top, worktop, kitchen counter",
    "pulled": "rough, rough in, roughed in, roughin, wired, first fix, first fixing",
    "made up": "makeup, make up, spliced, joined",
    "covered": "drywalled, closed, insulated, drywall",
    "trimmed": "trim, trim out, trimmed out, finish, finished, second fix, second fixing",
    "energised": "energized, live, final, hot",
    "split phase": "single phase, 120/240, 120/240 v, 240/120, two leg, residential, "
    "single phase 240 v, 240 v",
    "single phase 230 V": "single phase, single phase 240 v, 240 v, 230 v, 230, 220 v",
    "two-wire 120 V": "120 v, 120, 110 v, cord, extension cord, inverter",
}  # fmt: skip
# What stands at a place only as more than a word; the first is the word that can stand there.
PHRASES: tuple[tuple[str, str, str], ...] = (
    ("switch", "{switch: {type: dimmer}}", "dimmer"),
    ("switch", "{switch: {type: timer}}", "timer, timer switch"),
    ("switch", "{switch: {type: three-way}}", "3 way, three way, 3 way switch, three way switch"),
    ("switch", "{switch: {type: four-way}}", "4 way, four way, 4 way switch, four way switch"),
    ("receptacle", "{receptacle: {protection: ground-fault}}",
     "gfci, gfi, gfci receptacle, gfci outlet, gfi outlet, ground fault"),
    ("receptacle", "{receptacle: {protection: arc-fault}}", "afci, afci receptacle, afci outlet"),
    ("receptacle", "{receptacle: {single: yes}}", "single receptacle, single outlet, simplex"),
    ("receptacle", "[receptacle, receptacle]", "quad, double duplex, fourplex"),
    ("ground-fault", "[ground-fault, arc-fault]",
     "dual function, df, dfci, combination, gfci/afci, afci/gfci, both"),
)  # fmt: skip
KEYS: Mapping[str, str] = {
    "protection": "gfci, gfi, afci, arc fault, ground fault",
    "rating": "amps, amp, amperage, ampacity, breaker size",
    "sheath": "wire, cable, cable type, gauge",
    "conductors": "colors, colours, wires, color, colour",
    "bond": "ground, egc, ground size, earth, earth wire, earth size, cpc",
    "bond_screw": "ground screw, grounded, bonded, ground clip",
    "gangs": "gang, ganged",
    "volume": "size, cubic inches, capacity, cu in",
    "trade_size": "size",
    "holds": "device, devices, contains, outlet, switch, receptacle",
    "fastened_at": "staple, stapled, stapled at, first staple, secured at, strapped at",
    "support_spacing": "staples, staple spacing, supports, strap spacing",
    "cables_under_staple": "stacked, per staple",
    "free_length": "free wire, wire length, tails, slack",
    "distance_to_sink": "sink distance, from sink, distance to water",
    "distance_to_tub": "tub distance, shower distance, from tub",
    "controls": "switches, operates",
    "carries": "use, pattern, runs",
    "serves": "label, name, feeds, purpose",
    "breakers": "breaker, space, spaces",
    "use": "type, kind, room type",
    "material": "metal, made of",
    "at_from": "from end",
    "at_to": "to end",
    "holes": "bored holes, drilled, hole",
    "panel": "load center, service panel, breaker box, consumer unit, distribution board, fuse box",
    "readings": "tests, test",
    "load": "watts, wattage, power, va",
}  # fmt: skip


def nearest_value(word: str, allowed: Collection[str]) -> tuple[str, ...]:
    """What to write for a word that cannot stand at a place where `allowed` can.

    >>> nearest_value("GFCI", ["ground-fault", "arc-fault", "none"])
    ('ground-fault',)
    >>> nearest_value("dimmer", ["receptacle", "switch", "luminaire"])
    ('{switch: {type: dimmer}}',)
    """
    said = [shown for needs, shown in _said_as().get(_plain(word), ()) if needs in allowed]
    return tuple(dict.fromkeys(said)) or nearest(word, allowed)


def nearest_key(word: str, allowed: Collection[str]) -> tuple[str, ...]:
    """The key for a word that is none at a place where `allowed` are; spelling goes first.

    >>> nearest_key("stapled_at", ["clamped", "fastened_at"])
    ('fastened_at',)
    """
    spelt = nearest(word, allowed)
    if spelt:
        return spelt
    return tuple(each for each in _keys_said_as().get(_plain(word), ()) if each in allowed)


@cache
def _said_as() -> Mapping[str, list[tuple[str, str]]]:
    rows = [*PHRASES, *((each, each, said) for each, said in VALUES.items())]
    found: dict[str, list[tuple[str, str]]] = {}
    for needs, shown, said in rows:
        for each in said.split(", "):
            found.setdefault(_plain(each), []).append((needs, shown))
    return found


@cache
def _keys_said_as() -> Mapping[str, list[str]]:
    found: dict[str, list[str]] = {}
    for key, said in KEYS.items():
        for each in said.split(", "):
            found.setdefault(_plain(each), []).append(key)
    return found


def _plain(word: str) -> str:
    return " ".join(word.casefold().replace("-", " ").replace("_", " ").split())
