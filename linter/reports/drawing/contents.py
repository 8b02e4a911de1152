"""What the drawing of a box shows: cables with their conductors, joints, devices with pins."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.job.stated import BoxId
from linter.wiring.card_words import CardWords
from linter.wiring.model import LinkKind

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from linter.job.cables import Cable
    from linter.job.jobs import Job
    from linter.wiring.model import BoxWiring, Terminal, WireEnd, Wiring

SIDES = ("right", "top", "left", "back", "bottom")
"""Where a cable may enter, in the order in which a drawing tells them, from its top down."""

USUAL_SIDE = "top"


class Row(NamedTuple):
    """A conductor in the box: its insulation colour, its tape, and what becomes of it if nothing.

    `key` tells it apart; `end` is "capped", "left open", "lacking", "uncut" or, where it is joined
    or lands on a terminal, empty.
    """

    key: str
    colour: str
    mark: str
    use: str
    end: str = ""


class Block(NamedTuple):
    """A cable in the box: its name, printing, other end, where it enters, its conductors."""

    cable: str
    sheath: str
    where: str
    side: str
    is_stated: bool
    rows: tuple[Row, ...]


class Pin(NamedTuple):
    """A thing on a terminal: a pigtail from a joint, or a wire direct; `key` tells it apart.

    `label` is empty for the second thing on one terminal; `metal` is that of its screw; `colour` is
    empty where nothing is on it.
    """

    key: str
    label: str
    metal: str
    colour: str
    is_lead: bool = False


class Side(NamedTuple):
    """Terminals of a device that belong together, under a heading: the line, the load, or all."""

    heading: str
    pins: tuple[Pin, ...]


class Face(NamedTuple):
    """A device, or the box itself for its bond screw: name, terminals, what is to be done to it."""

    kind: str
    name: str
    sides: tuple[Side, ...]
    remarks: tuple[str, ...]

    @property
    def pins(self) -> tuple[Pin, ...]:
        """All that is on its terminals, and those with nothing on them."""
        return tuple(pin for side in self.sides for pin in side.pins)


class Net(NamedTuple):
    """Conductors and pins that are one: by a joint with a number, or without, straight."""

    rows: tuple[str, ...]
    pins: tuple[str, ...]
    joint: str


class Contents(NamedTuple):
    """All that the drawing of one box shows."""

    box: str
    blocks: tuple[Block, ...]
    faces: tuple[Face, ...]
    nets: tuple[Net, ...]


def contents_of(
    wiring: Wiring, job: Job, box: str, words: Mapping[str, str], lacking: frozenset[str]
) -> Contents:
    """What the drawing of a box shows; `lacking` are wire ends that miss what they are joined with.

    Raises `KeyError` where the job has no such box.
    """
    here = wiring.boxes[box]
    said = CardWords(job, words)
    return Contents(
        box=box,
        blocks=tuple(_blocks(job, here, said, lacking)),
        faces=tuple(_faces(wiring, job, here, said)),
        nets=tuple(_nets(here)),
    )


def _blocks(job: Job, here: BoxWiring, said: CardWords, lacking: frozenset[str]) -> Iterator[Block]:
    ends: dict[str, list[WireEnd]] = {}
    for end in here.wire_ends:
        ends.setdefault(end.cable, []).append(end)
    becomes = {each.wire_end: "capped" for each in here.capped}
    becomes |= dict.fromkeys(here.open_ends, "left open")
    becomes |= dict.fromkeys(lacking, "lacking")
    passing = dict.fromkeys(each.cable for each in here.passing)
    for name, cable in job.cables.items():
        if here.box in cable.ends:
            rows = tuple(_row(end, said, becomes.get(end.id, "")) for end in ends.get(name, ()))
            yield _block(cable, here.box, rows)
        elif name in passing:
            uncut = [each for each in here.passing if each.cable == name]
            rows = tuple(
                Row(f"{name}.{each.colour}", each.colour, "", said.use(each.use), "uncut")
                for each in uncut
            )
            where = f"{cable.from_} to {cable.to}"
            yield Block(name, str(cable.sheath or ""), where, USUAL_SIDE, is_stated=True, rows=rows)


def _row(end: WireEnd, said: CardWords, becomes: str) -> Row:
    return Row(end.id, end.colour, end.marked or "", said.use(end.use), becomes)


def _block(cable: Cable, box: str, rows: tuple[Row, ...]) -> Block:
    is_from = cable.from_ == box
    other = cable.to if is_from else cable.from_
    side = (cable.at_from if is_from else cable.at_to).enters
    sheath = str(cable.sheath) if cable.sheath is not None else "sheath unknown"
    where = f"to {other}" if is_from else f"from {other}"
    return Block(cable.name, sheath, where, side or USUAL_SIDE, side is not None, rows)


def _faces(wiring: Wiring, job: Job, here: BoxWiring, said: CardWords) -> Iterator[Face]:
    by_device: dict[str, list[Terminal]] = {}
    for terminal in here.terminals:
        by_device.setdefault(terminal.device, []).append(terminal)
    hidden = _tied_and_empty(wiring, here)
    for device, terminals in by_device.items():
        shown = [each for each in terminals if each.id not in hidden]
        kind = said.kind(device) if device else "metal box"
        sides = tuple(_sides(wiring, shown, said))
        yield Face(kind, device or here.box, sides, tuple(_remarks(job, here, device, terminals)))


def _tied_and_empty(wiring: Wiring, here: BoxWiring) -> frozenset[str]:
    """The second screws of halves that a tab ties, with nothing on them."""
    ties = [link.ends for link in here.links if link.kind is LinkKind.TAB]
    taken = wiring.landings
    return frozenset(
        each
        for ends in ties
        for each in ends
        if each not in taken and any(other in taken for other in ends)
    )


def _sides(wiring: Wiring, terminals: Sequence[Terminal], said: CardWords) -> Iterator[Side]:
    """The terminals in order, those of the line and of the load each under their heading."""
    groups: dict[str, list[Terminal]] = {}
    has_load = any(each.name.startswith("load ") for each in terminals)
    for each in terminals:
        first = each.name.partition(" ")[0]
        heading = first.upper() if has_load and first in ("line", "load") else ""
        groups.setdefault(heading, []).append(each)
    for heading, group in groups.items():
        yield Side(heading, tuple(pin for each in group for pin in _pins(wiring, each, said)))


def _pins(wiring: Wiring, terminal: Terminal, said: CardWords) -> Iterator[Pin]:
    label, metal = said.name(terminal), _metal(terminal.name)
    landing = wiring.landings.get(terminal.id)
    on_it = () if landing is None else landing.all_on_it
    is_lead = said.is_lead(terminal)
    if not on_it:
        yield Pin(terminal.id, label, metal, "", is_lead)
    for number, each in enumerate(on_it):
        pigtail, end = wiring.pigtails.get(each), wiring.wire_ends.get(each)
        colour = pigtail.colour if pigtail else end.colour if end else ""
        yield Pin(f"{terminal.id}<{each}", "" if number else label, metal, colour, is_lead)


def _metal(terminal: str) -> str:
    """The metal that such a screw is of, or plated with, where devices are marked so."""
    for word, metal in (("bond", "green"), ("neutral", "silver"), ("common", "dark")):
        if word in terminal:
            return metal
    return "brass"


def _remarks(
    job: Job, here: BoxWiring, device: str, terminals: Sequence[Terminal]
) -> Iterator[str]:
    names = {each.name for each in terminals}
    tied = {frozenset(link.ends) for link in here.links if link.kind is LinkKind.TAB}
    for role in ("hot", "neutral"):
        pair = {role, f"{role} 2"}
        ids = frozenset(f"{device}.{each}" for each in pair)
        if pair <= names and ids not in tied and _is_duplex(job, here.box, device):
            yield f"break off the tab, {role} side"


def _is_duplex(job: Job, box: str, device: str) -> bool:
    held = job.boxes[BoxId(box)].holds
    return any(each.name == device and getattr(each, "single", None) is False for each in held)


def _nets(here: BoxWiring) -> Iterator[Net]:
    terminal_of = {each.id: each.terminal for each in here.pigtails}
    for joint in here.joints:
        pins = tuple(f"{terminal_of[each]}<{each}" for each in joint.pigtails)
        yield Net(joint.wire_ends, pins, joint.id.rpartition("/")[2])
    for landing in here.landings:
        for wire in landing.wire_ends:
            yield Net((wire,), (f"{landing.terminal}<{wire}",), "")
