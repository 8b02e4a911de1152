"""Which contacts between conductors faults open or loosen."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.solve.feeds import Feeds
from linter.solve.network import NotThere
from linter.solve.scenario import Apart, Loose, Open, TakenOut
from linter.wiring.model import Role

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from linter.solve.scenario import Fault
    from linter.wiring.model import Wiring

_HOTS = frozenset({Role.HOT, Role.SWITCHED_HOT, Role.TRAVELLER})


class Contacts(NamedTuple):
    """Wire ends and pigtails that are off, or loose (in ohms), and devices that are taken out."""

    off: frozenset[str] = frozenset()
    loose: Mapping[str, float] = {}
    taken_out: frozenset[str] = frozenset()

    @property
    def apart(self) -> frozenset[str]:
        """All that is not one with the place where it ends, be it off or loose."""
        return self.off | self.loose.keys()


def contacts_of(wiring: Wiring, faults: Iterable[Fault]) -> Contacts:
    """The contacts that the faults leave; raises `NotThere` where one names nothing known."""
    feeds = Feeds(wiring)
    off: set[str] = set()
    loose: dict[str, float] = {}
    taken: set[str] = set()
    for fault in faults:
        match fault:
            case Open(at, role):
                off.update(_feeding(wiring, feeds, at, role))
            case Loose(at, ohms, role):
                loose |= dict.fromkeys(_feeding(wiring, feeds, at, role), ohms)
            case Apart(at):
                off.update(_all_at(wiring, at))
            case TakenOut(device):
                if device not in wiring.by_device:
                    raise NotThere(device)
                taken.add(device)
            case _:
                pass  # legs, touches and the supply have no contact of their own
    return Contacts(frozenset(off), loose, frozenset(taken))


def _all_at(wiring: Wiring, at: str) -> tuple[str, ...]:
    """The wire ends and pigtails of a joint or on a terminal."""
    if at in wiring.joints:
        return (*wiring.joints[at].wire_ends, *wiring.joints[at].pigtails)
    if at in wiring.terminals:
        return wiring.landings[at].all_on_it if at in wiring.landings else ()
    raise NotThere(at)


def _feeding(wiring: Wiring, feeds: Feeds, at: str, role: Role | None) -> tuple[str, ...]:
    """The wire ends and pigtails that bring what comes from the panel to a place."""
    if at in wiring.wire_ends or at in wiring.pigtails:
        return (at,)
    if at in wiring.joints or at in wiring.terminals:
        places = [at]
    elif at in wiring.boxes:
        box = wiring.boxes[at]
        # What a pigtail brings to a terminal was brought to its joint: open it there alone.
        straight = [each.terminal for each in box.landings if each.pigtail is None]
        places = [each.id for each in box.joints] + straight
    elif at in wiring.by_device:
        places = [each.id for each in wiring.by_device[at]]
    else:
        raise NotThere(at)
    each_at = {place: _all_at(wiring, place) for place in places}
    return tuple(
        wire
        for place, all_there in each_at.items()
        if role is None or _is_of(wiring, all_there, role)
        for wire in feeds.of(place, all_there)
    )


def _is_of(wiring: Wiring, all_there: Iterable[str], role: Role) -> bool:
    """Whether a conductor of that role is among them, or in the joint that a pigtail comes from."""
    roles: set[Role] = set()
    for each in all_there:
        pigtail = wiring.pigtails.get(each)
        ends = [each] if pigtail is None else wiring.joints[pigtail.joint].wire_ends
        roles.update(wiring.wire_ends[end].use.role for end in ends)
    return bool(roles & _HOTS) if role is Role.HOT else role in roles
