"""Things, limits, tables and measures of an invented pack, for the tests of the language.

Things are written as nested mappings by the facts of their kind; quantities carry units. A thing's
reference is the way to it: `box`, `box.wire_ends.2`. All figures are invented.
"""

from typing import Any

from linter.language.check import check
from linter.language.checked import Checked
from linter.language.library import Library, Measure
from linter.language.parse import parse
from linter.language.scope import Scope
from linter.language.tables import Cell, Key, Table
from linter.text import Place
from linter.units import (
    AREA,
    CURRENT,
    LENGTH,
    NUMBER,
    POWER,
    TEMPERATURE,
    VOLUME,
    Unknown,
    read_quantity,
)
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import Fact, FactRef, FactType, Shape, Thing
from linter.vocabulary.shorthand import COUNT, TEXT, YES_NO, quantity, word

PLACE = Place("boxes.yaml", 10, 11)


def q(text: str) -> float:
    return read_quantity(text).value


def table(name: str, keys: list[Key], columns: list[tuple[str, FactType]], rows: str) -> Table:
    """A table whose rows are lines, cells parted by commas; `-` is no value."""
    types = [*(key.type for key in keys), *(type_ for _, type_ in columns)]

    def cell(text: str, type_: FactType) -> Cell:
        if text == "-":
            return None
        return q(text) if type_.shape is Shape.QUANTITY else text

    read = [line.split(",") for line in rows.strip().splitlines()]
    cells = (
        tuple(cell(text.strip(), type_) for text, type_ in zip(line, types, strict=True))
        for line in read
    )
    return Table(name, tuple(keys), tuple(columns), tuple(cells))


LIMITS: dict[str, tuple[FactType, Any]] = {
    "least_free_length": (quantity(LENGTH), q("6 in")),
    "no_length": (quantity(LENGTH), 0.0),
    "no_size": (quantity(AREA), 0.0),
    "volume_of_clamp": (quantity(VOLUME), q("2 in3")),
    "largest_rating": (quantity(CURRENT), q("20 A")),
    "step_of_rating": (quantity(CURRENT), q("5 A")),
    "warm": (quantity(TEMPERATURE), q("30 C")),
    "share": (COUNT, 0.8),
    "nothing": (COUNT, 0.0),
    "most_wires": (COUNT, 9.0),
    "metal_allowed": (YES_NO, True),
    "usual_role": (word("hot", "neutral"), "hot"),
    "usual_type": (TEXT, "NM-B"),
}
LISTS = {"damp_rooms": ("bathroom", "laundry"), "sheaths": ("NM-B", "UF-B")}
TABLES = {
    each.name: each
    for each in (
        table("conductor_volume", [Key("size", quantity(AREA), "exact")],
              [("volume", quantity(VOLUME))],
              "14 AWG, 2 in3 \n 12 AWG, 2.25 in3 \n 10 AWG, 2.5 in3 \n 8 AWG, -"),
        table("ampacity", [Key("size", quantity(AREA), "exact"),
                           Key("ambient", quantity(TEMPERATURE), "band")],
              [("copper", quantity(CURRENT)), ("aluminium", quantity(CURRENT))],
              "12 AWG, 0 C, 25 A, 20 A \n 12 AWG, 40 C, 20 A, 15 A \n 14 AWG, 0 C, 20 A, -"),
        table("bundle_factor", [Key("wires", COUNT, "band")], [("factor", COUNT)],
              "1, 1 \n 4, 0.8 \n 7, 0.7 \n 10, 0.5"),
        table("next_rating", [Key("rating", quantity(CURRENT), "next size up")],
              [("rating", quantity(CURRENT))], "15 A, 15 A \n 20 A, 20 A \n 30 A, 30 A"),
        table("demand", [Key("load", quantity(POWER), "tiers")], [("factor", COUNT)],
              "0 W, 1 \n 3000 W, 0.35 \n 10000 W, 0.25"),
        table("demand_of", [Key("use", TEXT, "exact"), Key("load", quantity(POWER), "tiers")],
              [("factor", COUNT)], "kiln, 0 W, 1 \n lighting, 0 W, 1 \n lighting, 1000 W, 0.5"),
        table("tested_size", [Key("wire", quantity(AREA), "next size up"),
                              Key("rating", quantity(CURRENT), "band")],
              [("length", quantity(LENGTH))],
              "14 AWG, 0 A, 1 m \n 14 AWG, 15 A, 2 m \n 12 AWG, 0 A, 3 m"),
        table("room_height", [Key("use", word("kitchen", "bathroom"), "exact")],
              [("height", quantity(LENGTH))], "kitchen, 44 in \n bathroom, 36 in"),
    )
}  # fmt: skip
_STEPS = {
    ("box", "fill", VOLUME): [
        ("conductors",
         "sum of look up conductor_volume at e.size for e of box.wire_ends where not e.is_bond"),
        ("clamps", ("if box.internal_clamps more than 0 then volume_of_clamp"
                    " else volume_of_clamp - volume_of_clamp")),
        ("total", "conductors + clamps"),
    ],
    ("box", "crowding", NUMBER): [("share_used", "box.fill / box.marked_volume")],
    ("wire_end", "spare_length", LENGTH): [
        ("spare", "wire_end.free_length - least_free_length"),
    ],
}  # fmt: skip
MEASURE_TYPES = {(kind, name): quantity(gives) for kind, name, gives in _STEPS}


def scope(subject: str, steps: dict[str, FactType] | None = None) -> Scope:
    limits = {name: type_ for name, (type_, _) in LIMITS.items()}
    tables = {name: each.shape for name, each in TABLES.items()}
    return Scope(subject, limits, LISTS, tables, MEASURE_TYPES, steps or {})


def checked(text: str, subject: str = "box", expect: FactType | None = None) -> Checked:
    return check(parse(text, PLACE), scope(subject), expect)


def _measure(kind: str, name: str, gives: FactType, texts: list[tuple[str, str]]) -> Measure:
    types: dict[str, FactType] = {}
    steps = []
    for step, text in texts:
        made = check(parse(text, PLACE), scope(kind, types))
        types = {**types, step: made.type}
        steps.append((step, made))
    return Measure(kind, name, gives, tuple(steps))


def library() -> Library:
    limits = {name: value for name, (_, value) in LIMITS.items()}
    measures = {
        (kind, name): _measure(kind, name, quantity(gives), texts)
        for (kind, name, gives), texts in _STEPS.items()
    }
    return Library({**limits, **LISTS}, TABLES, measures)


def thing(kind: str, facts: dict[str, Any], ref: str = "") -> Thing:
    """A thing of a kind with these facts, and the things they name."""
    ref = ref or kind
    values: dict[str, object] = {}
    written = {}
    for name, said in facts.items():
        fact = KINDS[kind].fact(name)
        assert fact is not None, f"{kind} has no fact {name}"
        values[name] = _value(fact, said, kind, ref)
        if fact.type.shape is Shape.QUANTITY and said != "unknown":
            written[name] = str(said)
    return Thing(kind, ref, PLACE, values, written=written)


def _value(fact: Fact, said: Any, kind: str, ref: str) -> object:
    way = f"{ref}.{fact.name}"
    if said == "unknown":
        return Unknown({FactRef(kind, ref, fact.name)})
    match fact.type.shape:
        case Shape.QUANTITY:
            return q(str(said))
        case Shape.THING:
            return said if isinstance(said, Thing) else thing(fact.type.kind, said, way)
        case Shape.THINGS:
            each = enumerate(_repeated(said), 1)
            return tuple(thing(fact.type.kind, one, f"{way}.{index}") for index, one in each)
        case _:
            return said


def _repeated(said: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """The mappings, those with `times` as often as it says."""
    return [
        {name: value for name, value in one.items() if name != "times"}
        for one in said
        for _ in range(one.get("times", 1))
    ]
