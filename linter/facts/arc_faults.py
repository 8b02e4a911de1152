"""The first outlets of circuits and the cables that lead to them, for protection that stands there.

Where a pack allows an arc-fault device at the first outlet, these facts tell it whether there is
one, and by what kind of cable it is reached.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.devices import HOT_TERMINALS
from linter.facts.given import unknown
from linter.facts.knowing import all_hold, largest, smallest
from linter.facts.made import answer, complete, number, one, things
from linter.job.stated import CableId

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from linter.facts.knowing import YesNo
    from linter.facts.made import Made, Site
    from linter.vocabulary.model import Thing


def link_first_outlets(site: Site, made: Made) -> None:
    """What is known of the first outlet of each circuit, whose outlets and cables are known."""
    for circuit in made.all("circuit"):
        first = _nearest(site, things(circuit, "outlets"))
        receptacles = _nearest(site, things(circuit, "receptacles"))
        home_runs = [each for each in things(circuit, "cables") if answer(each, "is_home_run")]
        boxes = {one(each, "box").ref for each in first}
        values = {
            "first_outlet_is_arc_fault": _are_arc_fault(first),
            "first_receptacle_is_arc_fault": _are_arc_fault(receptacles),
            "first_outlet_is_marked": _are_marked(first),
            "first_outlet_is_next_to_panel": bool(first)
            and all(one(end, "box").ref in boxes for run in home_runs for end in _ends(run)),
            "home_run_length": largest((number(each, "length") for each in home_runs), 0.0),
            "home_run_size": smallest((number(each, "size") for each in home_runs), 0.0),
            "home_run_is_armoured": _are_armoured(site, home_runs),
        }
        complete(circuit, values)


def _ends(cable: Thing) -> tuple[Thing, ...]:
    return things(cable, "ends")


def _nearest(site: Site, outlets: Sequence[Thing]) -> list[Thing]:
    """Those of the outlets that the fewest cables part from the panel."""
    away = {each.ref: _distance(site, each) for each in outlets}
    least = min(away.values(), default=0)
    return [each for each in outlets if away[each.ref] == least]


def _distance(site: Site, device: Thing) -> int:
    terminals = site.wiring.by_device.get(device.ref, ())
    found = (site.trace.distance(each.id) for each in terminals if each.name in HOT_TERMINALS)
    return min((each for each in found if each is not None), default=0)


def _are_arc_fault(outlets: Sequence[Thing]) -> YesNo:
    """Whether each is an arc-fault device; no where there is none."""
    if not outlets:
        return False
    return all_hold(answer(one(each, "device"), "is_arc_fault") for each in outlets)


def _are_marked(outlets: Iterable[Thing]) -> YesNo:
    return all_hold(answer(one(each, "box"), "is_marked_first_outlet") for each in outlets)


def _are_armoured(site: Site, cables: Sequence[Thing]) -> YesNo:
    """Whether the sheath of each is of metal; no where there is none."""
    stated = [(each, site.job.cables[CableId(each.ref)].sheath) for each in cables]
    if not stated:
        return False
    return all_hold(
        unknown("cable", each.ref, "size") if sheath is None else sheath.is_armour
        for each, sheath in stated
    )
