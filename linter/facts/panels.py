"""Panels, their breakers, and whether breakers go off together."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.given import Given, unknown, word_of
from linter.facts.made import Grouped, complete, one, things
from linter.job.panel import Breaker, BreakerRef
from linter.vocabulary.model import Thing, value_of
from linter.wiring.legs import leg_is_known, leg_of_pole
from linter.wiring.model import Spot

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from linter.facts.knowing import YesNo
    from linter.facts.made import Made, Site
    from linter.job.jobs import Job
    from linter.job.panel import Panel
    from linter.units import Unknown

BOTH_LEGS = "both"
SUB_PANEL = "sub-panel"
GROUND_FAULT, ARC_FAULT = "ground-fault", "arc-fault"
_NO_TYPE, _USUAL_TYPE = "none", "combination"
_PANEL_FIELDS = {
    "main_rating": "main",
    "spaces": "spaces",
    "has_directory": "directory",
    "working_width": "working_width",
    "working_depth": "working_depth",
    "working_height": "working_height",
    "space_is_clear": "clear",
    "is_reachable": "reachable",
    "handle_height": "handle_height",
    "neutral_is_bonded": "neutral_bonded",
    "main_is_backfed": "main_backfed",
    "main_is_held": "main_held",
    "has_surge_protector": "surge_protector",
    "entries_are_weathertight": "weathertight_entries",
}

_BREAKER_FIELDS = {"rating": "rating", "serves": "serves", "is_listed": "listed"}


def panel_of(panel: Panel, *, has_garage: bool) -> Thing:
    """The facts of a panel that the job states; `has_garage`: it may stand in a garage's wall."""
    given = Given("panel", panel.name, panel, _PANEL_FIELDS)
    given.put("spaces_used", sum(each.poles for each in panel.breakers.values()))
    given.put("room", None, "room")
    for field in ("torque_recorded", "neutrals_single"):
        given.put(field, word_of(panel, field), field)
    is_asked = has_garage or panel.says("in_fire_separation")
    given.put(
        "is_in_fire_separation", panel.in_fire_separation if is_asked else False,
        "in_fire_separation",
    )  # fmt: skip
    return given.thing(panel_label(panel.name))


def breaker_of(made: Made, panel: Panel, breaker: Breaker) -> Thing:
    """The facts of a breaker that the job states."""
    ref = str(BreakerRef(breaker.panel, breaker.space))
    given = Given("breaker", ref, breaker, _BREAKER_FIELDS)
    given.put("panel", made.thing("panel", breaker.panel))
    given.put("poles", breaker.poles)
    leg = leg_of_pole(breaker, 0) if leg_is_known(breaker, panel) else None
    given.put("leg", BOTH_LEGS if breaker.poles > 1 else leg, "leg")
    protection = breaker.protection
    for fact, kind in (("is_ground_fault", GROUND_FAULT), ("is_arc_fault", ARC_FAULT)):
        given.put(fact, None if protection is None else kind in protection, "protection")
    given.put("arc_fault_type", _arc_fault_type(breaker), "arc_fault_type")
    given.put("has_directory_entry", breaker.serves is not None, "serves")
    return given.thing(f"breaker {breaker.space} of {panel_label(breaker.panel)}")


def _arc_fault_type(breaker: Breaker) -> str | Unknown | None:
    """What is stated; left out, none or the usual one, as its protection is."""
    if breaker.says("arc_fault_type"):
        return breaker.arc_fault_type
    if breaker.protection is None:
        return unknown("breaker", str(BreakerRef(breaker.panel, breaker.space)), "is_arc_fault")
    return _USUAL_TYPE if ARC_FAULT in breaker.protection else _NO_TYPE


def breakers_of(job: Job, refs: Iterable[BreakerRef]) -> tuple[Breaker, ...]:
    """The breakers of those names."""
    return tuple(job.panels[panel].breakers[space] for panel, space in refs)


def legs_are_known(job: Job, breakers: Sequence[Breaker]) -> bool:
    """Whether it is known which of their poles share a leg; of one breaker, no two do."""
    return len(breakers) <= 1 or all(
        leg_is_known(each, job.panels[each.panel]) for each in breakers
    )


def go_off_together(breakers: Sequence[Breaker], own: Unknown) -> YesNo:
    """Whether one movement opens all the breakers: they are one, or ties join them.

    `own` is the unknown that the answer is where a tie is not known and could join them.
    """
    if len(breakers) < 2:  # noqa: PLR2004  one breaker has one handle
        return True
    reached, fresh = set(), [0]
    while fresh:
        reached.update(fresh)
        fresh = [
            other
            for other in range(len(breakers))
            if other not in reached
            and any(_tied(breakers[each], breakers[other]) for each in fresh)
        ]
    if len(reached) == len(breakers):
        return True
    one_panel = len({each.panel for each in breakers}) == 1
    return own if one_panel and any(each.tied_to is None for each in breakers) else False


def _tied(one_of: Breaker, other: Breaker) -> bool:
    if one_of.panel != other.panel:
        return False
    tied = {*(one_of.tied_to or ())} & {*other.spaces}
    return bool(tied or {*(other.tied_to or ())} & {*one_of.spaces})


def link_panels(site: Site, made: Made) -> None:
    """Where panels stand, their breakers and circuits, and what ends in them."""
    job, rooms = site.job, made.by_ref("room")
    breakers = Grouped((one(each, "panel").ref, each) for each in made.all("breaker"))
    ends = Grouped((one(each, "panel").ref, each) for each in made.all("panel_end"))
    circuits = Grouped(
        (panel, made.thing("circuit", circuit.name))
        for circuit in job.circuits.values()
        for panel in dict.fromkeys(each.panel for each in circuit.breakers)
    )
    feeders = Grouped(_feeders(site, made))
    for name, panel in job.panels.items():
        links: dict[str, object] = {
            "breakers": breakers.under(name),
            "circuits": circuits.under(name),
            "panel_ends": ends.under(name),
        }
        if panel.room is not None:
            links["room"] = rooms[panel.room]
        feeder = made.in_order(feeders.under(name))
        links |= {"feeder_conductors": feeder, "has_feeder": bool(feeder)}
        thing = made.thing("panel", name)
        complete(thing, links | _by_default(panel, thing, links))


def _by_default(panel: Panel, thing: Thing, links: Mapping[str, object]) -> dict[str, object]:
    """What follows from the wiring where the job does not say it of the panel itself."""
    room = links.get("room")
    lights = things(room, "outlets") if isinstance(room, Thing) else ()
    lit: YesNo = unknown("panel", panel.name, "has_light")
    if panel.lit is not None:
        lit = panel.lit
    elif not panel.says("lit") and any(
        value_of(one(each, "device"), "type") == "luminaire" for each in lights
    ):
        lit = True
    sub: YesNo = bool(links["has_feeder"])
    if panel.says("role"):
        own = unknown("panel", panel.name, "is_sub_panel")
        sub = own if panel.role is None else panel.role == SUB_PANEL
    for fact, field in (("has_light", "lit"), ("is_sub_panel", "role")):
        if panel.says(field):
            thing.stated_at = {**thing.stated_at, fact: panel.place_of(field)}
    return {"has_light": lit, "is_sub_panel": sub}


def _feeders(site: Site, made: Made) -> Iterable[tuple[str, Thing]]:
    """Each panel that cables of circuits of other panels feed, with all conductors of those."""
    wires = site.wiring.wire_ends
    fed = {
        (landing.panel, one(made.thing("conductor", wires[end].name), "cable").ref)
        for end, landing in site.wiring.panel_landings.items()
        if landing.spot is Spot.FEED
    }
    for conductor in made.all("conductor"):
        cable = one(conductor, "cable").ref
        yield from ((panel, conductor) for panel, of in sorted(fed) if of == cable)


def link_breakers(site: Site, made: Made) -> None:
    """The circuits on each breaker, and the conductors that end on it."""
    on_breaker = Grouped(
        (str(ref), made.thing("circuit", circuit.name))
        for circuit in site.job.circuits.values()
        for ref in circuit.breakers
    )
    wires = Grouped(_wires_on_breakers(site, made.by_ref("conductor")))
    for breaker in made.all("breaker"):
        circuits = on_breaker.under(breaker.ref)
        links = {
            "circuits": circuits,
            "is_spare": not circuits,
            "hot_wires": made.in_order(wires.under(breaker.ref)),
        }
        complete(breaker, links)


def _wires_on_breakers(site: Site, conductors: Mapping[str, Thing]) -> Iterable[tuple[str, Thing]]:
    for end, landing in site.wiring.panel_landings.items():
        if landing.spot is Spot.BREAKER and landing.space is not None:
            wire = site.wiring.wire_ends[end]
            yield f"{landing.panel} {landing.space}", conductors[wire.name]


def panel_label(name: str) -> str:
    """A panel as a person calls it."""
    return "the panel" if name == "panel" else f"panel {name}"
