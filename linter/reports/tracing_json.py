"""Circuits followed from the panel outward, as JSON: the same words and values as the report."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

from linter.reports.sayings import CAUTION, CLOSING
from linter.reports.tracing_loads import at_outlet, in_cable, unknown_in_words
from linter.units import Unknown

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.reports.tracing_loads import AtOutlet, InConductor, Loaded
    from linter.solve.flows import Value
    from linter.trace.follow import Followed, Start, Stop
    from linter.wiring.model import Wiring

FORMAT = 1
Data = dict[str, object]


def tracing_json(circuits: Sequence[Followed], wiring: Wiring, loaded: Loaded | None) -> str:
    """All circuits as one document; values that cannot be told say what they hang on."""
    document: Data = {
        "precover_trace": FORMAT,
        "caution": CAUTION,
        "closing": CLOSING,
        "circuits": [_circuit(each, wiring, loaded) for each in circuits],
    }
    if loaded is not None:
        document |= {"on": list(loaded.loads), "faults": list(loaded.faults)}
        document |= {"watts": _told(loaded.flows.drawn), "lost": _told(loaded.flows.losses)}
    return json.dumps(document, indent=2) + "\n"


def _circuit(followed: Followed, wiring: Wiring, loaded: Loaded | None) -> Data:
    return {
        "circuit": followed.circuit,
        "starts": [_start(each, loaded) for each in followed.starts],
        "stops": [_stop(each, wiring, loaded) for each in followed.stops],
    }


def _start(start: Start, loaded: Loaded | None) -> Data:
    panel, space, pole = start.pole
    found: Data = {**start._asdict(), "panel": panel, "space": space, "pole": pole + 1}
    if loaded is not None:
        found["amperes"] = _told(loaded.flows.breaker_current(*start.pole))
        if loaded.faulty is not None:
            found["amperes_with_fault"] = _told(loaded.faulty.breaker_current(*start.pole))
    return found


def _stop(stop: Stop, wiring: Wiring, loaded: Loaded | None) -> Data:
    found: Data = {
        "box": stop.box,
        "room": stop.room,
        "cables_from_panel": stop.distance,
        "cables": list(stop.cables),
        "joints": [dict(each._asdict()) for each in stop.joints],
        "terminals": [dict(each._asdict()) for each in stop.terminals],
        "capped": list(stop.capped),
    }
    outlets = []
    for outlet in stop.outlets:
        data: Data = {
            **outlet._asdict(),
            "places": [
                {
                    "terminals": list(place.terminals),
                    "positions": [
                        {"switches": dict(each.switches), "seen": each.seen}
                        for each in place.positions
                    ],
                }
                for place in outlet.places
            ],
        }
        if loaded is not None:
            data["voltages"] = [_voltage(each) for each in at_outlet(loaded, outlet.device)]
        outlets.append(data)
    found["outlets"] = outlets
    if loaded is not None:
        found["currents"] = [
            _current(each) for cable in stop.cables for each in in_cable(loaded, wiring, cable)
        ]
    return found


def _voltage(at: AtOutlet) -> Data:
    data: Data = {"terminals": list(at.terminals), "volts": _told(at.volts), "lost": _told(at.lost)}
    if at.volts_with_fault is not None:
        data["volts_with_fault"] = _told(at.volts_with_fault)
    return data


def _current(inside: InConductor) -> Data:
    data: Data = {"conductor": inside.conductor, "amperes": _told(inside.amperes)}
    if inside.amperes_with_fault is not None:
        data["amperes_with_fault"] = _told(inside.amperes_with_fault)
    return data


def _told(value: Value) -> float | str:
    return unknown_in_words(value) if isinstance(value, Unknown) else round(value, 6)
