"""What to write inside a box while it is open: what a tester will not tell once it is covered."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.job.stated import BoxId, CircuitId
from linter.text import join_words
from linter.wiring.card_words import CardWords
from linter.wiring.circuits import poles_of
from linter.wiring.model import Role

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.reports.page.subject import Subject
    from linter.wiring.model import Use, WireEnd

_HOTS = (Role.HOT, Role.SWITCHED_HOT, Role.TRAVELLER)


def to_write_inside(subject: Subject, box: str) -> tuple[str, ...]:
    """Short rows for a marker: each cable with its other end, then what its colours do not tell."""
    return (*_cables(subject, box), *_unlike_their_colour(subject, box), *_loads(subject, box))


def _cables(subject: Subject, box: str) -> Iterator[str]:
    for name, cable in subject.job.cables.items():
        if cable.from_ == box:
            yield f"{name} \N{RIGHTWARDS ARROW} {cable.to}"
        if cable.to == box:
            yield f"{name} \N{LEFTWARDS ARROW} {cable.from_}{_circuits(subject, name)}"


def _circuits(subject: Subject, cable: str) -> str:
    """The circuits in a cable, with the spaces in the panel that its hots come from."""
    uses = [part.use for part in subject.wiring.parts.get(cable, ()) if part.use.circuit]
    found = [each for each in dict.fromkeys(use.circuit for use in uses) if each]
    spaces = {str(space): None for use in uses for space in _spaces(subject, use)}
    if not found:
        return ""
    word = "space" if len(spaces) == 1 else "spaces"
    return f", {join_words(found)}, {word} {join_words(list(spaces))}"


def _spaces(subject: Subject, use: Use) -> Iterator[int]:
    """The space of a hot; all of its circuit for what it feeds through a switch."""
    poles = poles_of(subject.job, subject.job.circuits[CircuitId(use.circuit or "")])
    if use.role is Role.HOT and use.pole is not None and use.pole < len(poles):
        yield poles[use.pole].takes
    elif use.role in _HOTS:
        yield from (each.takes for each in poles)


def _unlike_their_colour(subject: Subject, box: str) -> Iterator[str]:
    """Whites that are hot, coloured neutrals, spares: what the next person would take wrongly."""
    said = CardWords(subject.job, subject.words)
    alike: dict[tuple[str, str], list[str]] = {}
    for end in subject.wiring.boxes[box].wire_ends:
        if _is_unlike(end):
            taped = f", {end.marked} tape" if end.marked else ""
            alike.setdefault((end.cable, f"{said.use(end.use)}{taped}"), []).append(end.colour)
    for (cable, use), colours in alike.items():
        are = "is" if len(colours) == 1 else "are"
        yield f"{join_words(colours)} of {cable} {are} {use}"


def _is_unlike(end: WireEnd) -> bool:
    is_white = end.colour.startswith("white")
    role = end.use.role
    return (
        (is_white and role in _HOTS)
        or (role is Role.NEUTRAL and not is_white and end.colour != "grey")
        or role is Role.SPARE
    )


def _loads(subject: Subject, box: str) -> Iterator[str]:
    for device in subject.job.boxes[BoxId(box)].holds:
        if device.load:
            yield f"load of {device.name}: {join_words(list(device.load))}"
