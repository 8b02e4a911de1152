"""Switches: what they control, and whether the neutral of their circuit is at hand."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.conductors import all_known
from linter.facts.devices import BOND_TERMINAL, label_of
from linter.facts.given import Given
from linter.facts.knowing import any_holds
from linter.facts.made import Grouped, complete, one, things
from linter.units import Unknown
from linter.vocabulary.model import value_of

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.facts.doubts import Doubts
    from linter.facts.knowing import YesNo
    from linter.facts.made import Made, Site, Values
    from linter.job.devices import Switch
    from linter.vocabulary.model import Thing
    from linter.wiring.model import Terminal

_FIELDS = {
    "type": "type",
    "controls": "controls",
    "rating": "rating",
    "neutral_can_be_added": "neutral_can_be_added",
    "other_location_has_neutral": "other_location_has_neutral",
    "distance_to_tub": "distance_to_tub",
    "control": "control",
    "is_at_entry": "at_entry",
}


def switch_of(site: Site, made: Made, switch: Switch) -> Thing:
    """The facts of a switch that the job states."""
    given = Given("switch", switch.name, switch, _FIELDS)
    box = made.thing("box", switch.box)
    room = one(box, "room")
    given.put("box", box)
    given.put("room", room)
    given.put("device", made.thing("device", switch.name))
    without_tub = value_of(room, "has_tub") is False and not switch.says("in_tub_space")
    given.put("is_in_tub_space", False if without_tub else switch.in_tub_space, "in_tub_space")
    return given.thing(label_of(site, switch))


def link_switches(site: Site, made: Made, doubts: Doubts) -> None:
    """What switches control, what reaches them, and the neutrals in their boxes."""
    controlled = Grouped(
        (switch.ref, outlet)
        for outlet in made.all("outlet")
        for switch in things(outlet, "switches")
    )
    neutrals = _neutrals_by_box(made)
    for switch in made.all("switch"):
        box = one(switch, "box")
        circuits = things(one(switch, "device"), "circuits")
        meant = made.of("circuit", site.wiring.circuit_of_device.get(switch.ref, ()))
        outlets = controlled.under(switch.ref)
        aim = value_of(switch, "controls")
        sheaths = all_known(one(each, "cable") for each in things(box, "cable_ends"))
        in_box = neutrals.get(box.ref, ())
        unsure = [sheaths, doubts.at(box.ref)] if isinstance(sheaths, Unknown) else []
        links: Values = {
            "controlled": outlets,
            "controls_lighting": aim if isinstance(aim, Unknown) else _has(outlets, "luminaire"),
            "controls_receptacle": aim if isinstance(aim, Unknown) else _has(outlets, "receptacle"),
            "circuits": circuits,
            "has_neutral_in_box": any_holds(
                [*(_is_neutral_of(each, circuits or meant) for each in in_box), *unsure]
            ),
            "switches_neutral": _switches_neutral(site, made, switch),
        }
        complete(switch, links)


def _has(outlets: Iterable[Thing], kind: str) -> bool:
    return any(value_of(outlet, "type") == kind for outlet in outlets)


def _neutrals_by_box(made: Made) -> dict[str, list[Thing]]:
    """The wire ends in each box that are, or may be, neutrals."""
    found: dict[str, list[Thing]] = {}
    for end in made.all("wire_end"):
        if _is_neutral(end) is not False:
            found.setdefault(one(end, "box").ref, []).append(end)
    return found


def _is_neutral(end: Thing) -> YesNo:
    role = value_of(end, "role")
    return role if isinstance(role, Unknown) else role == "neutral"


def _is_neutral_of(end: Thing, circuits: Iterable[Thing]) -> YesNo:
    is_neutral = _is_neutral(end)
    if is_neutral is not True:
        return is_neutral
    own = things(one(end, "conductor"), "circuits")
    return any(circuit in own for circuit in circuits)


def _switches_neutral(site: Site, made: Made, switch: Thing) -> YesNo:
    """Whether a neutral, by its use or coming from the panel, is on what the switch opens."""
    wiring = site.wiring
    on_it: list[str] = []
    for terminal in wiring.by_device.get(switch.ref, ()):
        landing = wiring.landings.get(terminal.id)
        if landing is None or terminal.name == BOND_TERMINAL or site.trace.hots_at(terminal.id):
            continue
        on_it += landing.wire_ends
        if landing.pigtail is not None:
            on_it += wiring.joints[wiring.pigtails[landing.pigtail].joint].wire_ends
    if any(site.trace.has_only_neutral(each.id) for each in _switching(site, switch)):
        return True
    return any_holds(_is_neutral(end) for end in made.of("wire_end", on_it))


def _switching(site: Site, switch: Thing) -> list[Terminal]:
    terminals = site.wiring.by_device.get(switch.ref, ())
    return [each for each in terminals if each.name != BOND_TERMINAL]
