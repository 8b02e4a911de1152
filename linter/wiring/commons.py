"""What the common terminal of each three-way switch takes: the hot, or the switched hot."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from linter.job.devices import Switch
from linter.text import Refusal
from linter.wiring.devices import is_way_switch
from linter.wiring.model import Role, WireEnd

if TYPE_CHECKING:
    from linter.wiring.groups import Groups

HOT, SWITCHED = "hot", "switched"
_A_PAIR = 2
Ends = Mapping[str, Sequence[WireEnd]]


def commons_of(groups: Groups, ends: Ends) -> tuple[dict[str, str], list[Refusal]]:
    """What each three-way switch takes, "hot" or "switched", by name; a refusal where untold.

    Of a pair, the switch whose box holds the switched hot, or what it controls, is the far one.
    """
    commons: dict[str, str] = {}
    refusals = []
    for group, switches in groups.switches.items():
        pair = [each for each in switches if is_way_switch(each, "three-way")]
        told = _told(group, pair, groups, ends)
        commons |= told
        refusals += [_cannot_tell(each, len(pair)) for each in pair if each.name not in told]
    return commons, refusals


def _told(group: str, pair: list[Switch], groups: Groups, ends: Ends) -> dict[str, str]:
    stated: dict[str, str] = {each.name: each.common for each in pair if each.common is not None}
    rest = [each for each in pair if each.name not in stated]
    if not rest or len(pair) > _A_PAIR:
        return stated
    if stated:
        (said,) = stated.values()
        return stated | {rest[0].name: HOT if said == SWITCHED else SWITCHED}
    far = [each for each in pair if _has_switched(group, each, groups, ends)]
    fed = [each for each in pair if _has_hot(group, each, ends)]
    if len(pair) == 1:
        return _alone(pair[0], bool(far), bool(fed))
    if len(far) != 1:
        unfed = [each for each in pair if each not in fed]
        far = unfed if len(unfed) == 1 else []
    return {each.name: SWITCHED if each in far else HOT for each in pair} if far else {}


def _alone(switch: Switch, is_far: bool, is_fed: bool) -> dict[str, str]:
    """What a three-way switch without its fellow takes: told only where one of the two is there."""
    if is_far and is_fed:
        return {}
    return {switch.name: SWITCHED if is_far else HOT}


def _has_switched(group: str, switch: Switch, groups: Groups, ends: Ends) -> bool:
    wires = any(
        each.use.role is Role.SWITCHED_HOT and each.use.group == group
        for each in ends.get(switch.box, ())
    )
    beside = groups.in_box(switch.box)
    return wires or any(not isinstance(each, Switch) and groups.has(group, each) for each in beside)


def _has_hot(group: str, switch: Switch, ends: Ends) -> bool:
    here = ends.get(switch.box, ())
    circuits = {each.use.circuit for each in here if each.use.group == group}
    return any(each.use.role is Role.HOT and each.use.circuit in circuits for each in here)


def _cannot_tell(switch: Switch, count: int) -> Refusal:
    several = (
        "More than two three-way switches control it"
        if count > _A_PAIR
        else ("Both boxes hold the switched hot, or neither does")
    )
    return Refusal(
        switch.place,
        f"What the common terminal of {switch.name} takes cannot be told. {several}",
        "the hot, or the switched hot",
        'write "common: hot" or "common: switched" at this switch',
    )
