"""What the conductors of a cable are used as: the trade's named patterns, or colour by colour."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, NamedTuple

from linter.wiring.model import BOND, SIGNAL, SPARE, UNKNOWN, Role, Use
from linter.wiring.sheaths import Colours, sort_colours

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

Uses = dict[str, Use]
FEED, TWO_POLE_FEED, SPARE_CABLE = "feed", "two-pole feed", "spare"
SWITCHED, LOOP, FEED_AND_SWITCHED = "switched", "switch loop", "feed and switched"
LOOP_WITH_NEUTRAL = "switch loop with neutral"
TRAVELLERS, TRAVELLERS_AND_HOT = "travellers", "travellers and hot"
CONTROLLING = frozenset(
    {SWITCHED, LOOP, LOOP_WITH_NEUTRAL, FEED_AND_SWITCHED, TRAVELLERS, TRAVELLERS_AND_HOT}
)


class Carried(NamedTuple):
    """What is known of a cable as a whole: circuit, the poles of it that it has, the group."""

    circuit: str | None
    poles: tuple[int, ...]
    group: str | None
    pole_of_space: Mapping[int, tuple[str, int]]

    @property
    def pole(self) -> int | None:
        """The one hot that it has; None where it has none or several."""
        return self.poles[0] if len(self.poles) == 1 else None

    def hot(self, pole: int | None) -> Use:
        """The use of a hot of its circuit."""
        return Use(Role.HOT, self.circuit, pole)

    @property
    def neutral(self) -> Use:
        """The use of its neutral."""
        return Use(Role.NEUTRAL, self.circuit)

    def switched(self, pole: int | None) -> Use:
        """The use of the hot that comes back from its group's switch."""
        return Use(Role.SWITCHED_HOT, self.circuit, pole, self.group)

    def traveller(self, number: int) -> Use:
        """The use of one of its group's travellers."""
        return Use(Role.TRAVELLER, self.circuit, None, self.group, number)


def uses_of(colours: tuple[str, ...], carries: str | Mapping[str, str], known: Carried) -> Uses:
    """The use of each conductor, by colour; unknown where neither pattern nor job tells it.

    >>> known = Carried("den", (0,), None, {})
    >>> [str(use) for use in uses_of(("black", "white", "bare"), "feed", known).values()]
    ['hot (den)', 'neutral (den)', 'bond']
    """
    sorted_colours = sort_colours(colours)
    uses = dict.fromkeys(colours, UNKNOWN) | dict.fromkeys(sorted_colours.bonds, BOND)
    if isinstance(carries, str):
        pattern = _PATTERNS.get(carries)
        return uses if pattern is None else uses | pattern(sorted_colours, known)
    paired = {
        neutral: hot
        for hot, neutral in zip(sorted_colours.hots, sorted_colours.neutrals, strict=False)
    }
    stated = {each: _stated(role, known) for each, role in carries.items() if each in uses}
    for colour, use in stated.items():
        beside = stated.get(paired.get(colour, ""), use)
        other = beside.role is Role.HOT and beside.circuit != use.circuit
        if use.role is Role.NEUTRAL and other:
            stated[colour] = use._replace(circuit=beside.circuit)
    return uses | stated


def hots_named(carries: str | Mapping[str, str]) -> tuple[int, ...]:
    """The spaces named in "hot of 3", in order.

    >>> hots_named({"black": "hot of 3", "white": "neutral"})
    (3,)
    """
    if isinstance(carries, str):
        return ()
    found = (re.fullmatch(r"hot of (\d+)", role) for role in carries.values())
    return tuple(int(each[1]) for each in found if each is not None)


def needs_group(carries: str | Mapping[str, str]) -> bool:
    """Whether some conductor belongs to a control group that is not named with it."""
    if isinstance(carries, str):
        return carries in CONTROLLING
    return any(re.fullmatch(r"switched hot|traveller \d", role) for role in carries.values())


def needs_hot(carries: str | Mapping[str, str]) -> bool:
    """Whether it matters which hot of its circuit the cable has."""
    if isinstance(carries, str):
        return carries in _PATTERNS and carries not in (SPARE_CABLE, TRAVELLERS)
    return any(re.match(r"hot$|switched hot", role) for role in carries.values())


def needs_circuit(carries: str | Mapping[str, str]) -> bool:
    """Whether some conductor belongs to a circuit."""
    if isinstance(carries, str):
        return carries in _PATTERNS and carries != SPARE_CABLE
    return any(role not in ("spare", "signal", "unknown", "bond") for role in carries.values())


def _stated(role: str, known: Carried) -> Use:
    plain = {"neutral": known.neutral, "hot": known.hot(known.pole)}
    plain |= {"bond": BOND, "spare": SPARE, "signal": SIGNAL}
    if role in plain:
        return plain[role]
    name, _, of = role.partition(" of ")
    group = of or known.group
    if name == "hot" and of.isdecimal():
        circuit, pole = known.pole_of_space.get(int(of), (known.circuit, known.pole))
        return Use(Role.HOT, circuit, pole)
    if name == "switched hot":
        return known.switched(known.pole)._replace(group=group)
    if name.startswith("traveller"):
        return known.traveller(int(name.removeprefix("traveller ")))._replace(group=group)
    return UNKNOWN


def _feed(colours: Colours, known: Carried) -> Uses:
    """Hots in the order of the poles; two hots without a neutral where two conductors are all."""
    if len(known.poles) > 1 and len(colours.hots) < len(known.poles):
        return _two_pole_feed(colours, known)
    uses = {each: known.hot(pole) for each, pole in zip(colours.hots, known.poles, strict=False)}
    pairs = max(1, len(uses))
    return uses | dict.fromkeys(colours.neutrals[:pairs], known.neutral)


def _two_pole_feed(colours: Colours, known: Carried) -> Uses:
    poles = known.poles if len(known.poles) > 1 else (0, 1)
    all_colours = colours.hots + colours.neutrals
    if len(all_colours) == len(poles):
        return {each: known.hot(pole) for each, pole in zip(all_colours, poles, strict=True)}
    uses = {each: known.hot(pole) for each, pole in zip(colours.hots, poles, strict=False)}
    return uses | dict.fromkeys(colours.neutrals[:1], known.neutral)


def _switched(colours: Colours, known: Carried) -> Uses:
    both = colours.hots + colours.neutrals
    if len(known.poles) > 1 and len(both) == len(known.poles):
        return {each: known.switched(pole) for each, pole in zip(both, known.poles, strict=True)}
    uses = {each: known.switched(known.pole) for each in colours.hots[:1]}
    return uses | dict.fromkeys(colours.neutrals[:1], known.neutral)


def _loop(colours: Colours, known: Carried) -> Uses:
    """The supply goes down on the white, back on the black; three wires have the neutral."""
    if len(colours.hots) > 1:
        return _feed_and_switched(colours, known)
    down = dict.fromkeys(colours.neutrals[:1], known.hot(known.pole))
    return down | dict.fromkeys(colours.hots[:1], known.switched(known.pole))


def _feed_and_switched(colours: Colours, known: Carried) -> Uses:
    uses = (known.hot(known.pole), known.switched(known.pole))
    return dict(zip(colours.hots, uses, strict=False)) | dict.fromkeys(
        colours.neutrals[:1], known.neutral
    )


def _travellers(colours: Colours, known: Carried) -> Uses:
    """Two hots' colours are the travellers; with two wires in all, the white is one of them."""
    pair = (colours.hots + colours.neutrals)[:2]
    uses = {each: known.traveller(number) for number, each in enumerate(pair, 1)}
    rest = [each for each in colours.neutrals[:1] if each not in pair]
    return uses | dict.fromkeys(rest, known.neutral)


def _travellers_and_hot(colours: Colours, known: Carried) -> Uses:
    """As the travellers, and the hot goes down on the white, or on a third hot's colour."""
    uses = _travellers(colours, known)
    down = colours.hots[2:3] or tuple(each for each in colours.neutrals[:1])
    return uses | dict.fromkeys(down, known.hot(known.pole))


def _spare(colours: Colours, _: Carried) -> Uses:
    return dict.fromkeys(colours.hots + colours.neutrals, SPARE)


_PATTERNS: Mapping[str, Callable[[Colours, Carried], Uses]] = {
    FEED: _feed,
    TWO_POLE_FEED: _two_pole_feed,
    SWITCHED: _switched,
    LOOP: _loop,
    LOOP_WITH_NEUTRAL: _feed_and_switched,
    FEED_AND_SWITCHED: _feed_and_switched,
    TRAVELLERS: _travellers,
    TRAVELLERS_AND_HOT: _travellers_and_hot,
    SPARE_CABLE: _spare,
}
