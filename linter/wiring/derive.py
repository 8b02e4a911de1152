"""The wiring of a whole job: conductors, their uses, then box by box and panel by panel."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.text import Refusal, Refused
from linter.wiring.boxes import BoxResult, wire_box
from linter.wiring.commons import commons_of
from linter.wiring.ends import parts_of, passing_of, wire_ends_of
from linter.wiring.groups import Groups
from linter.wiring.known import Circuits, known_of_cables
from linter.wiring.panels import in_panels
from linter.wiring.plans import Around
from linter.wiring.sections import Cables, gathered

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.job.jobs import Job
    from linter.wiring.model import CablePart, WireEnd, Wiring


def derive(job: Job) -> Wiring:
    """The wiring of the job, conductor by conductor; the order of its file changes names only.

    Raises `Refused` with a refusal for each cable, device or name of which it cannot be told what
    is meant, and what to state there.
    """
    groups = Groups(job)
    known, refusals = known_of_cables(job, groups)
    if refusals:
        raise Refused(refusals)
    parts = parts_of(job, known)
    wire_ends = wire_ends_of(job, parts)
    results, refusals = _boxes(job, groups, parts, wire_ends)
    if refusals:
        raise Refused(refusals)
    landed = in_panels(job, [end for end in wire_ends.values() if end.box in job.panels])
    if landed.refusals:
        raise Refused([*landed.refusals])
    return gathered(
        {name: result.wiring for name, result in results.items()},
        Cables(
            parts,
            wire_ends,
            landed.landings,
            landed.joints,
            frozenset(name for name, cable in job.cables.items() if cable.colours is None),
        ),
        {k: v for each in results.values() for k, v in each.circuits.items()},
    )


def _boxes(
    job: Job,
    groups: Groups,
    parts: Mapping[str, tuple[CablePart, ...]],
    wire_ends: Mapping[str, WireEnd],
) -> tuple[dict[str, BoxResult], list[Refusal]]:
    in_box: dict[str, list[WireEnd]] = {}
    for end in wire_ends.values():
        in_box.setdefault(end.box, []).append(end)
    circuits = Circuits(job)
    breakers_of = {str(name): circuits.breaker_count(name) for name in job.circuits}
    commons, refusals = commons_of(groups, in_box)
    passing = passing_of(job, parts)
    results: dict[str, BoxResult] = {}
    for name, box in job.boxes.items():
        around = Around(box, in_box.get(name, ()), groups, breakers_of, commons)
        results[name] = wire_box(around, passing.get(name, ()))
        refusals = refusals + results[name].refusals
    return results, refusals
