"""What the trace finds wrong, each with the way that proves it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.conductors import is_used_as
from linter.facts.currents import link_breaker_loads, link_drops, link_neutral_currents
from linter.facts.devices import BOND_TERMINAL
from linter.facts.given import unknown
from linter.facts.knowing import any_holds, hanging_on
from linter.facts.made import complete, one, things
from linter.facts.panels import breakers_of, legs_are_known
from linter.facts.rooms import is_split_phase
from linter.facts.thought import thought_protected
from linter.job.panel import BreakerRef
from linter.job.stated import PanelId
from linter.trace.meetings import Meets, box_of_each
from linter.trace.outlets import is_short
from linter.trace.solid import by_role
from linter.units import Unknown
from linter.vocabulary.model import value_of
from linter.wiring.model import Role

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.facts.doubts import Doubts
    from linter.facts.knowing import YesNo
    from linter.facts.made import Made, Site, Values
    from linter.trace.meetings import Meeting
    from linter.trace.outlets import OutletTrace
    from linter.trace.solid import Source
    from linter.trace.trace import Piece
    from linter.vocabulary.model import Thing
    from linter.wiring.model import CablePart

_MEETINGS = (
    (Meets.SHORT, "has_short", "short_path"),
    (Meets.NEUTRAL_AND_BOND, "joins_neutral_and_bond", "neutral_bond_path"),
    (Meets.HOTS, "joins_two_breakers", "breakers_path"),
    (Meets.NEUTRALS, "joins_two_neutrals", "neutrals_path"),
)
_NO_PATH = ""
_HOTS = frozenset({Role.HOT, Role.SWITCHED_HOT, Role.TRAVELLER})


def link_what_is_traced(site: Site, made: Made, doubts: Doubts) -> None:
    """All that the trace finds wrong, and the currents that follow from it."""
    link_followed(site, made)
    link_meetings(site, made, doubts)
    link_tested(site, made, doubts)
    link_roles(site, made, doubts)
    link_ends_of_cables(site, made)
    link_parallels(site, made)
    link_neutral_currents(site, made)
    link_breaker_loads(site, made)
    link_drops(site, made)


def link_meetings(site: Site, made: Made, doubts: Doubts) -> None:
    """Where sources meet, at the box in which they do."""
    for box in made.all("box"):
        doubt = doubts.at(box.ref)
        for _, fact, path in _MEETINGS:
            complete(box, {fact: doubt, path: _NO_PATH})
        complete(box, {"has_live_bond": doubt, "live_bond_path": _NO_PATH})
    for what, fact, path in _MEETINGS:
        for box_name, meeting in box_of_each(site.trace.meetings, what):
            found: Values = {fact: True, path: site.trace.in_words(meeting.way)}
            _put_meeting(site, made.thing("box", box_name), meeting, found, path)
    for name, box_name, source in _live_bonds(site):
        box = made.thing("box", box_name)
        if value_of(box, "has_live_bond") is not True:
            way = site.trace.in_words(site.trace.way_from(source, name))
            complete(box, {"has_live_bond": True, "live_bond_path": way})


def _put_meeting(site: Site, box: Thing, meeting: Meeting, found: Values, path: str) -> None:
    """A meeting as found; of hots whose legs are not known, that two breakers are joined."""
    legs = _hidden_legs(site, meeting.sources)
    if legs is not None:
        found = {"joins_two_breakers": True, "breakers_path": found[path]}
        if value_of(box, "has_short") is not True:
            found["has_short"] = legs
    complete(box, found)


def _hidden_legs(site: Site, sources: Iterable[Source]) -> Unknown | None:
    """What hides whether the hots of two breakers are on one leg; then they may be shorted."""
    hots = _hots(sources)
    refs = dict.fromkeys(BreakerRef(PanelId(each.panel), each.space) for each in hots)
    if len(refs) == 1 or not hots:
        return None
    split = is_split_phase(site.job.usual_supply)
    if isinstance(split, Unknown):
        return split
    if not split or legs_are_known(site.job, breakers_of(site.job, list(refs))):
        return None
    return hanging_on(unknown("breaker", str(ref), "leg") for ref in refs)


def _live_bonds(site: Site) -> Iterator[tuple[str, str, Source]]:
    """The bonds and bond terminals that a hot reaches, and nothing that opens its breaker."""
    wiring = site.wiring
    ends = [(end.id, end.box) for end in wiring.wire_ends.values() if end.use.role is Role.BOND]
    ends += [
        (each.id, each.box) for each in wiring.terminals.values() if each.name == BOND_TERMINAL
    ]
    for name, box in ends:
        sources = site.trace.sources_at(name)
        hots = _hots(sources)
        if hots and box in wiring.boxes and not is_short(sources):
            yield name, box, hots[0]


def _hots(sources: Iterable[Source]) -> list[Source]:
    return sorted((each for each in sources if each.role is Role.HOT), key=by_role)


def link_tested(site: Site, made: Made, doubts: Doubts) -> None:
    """What a tester finds at each outlet."""
    thought = thought_protected(site)
    for outlet in made.all("outlet"):
        doubt = doubts.at(one(outlet, "box").ref)
        found = site.trace.outlet(outlet.ref)
        facts = _tested(site, found, outlet, doubt)
        turning = made.of("switch", found.switches)
        facts["turning_switches"] = turning
        facts["is_turned_by_another_switch"] = any_holds(
            _is_another(each, outlet) for each in turning
        )
        is_wrong = any(facts[each] is True for each in _WRONG)
        is_wrong = is_wrong or facts["every_switch_turns_it"] is False
        is_wrong = is_wrong or facts["is_turned_by_another_switch"] is True
        facts["is_thought_ground_fault_protected"] = outlet.ref in thought
        facts["tested"] = site.trace.tested(outlet.ref) if is_wrong else _NO_PATH
        complete(outlet, facts)


def _is_another(switch: Thing, outlet: Thing) -> YesNo:
    if switch in things(outlet, "switches"):
        return False
    aim = value_of(switch, "controls")
    return aim if isinstance(aim, Unknown) else True


_WRONG = (
    "is_dead", "is_reversed", "returns_on_bond", "is_live_when_off", "borrows_neutral",
    "neutral_leaves_protection",
)  # fmt: skip


def _tested(site: Site, found: OutletTrace, outlet: Thing, doubt: YesNo) -> Values:
    """What is found is there; that something is not there may be in doubt."""
    if found.is_shorted:
        return {**dict.fromkeys(_WRONG, False), "every_switch_turns_it": True}
    own = [each.ref for each in things(outlet, "switches")]
    turned = all(found.is_always_turned_by(each, own) for each in own)
    certain = {
        "is_reversed": found.has_hot_where_neutral_belongs,
        "returns_on_bond": found.returns_on_bond,
    }
    open_to_doubt = {
        "is_dead": found.is_dead,
        "is_live_when_off": found.is_live_when_off,
        "borrows_neutral": found.neutral_is_borrowed,
        "neutral_leaves_protection": site.trace.neutral_leaves_protection(outlet.ref),
    }
    facts: Values = {fact: holds or doubt for fact, holds in certain.items()}
    facts |= {fact: _doubted(holds, doubt) for fact, holds in open_to_doubt.items()}
    if found.hangs_on_legs and facts["is_dead"] is False:
        facts["is_dead"] = _legs_untold(outlet)
    # Where nothing is on, it is not for the switches to be blamed.
    is_told = turned or found.is_dead or found.has_hot_where_neutral_belongs
    facts["every_switch_turns_it"] = _doubted(is_told, doubt)
    return facts


def _legs_untold(outlet: Thing) -> Unknown:
    """What it hangs on that the legs of two hots are not known: on their circuit, if it is one."""
    legs = [value_of(each, "hots_are_on_different_legs") for each in things(outlet, "circuits")]
    untold = [each for each in legs if isinstance(each, Unknown)]
    return hanging_on(untold) if untold else unknown("outlet", outlet.ref, "is_dead")


def _doubted(holds: bool, doubt: YesNo) -> YesNo:
    return doubt if isinstance(doubt, Unknown) else holds


def link_roles(site: Site, made: Made, doubts: Doubts) -> None:
    """Conductors on which the trace finds another thing than what they are used as."""
    reported = _reported(site, made)
    for parts in site.wiring.parts.values():
        for part in parts:
            conductor = made.thing("conductor", f"{part.cable}.{part.colour}")
            against = _against(site, part, reported)
            doubt = doubts.at_ends(part.ends)
            use = is_used_as(part, Role.UNKNOWN)
            is_open = use if isinstance(use, Unknown) else doubt
            way = _NO_PATH
            if against is not None:
                way = site.trace.in_words(site.trace.way_from(against, part.ends[1]))
            facts = {"is_used_against_its_role": against is not None or is_open, "role_path": way}
            complete(conductor, facts)


def _reported(site: Site, made: Made) -> frozenset[Piece]:
    """The pieces of metal that end on outlets which are dead or reversed."""
    wrong = (
        each
        for each in made.all("outlet")
        if value_of(each, "is_dead") is True or value_of(each, "is_reversed") is True
    )
    return frozenset(
        site.trace.piece_of(terminal.id)
        for outlet in wrong
        for terminal in site.wiring.by_device.get(outlet.ref, ())
    )


def _against(site: Site, part: CablePart, reported: frozenset[Piece]) -> Source | None:
    """What is found on a conductor that is none of its role, if anything."""
    role = part.use.role
    wrong = (Role.NEUTRAL, Role.BOND) if role in _HOTS else (Role.HOT,)
    if role not in _HOTS and role is not Role.NEUTRAL:
        return None
    sources = site.trace.sources_at(part.ends[1])
    found = sorted((each for each in sources if each.role in wrong), key=by_role)
    right = any(each.role not in wrong for each in sources)
    if not found or right or site.trace.piece_of(part.ends[1]) in reported:
        return None
    return found[0]


def link_ends_of_cables(site: Site, made: Made) -> None:
    """Cables that lead to where nothing is joined."""
    idle = {each.wire_end for each in site.wiring.capped if not each.stated}
    for name, cable in made.by_ref("cable").items():
        complete(cable, {"leads_nowhere": _leads_nowhere(site, name, idle)})


def _leads_nowhere(site: Site, cable: str, idle: set[str]) -> YesNo:
    if cable in site.wiring.unknown_cables:
        return unknown("cable", cable, "insulated_conductors")
    used = [
        part
        for part in site.wiring.parts[cable]
        if part.use.role not in {Role.BOND, Role.SPARE, Role.UNKNOWN}
    ]
    sides = [[part.ends[side] for part in used] for side in (0, 1)] if used else []
    return any(idle.issuperset(side) for side in sides)


def link_parallels(site: Site, made: Made) -> None:
    """Circuits whose conductors lead to a place by two ways."""
    for circuit in made.all("circuit"):
        complete(circuit, {"is_in_parallel": False, "parallel_path": _NO_PATH})
    for ring in site.trace.rings:
        found = made.by_ref("circuit").get(ring.source.circuit)
        if found is not None and value_of(found, "is_in_parallel") is False:
            way = site.trace.in_words(ring.way)
            complete(found, {"is_in_parallel": True, "parallel_path": way})


def link_followed(site: Site, made: Made) -> None:
    """Whether every position of switches was tried."""
    for switch in made.all("switch"):
        own = unknown("switch", switch.ref, "is_followed")
        complete(switch, {"is_followed": own if switch.ref in site.trace.not_followed else True})
