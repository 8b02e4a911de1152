"""What stands between the terminals of each outlet, in every position of the switches."""

from __future__ import annotations

from enum import Enum
from itertools import combinations, takewhile
from typing import TYPE_CHECKING, NamedTuple

from linter.trace.positions import MOST_POSITIONS, Group, Positions
from linter.trace.solid import legs_differ
from linter.wiring.model import LinkKind, Role

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Mapping, Sequence

    from linter.trace.solid import Solid, Source, Sources
    from linter.wiring.model import Link, Terminal

Pair = tuple[str, str]


class Seen(Enum):
    """What a tester shows between two terminals, the first of which is to be hot."""

    NOTHING = "off"
    ON = "on"
    HOT_ONLY = "a hot on the first, nothing on the second"
    SECOND_HOT_ONLY = "a hot on the second, nothing on the first"
    REVERSED = "a hot on the second, the neutral on the first"
    OVER_BOND = "a hot on the first, the bond on the second"
    REVERSED_OVER_BOND = "a hot on the second, the bond on the first"
    TWO_LEGS = "hots of two legs"
    ONE_LEG = "one leg on both"
    TWO_HOTS = "two hots, of which the legs are not known"


POWERED = frozenset(
    {Seen.ON, Seen.REVERSED, Seen.OVER_BOND, Seen.REVERSED_OVER_BOND, Seen.TWO_LEGS}
)
HOT_ON_SECOND = frozenset(
    {
        Seen.REVERSED,
        Seen.REVERSED_OVER_BOND,
        Seen.SECOND_HOT_ONLY,
        Seen.TWO_LEGS,
        Seen.ONE_LEG,
        Seen.TWO_HOTS,
    }
)
_UNTOLD = frozenset({Seen.TWO_HOTS})
ON_BOND = frozenset({Seen.OVER_BOND, Seen.REVERSED_OVER_BOND})


class Place(NamedTuple):
    """Two terminals of an outlet between which current is taken, and what is seen there.

    `seen` has one entry for each position of `switches` (as in a `Group`), and is empty where they
    have too many. `is_between_hots`: both are to be hot, so that what is meant is two legs.
    `neutral_is_borrowed`: in some position the neutral is that of another circuit than the hot.
    """

    terminals: Pair
    is_between_hots: bool
    switches: tuple[str, ...]
    seen: tuple[Seen, ...]
    is_shorted: bool
    neutral_is_borrowed: bool

    @property
    def is_on(self) -> tuple[bool, ...]:
        """Whether there is a voltage to work with, in each position."""
        if self.is_between_hots:
            return tuple(each in {Seen.TWO_LEGS, Seen.TWO_HOTS} for each in self.seen)
        return tuple(each in POWERED for each in self.seen)

    def turned_by(self, switch: str) -> bool:
        """Whether moving the switch turns it on or off in some position of the others."""
        return any(self._turns(switch))

    def turned_always_by(self, switch: str, own: Collection[str]) -> bool:
        """Whether moving the switch turns it on or off in every position of its `own` switches.

        Positions of other switches in which none of its own turns it on are left out.
        """
        turns, on = self._turns(switch), self.is_on
        mask = sum(1 << number for number, name in enumerate(self.switches) if name not in own)
        alive = {each & mask for each, is_on in enumerate(on) if is_on}
        return any(turns) and all(turn for each, turn in enumerate(turns) if each & mask in alive)

    def _turns(self, switch: str) -> list[bool]:
        if switch not in self.switches:
            return []
        bit, on = 1 << self.switches.index(switch), self.is_on
        return [on[each] != on[each ^ bit] for each in range(len(on))]


class OutletTrace(NamedTuple):
    """An outlet as a tester finds it: its places, one for each half of a split receptacle."""

    places: tuple[Place, ...]
    lacks_return: bool

    @property
    def is_followed(self) -> bool:
        """Whether every position of the switches that meet there was tried."""
        return all(place.seen for place in self.places)

    @property
    def is_shorted(self) -> bool:
        """Whether a short reaches it, so that nothing else can be said of it."""
        return any(place.is_shorted for place in self.places)

    @property
    def has_hot_where_neutral_belongs(self) -> bool:
        """Whether a hot comes to a terminal for the neutral in some position."""
        return any(_sees(place, HOT_ON_SECOND) for place in self.places if _takes_neutral(place))

    @property
    def is_dead(self) -> bool:
        """Whether one of its places has no voltage in any position, and no hot reversed."""
        dark = any(not any(place.is_on) for place in self.places)
        return (dark or self.lacks_return) and not self.has_hot_where_neutral_belongs

    @property
    def hangs_on_legs(self) -> bool:
        """Whether it takes two hots of which the legs are not known, so that it may be dead."""
        return any(_sees(each, _UNTOLD) for each in self.places if each.is_between_hots)

    @property
    def returns_on_bond(self) -> bool:
        """Whether its current flows by the bond in some position."""
        return any(_sees(place, ON_BOND) for place in self.places)

    @property
    def is_live_when_off(self) -> bool:
        """Whether it can be turned off and still has a hot on a terminal then."""
        return any(any(place.is_on) and _sees(place, _one_hot(place)) for place in self.places)

    @property
    def neutral_is_borrowed(self) -> bool:
        """Whether a place of it has the hot of one circuit and the neutral of another."""
        return any(place.neutral_is_borrowed for place in self.places)

    @property
    def switches(self) -> tuple[str, ...]:
        """The switches that turn a place of it in some position."""
        found = (each for place in self.places for each in place.switches if place.turned_by(each))
        return tuple(dict.fromkeys(found))

    def is_always_turned_by(self, switch: str, own: Collection[str]) -> bool:
        """Whether moving the switch turns a place of it in every position of its own switches."""
        return any(place.turned_always_by(switch, own) for place in self.places)


def _sees(place: Place, what: frozenset[Seen]) -> bool:
    return any(each in what for each in place.seen)


def _one_hot(place: Place) -> frozenset[Seen]:
    """What is seen where a hot is on one of the terminals alone, and may be there."""
    second = {Seen.SECOND_HOT_ONLY} if place.is_between_hots else set[Seen]()
    return frozenset({Seen.HOT_ONLY, *second})


def _takes_neutral(place: Place) -> bool:
    return not place.is_between_hots


def pairs_of(terminals: Iterable[Terminal], tied: frozenset[frozenset[str]]) -> list[Pair]:
    """The pairs of terminals between which an outlet takes current, the hot first."""
    ids = {each.name: each.id for each in terminals}
    hot = ids.get("hot") or ids.get("line hot")
    second = ids.get("hot 2") or ids.get("line hot 2")
    neutral = ids.get("neutral") or ids.get("line neutral")
    if hot is None:
        return []
    is_two = second is not None and frozenset((hot, second)) not in tied
    if neutral is None:
        return [(hot, second)] if is_two and second is not None else []
    if not is_two or second is None:
        return [(hot, neutral)]
    # The second hot of a receptacle feeds its other half; of what is wired in, the same load.
    halves = [(hot, neutral), (second, ids.get("neutral 2", neutral))]
    return halves if "neutral 2" in ids else [*halves, (hot, second)]


def tied_terminals(links: Iterable[Link]) -> frozenset[frozenset[str]]:
    """The pairs of terminals that a tab makes one."""
    kinds = (LinkKind.TAB, LinkKind.ALWAYS)
    return frozenset(frozenset(link.ends) for link in links if link.kind in kinds)


class Outlets:
    """Looks between the terminals of outlets."""

    def __init__(
        self,
        solid: Solid,
        positions: Positions,
        by_device: Mapping[str, Sequence[Terminal]],
        links: Iterable[Link],
    ) -> None:
        self._solid, self._positions, self._by_device = solid, positions, by_device
        self._tied = tied_terminals(links)

    def at(self, device: str) -> OutletTrace:
        """What is between the terminals of an outlet."""
        terminals = self._by_device.get(device, ())
        names = {each.id: each.name for each in terminals}
        pairs = pairs_of(terminals, self._tied)
        places = tuple(
            self._place(pair, is_between_hots=not names[pair[1]].endswith(("neutral", "neutral 2")))
            for pair in pairs
        )
        return OutletTrace(places, lacks_return=not pairs and bool(terminals))

    def _place(self, pair: Pair, *, is_between_hots: bool) -> Place:
        pieces = [self._solid.of(each) for each in pair]
        numbers = {self._positions.group_of(each): None for each in pieces}
        groups = [self._positions.groups[each] for each in numbers if each is not None]
        switches = tuple(name for group in groups for name in group.switches)
        too_many = 1 << len(switches) > MOST_POSITIONS
        if too_many or not all(each.is_followed for each in groups):
            return Place(pair, is_between_hots, switches, (), False, False)
        both = [self._spread(piece, groups) for piece in pieces]
        seen, shorted, borrowed = [], False, False
        for first, second in zip(*both, strict=True):
            seen.append(_seen(first, second))
            shorted = shorted or is_short(first) or is_short(second)
            borrowed = borrowed or _is_borrowed(first, second)
        return Place(pair, is_between_hots, switches, tuple(seen), shorted, borrowed)

    def _spread(self, piece: int, groups: Sequence[Group]) -> list[Sources]:
        """What reaches a piece in each position of all the groups together."""
        number = self._positions.group_of(piece)
        found = self._positions.at(piece)
        total = 1 << sum(len(group.switches) for group in groups)
        if number is None:
            return [found[0]] * total
        # The bits of the groups stand one after the other.
        own = self._positions.groups[number]
        before = takewhile(lambda group: group is not own, groups)
        shift = sum(len(group.switches) for group in before)
        return [found[(each >> shift) & (own.positions - 1)] for each in range(total)]


def is_short(sources: Sources) -> bool:
    """Whether current flows freely between these once they are joined, as far as legs are known."""
    hots = _hots(sources)
    if hots and len(hots) < len(sources):
        return True
    return any(legs_differ(*pair) for pair in combinations(hots, 2))


def _hots(sources: Sources) -> list[Source]:
    return [each for each in sources if each.role is Role.HOT]


def _has(sources: Sources, role: Role) -> bool:
    return any(each.role is role for each in sources)


def _seen(first: Sources, second: Sources) -> Seen:
    here, there = _hots(first), _hots(second)
    if here and there:
        return _between(legs_differ(one, other) for one in here for other in there)
    if here:
        return _against(second, Seen.ON, Seen.OVER_BOND, Seen.HOT_ONLY)
    if there:
        return _against(first, Seen.REVERSED, Seen.REVERSED_OVER_BOND, Seen.SECOND_HOT_ONLY)
    return Seen.NOTHING


def _between(each_pair: Iterable[bool | None]) -> Seen:
    """What is between hots, from whether each two are on two legs."""
    told = set(each_pair)
    if True in told:
        return Seen.TWO_LEGS
    return Seen.TWO_HOTS if None in told else Seen.ONE_LEG


def _against(other: Sources, neutral: Seen, bond: Seen, nothing: Seen) -> Seen:
    if _has(other, Role.NEUTRAL):
        return neutral
    return bond if _has(other, Role.BOND) else nothing


def _is_borrowed(first: Sources, second: Sources) -> bool:
    hots = {each.circuit for each in _hots(first)}
    neutrals = {each.circuit for each in second if each.role is Role.NEUTRAL}
    known = bool(hots and neutrals) and "" not in hots | neutrals
    return known and not hots & neutrals
