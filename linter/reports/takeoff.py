"""What the job takes, counted: boxes, devices, connectors, pigtails, plates, breakers, cable."""

from __future__ import annotations

import math
from collections import Counter
from typing import TYPE_CHECKING, NamedTuple

from linter.job.devices import ApplianceOutlet, Fixture, Receptacle, Switch
from linter.reports.sayings import counted
from linter.text import join_words
from linter.units import AREA, LENGTH, write_quantity
from linter.wiring.card_words import CardWords

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.job.boxes import Box
    from linter.job.devices import AnyDevice
    from linter.job.jobs import Job
    from linter.units import Quantity
    from linter.wiring.model import BoxWiring, Joint, Wiring

_UNKNOWN = "size unknown"
_SPARE = "By what each joins; a conductor that goes nowhere takes a cap."
_COVERED = "Not counted: luminaires, fans and alarms cover their boxes themselves."
_CUT_AT = (
    "Cut as long as the longest free conductor of the box; wires that a device brings are not "
    "counted."
)
_NEXT_FOOT, _NEXT_METRE = "ft", "m"


class Counted(NamedTuple):
    """Things of one sort and how many of them; `measure` is their length, where they have one."""

    what: str
    number: int
    measure: str = ""


class Takeoff(NamedTuple):
    """A part of the takeoff; `remark` says what was not counted, or how."""

    heading: str
    rows: tuple[Counted, ...]
    remark: str = ""


def takeoff(job: Job, wiring: Wiring, *, metric: bool) -> tuple[Takeoff, ...]:
    """All parts, in the order in which one loads the van; lengths in feet unless `metric`."""
    said = CardWords(job, {})
    devices = [device for box in job.boxes.values() for device in box.holds]
    parts = (
        Takeoff("Boxes", _sorted(_box(box) for box in job.boxes.values())),
        Takeoff("Devices", _sorted(_device(each) for each in devices)),
        Takeoff("Connectors", _connectors(wiring, said), _SPARE),
        Takeoff("Pigtails", tuple(_pigtails(job, wiring, said, metric=metric)), _CUT_AT),
        Takeoff("Plates and covers", _sorted(_plates(job.boxes.values())), _COVERED),
        Takeoff("Breakers", _sorted(_breakers(job))),
        Takeoff("Cable", tuple(_cable(job, metric=metric)), "Lengths as stated, without waste."),
    )
    return tuple(each for each in parts if each.rows)


def _sorted(named: Iterable[str]) -> tuple[Counted, ...]:
    return tuple(Counted(*each) for each in sorted(Counter(named).items()))


def _box(box: Box) -> str:
    size = box.volume.written if box.volume is not None else box.trade_size or "volume unknown"
    form = f"{box.form or 'form unknown'} box"
    if box.form == "device":
        form = f"{box.gangs or '?'}-gang {form}"
    fit = ", for a luminaire" if box.luminaire_rated else ""
    fit += ", for a fan" if box.fan_rated else ""
    fit += ", for wet places" if box.wet_rated else ""
    return f"{form}, {box.material or 'material unknown'}, {size}{fit}"


def _device(device: AnyDevice) -> str:
    said = [f"{device.type} switch" if isinstance(device, Switch) else device.kind]
    if isinstance(device, Receptacle):
        said = ["single receptacle" if device.single else "duplex receptacle"]
    if isinstance(device, Receptacle | Switch) and device.rating is not None:
        said.append(device.rating.written)
    said += [*(device.protection or ())]
    if isinstance(device, Receptacle):
        said += ["tamper-resistant"] if device.tamper_resistant else []
        said += ["weather-resistant"] if device.weather_resistant else []
    return ", ".join(said)


def _connectors(wiring: Wiring, said: CardWords) -> tuple[Counted, ...]:
    """Connectors by the number and sizes of what they join; those named, by their name as well."""
    named = [_connector(wiring, joint, said) for joint in wiring.joints.values()]
    ends = (wiring.wire_ends[each.wire_end] for each in wiring.capped)
    capped = [f"cap for 1 {_size(end.size)}" for end in ends if end.insulated]
    return (*_sorted(named), *_sorted(capped))


def _connector(wiring: Wiring, joint: Joint, said: CardWords) -> str:
    sizes = [wiring.wire_ends[each].size for each in joint.wire_ends]
    for each in (wiring.pigtails[name] for name in joint.pigtails):
        terminal = wiring.terminals[each.terminal]
        sizes.append(said.lead_size(terminal) if said.is_lead(terminal) else each.size)
    counts = Counter(map(_size, sizes))
    made_of = join_words(
        [f"{n} \N{MULTIPLICATION SIGN} {size}" for size, n in sorted(counts.items())]
    )
    name = f"{joint.connector}, " if joint.connector else ""
    return f"{name}{counted(joint.wire_count, 'wire', 'wires')}: {made_of}"


def _size(size: Quantity | None) -> str:
    return _UNKNOWN if size is None else write_quantity(size.value, AREA, "AWG")


def _pigtails(job: Job, wiring: Wiring, said: CardWords, *, metric: bool) -> Iterator[Counted]:
    """By colour, size and length; the length of each times their number beside them."""
    found: Counter[tuple[str, str, Quantity | None]] = Counter()
    for here in wiring.boxes.values():
        longest = _longest(job, here)
        for each in here.pigtails:
            if not said.is_lead(wiring.terminals[each.terminal]):
                found[each.colour, _size(each.size), longest] += 1
    for (colour, size, length), number in sorted(found.items(), key=lambda each: each[0][:2]):
        each_long = length.written if length is not None else "length unknown"
        total = "" if length is None else _long(length.value * number, metric=metric)
        yield Counted(f"{colour}, {size}, {each_long} each", number, total)


def _longest(job: Job, here: BoxWiring) -> Quantity | None:
    cables = {end.cable: end.at_from for end in here.wire_ends}
    ends = [
        job.cables[name].at_from if at_from else job.cables[name].at_to  # type: ignore[index]  # plain names
        for name, at_from in cables.items()
    ]
    lengths = [each.free_length for each in ends if each.free_length is not None]
    return max(lengths, key=lambda each: each.value, default=None)


def _plates(boxes: Iterable[Box]) -> Iterator[str]:
    for box in boxes:
        held = [_opening(each) for each in box.holds if not isinstance(each, Fixture)]
        covered = any(isinstance(each, Fixture) for each in box.holds)
        if held:
            yield f"{box.gangs or len(held)}-gang: {' + '.join(held)}"
        elif not covered:
            yield f"blank cover, {box.form or 'form unknown'} box"


def _opening(device: AnyDevice) -> str:
    """What a plate has to leave open for a device."""
    if isinstance(device, ApplianceOutlet):
        return "appliance outlet"
    if isinstance(device, Receptacle):
        in_use = ", in-use cover" if device.cover_in_use else ""
        if device.protection:
            return f"rectangular{in_use}"
        return f"{'single' if device.single else 'duplex'}{in_use}"
    return "rectangular or dimmer" if getattr(device, "type", "").endswith("dimmer") else "toggle"


def _breakers(job: Job) -> Iterator[str]:
    for panel in job.panels.values():
        for each in panel.breakers.values():
            rating = each.rating.written if each.rating is not None else "rating unknown"
            poles = counted(each.poles, "pole", "poles")
            yield ", ".join([f"{rating}, {poles}", *(each.protection or ())])


def _cable(job: Job, *, metric: bool) -> Iterator[Counted]:
    sheaths: dict[str, list[Quantity | None]] = {}
    for cable in job.cables.values():
        sheath = str(cable.sheath) if cable.sheath is not None else "sheath unknown"
        sheaths.setdefault(sheath, []).append(cable.length)
    for sheath, lengths in sorted(sheaths.items()):
        known = [each.value for each in lengths if each is not None]
        total = _long(sum(known), metric=metric) if known else ""
        missing = len(lengths) - len(known)
        without = f", {missing} without a length" if missing else ""
        yield Counted(f"{sheath}{without}", len(lengths), total)


def _long(metres: float, *, metric: bool) -> str:
    """A length rounded up to whole metres or feet."""
    unit, step = (_NEXT_METRE, 1.0) if metric else (_NEXT_FOOT, 0.3048)
    return write_quantity(math.ceil(metres / step - 1e-9) * step, LENGTH, unit)
