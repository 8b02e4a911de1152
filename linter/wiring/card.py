"""How one box is made up, as a value that a report can print with the box in hand."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING, NamedTuple

from linter.job.devices import Receptacle
from linter.job.stated import BoxId
from linter.units import AREA, write_quantity
from linter.wiring.card_words import CardWords
from linter.wiring.devices import HOT, HOT_2, NEUTRAL, NEUTRAL_2
from linter.wiring.model import LinkKind

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from linter.job.jobs import Job
    from linter.units import Quantity
    from linter.wiring.model import BoxWiring, Joint, WireEnd, Wiring

UNKNOWN_SIZE = "size unknown"
Counts = tuple[tuple[str, int], ...]
Words = Mapping[str, str]
Needed = Callable[[str], tuple[str, ...]]
NO_WORDS: Words = MappingProxyType({})


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
    """What goes on one terminal: wires direct, or a pigtail from a joint of wires.

    A lead is the device's own wire: what is on it is joined with it.
    """

    device: str
    terminal: str
    wires: tuple[str, ...]
    from_joint: tuple[str, ...]
    is_lead: bool = False


class Tab(NamedTuple):
    """A tab to break off between the two halves of a device; `keeps_neutral`: on the hot side."""

    device: str
    keeps_neutral: bool


class Lacking(NamedTuple):
    """A conductor that devices elsewhere hang on, and that has nothing to be joined with here."""

    wire: str
    use: str
    devices: tuple[str, ...]


class MakeUp(NamedTuple):
    """The make-up of a box; `empty` are terminals with nothing on them, second screws left out."""

    box: str
    cables: tuple[CableIn, ...]
    passing: tuple[tuple[str, str], ...]
    joints: tuple[JointIn, ...]
    pigtails: tuple[PigtailsToCut, ...]
    terminals: tuple[OnTerminal, ...]
    tabs: tuple[Tab, ...]
    empty: tuple[str, ...]
    capped: tuple[str, ...]
    left_open: tuple[str, ...]
    lacking: tuple[Lacking, ...] = ()


def make_up_of(
    wiring: Wiring, job: Job, box: str, words: Words = NO_WORDS, needed: Needed = lambda _: ()
) -> MakeUp:
    """How a box is made up, in the words of the trade as `words` has them.

    `needed` tells which devices hang on a wire end that nothing reaches: it is not one to cap.
    Raises `KeyError` where the job has no such box.
    """
    here = wiring.boxes[box]
    said = CardWords(job, words)
    names = {end.id: end.name for end in here.wire_ends}
    hanging = {each: needed(each) for each in (*(c.wire_end for c in here.capped), *here.open_ends)}
    lacking = [end for end in here.wire_ends if hanging.get(end.id)]
    return MakeUp(
        box=box,
        cables=_cables(job, here, said),
        passing=tuple((each.cable, each.colour) for each in here.passing),
        joints=tuple(_joint(wiring, joint, said) for joint in here.joints),
        pigtails=_pigtails(wiring, here, said),
        terminals=tuple(_on_terminals(wiring, here, said)),
        tabs=_tabs(job, here, said),
        empty=_empty(wiring, here, said),
        capped=tuple(names[c.wire_end] for c in here.capped if not hanging[c.wire_end]),
        left_open=tuple(names[each] for each in here.open_ends if not hanging[each]),
        lacking=tuple(
            Lacking(end.name, said.use(end.use), tuple(map(said.device, hanging[end.id])))
            for end in lacking
        ),
    )


def _cables(job: Job, here: BoxWiring, said: CardWords) -> tuple[CableIn, ...]:
    ends: dict[str, list[WireEnd]] = {}
    for end in here.wire_ends:
        ends.setdefault(end.cable, []).append(end)
    found = []
    for name, cable in job.cables.items():
        if here.box in (cable.from_, cable.to):
            other = cable.to if cable.from_ == here.box else cable.from_
            sheath = str(cable.sheath) if cable.sheath is not None else "sheath unknown"
            wires = tuple((end.colour, said.use(end.use)) for end in ends.get(name, ()))
            found.append(CableIn(name, sheath, other, wires))
    return tuple(found)


def _joint(wiring: Wiring, joint: Joint, said: CardWords) -> JointIn:
    ends = [wiring.wire_ends[each] for each in joint.wire_ends]
    pigtails = [wiring.pigtails[each] for each in joint.pigtails]
    to = {each.id: wiring.terminals[each.terminal] for each in pigtails}
    leads = [each for each in pigtails if said.is_lead(to[each.id])]
    sizes = [said.lead_size(to[each.id]) if each in leads else each.size for each in pigtails]
    return JointIn(
        use=said.use(joint.use),
        wires=tuple(end.name for end in ends),
        pigtails=tuple(said.terminal(to[each.id]) for each in pigtails if each not in leads),
        leads=tuple(said.terminal(to[each.id]) for each in leads),
        number=joint.wire_count,
        sizes=_counts([*(end.size for end in ends), *sizes]),
        connector=joint.connector,
        is_stated=joint.stated,
    )


def _counts(sizes: Iterable[Quantity | None]) -> Counts:
    """The sizes with how many of each, largest first, unknown ones last."""
    sizes = tuple(sizes)
    counts = Counter(_written(size) for size in sizes)
    order = {_written(size): size.value for size in sizes if size is not None}
    return tuple(sorted(counts.items(), key=lambda each: -order.get(each[0], 0)))


def _written(size: Quantity | None) -> str:
    return UNKNOWN_SIZE if size is None else write_quantity(size.value, AREA, "AWG")


def _pigtails(wiring: Wiring, here: BoxWiring, said: CardWords) -> tuple[PigtailsToCut, ...]:
    counts = Counter(
        (each.colour, _written(each.size))
        for each in here.pigtails
        if not said.is_lead(wiring.terminals[each.terminal])
    )
    return tuple(PigtailsToCut(colour, size, n) for (colour, size), n in counts.items())


def _on_terminals(wiring: Wiring, here: BoxWiring, said: CardWords) -> Iterable[OnTerminal]:
    for terminal in here.terminals:
        landing = wiring.landings.get(terminal.id)
        if landing is None:
            continue
        joint: Sequence[str] = ()
        if landing.pigtail is not None:
            joint = wiring.joints[wiring.pigtails[landing.pigtail].joint].wire_ends
        yield OnTerminal(
            said.device(terminal.device),
            said.name(terminal),
            tuple(wiring.wire_ends[each].name for each in landing.wire_ends),
            tuple(wiring.wire_ends[each].name for each in joint),
            said.is_lead(terminal),
        )


def _tabs(job: Job, here: BoxWiring, said: CardWords) -> tuple[Tab, ...]:
    """The tabs to break: where both halves have screws, and the wiring does not tie them."""
    tied = {link.ends for link in here.links if link.kind is LinkKind.TAB}
    names = {terminal.id for terminal in here.terminals}
    found = []
    for device in job.boxes[BoxId(here.box)].holds:
        is_duplex = isinstance(device, Receptacle) and device.single is False
        hots = (f"{device.name}.{HOT}", f"{device.name}.{HOT_2}")
        neutrals = (f"{device.name}.{NEUTRAL}", f"{device.name}.{NEUTRAL_2}")
        if is_duplex and names.issuperset(hots + neutrals) and hots not in tied:
            found.append(Tab(said.device(device.name), keeps_neutral=neutrals in tied))
    return tuple(found)


def _empty(wiring: Wiring, here: BoxWiring, said: CardWords) -> tuple[str, ...]:
    """The terminals with nothing on them, but for those tied by a tab to one that has something."""
    taken = {terminal.id for terminal in here.terminals if terminal.id in wiring.landings}
    tabs = (link.ends for link in here.links if link.kind is LinkKind.TAB)
    tied = {each for ends in tabs if not taken.isdisjoint(ends) for each in ends}
    return tuple(said.terminal(each) for each in here.terminals if each.id not in taken | tied)
