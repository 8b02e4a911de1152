"""`precover trace JOB [NAME]`: circuits followed from the panel outward, with loads and faults."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.cli.files import read_text, shown_name
from linter.cli.output import show, show_lines
from linter.cli.status import Status
from linter.cli.words import Option, tell_apart
from linter.cli.wrong_use import WrongUse, one_of
from linter.job.stated import BoxId, CircuitId
from linter.jobfile import read_job
from linter.text import nearest
from linter.trace import trace
from linter.trace.follow import Followed, Follower
from linter.wiring import derive

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.cli.words import Options
    from linter.job.jobs import Job
    from linter.reports.tracing_loads import Loaded
    from linter.wiring.model import Wiring

_COMMAND = "precover trace"
_MEND = f"write {_COMMAND} JOB, and after it a circuit, a box or an outlet if you wish"
_OPTIONS = (
    Option("--load", 'everything, an appliance, or such as "1500 W at bench"', adds_up=True),
    Option("--fault", 'such as "open neutral at bench"', adds_up=True),
    Option("--supply", "the name of a supply of the job"),
    Option("--form", "text or json", "text"),
)


def run_trace(words: Sequence[str]) -> Status:
    """Shows circuits from the panel outward; what flows in them, if loads or faults are named."""
    names, options = tell_apart(_COMMAND, _OPTIONS, words)
    form = one_of(options.one("--form"), ("text", "json"), "form")
    file, name = _file_and_name(names)
    job = read_job(read_text(file), shown_name(file))
    wiring = derive(job)
    circuits = _followed(Follower(job, wiring, trace(job, wiring)), job, wiring, name)
    loaded = _loaded(job, wiring, options)
    if form == "json":
        from linter.reports.tracing_json import tracing_json  # noqa: PLC0415

        show(tracing_json(circuits, wiring, loaded))
    else:
        from linter.reports.tracing import tracing  # noqa: PLC0415

        show_lines(tracing(circuits, wiring, loaded))
    return Status.NOTHING_OUTSTANDING


def _file_and_name(names: list[str]) -> tuple[str, str]:
    match names:
        case [file]:
            return file, ""
        case [file, name]:
            return file, name
        case []:
            raise WrongUse("A job file is missing.", mend=_MEND)
        case _:
            raise WrongUse(f'"{names[2]}" is one word too many.', mend=_MEND)


def _followed(follower: Follower, job: Job, wiring: Wiring, name: str) -> list[Followed]:
    """The circuits to show: all, the one named, or those of a box or outlet on the way there."""
    if not name:
        return [follower.circuit(each) for each in job.circuits]
    if name in job.circuits:
        return [follower.circuit(CircuitId(name))]
    devices = {str(device.name): box.name for box in job.boxes.values() for device in box.holds}
    box = name if name in job.boxes else devices.get(name)
    if box is None:
        known = [*map(str, job.circuits), *map(str, job.boxes), *devices]
        raise WrongUse(
            f'"{name}" is no circuit, box or outlet of this job.',
            f"one of: {', '.join(dict.fromkeys(known))}",
            nearest(name, known),
        )
    circuits = {end.use.circuit for end in wiring.boxes[BoxId(box)].wire_ends}
    if name not in job.boxes:
        circuits &= {*wiring.circuit_of_device.get(name, ())}
    way = follower.boxes_to(str(box))
    return [follower.circuit(each, way) for each in job.circuits if each in circuits]


def _loaded(job: Job, wiring: Wiring, options: Options) -> Loaded | None:
    """The wiring solved, where loads, faults or a supply are named."""
    loads, faults, supply = options.all("--load"), options.all("--fault"), options.one("--supply")
    if not (loads or faults or supply):
        return None
    from dataclasses import replace  # noqa: PLC0415

    from linter.cli.trace_words import EVERYTHING, scenario_of  # noqa: PLC0415
    from linter.reports.tracing_loads import Loaded  # noqa: PLC0415
    from linter.solve import NotThere, network_of, solve  # noqa: PLC0415

    scenario = scenario_of(job, loads, faults, supply)
    sound = network_of(job, wiring, replace(scenario, faults=()))
    flows = solve(sound)
    try:
        faulty = solve(network_of(job, wiring, scenario)) if faults else None
    except NotThere as wrong:
        places = [*wiring.joints, *wiring.boxes, *wiring.by_device]
        raise WrongUse(
            f'"{wrong.name}" is no joint, box, device or wire end of this job.',
            "a place such as a box, a device, or a joint of a box (bench/1)",
            nearest(wrong.name, places),
        ) from wrong
    unloaded = solve(sound._replace(loads=()))
    named = tuple(loads) or (EVERYTHING,)
    return Loaded(named, tuple(faults), flows, unloaded, faulty)
