"""A box made up, as lines: cables, joints, pigtails to cut, terminals, what stays capped."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import CAUTION, CLOSING, counted
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.text import Place
    from linter.wiring.card import CableIn, JointIn, MakeUp, OnTerminal, PigtailsToCut


def box_card(made: MakeUp, room: str, place: Place) -> Iterator[Line]:
    """The card of a box, in the order in which one makes it up."""
    yield Line((Span("CAUTION", "caution", whole=True), Span(f"  {CAUTION}")), hang=2)
    yield EMPTY
    yield Line((Span(f"{made.box}, {room}", "room"), Span(f", at {place}", "quiet")), hang=2)
    yield from _part("Cables", map(_cable, made.cables))
    yield from _part("Uncut", (f"{cable}.{colour} runs through" for cable, colour in made.passing))
    yield from _part("Joints", map(_joint, made.joints))
    yield from _part("Pigtails to cut", map(_pigtails, made.pigtails))
    yield from _part("Terminals", map(_terminal, made.terminals))
    yield from _part("Nothing on", made.empty)
    yield from _part("Cap", made.capped)
    yield from _part("Left open", made.left_open)
    yield EMPTY
    yield line(CLOSING)


def _part(heading: str, rows: Iterable[str]) -> Iterator[Line]:
    for number, row in enumerate(rows):
        if not number:
            yield EMPTY
            yield line(heading, "box", indent=2)
        yield line(row, indent=4, hang=4)


def _cable(cable: CableIn) -> str:
    wires = "; ".join(f"{colour} {use}" for colour, use in cable.wires)
    return f"{cable.cable}, {cable.sheath}, to {cable.other_end}: {wires or 'conductors unknown'}"


def _joint(joint: JointIn) -> str:
    parts = list(joint.wires)
    parts += [f"a pigtail to {terminal}" for terminal in joint.pigtails]
    parts += [f"the lead {terminal}" for terminal in joint.leads]
    sizes = join_words([f"{number} of {size}" for size, number in joint.sizes])
    connector = f", by connector {joint.connector}" if joint.connector else ""
    stated = ", as the job states it" if joint.is_stated else ""
    made_of = f"{counted(joint.number, 'conductor', 'conductors')}, {sizes}"
    return f"{joint.use}: {join_words(parts)} ({made_of}{connector}{stated})"


def _pigtails(pigtails: PigtailsToCut) -> str:
    return f"{pigtails.number} {pigtails.colour}, {pigtails.size}"


def _terminal(on: OnTerminal) -> str:
    parts = [f"{wire} straight" for wire in on.wires]
    if on.from_joint:
        parts.append(f"the pigtail from {join_words(on.from_joint)}")
    of = f"{on.device}, {on.terminal}" if on.device else f"the box itself, {on.terminal}"
    return f"{of}: {join_words(parts)}"
