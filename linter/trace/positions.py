"""What reaches each piece of metal in every position of the switches.

Switches that touch one piece of metal form a group. A piece that a panel feeds parts groups, since
what it hangs on does not change with a switch; unless switches join it with another source, and
then it joins them too. Of a group every position is tried, up to `MOST_POSITIONS`; a larger one is
not followed, and says so.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, NamedTuple

from linter.trace.solid import NO_SOURCE, Contact, Sources
from linter.wiring.model import LinkKind

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

MOST_POSITIONS = 4096
Fed = Mapping[int, Sources]  # what a panel feeds each piece of metal from
# Which contacts are closed in the second position of a switch; in the first, the others are.
_SECOND = frozenset({LinkKind.CLOSED_WHEN_ON, LinkKind.THROW_2})


class Group(NamedTuple):
    """Switches that act together; each has two positions, so n of them have 2 to the n.

    In position number p, switch i is in its second position ("on", throw 2) if bit i of p is set.
    `reaching` gives, for each piece of metal, what reaches it in each position; where the group is
    too large to be followed, what may reach it, once.
    """

    switches: tuple[str, ...]
    reaching: Mapping[int, tuple[Sources, ...]]
    is_followed: bool

    @property
    def positions(self) -> int:
        """How many positions it has."""
        return 1 << len(self.switches)


class Positions:
    """The groups of switches of a wiring; `groups_at` names those that touch a piece of metal."""

    def __init__(self, fed: Fed, contacts: Sequence[Contact], most: int = MOST_POSITIONS) -> None:
        self._fed = fed
        self.groups: tuple[Group, ...] = ()
        self.groups_at: dict[int, list[int]] = {}
        joined: set[int] = set()
        while contacts:
            self.groups = tuple(_groups(fed, contacts, joined, most))
            fresh = {each for group in self.groups for each in _meeting(fed, group)} - joined
            if not fresh:
                break
            joined |= fresh
        for number, group in enumerate(self.groups):
            for piece in group.reaching:
                self.groups_at.setdefault(piece, []).append(number)

    def reach(self, piece: int) -> Sources:
        """All that reaches a piece of metal in some position."""
        found = self._fed.get(piece, NO_SOURCE)
        for number in self.groups_at.get(piece, ()):
            found = found.union(*self.groups[number].reaching[piece])
        return found

    def group_of(self, piece: int) -> int | None:
        """The number of the group that decides what reaches a piece; None where no switch does."""
        numbers = self.groups_at.get(piece, ())
        return next((each for each in numbers if self._changes(piece, each)), None)

    def _changes(self, piece: int, number: int) -> bool:
        group = self.groups[number]
        return len(set(group.reaching[piece])) > 1 or not group.is_followed

    def at(self, piece: int) -> tuple[Sources, ...]:
        """What reaches a piece in each position of its group; once, where it has none."""
        number = self.group_of(piece)
        return (self.reach(piece),) if number is None else self.groups[number].reaching[piece]


def _meeting(fed: Fed, group: Group) -> Iterator[int]:
    """The pieces fed by a panel that the group joins with another source in some position."""
    for piece, found in group.reaching.items():
        own = fed.get(piece)
        if own is not None and any(each != own for each in found):
            yield piece


def _groups(fed: Fed, contacts: Sequence[Contact], joined: set[int], most: int) -> Iterator[Group]:
    for together in _together(fed, contacts, joined):
        switches = tuple(dict.fromkeys(each.device for each in together))
        pieces = sorted({end for each in together for end in (each.one, each.other)})
        if 1 << len(switches) > most:
            found = _joined(fed, pieces, together)
            yield Group(switches, {piece: (found[piece],) for piece in pieces}, is_followed=False)
            continue
        each_position = [
            _joined(fed, pieces, _closed(together, switches, position))
            for position in range(1 << len(switches))
        ]
        reaching = {piece: tuple(each[piece] for each in each_position) for piece in pieces}
        yield Group(switches, reaching, is_followed=True)


def _together(fed: Fed, contacts: Iterable[Contact], joined: set[int]) -> list[list[Contact]]:
    """The contacts of each group: of one switch, or touching one piece that no panel feeds."""
    above: dict[str, str] = {}

    def top(name: str) -> str:
        while above.setdefault(name, name) != name:
            name = above[name]
        return name

    owner: dict[int, str] = {}
    for each in contacts:
        for piece in (each.one, each.other):
            if piece not in fed or piece in joined:
                above[top(each.device)] = top(owner.setdefault(piece, each.device))
    groups: dict[str, list[Contact]] = {}
    for each in contacts:
        groups.setdefault(top(each.device), []).append(each)
    return list(groups.values())


def _closed(contacts: Iterable[Contact], switches: Sequence[str], position: int) -> list[Contact]:
    return [
        each for each in contacts if contacts_closed(each.kind, each.device, switches, position)
    ]


def contacts_closed(kind: LinkKind, device: str, switches: Sequence[str], position: int) -> bool:
    """Whether a contact of that kind is closed in a position of the switches of its group.

    >>> contacts_closed(LinkKind.CLOSED_WHEN_ON, "door", ("hall", "door"), 0b10)
    True
    """
    is_second = bool(position >> switches.index(device) & 1)
    return (kind in _SECOND) is is_second


def _joined(fed: Fed, pieces: Iterable[int], closed: Iterable[Contact]) -> dict[int, Sources]:
    """What reaches each piece with these contacts closed."""
    above = {piece: piece for piece in pieces}

    def top(piece: int) -> int:
        while above[piece] != piece:
            piece = above[piece]
        return piece

    for each in closed:
        above[top(each.one)] = top(each.other)
    found: dict[int, Sources] = {}
    for piece in above:
        own = fed.get(piece)
        if own is not None:
            found[top(piece)] = found.get(top(piece), NO_SOURCE) | own
    return {piece: found.get(top(piece), NO_SOURCE) for piece in above}
