"""References of panels and circuits: rooms, spaces, ties, breakers, panels."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.text import Refusal

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.job.jobs import Job
    from linter.job.panel import Breaker, Circuit, Panel
    from linter.jobfile.known import Known, Wrong


def wrong_in_panels(job: Job, known: Known) -> Iterator[Wrong]:
    """What is wrong with references of supplies, panels and circuits."""
    yield from _two_usual_supplies(job)
    for panel in job.panels.values():
        yield from known.rooms.missing(panel.room, panel.place_of("room"))
        yield from _spaces(panel)
        for breaker in panel.breakers.values():
            yield from _ties(panel, breaker, known)
    for circuit in job.circuits.values():
        yield from _breakers(job, circuit, known)


def _two_usual_supplies(job: Job) -> Iterator[Wrong]:
    usual = [each for each in job.supplies.values() if each.is_usual]
    for each in usual[1:]:
        yield Refusal(
            each.place,
            f'"{each.name}" is a second supply that is said to be the usual one',
            "one usual supply",
            'leave "usual: yes" at one of them',
            also=(usual[0].place, f'"{usual[0].name}" stands'),
        )


def _spaces(panel: Panel) -> Iterator[Wrong]:
    """Spaces outside the panel, or taken by two breakers."""
    taken: dict[int, Breaker] = {}
    for breaker in panel.breakers.values():
        wrong = [each for each in breaker.spaces if panel.spaces and each > panel.spaces]
        if wrong:
            yield Refusal(
                breaker.place,
                f"Space {wrong[0]} is outside the panel, which has {panel.spaces} spaces",
                f"spaces from 1 to {panel.spaces}, such as {_free(panel)}",
                "correct the space, the poles, or the number of spaces of the panel",
                also=(panel.place_of("spaces"), "its spaces are stated"),
            )
        for space in breaker.spaces:
            other = taken.setdefault(space, breaker)
            if other is not breaker:
                yield _taken_twice(panel, space, other, breaker)
                break


def _taken_twice(panel: Panel, space: int, first: Breaker, second: Breaker) -> Refusal:
    two_pole = " A breaker of two poles takes its space and the one two numbers on"
    return Refusal(
        second.place,
        f"Space {space} is taken by the breaker at {first.space} and by that at {second.space}",
        f"a free space, such as {_free(panel)}",
        "correct the space or the poles of one of them." + two_pole,
        also=(first.place, f"the breaker at {first.space} is stated"),
    )


def _free(panel: Panel) -> int:
    taken = {space for breaker in panel.breakers.values() for space in breaker.spaces}
    return next(space for space in range(1, len(taken) + 2) if space not in taken)


def _ties(panel: Panel, breaker: Breaker, known: Known) -> Iterator[Wrong]:
    for at, space in enumerate(breaker.tied_to or ()):
        place = breaker.place_of(f"tied_to.{at}")
        if space in breaker.spaces:
            yield Refusal(
                place,
                f"The breaker at {breaker.space} is tied to itself",
                "the space of another breaker",
                f"leave out {space}; the poles of one breaker need no tie",
            )
        elif space not in panel.breakers and known.breakers_are_whole:
            yield _no_breaker(panel, space, breaker, f"tied_to.{at}")


def _breakers(job: Job, circuit: Circuit, known: Known) -> Iterator[Wrong]:
    """Breakers of a circuit that are not there, or that are a breaker's second pole."""
    for at, (panel, space) in enumerate(circuit.breakers):
        if not panel:
            if known.panels.complete:
                yield _which_panel(job, circuit)
            return
        if panel not in job.panels:
            yield from known.panels.missing(panel, circuit.place_of("panel"))
            return
        if space not in job.panels[panel].breakers and known.breakers_are_whole:
            yield _no_breaker(job.panels[panel], space, circuit, f"breakers.{at}")


def _which_panel(job: Job, circuit: Circuit) -> Refusal:
    if not job.panels:
        return Refusal(
            circuit.place_of("breakers.0"),
            f'Circuit "{circuit.name}" begins at a breaker, and there is no panel',
            'a panel with its breakers, under "panel"',
            "state the panel",
        )
    first = next(iter(job.panels))
    return Refusal(
        circuit.place_of("breakers.0"),
        f'Circuit "{circuit.name}" does not say in which panel its breakers are',
        f"panel: one of {', '.join(job.panels)}",
        f'write "panel: {first}" or another of these beside the breakers',
    )


def _no_breaker(panel: Panel, space: int, thing: Breaker | Circuit, field: str) -> Refusal:
    """No breaker begins at the space; perhaps one has its second pole there."""
    place = thing.place_of(field)
    spaces = [str(each) for each in sorted(panel.breakers)]
    holder = next((each for each in panel.breakers.values() if space in each.spaces), None)
    if holder is not None:
        return Refusal(
            place,
            f"Space {space} holds the second pole of the breaker at {holder.space}",
            f"the first space of a breaker, such as {holder.space}",
            f"write {holder.space}",
            also=(holder.place, f"the breaker at {holder.space} is stated"),
        )
    near = tuple(str(each) for each in panel.breakers if abs(each - space) <= 2)[:3]  # noqa: PLR2004  neighbours
    return Refusal(
        place,
        f"No breaker stands at space {space} of {panel.name}",
        f"one of: {', '.join(spaces)}" if spaces else 'a breaker, under "breakers" of the panel',
        "correct the space, or add the breaker to the panel",
        near,
    )
