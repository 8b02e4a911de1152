"""Where in a job file a fact of a thing is stated, and what may stand there.

Things are named as findings name them: a kind, such as "cable_end", and a name, "k1@bench". Their
facts are found among the keys of the published schema, by name or by a word of `_OTHERWISE`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from linter.job.stated import CableId
from linter.job.stating import ANSWER, Accepts, Stating, Step, Way
from linter.jobfile.fact_keys import FROM_THE_TOP, keys_of
from linter.jobfile.schema import UNKNOWN, Schema, job_schema
from linter.jobfile.things import THE_PANEL
from linter.text.yaml_places import read_places

if TYPE_CHECKING:
    from linter.job.jobs import Job
    from linter.text.yaml_places import Node

# Words that stand in the place of a whole map or list, where there is nothing of the kind.
_NOTHING_OF_IT = {
    "holes": "none",
    **dict.fromkeys(
        ("along_framing", "bundled", "over_attic", "under_joists", "exposed", "return_air",
         "under_roof", "underground", "whirlpool"),
        "no",
    ),
}  # fmt: skip


def where_stated(job: Job, kind: str, name: str, fact: str) -> Stating | None:
    """Where the job file states the fact; None where it follows from others or is a matter of many.

    What a wire end is marked as is stated by colour; what a test showed by a reading that is added.
    """
    if fact in _READINGS:
        return _reading(kind, name, _READINGS[fact])
    above = _WAYS.get(kind, _in_section(f"{kind}s"))(job, name)
    if above is None:
        return None
    for key in keys_of(kind, fact):
        way = key[1:] if key[:1] == FROM_THE_TOP else (*above, *key)
        accepts = _accepts(way)
        if accepts is not None:
            return Stating(way, accepts, instead=_instead(above, key))
    return None


def _instead(above: Way, key: Way) -> tuple[str, Way] | None:
    """The word that says there is nothing of the kind, and the way to where it stands."""
    first = key[0] if len(key) > 1 else ""
    word = _NOTHING_OF_IT.get(str(first))
    return (word, (*above, first)) if word else None


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


def _service(job: Job, name: str) -> Way | None:  # noqa: ARG001  there is one
    return ("service",)


def _floor(job: Job, name: str) -> Way | None:  # noqa: ARG001  all are found alike
    return ("dwelling", "floors", name)


def _run(job: Job, name: str) -> Way | None:
    section = next((each for each in ("walls", "counters") if name in getattr(job, each)), None)
    return (section, name) if section else None


def _run_break(job: Job, name: str) -> Way | None:
    run, _, number = name.rpartition("/")
    above = _run(job, run)
    return (*above, "breaks", int(number) - 1) if above else None


def _placed(job: Job, name: str) -> Way | None:
    """An outlet along a run, by its position among those that the run lists."""
    outlet, _, run = name.rpartition("@")
    above = _run(job, run)
    if above is None:
        return None
    listed = (job.walls | job.counters)[run].outlets or ()
    at = next((at for at, each in enumerate(listed) if each.outlet == outlet), None)
    return (*above, "outlets", at) if at is not None else None


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
    "service": _service,
    "floor": _floor,
    "run": _run,
    "run_break": _run_break,
    "placed_outlet": _placed,
    **dict.fromkeys(("device", "outlet", "receptacle", "switch", "luminaire", "alarm"), _device),
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
    choices = (schema, *schema.get("anyOf", ()))
    if isinstance(step, int):
        # One thing may stand for a list of one.
        return next((each["items"] for each in choices if "items" in each), schema)
    return next((below for each in choices if (below := _under_key(each, step)) is not None), None)


def _under_key(schema: Schema, key: str) -> Schema | None:
    more = schema.get("additionalProperties")
    found = schema.get("properties", {}).get(key, more if isinstance(more, dict) else None)
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
