"""The whole way from the text of a job to the measures of us-nec-2023 and its findings."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

import yaml

from linter.audit.audit import audit
from linter.cli.shelf import Shelf
from linter.facts import facts_of
from linter.jobfile import read_job
from linter.language.evaluate import measure_of
from linter.language.library import Library, Measure
from linter.trace import trace
from linter.units import read_quantity
from linter.wiring import derive

if TYPE_CHECKING:
    from linter.packs.model import Pack
    from linter.units import Dimension
    from linter.vocabulary.model import Thing


def table(name: str) -> Any:
    """The table of that name in this folder, without places."""
    return yaml.safe_load(Path(__file__).with_name(name).read_text(encoding="utf-8"))


@cache
def pack() -> Pack:
    """The pack that the outside tables are held against."""
    return Shelf().pack_named("us-nec-2023")


def thing_of(text: str, kind: str, ref: str) -> Thing:
    """One thing of the job that the text describes."""
    job = read_job(text, "outside.yaml")
    wiring = derive(job)
    return facts_of(job, wiring, trace(job, wiring)).thing(kind, ref)


def findings_at(text: str, rule: str, ref: str) -> int:
    """How many findings of a rule the job has at one thing."""
    found = audit(read_job(text, "outside.yaml"), pack()).findings
    return sum(each.rule == rule and each.ref == ref for each in found)


def measured(name: str, thing: Thing) -> float:
    """A measure of a thing, in the base unit of its dimension."""
    return _number(measure_of(thing.kind, name, thing, pack().library))


def step_of(measure: str, step: str, thing: Thing) -> float:
    """A step of a measure: the measure as it would be if it ended there."""
    library = pack().library
    steps = library.measures[thing.kind, measure].steps
    until = steps[: [name for name, _ in steps].index(step) + 1]
    cut = Measure(thing.kind, step, until[-1][1].type, until)
    measures = {**library.measures, (thing.kind, step): cut}
    return _number(
        measure_of(thing.kind, step, thing, Library(library.limits, library.tables, measures))
    )


def base(text: str | float, dimension: Dimension) -> float:
    """A quantity of a table in base units; a plain number is itself."""
    return read_quantity(text, dimension).value if isinstance(text, str) else text


def _number(value: object) -> float:
    assert isinstance(value, float | int), value
    return value
