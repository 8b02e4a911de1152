"""How one box is made up, as a value that a report can print with the box in hand."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, NamedTuple

from linter.units import AREA, write_quantity
from linter.wiring.model import LinkKind

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from linter.job.jobs import Job
    from linter.units import Quantity
    from linter.wiring.model import BoxWiring, Joint, WireEnd, Wiring

UNKNOWN_SIZE = "size unknown"
Counts = tuple[tuple[str, int], ...]


class CableIn(NamedTuple):
    """A cable that ends in the box: its printing, where it goes, its conductors with their uses."""

    cable: str
    sheath: str
    other_end: str
    wires: tuple[tuple[str, str], ...]


class JointIn(NamedTuple):
    """A joint to make: its wires, the terminals its pigtails go to, sizes with their number."""

    use: str
    wires: tuple[str, ...]
    pigtails: tuple[str, ...]
    leads: tuple[str, ...]
    number: int
    sizes: Counts
    connector: str | None
    is_stated: bool


class PigtailsToCut(NamedTuple):
    """Pigtails of one colour and size, and how many of them."""

    colour: str
    size: str
    number: int


class OnTerminal(NamedTuple):
    """What goes on one terminal: wires straight, or a pigtail (or lead) from a joint of wires."""

    device: str
    terminal: str
    wires: tuple[str, ...]
    from_joint: tuple[str, ...]


class MakeUp(NamedTuple):
    """The make-up of a box; `empty` are terminals with nothing on them, second screws left out."""

    box: str
    cables: tuple[CableIn, ...]
    passing: tuple[tuple[str, str], ...]
    joints: tuple[JointIn, ...]
    pigtails: tuple[PigtailsToCut, ...]
    terminals: tuple[OnTerminal, ...]
    empty: tuple[str, ...]
    capped: tuple[str, ...]
    left_open: tuple[str, ...]


def make_up_of(wiring: Wiring, job: Job, box: str) -> MakeUp:
    """How a box is made up. Raises `KeyError` where the job has no such box."""
    here = wiring.boxes[box]
    names = {end.id: end.name for end in here.wire_ends}
    return MakeUp(
        box=box,
        cables=_cables(job, here),
        passing=tuple((each.cable, each.colour) for each in here.passing),
        joints=tuple(_joint(wiring, joint) for joint in here.joints),
        pigtails=_pigtails(here),
        terminals=tuple(_on_terminals(wiring, here)),
        empty=_empty(wiring, here),
        capped=tuple(names[each.wire_end] for each in here.capped),
        left_open=tuple(names[each] for each in here.open_ends),
    )


def _cables(job: Job, here: BoxWiring) -> tuple[CableIn, ...]:
    ends: dict[str, list[WireEnd]] = {}
    for end in here.wire_ends:
        ends.setdefault(end.cable, []).append(end)
    found = []
    for name, cable in job.cables.items():
        if here.box in cable.ends:
            other = cable.to if cable.from_ == here.box else cable.from_
            sheath = str(cable.sheath) if cable.sheath is not None else "sheath unknown"
            wires = tuple((end.colour, str(end.use)) for end in ends.get(name, ()))
            found.append(CableIn(name, sheath, other, wires))
    return tuple(found)


def _joint(wiring: Wiring, joint: Joint) -> JointIn:
    ends = [wiring.wire_ends[each] for each in joint.wire_ends]
    pigtails = [wiring.pigtails[each] for each in joint.pigtails]
    sizes = [end.size for end in ends] + [each.size for each in pigtails]
    return JointIn(
        use=str(joint.use),
        wires=tuple(end.name for end in ends),
        pigtails=tuple(each.terminal for each in pigtails if not each.is_lead),
        leads=tuple(each.terminal for each in pigtails if each.is_lead),
        number=joint.wire_count,
        sizes=_counts(sizes),
        connector=joint.connector,
        is_stated=joint.stated,
    )


def _counts(sizes: Iterable[Quantity | None]) -> Counts:
    """The sizes with how many of each, largest first, unknown ones last."""
    counts = Counter(_written(size) for size in sizes)
    order = {_written(size): size.value for size in sizes if size is not None}
    return tuple(sorted(counts.items(), key=lambda each: -order.get(each[0], 0)))


def _written(size: Quantity | None) -> str:
    return UNKNOWN_SIZE if size is None else write_quantity(size.value, AREA, "AWG")


def _pigtails(here: BoxWiring) -> tuple[PigtailsToCut, ...]:
    counts = Counter(
        (each.colour, _written(each.size)) for each in here.pigtails if not each.is_lead
    )
    return tuple(PigtailsToCut(colour, size, n) for (colour, size), n in counts.items())


def _on_terminals(wiring: Wiring, here: BoxWiring) -> Iterable[OnTerminal]:
    for terminal in here.terminals:
        landing = wiring.landings.get(terminal.id)
        if landing is None:
            continue
        joint: Sequence[str] = ()
        if landing.pigtail is not None:
            joint = wiring.joints[wiring.pigtails[landing.pigtail].joint].wire_ends
        yield OnTerminal(
            terminal.device,
            terminal.name,
            tuple(wiring.wire_ends[each].name for each in landing.wire_ends),
            tuple(wiring.wire_ends[each].name for each in joint),
        )


def _empty(wiring: Wiring, here: BoxWiring) -> tuple[str, ...]:
    """The terminals with nothing on them, but for those tied by a tab to one that has something."""
    taken = {terminal.id for terminal in here.terminals if terminal.id in wiring.landings}
    tabs = (link.ends for link in here.links if link.kind is LinkKind.TAB)
    tied = {each for ends in tabs if not taken.isdisjoint(ends) for each in ends}
    return tuple(each.id for each in here.terminals if each.id not in taken | tied)
