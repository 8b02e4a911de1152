"""What rules see of things: what is tried at one is told of all that are seen alike."""

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from linter.audit.audit import Examined, examined
from linter.audit.judging import Untold, in_force, judge_all
from linter.audit.seen import Seen, Sights
from linter.audit.trials import Trials
from linter.cli.shelf import Shelf
from linter.jobfile import read_job
from linter.language.checked import Checked
from linter.language.library import Library, Measure
from linter.language.tree import (
    Comparison,
    Count,
    FactOf,
    ForThings,
    Is,
    MeasureOf,
    Node,
    Variable,
)
from linter.packs.writing import writer_of
from linter.units import Unknown
from linter.vocabulary.model import FactRef, Thing
from linter.vocabulary.shorthand import COUNT
from tests.unit.audit.made import thing

ROOT = Path(__file__).resolve().parents[3]
AS_PULLED = ROOT / "examples/pottery-studio/as-pulled.yaml"


@cache
def as_pulled() -> Examined:
    job = read_job(AS_PULLED.read_text(encoding="utf-8"), AS_PULLED.name)
    return examined(job, Shelf().pack_of(job))


def open_checks() -> list[Untold]:
    """All checks that cannot be told once the house is energised."""
    rules = in_force(as_pulled().pack.rules, "energised")
    return list(judge_all(as_pulled().facts.things, rules, as_pulled().pack.library).untold)


def seen_of_each() -> Iterator[tuple[Untold, Seen]]:
    sights = Sights(as_pulled().pack.library)
    for check in open_checks():
        (ref, *more) = check.because
        if isinstance(ref, FactRef) and not more:
            yield check, sights.seen(check.rule, check.thing, ref)


def test_what_is_told_together_is_what_is_told_of_each_alone() -> None:
    pack, checks = as_pulled().pack, open_checks()
    write = writer_of(pack)
    together = Trials(pack.library, write)
    told = [together.answers([check]) for check in checks]
    assert told == [Trials(pack.library, write).answers([check]) for check in checks]


def test_many_things_are_seen_alike() -> None:
    seen = [(check.rule.name, values) for check, (values, _) in seen_of_each()]
    assert len(set(seen)) < len(seen) / 2


BOX = Variable("box", "box")
GANGS, VOLUME = FactOf(BOX, "box", "gangs"), FactOf(BOX, "box", "volume")
END = Variable("e", "wire_end")
ENDS = FactOf(BOX, "box", "wire_ends")
LENGTH = FactOf(END, "wire_end", "free_length")
HALF = Measure("box", "half", COUNT, (("half", Checked("box", COUNT, VOLUME)),))
REF = FactRef("box", "b1", "gangs")
ASKED, OTHER = Unknown([REF]), Unknown([FactRef("box", "b1", "volume")])


def box(ref: str = "b1", *lengths: object, **facts: Any) -> Thing:
    ends = tuple(thing("wire_end", f"{ref} {n}", free_length=x) for n, x in enumerate(lengths))
    return thing("box", ref, **{"gangs": ASKED, "volume": 1.0, "wire_ends": ends, **facts})


def seen(node: Node, of: Thing) -> Seen:
    rule = as_pulled().pack.rules[0]
    asked = rule._replace(about="box", where=None, need=Checked("box", COUNT, node))
    return Sights(Library({}, {}, {("box", "half"): HALF})).seen(asked, of, REF)


SOME = ForThings("some", "e", ENDS, None, Comparison("more than", LENGTH, GANGS))
FIRST, LAST = FactOf(BOX, "box", "first"), FactOf(BOX, "box", "last")
ONE, SECOND = box("b2"), box("b3")


@pytest.mark.parametrize(
    ("node", "one", "other"),
    [
        (VOLUME, box(), box(volume=2.0)),
        (VOLUME, box(), box(volume=OTHER)),
        (GANGS, box(), box(gangs=OTHER)),
        (GANGS, box(), box(gangs=Unknown([REF, *OTHER.because]))),
        (MeasureOf(BOX, "box", "half", COUNT), box(), box(volume=2.0)),
        (SOME, box("b1", 1.0, 2.0), box("b1", 1.0, 3.0)),
        (SOME, box("b1", 1.0, 2.0), box("b1", 1.0)),
        (Count("e", ENDS, None), box("b1", 1.0, 2.0), box("b1", 1.0)),
        (Count("e", ENDS, None), box("b1"), box("b1", wire_ends=OTHER)),
        (Is(False, FIRST, LAST), box(first=ONE, last=ONE), box(first=ONE, last=SECOND)),
    ],
)
def test_what_parts_two_things_is_seen(node: Node, one: Thing, other: Thing) -> None:
    assert seen(node, one).values != seen(node, other).values


@pytest.mark.parametrize(
    ("node", "one", "other"),
    [
        (GANGS, box(), box(volume=2.0)),
        (SOME, box("b1", 1.0), box("b2", 1.0)),
        (Is(False, FIRST, LAST), box(first=ONE, last=ONE), box(first=SECOND, last=SECOND)),
    ],
)
def test_what_a_rule_does_not_look_at_is_not_seen(node: Node, one: Thing, other: Thing) -> None:
    assert seen(node, one).values == seen(node, other).values


def test_the_asked_unknown_is_found_once_wherever_it_is_looked_at() -> None:
    of = box("b1", 1.0, 2.0)
    assert seen(SOME, of).asked == ((of, "gangs"),)
    assert seen(VOLUME, of).asked == ()
