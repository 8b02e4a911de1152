"""Where in a job file a fact of a thing is stated, and what may stand there.

Things are named as findings name them: a kind, such as "cable_end", and a name, "k1@bench". Their
facts are found among the keys of the published schema, by name or by a word of `_OTHERWISE`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from linter.job.stated import CableId
from linter.job.stating import ANSWER, Accepts, Stating, Step, Way
from linter.jobfile.schema import UNKNOWN, Schema, job_schema
from linter.jobfile.things import THE_PANEL
from linter.text.yaml_places import read_places

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.job.jobs import Job
    from linter.text.yaml_places import Node

# Facts whose key is neither called as they are nor so but for "is_" or "has_".
_OTHERWISE: Mapping[str, Mapping[str, Way]] = {
    "box": {
        "marked_volume": ("volume",),
        "is_metal": ("material",),
        "internal_clamps": ("clamps",),
        "has_cable_clamps": ("clamps",),
        "smallest_opening": ("opening",),
        "largest_opening": ("opening",),
        "surface_burns": ("surface",),
        "is_bonded": ("bond_screw",),
        "is_listed_for_fan": ("fan_rated",),
        "is_listed_for_luminaire": ("luminaire_rated",),
        "is_for_wet_place": ("wet_rated",),
    },
    "panel": {"main_rating": ("main",)},
    "breaker": {"is_ground_fault": ("protection",), "is_arc_fault": ("protection",)},
    "appliance": {"needs_own_circuit": ("own_circuit",)},
    "device": {
        "is_ground_fault": ("protection",),
        "is_arc_fault": ("protection",),
        "fixture_wires": ("fixture_wires", "count"),
        "fixture_wire_size": ("fixture_wires", "size"),
        "canopy_is_domed": ("domed_canopy",),
    },
    "receptacle": {
        "places": ("single",),
        "cover_closes_in_use": ("cover_in_use",),
        "is_in_appliance_space": ("appliance_space",),
    },
    "cable": {
        "type": ("sheath",),
        "size": ("sheath",),
        "insulated_conductors": ("sheath",),
        "bond_size": ("bond",),
        "runs_along_framing": ("along_framing", "distance_to_face"),
        "distance_to_face": ("along_framing", "distance_to_face"),
        "is_plated_along_framing": ("along_framing", "plated"),
        # What counts is the hole that lies nearest to an edge.
        "bored_holes_are_stated": ("holes", 0, "distance_to_edge"),
        "bundled_conductors": ("bundled", "conductors"),
        "bundled_cables": ("bundled", "cables"),
        "bundle_length": ("bundled", "length"),
        "bundle_is_in_sealed_hole": ("bundled", "sealed"),
    },
    "dwelling": {"service_rating": ("rating",), "supply_voltage": ("voltage",)},
}
# Words that stand in the place of a whole map or list, where there is nothing of the kind.
_NOTHING_OF_IT = {"along_framing": "no", "bundled": "no", "holes": "none"}
_PREFIXES = ("is_", "has_")


def where_stated(job: Job, kind: str, name: str, fact: str) -> Stating | None:
    """Where the job file states the fact; None where it follows from others or is a matter of many.

    What a wire end is marked as is stated by colour; what a test showed by a reading that is added.
    """
    if fact in _READINGS:
        return _reading(kind, name, _READINGS[fact])
    above = _WAYS.get(kind, _in_section(f"{kind}s"))(job, name)
    if above is None:
        return None
    for key in _keys(kind, fact):
        accepts = _accepts((*above, *key))
        if accepts is not None:
            first = key[0] if len(key) > 1 else ""
            word = _NOTHING_OF_IT.get(str(first))
            instead = (word, (*above, first)) if word else None
            return Stating((*above, *key), accepts, instead=instead)
    return None


def usual_way(way: Way) -> Way | None:
    """Where the usual value is stated for all things of a kind; None where there is none.

    >>> usual_way(("cables", "k1", "at_to", "free_length"))
    ('usual', 'cable', 'free_length')
    >>> usual_way(("boxes", "desk", "holds", 0, "receptacle", "rating"))
    ('usual', 'receptacle', 'rating')
    """
    match way:
        case ("boxes", _, "holds", int(), kind, *key):
            usual = ("usual", kind, *key)
        case ("cables", _, "at_from" | "at_to", *key):
            usual = ("usual", "cable", *key)
        case (section, _, *key):
            usual = ("usual", _KINDS.get(str(section), str(section)[:-1]), *key)
        case _:
            return None
    return usual if _accepts(usual) is not None else None


_KINDS = {"boxes": "box"}


def standing_in(text: str, file: str) -> Callable[[Way], str]:
    """A function that says what stands at the end of a way in the text; empty where nothing does.

    >>> standing_in("boxes: {desk: {depth: 3 in}}", "")(("boxes", "desk", "depth"))
    '3 in'
    """
    root = read_places(text, file)
    return lambda way: standing(root, way)


def standing(root: Node, way: Way) -> str:
    """What stands at the end of a way, as written; empty where nothing does."""
    node = root
    for step in way:
        inner = node.at([step])
        if inner is node:
            return ""
        node = inner
    return node.text


def _keys(kind: str, fact: str) -> Iterator[Way]:
    """The keys that may state a fact of a kind, the likeliest first."""
    special = _OTHERWISE.get(kind, {}).get(fact)
    if special is not None:
        yield special
    yield () if fact == "marked_as" else (fact,)
    for prefix in _PREFIXES:
        if fact.startswith(prefix):
            yield (fact.removeprefix(prefix),)


def _in_section(section: str) -> _Find:
    def find(job: Job, name: str) -> Way | None:
        return (section, name) if name in getattr(job, section, {}) else None

    return find


def _panel(job: Job, name: str) -> Way | None:
    return (THE_PANEL,) if [*job.panels] == [THE_PANEL] else ("panels", name)


def _breaker(job: Job, name: str) -> Way | None:
    panel, _, space = name.rpartition(" ")
    above = _panel(job, panel)
    return (*above, "breakers", space) if above else None


def _supply(job: Job, name: str) -> Way | None:  # noqa: ARG001  there is one dwelling
    return ("supplies", job.usual_supply.name)


def _cable_end(job: Job, name: str) -> Way | None:
    cable, _, box = name.rpartition("@")
    if cable not in job.cables:
        return None
    return ("cables", cable, "at_from" if job.cables[CableId(cable)].from_ == box else "at_to")


def _mark(job: Job, name: str) -> Way | None:
    """The mark of a wire end: its name is the cable, the colour and the box."""
    wire, _, box = name.rpartition("@")
    cable, _, colour = wire.rpartition(".")
    above = _cable_end(job, f"{cable}@{box}")
    return (*above, "marks", colour) if above else None


def _hole(job: Job, name: str) -> Way | None:  # noqa: ARG001  all are found alike
    cable, _, number = name.rpartition("/")
    return ("cables", cable, "holes", int(number) - 1)


def _device(job: Job, name: str) -> Way | None:
    for box in job.boxes.values():
        for at, device in enumerate(box.holds):
            if device.name == name:
                return ("boxes", box.name, "holds", at, device.kind)
    return None


_Find = Callable[["Job", str], "Way | None"]
_WAYS: Mapping[str, _Find] = {
    "box": _in_section("boxes"),
    "panel": _panel,
    "breaker": _breaker,
    "dwelling": _supply,
    "cable_end": _cable_end,
    "wire_end": _mark,
    "panel_end": _mark,
    "bored_hole": _hole,
    **dict.fromkeys(("device", "outlet", "receptacle", "switch"), _device),
}


_READINGS = {
    "polarity_reading": "polarity",
    "trip_reading": "ground-fault trip",
    "arc_fault_trip_reading": "arc-fault trip",
}


def _reading(kind: str, name: str, test: str) -> Stating | None:
    item = {"test": test, "circuit" if kind == "circuit" else "outlet": name, "result": ANSWER}
    readings = job_schema()["properties"]["readings"]["items"]["anyOf"]
    wanted = next(each for each in readings if each["properties"]["test"]["const"] == test)
    accepts = _said_of(wanted["properties"]["result"])
    return Stating(("readings",), accepts, item) if accepts is not None else None


def _accepts(way: Way) -> Accepts | None:
    """What may stand at the end of a way by the schema; None where nothing may, or a thing."""
    schema: Schema | None = job_schema()
    for step in way:
        schema = _below(schema, step) if schema is not None else None
    return _said_of(schema) if schema is not None else None


def _below(schema: Schema, step: Step) -> Schema | None:
    """The schema of what stands under a key, or at a position of a list."""
    for each in (schema, *schema.get("anyOf", ())):
        below = _below_one(each, step)
        if below is not None:
            return below
    return None


def _below_one(schema: Schema, step: Step) -> Schema | None:
    if isinstance(step, int):
        # One thing may stand for a list of one.
        found = schema.get("items", schema if "anyOf" in schema else None)
    else:
        more = schema.get("additionalProperties")
        found = schema.get("properties", {}).get(step, more if isinstance(more, dict) else None)
    return found if isinstance(found, dict) else None


def _said_of(schema: Schema) -> Accepts | None:
    choices = (schema, *schema.get("anyOf", ()))
    words = tuple(
        dict.fromkeys(
            str(word)
            for each in choices
            for word in each.get("enum", ())
            if isinstance(word, str) and word != UNKNOWN
        )
    )
    types = {each for choice in choices for each in _listed(choice.get("type", []))}
    format_ = str(schema.get("format", "")) or ("count" if "integer" in types else "")
    if not words and not format_ and "string" not in types:
        return None
    example = next((str(each) for each in schema.get("examples", ()) if each != UNKNOWN), "")
    return Accepts(words, format_, str(schema.get("description", "")), example)


def _listed(types: object) -> list[object]:
    return types if isinstance(types, list) else [types]
