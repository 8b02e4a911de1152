"""What a wiring is made of: wire ends, joints, pigtails, terminals, landings, links.

Every id is text that a person can read: `k1.black@sink` is the black conductor of cable k1 where it
ends in the box (or panel) sink; `sink.hot` is the hot terminal of the device sink; `sink/1` is the
first joint in the box sink.
"""

from __future__ import annotations

from enum import Enum
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.units import Quantity


class Role(Enum):
    """What a conductor is used as."""

    HOT = "hot"
    NEUTRAL = "neutral"
    BOND = "bond"
    SWITCHED_HOT = "switched hot"
    TRAVELLER = "traveller"
    SPARE = "spare"
    SIGNAL = "signal"
    UNKNOWN = "unknown"


class Use(NamedTuple):
    """What one conductor is for; conductors of one use in a box are joined, like to like.

    `pole` counts the hots of the circuit from 0; `group` names the outlet or box that is
    controlled; `number` tells the travellers of a group apart. Bonds, spares, signals (by which
    alarms sound together) and unknowns have the role alone.
    """

    role: Role
    circuit: str | None = None
    pole: int | None = None
    group: str | None = None
    number: int | None = None

    def __str__(self) -> str:
        words = [self.role.value]
        words += [str(self.number)] if self.number is not None else []
        words += [f"of {self.group}"] if self.group else []
        words += [f"({self.circuit})"] if self.circuit else []
        return " ".join(words)


BOND = Use(Role.BOND)
SPARE = Use(Role.SPARE)
SIGNAL = Use(Role.SIGNAL)
UNKNOWN = Use(Role.UNKNOWN)


class WireEnd(NamedTuple):
    """The end of one conductor of a cable in a box or panel; `marked`: re-marked in that colour."""

    id: str
    cable: str
    colour: str
    box: str
    at_from: bool
    use: Use
    insulated: bool
    size: Quantity | None
    marked: str | None

    @property
    def bond(self) -> bool:
        """Whether it is used as a bond."""
        return self.use.role is Role.BOND

    @property
    def name(self) -> str:
        """What `make_up` calls it in its box: "k1.black"."""
        return f"{self.cable}.{self.colour}"


class Terminal(NamedTuple):
    """A place on a device where conductors end; a lead is the device's own wire, always joined.

    The bond screw of a metal box is the terminal "bond" of no device.
    """

    id: str
    device: str
    box: str
    name: str
    is_lead: bool = False


class Pigtail(NamedTuple):
    """A short wire from a joint to a terminal; not to be cut where it is the device's own lead."""

    id: str
    box: str
    joint: str
    terminal: str
    colour: str
    size: Quantity | None
    is_lead: bool = False


class Joint(NamedTuple):
    """Conductors spliced together in a box; `stated` where the job file says so joint by joint.

    `use` is what its conductors have in common: UNKNOWN where they differ.
    """

    id: str
    box: str
    wire_ends: tuple[str, ...]
    pigtails: tuple[str, ...]
    use: Use
    connector: str | None
    stated: bool = False

    @property
    def wire_count(self) -> int:
        """Conductors in it, pigtails too."""
        return len(self.wire_ends) + len(self.pigtails)


class Landing(NamedTuple):
    """What ends on a terminal: wires of cables, straight, or a pigtail from a joint."""

    terminal: str
    wire_ends: tuple[str, ...]
    pigtail: str | None

    @property
    def all_on_it(self) -> tuple[str, ...]:
        """The ids of all that ends on the terminal."""
        return self.wire_ends if self.pigtail is None else (*self.wire_ends, self.pigtail)


class LinkKind(Enum):
    """When two terminals of a device are one."""

    TAB = "tab"
    ALWAYS = "always"
    CLOSED_WHEN_ON = "closed when on"
    THROW_1 = "throw 1"
    THROW_2 = "throw 2"
    LINE_TO_LOAD = "line to load"


class Link(NamedTuple):
    """A way from one terminal of a device to another; line to load is given in this order."""

    device: str
    ends: tuple[str, str]
    kind: LinkKind
    carries: Role


class Capped(NamedTuple):
    """A wire end under a connector of its own, joined to nothing; stated, or derived."""

    wire_end: str
    stated: bool


class Spot(Enum):
    """Where a conductor ends in a panel."""

    BREAKER = "breaker"
    BREAKER_NEUTRAL = "neutral terminal of a breaker"
    NEUTRAL_BAR = "neutral bar"
    BOND_BAR = "bond bar"
    FEED = "feed terminals"


class PanelLanding(NamedTuple):
    """Where a conductor ends in a panel; `pole` counts the poles of that breaker from 0."""

    panel: str
    spot: Spot
    space: int | None = None
    pole: int | None = None


class Passing(NamedTuple):
    """A conductor that goes through a box uncut."""

    box: str
    cable: str
    colour: str
    size: Quantity | None
    insulated: bool
    use: Use
    loop: Quantity | None

    @property
    def bond(self) -> bool:
        """Whether it is used as a bond."""
        return self.use.role is Role.BOND


class BoxWiring(NamedTuple):
    """All that one box holds, in the order of the job file."""

    box: str
    wire_ends: tuple[WireEnd, ...] = ()
    terminals: tuple[Terminal, ...] = ()
    joints: tuple[Joint, ...] = ()
    pigtails: tuple[Pigtail, ...] = ()
    landings: tuple[Landing, ...] = ()
    capped: tuple[Capped, ...] = ()
    open_ends: tuple[str, ...] = ()
    links: tuple[Link, ...] = ()
    passing: tuple[Passing, ...] = ()


class CablePart(NamedTuple):
    """One conductor of a cable, with the ids of its two ends."""

    cable: str
    colour: str
    use: Use
    insulated: bool
    size: Quantity | None
    ends: tuple[str, str]


class Wiring(NamedTuple):
    """The wiring of a whole job, conductor by conductor.

    `boxes` has every box of the job; wire ends in panels are in `wire_ends` and `panel_landings`
    (one that is not landed there is left out of those, and open or in one of `spliced_in_panels`).
    `unknown_cables` are those whose
    sheath is not known, so that their conductors are not either.
    """

    boxes: Mapping[str, BoxWiring]
    wire_ends: Mapping[str, WireEnd]
    terminals: Mapping[str, Terminal]
    joints: Mapping[str, Joint]
    pigtails: Mapping[str, Pigtail]
    landings: Mapping[str, Landing]
    parts: Mapping[str, tuple[CablePart, ...]]
    by_device: Mapping[str, tuple[Terminal, ...]]
    panel_landings: Mapping[str, PanelLanding]
    spliced_in_panels: tuple[Joint, ...]
    circuit_of_device: Mapping[str, tuple[str, ...]]
    unknown_cables: frozenset[str]
    ended_in: Mapping[str, str]
    links: tuple[Link, ...]
    capped: tuple[Capped, ...]
    passing: tuple[Passing, ...]

    @property
    def open_ends(self) -> tuple[str, ...]:
        """All ends that are joined to nothing and not capped, in boxes and panels."""
        in_boxes = [each for box in self.boxes.values() for each in box.open_ends]
        in_panels = [
            end.id
            for end in self.wire_ends.values()
            if end.box not in self.boxes
            and end.id not in self.panel_landings
            and end.id not in self.ended_in
        ]
        return (*in_boxes, *in_panels)
