"""The ends of all conductors, with what each is used as; and conductors that pass through uncut."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.wiring.carries import Carried, Uses, uses_of
from linter.wiring.model import CablePart, Passing, WireEnd
from linter.wiring.sheaths import Conductor, conductors_of

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.job.cables import Cable, CableEnd
    from linter.job.jobs import Job


def parts_of(job: Job, known: Mapping[str, Carried]) -> dict[str, tuple[CablePart, ...]]:
    """The conductors of every cable, each with its use; none for a cable of unknown sheath."""
    return {name: _parts(cable, known[name]) for name, cable in job.cables.items()}


def _parts(cable: Cable, known: Carried) -> tuple[CablePart, ...]:
    conductors = conductors_of(cable) or ()
    colours = tuple(each.colour for each in conductors)
    uses: Uses = uses_of(colours, cable.carries, known)
    return tuple(_part(cable, each, uses) for each in conductors)


def _part(cable: Cable, conductor: Conductor, uses: Uses) -> CablePart:
    name = f"{cable.name}.{conductor.colour}"
    ends = (f"{name}@{cable.from_}", f"{name}@{cable.to}")
    colour, insulated, size = conductor
    return CablePart(cable.name, colour, uses[colour], insulated, size, ends)


def wire_ends_of(job: Job, parts: Mapping[str, tuple[CablePart, ...]]) -> dict[str, WireEnd]:
    """Both ends of every conductor, by id, in the order of the job file."""
    ends = {}
    for name, cable in job.cables.items():
        for side, at_from in ((cable.at_from, True), (cable.at_to, False)):
            for part in parts[name]:
                end = _wire_end(cable, part, side, at_from)
                ends[end.id] = end
    return ends


def _wire_end(cable: Cable, part: CablePart, side: CableEnd, at_from: bool) -> WireEnd:
    return WireEnd(
        id=part.ends[0 if at_from else 1],
        cable=part.cable,
        colour=part.colour,
        box=cable.from_ if at_from else cable.to,
        at_from=at_from,
        use=part.use,
        insulated=part.insulated,
        size=part.size,
        marked=(side.marks or {}).get(part.colour),
    )


def passing_of(job: Job, parts: Mapping[str, tuple[CablePart, ...]]) -> dict[str, list[Passing]]:
    """The conductors that pass through each box uncut."""
    passing: dict[str, list[Passing]] = {}
    for name, cable in job.cables.items():
        for passage in cable.through:
            here = passing.setdefault(passage.box, [])
            here += [
                Passing(
                    passage.box,
                    name,
                    each.colour,
                    each.size,
                    each.insulated,
                    each.use,
                    passage.loop,
                )
                for each in parts[name]
            ]
    return passing
