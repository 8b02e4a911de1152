"""Job files written from the compact rows of the outside tables."""

from __future__ import annotations

from typing import Any

import yaml

Row = dict[str, Any]
_THERE: Row = {"room": "room", "volume": "100 in3", "clamps": "none", "material": "nonmetallic"}
_ALONG: Row = {"from": "panel", "to": "there", "circuit": "c1", "material": "copper"}
_SWITCHED = {2: "switched", 3: "feed and switched"}


def box_job(row: Row) -> str:
    """A job whose box `here` is as the row says, with each cable going on to somewhere."""
    job = _job()
    job["boxes"]["here"] = {**_THERE, "volume": "unknown", **row["box"], "holds": []}
    for number, circuit in enumerate(row["circuits"], 1):
        _add_circuit(job, f"c{number}", 4 * number - 3, circuit)
    return _text(job)


def cable_job(row: Row) -> str:
    """A job with one cable from the panel to a box, and what that feeds beyond it."""
    job = _job()
    feeds = row.get("feeds", "receptacles")
    poles = 2 if feeds == "one appliance" else 1
    _add_breaker(job, "c1", 1, {"breaker": row["breaker"], "poles": poles})
    holds = {
        "receptacles": "receptacle",
        "lights": "luminaire",
        "one appliance": "appliance outlet",
    }
    job["boxes"]["there"] = {**_THERE, "holds": holds[feeds]}
    job["cables"]["k"] = {**_ALONG, **row["cable"]}
    return _text(job)


def _add_circuit(job: Row, name: str, space: int, circuit: Row) -> None:
    _add_breaker(job, name, space, circuit)
    here = job["boxes"]["here"]["holds"]
    lamps: list[tuple[str, str]] = []
    for number, cable in enumerate(_cables(circuit)):
        lamp = _add_cable(job, f"{name}-{number}", {**cable, "circuit": name}, first=number == 0)
        lamps += [lamp] if lamp else []
    for number, device in enumerate(circuit.get("holds", [])):
        kind, fields = next(iter(device.items())) if isinstance(device, dict) else (device, {})
        if kind == "switch":
            lamp, type_ = lamps.pop(0)
            fields = {"controls": lamp, "type": type_}
        here.append({kind: {"name": f"{kind}-{name}-{number}", "circuit": name, **fields}})


def _cables(circuit: Row) -> list[Row]:
    """The cables of a circuit, one by one."""
    rows = [{"sheath": each} if isinstance(each, str) else each for each in circuit["cables"]]
    return [
        {key: value for key, value in row.items() if key != "times"}
        for row in rows
        for _ in range(row.get("times", 1))
    ]


def _add_cable(job: Row, name: str, cable: Row, *, first: bool) -> tuple[str, str] | None:
    """Adds a cable at `here`; gives the lamp that a switch there controls over it, and its type."""
    far, to, uncut = f"far-{name}", cable.pop("to", None), cable.pop("uncut", None)
    if cable.pop("spare", False):
        cable["carries"] = "spare"
    job["cables"][f"k-{name}"] = cable
    job["boxes"][far] = dict(_THERE)
    if uncut:
        cable |= {"from": "panel", "to": far, "through": [{"box": "here", "loop": uncut}]}
        return None
    cable |= {"from": "panel", "to": "here"} if first else {"from": "here", "to": far}
    if to is None:
        return None
    if to == "lamp":
        job["boxes"][far]["holds"] = "luminaire"
        wires = int(cable["sheath"].split("/")[1][0])
        cable |= {"carries": _SWITCHED[wires], "for": far}
        return far, "single pole"
    lamp = f"lamp-{name}"
    cable |= {"carries": "travellers", "for": lamp}
    job["boxes"][lamp] = {**_THERE, "holds": "luminaire"}
    job["boxes"][far]["holds"] = {"switch": {"type": "three-way", "controls": lamp}}
    beyond = {"sheath": "14/2 NM-B", "from": far, "to": lamp, "carries": "switched", "for": lamp}
    job["cables"][f"k-{lamp}"] = {**beyond, "circuit": cable["circuit"]}
    return lamp, "three-way"


def _add_breaker(job: Row, name: str, space: int, circuit: Row) -> None:
    rating = circuit.get("breaker", "15 A")
    poles = circuit.get("poles", 1)
    breaker = {"rating": rating, "poles": poles, "serves": name}
    job["panel"]["breakers"][str(space)] = breaker
    job["circuits"][name] = {"breakers": [space], "use": "general"}


def _job() -> Row:
    return {
        "precover": 1,
        "job": {"name": "Boathouse", "pack": "us-nec-2023", "stage": "made up"},
        "supplies": {"service": {"kind": "split phase", "voltage": "240 V", "rating": "100 A"}},
        "panel": {"room": "room", "breakers": {}},
        "circuits": {},
        "rooms": {"room": {"use": "boathouse"}},
        "boxes": {},
        "cables": {},
    }


def _text(job: Row) -> str:
    return yaml.safe_dump(job, sort_keys=False, allow_unicode=True)
