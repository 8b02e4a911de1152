"""ngspice as an independent solver: networks written as one netlist, its answers read back."""

from __future__ import annotations

import shutil
import subprocess
from typing import TYPE_CHECKING, NamedTuple

from linter.solve import Constant, solve

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from pathlib import Path

    from linter.solve import Network

HOW_TO_INSTALL = "ngspice is not installed: apt-get update && apt-get install -y ngspice"
# A shunt from every node to earth keeps what hangs on nothing solvable; it takes 2e-11 A at most.
OPTIONS = ".options savecurrents rshunt=1e13 reltol=1e-10 abstol=1e-13 vntol=1e-11 itl1=2000"


class Answer(NamedTuple):
    """What ngspice says of one network: volts by node, amperes by wire and by load, in order."""

    volts: list[float]
    wires: list[float]
    loads: list[float]


def answers(networks: Sequence[Network], folder: Path) -> list[Answer]:
    """The answers to many networks, of one run; `FileNotFoundError` if there is no ngspice."""
    program = shutil.which("ngspice")
    if program is None:
        raise FileNotFoundError(HOW_TO_INSTALL)
    raw = folder / "answers.raw"
    netlist = folder / "networks.cir"
    netlist.write_text("\n".join(_netlist(networks, raw)), encoding="utf-8")
    done = subprocess.run(  # noqa: S603  a program that the test asks for by name
        [program, "-b", str(netlist)], capture_output=True, text=True, check=False, timeout=120
    )
    assert raw.exists(), done.stdout[-2000:] + done.stderr[-2000:]
    values = _read(raw.read_text(encoding="utf-8"))
    return [_answer(network, number, values) for number, network in enumerate(networks)]


def _netlist(networks: Sequence[Network], raw: Path) -> Iterator[str]:
    yield "* networks of wirings"
    for number, network in enumerate(networks):
        yield from _one(network, number)
    yield OPTIONS
    yield ".control"
    yield "op"
    yield "set numdgt=17"
    yield "set filetype=ascii"
    yield f"write {raw} all"
    yield "quit"
    yield ".endc"
    yield ".end"


def _one(network: Network, number: int) -> Iterator[str]:
    """A network as lines; its nodes, and all that lies between them, carry its number."""
    name = f"n{number}x"
    for node, volts in network.held.items():
        yield f"V{number}x{node} {name}{node} 0 {volts!r}"
    for place, wire in enumerate(network.wires):
        yield f"R{number}w{place} {name}{wire.one} {name}{wire.other} {wire.ohms!r}"
    for place, load in enumerate(network.loads):
        one, other = f"{name}{load.one}", f"{name}{load.other}"
        watts, ohms = load.watts or 0.0, load.volts**2 / (load.watts or 1.0)
        if load.constant is Constant.POWER:
            across = f"V({one},{other})"
            least = (load.volts / 10) ** 2
            power = f"{watts!r}*{across}/max({across}*{across},{least!r})"
            yield f"B{number}l{place} {one} {other} I={power}"
        else:
            yield f"R{number}l{place} {one} {other} {ohms!r}"
    if any(load.constant is Constant.POWER for load in network.loads):
        yield from _first_guess(network, name)


def _first_guess(network: Network, name: str) -> Iterator[str]:
    """Where the search for a steady state begins: the voltages with resistors for loads.

    Only a beginning: ngspice goes on from there by its own method until it finds no change.
    """
    resistors = tuple(load._replace(constant=Constant.IMPEDANCE) for load in network.loads)
    for node, volts in enumerate(solve(network._replace(loads=resistors)).volts):
        if node not in network.held:
            yield f".nodeset v({name}{node})={volts!r}"


def _answer(network: Network, number: int, values: dict[str, float]) -> Answer:
    letter = {Constant.POWER: "b", Constant.IMPEDANCE: "r"}
    return Answer(
        [values.get(f"v(n{number}x{node})", 0.0) for node in range(network.size)],
        [values[f"i(@r{number}w{place}[i])"] for place in range(len(network.wires))],
        [
            values[f"i(@{letter[load.constant]}{number}l{place}[i])"]
            for place, load in enumerate(network.loads)
        ],
    )


def _read(raw: str) -> dict[str, float]:
    """The values of an ascii file of results by the name of their variable."""
    head, _, body = raw.partition("\nValues:\n")
    names = [line.split()[1] for line in head.partition("Variables:\n")[2].splitlines()]
    numbers = body.split()[1:]
    return dict(zip(names, map(float, numbers), strict=True))
