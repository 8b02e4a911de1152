"""References of cables: where they end, circuits, what they are for, colours, boxes passed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.text import Refusal, nearest

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.job.cables import Cable
    from linter.job.jobs import Job
    from linter.job.stated import Stated
    from linter.jobfile.known import Known, Wrong

_HOT_OF = "hot of "
_OF = " of "


def wrong_in_cables(job: Job, known: Known) -> Iterator[Wrong]:
    """What is wrong with references of cables."""
    taken = {
        space
        for panel in job.panels.values()
        for breaker in panel.breakers.values()
        for space in breaker.spaces
    }
    spaces = [str(space) for space in sorted(taken)]
    for cable in job.cables.values():
        yield from _ends(cable, known)
        yield from _circuit(job, cable, known)
        yield from known.targets.missing(cable.for_, cable.place_of("for_"))
        yield from _passages(cable, known)
        if known.breakers_are_whole:
            yield from _spaces(cable, spaces)
        yield from _groups(cable, known)
        if known.is_whole(cable.name):
            yield from _colours(cable)


def _ends(cable: Cable, known: Known) -> Iterator[Wrong]:
    yield from known.ends.missing(cable.from_, cable.place_of("from_"))
    yield from known.ends.missing(cable.to, cable.place_of("to"))
    if cable.from_ == cable.to:
        yield Refusal(
            cable.place_of("to"),
            f'Cable "{cable.name}" comes from {cable.from_} and goes to it as well',
            "two different boxes, or a panel and a box",
            "correct one of its ends",
        )


def _circuit(job: Job, cable: Cable, known: Known) -> Iterator[Wrong]:
    if cable.circuit is not None:
        yield from known.circuits.missing(cable.circuit, cable.place_of("circuit"))
        return
    panels: set[str] = set(job.panels)
    is_home_run = not panels.isdisjoint(cable.ends)
    if is_home_run and cable.carries != "spare" and known.is_whole(cable.name):
        names = list(known.circuits.all)
        yield Refusal(
            cable.place,
            f'Cable "{cable.name}" begins at the panel and does not say its circuit',
            f"circuit: one of {', '.join(names)}" if names else "a circuit",
            f'write "circuit: {names[0] if names else "counter"}" or the like, '
            'or "carries: spare" if nothing uses it',
        )


def _passages(cable: Cable, known: Known) -> Iterator[Wrong]:
    seen: set[str] = set()
    for passage in cable.through:
        yield from known.boxes.missing(passage.box, passage.place_of("box"))
        if passage.box in cable.ends or passage.box in seen:
            found = f'Cable "{cable.name}" runs through {passage.box} '
            found += "twice" if passage.box in seen else "and ends in it"
            yield Refusal(
                passage.place_of("box"),
                found,
                "a box that it runs through once, between its ends",
                "leave the box out here, or correct the ends of the cable",
            )
        seen.add(passage.box)


def _spaces(cable: Cable, spaces: list[str]) -> Iterator[Wrong]:
    """Hots said to be those of a space that no breaker takes."""
    if cable.leg_of is not None and _stated_roles(cable):
        yield Refusal(
            cable.place_of("leg_of"),
            f'Cable "{cable.name}" says by leg_of which hot it carries on, and again by carries',
            "one of the two",
            "leave out leg_of; a role for each colour says more",
            also=(cable.place_of("carries"), "the roles are stated"),
        )
    elif cable.leg_of is not None and str(cable.leg_of) not in spaces:
        yield _no_space(cable, "leg_of", str(cable.leg_of), spaces)
    for colour, role in _stated_roles(cable).items():
        space = role.removeprefix(_HOT_OF)
        if role.startswith(_HOT_OF) and space not in spaces:
            yield _no_space(cable, f"carries.{colour}", space, spaces)


def _stated_roles(cable: Cable) -> dict[str, str]:
    return {} if isinstance(cable.carries, str) else cable.carries


def _no_space(cable: Cable, field: str, space: str, spaces: list[str]) -> Refusal:
    return Refusal(
        cable.place_of(field),
        f"No breaker takes space {space}",
        f"one of: {', '.join(spaces)}" if spaces else "a space that a breaker takes",
        "correct the space, or add the breaker to the panel",
        nearest(space, spaces),
    )


def _groups(cable: Cable, known: Known) -> Iterator[Wrong]:
    """Roles that speak of something controlled which is not there."""
    for colour, role in _stated_roles(cable).items():
        if _OF in role and not role.startswith(_HOT_OF):
            target = role.partition(_OF)[2]
            yield from known.targets.missing(target, cable.place_of(f"carries.{colour}"))


def _colours(cable: Cable) -> Iterator[Wrong]:
    """Colours that are spoken of and that the cable has not."""
    colours = cable.colours
    if colours is None:
        return
    spoken: list[tuple[Stated, str, dict[str, str]]] = [
        (cable, "carries", _stated_roles(cable)),
        (cable.at_from, "marks", cable.at_from.marks or {}),
        (cable.at_to, "marks", cable.at_to.marks or {}),
    ]
    for thing, field, words in spoken:
        if field in thing.usual:
            continue
        for colour in words:
            if colour not in colours:
                yield Refusal(
                    thing.place_of(f"{field}.{colour}"),
                    f'Cable "{cable.name}" has no {colour} conductor',
                    f"one of: {', '.join(colours)}",
                    "correct the colour, or state the colours under conductors",
                    nearest(colour, colours),
                )
