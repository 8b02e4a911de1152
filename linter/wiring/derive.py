"""The wiring of a whole job: conductors, their uses, then box by box and panel by panel."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.text import Refusal, Refused
from linter.wiring.boxes import BoxResult, wire_box
from linter.wiring.commons import commons_of
from linter.wiring.ends import parts_of, passing_of, wire_ends_of
from linter.wiring.groups import Groups
from linter.wiring.known import Circuits, known_of_cables
from linter.wiring.model import CablePart, Terminal, WireEnd, Wiring
from linter.wiring.panels import panel_landings_of
from linter.wiring.plans import Around

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.job.jobs import Job


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
    return _wiring(job, parts, wire_ends, results)


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


def _wiring(
    job: Job,
    parts: Mapping[str, tuple[CablePart, ...]],
    wire_ends: Mapping[str, WireEnd],
    results: Mapping[str, BoxResult],
) -> Wiring:
    boxes = {name: result.wiring for name, result in results.items()}
    by_device: dict[str, list[Terminal]] = {}
    for box in boxes.values():
        for terminal in box.terminals:
            if terminal.device:
                by_device.setdefault(terminal.device, []).append(terminal)
    in_panels = [end for end in wire_ends.values() if end.box in job.panels]
    landings = {each.terminal: each for box in boxes.values() for each in box.landings}
    joints = {each.id: each for box in boxes.values() for each in box.joints}
    ended_in = {wire: each.id for each in joints.values() for wire in each.wire_ends}
    ended_in |= {wire: each.terminal for each in landings.values() for wire in each.wire_ends}
    ended_in |= {each.pigtail: each.terminal for each in landings.values() if each.pigtail}
    return Wiring(
        boxes=boxes,
        wire_ends=wire_ends,
        terminals={each.id: each for box in boxes.values() for each in box.terminals},
        joints=joints,
        pigtails={each.id: each for box in boxes.values() for each in box.pigtails},
        landings=landings,
        parts=parts,
        by_device={name: tuple(found) for name, found in by_device.items()},
        panel_landings=panel_landings_of(job, in_panels),
        circuit_of_device={k: v for each in results.values() for k, v in each.circuits.items()},
        unknown_cables=frozenset(n for n, cable in job.cables.items() if cable.colours is None),
        ended_in=ended_in,
        links=tuple(link for box in boxes.values() for link in box.links),
        capped=tuple(each for box in boxes.values() for each in box.capped),
        passing=tuple(each for box in boxes.values() for each in box.passing),
    )
