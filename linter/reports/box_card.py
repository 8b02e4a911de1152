"""A box made up, as lines: cables, joints, pigtails to cut, terminals, what stays capped."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import CARD_CAUTION
from linter.text import join_words
from linter.wiring.card import UNKNOWN_SIZE

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.text import Place
    from linter.wiring.card import CableIn, JointIn, Lacking, MakeUp, OnTerminal, PigtailsToCut, Tab


class Where(NamedTuple):
    """Where a box is: its room, and where the job file states it; `fill` says what is left."""

    room: str
    place: Place
    fill: str = ""


def cards(made: Iterable[tuple[MakeUp, Where]]) -> Iterator[Line]:
    """The cards one after the other, each under one line of caution."""
    for number, (each, where) in enumerate(made):
        yield from [EMPTY, EMPTY] if number else []
        yield from box_card(each, where)


def box_card(made: MakeUp, where: Where) -> Iterator[Line]:
    """The card of a box, in the order in which one makes it up."""
    at = f", at {where.place}"
    yield Line((Span(f"{made.box}, {_room(where.room)}", "room"), Span(at, "quiet")), hang=2)
    yield Line((Span("CAUTION", "caution", whole=True), Span(f"  {CARD_CAUTION}")), hang=2)
    if where.fill:
        yield line(where.fill)
    for heading, rows in card_parts(made):
        yield EMPTY
        yield line(heading, "box", indent=2)
        yield from (line(row, indent=4, hang=4) for row in rows)


def card_parts(made: MakeUp, *, numbered: bool = False) -> Iterator[tuple[str, tuple[str, ...]]]:
    """What is said of a box, under its headings, in the order in which one makes it up.

    Where joints are shown `numbered`, a pigtail is told by the number of its joint.
    """
    joints = {each.wires: number for number, each in enumerate(made.joints, 1) if numbered}
    # A lead in a joint has been told there.
    on = [each for each in made.terminals if not (each.is_lead and each.from_joint)]
    parts = (
        ("Cables", map(_cable, made.cables)),
        ("Uncut", (f"{cable}.{colour} runs through" for cable, colour in made.passing)),
        ("Joints", map(_joint, made.joints)),
        ("Pigtails to cut", map(_pigtails, made.pigtails)),
        ("Terminals", (_terminal(each, joints.get(each.from_joint)) for each in on)),
        ("Break off", map(_tab, made.tabs)),
        ("Nothing on", made.empty),
        ("Cap", made.capped),
        ("Left open", made.left_open),
        ("NOTHING HERE TO JOIN IT WITH", map(_lacking, made.lacking)),
    )
    for heading, rows in parts:
        listed = tuple(rows)
        if listed:
            yield heading, listed


def box_list(boxes: Iterable[tuple[str, str]]) -> Iterator[Line]:
    """The boxes of a job with their rooms, as one walks through them."""
    room = None
    for name, in_room in boxes:
        if in_room != room:
            yield line(_room(in_room), "box")
            room = in_room
        yield line(name, indent=2)


def _room(room: str) -> str:
    return room or "no room stated"


def _cable(cable: CableIn) -> str:
    wires = "; ".join(f"{colour} {use}" for colour, use in cable.wires)
    return f"{cable.cable}, {cable.sheath}, to {cable.other_end}: {wires or 'conductors unknown'}"


def _joint(joint: JointIn) -> str:
    parts = list(joint.wires)
    parts += [f"a pigtail to {terminal}" for terminal in joint.pigtails]
    parts += [f"the {terminal}" for terminal in joint.leads]
    made_of = join_words([_number_of(size, number) for size, number in joint.sizes])
    connector = f", by connector {joint.connector}" if joint.connector else ""
    stated = ", as the job states it" if joint.is_stated else ""
    return f"{joint.use}: {join_words(parts)} ({made_of}{connector}{stated})"


def _number_of(size: str, number: int) -> str:
    if size == UNKNOWN_SIZE:
        return f"{number} of unknown size"
    return f"{number} \N{MULTIPLICATION SIGN} {size}"


def _pigtails(pigtails: PigtailsToCut) -> str:
    return f"{pigtails.number} {pigtails.colour}, {pigtails.size}"


def _terminal(on: OnTerminal, joint: int | None) -> str:
    if on.is_lead:
        return f"{on.device}, {on.terminal}: joined with {join_words([*on.wires, *on.from_joint])}"
    parts = [f"{wire} direct" for wire in on.wires]
    if joint is not None:
        parts.append(f"pigtail from joint {joint}")
    elif on.from_joint:
        parts.append(f"pigtail from {join_words(on.from_joint)}")
    return f"{on.device}, {on.terminal}: {join_words(parts)}"


def _tab(tab: Tab) -> str:
    if tab.keeps_neutral:
        return f"{tab.device}: the tab on the hot side; leave the tab on the neutral side"
    return f"{tab.device}: the tabs on both sides"


def _lacking(wire: Lacking) -> str:
    devices = join_words(wire.devices)
    verb = "hangs" if len(wire.devices) == 1 else "hang"
    return (
        f"{wire.wire}, {wire.use}: nothing of its kind comes to this box, and {devices} {verb} on "
        'it. Do not cap it; see "precover audit".'
    )
