"""What flows in the conductors of a circuit and stands at its outlets, in words and as data."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.solve.network import Missing, Unsteady
from linter.text import join_words
from linter.units import Unknown

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.solve.flows import Flows, Value
    from linter.wiring.model import Wiring

_HUNDRED = 100


class Loaded(NamedTuple):
    """A wiring solved: with which loads, and, where faults are named, with those besides.

    `unloaded` is the same with nothing on, which the drop counts from.
    """

    loads: tuple[str, ...]
    faults: tuple[str, ...]
    flows: Flows
    unloaded: Flows
    faulty: Flows | None


class AtOutlet(NamedTuple):
    """The voltage between two terminals of an outlet, and what is lost of it; with the faults."""

    terminals: tuple[str, str]
    volts: Value
    lost: Value
    volts_with_fault: Value | None


class InConductor(NamedTuple):
    """The current in a conductor, from the end at `from` to the end at `to`; with the faults."""

    conductor: str
    amperes: Value
    amperes_with_fault: Value | None


def at_outlet(loaded: Loaded, device: str) -> Iterator[AtOutlet]:
    """The voltages at an outlet."""
    faulty = loaded.faulty
    for one, other, volts in loaded.flows.outlet(device):
        before = loaded.unloaded.between(one, other)
        with_fault = None if faulty is None else faulty.between(one, other)
        yield AtOutlet((one, other), volts, _lost(before, volts), with_fault)


def in_cable(loaded: Loaded, wiring: Wiring, cable: str) -> Iterator[InConductor]:
    """The currents in the conductors of a cable, those in which none flows left out."""
    faulty = loaded.faulty
    for part in wiring.parts[cable]:
        name = f"{part.cable}.{part.colour}"
        amperes = loaded.flows.current(name)
        with_fault = None if faulty is None else faulty.current(name)
        if _counts(amperes) or _counts(with_fault):
            yield InConductor(name, amperes, with_fault)


def _lost(before: Value, after: Value) -> Value:
    if isinstance(before, Unknown):
        return before
    if isinstance(after, Unknown):
        return after
    return (abs(before) - abs(after)) / abs(before) if before else 0.0


def _counts(amperes: Value | None) -> bool:
    return isinstance(amperes, Unknown) or (amperes is not None and abs(amperes) >= _LEAST)


_LEAST = 0.005  # amperes; less is written as none


def outlet_in_words(at: AtOutlet) -> str:
    """The voltage at an outlet.

    >>> outlet_in_words(AtOutlet(("a.hot", "a.neutral"), 118.8, 0.01, 0.0))
    'a.hot to a.neutral: 118.8 V, 1.0 percent lost; with the fault 0.0 V'
    """
    words = f"{at.terminals[0]} to {at.terminals[1]}: {_volts(at.volts)}"
    if not isinstance(at.lost, Unknown) and at.volts:
        change = "lost" if at.lost >= 0 else "gained"
        words += f", {abs(at.lost) * _HUNDRED:.1f} percent {change}"
    if at.volts_with_fault is not None:
        words += f"; with the fault {_volts(at.volts_with_fault)}"
    return words


def conductor_in_words(inside: InConductor) -> str:
    """The current in a conductor.

    >>> conductor_in_words(InConductor("k1.black", -6.25, None))
    'k1.black 6.25 A'
    """
    words = f"{inside.conductor} {_amperes(inside.amperes)}"
    if inside.amperes_with_fault is not None:
        words += f", with the fault {_amperes(inside.amperes_with_fault)}"
    return words


def power_in_words(loaded: Loaded) -> str:
    """What everything that is on draws, and what the conductors of the whole job lose."""
    drawn, lost = loaded.flows.drawn, loaded.flows.losses
    if isinstance(drawn, Unknown):
        return f"What is drawn {unknown_in_words(drawn)}."
    words = f"Drawn in all: {drawn:.0f} W; lost in the conductors: "
    return words + (f"{unknown_in_words(lost)}." if isinstance(lost, Unknown) else f"{lost:.1f} W.")


def breaker_in_words(loaded: Loaded, pole: tuple[str, int, int]) -> str:
    """The current out of a pole of a breaker."""
    words = f"flowing out: {_amperes(loaded.flows.breaker_current(*pole))}"
    if loaded.faulty is not None:
        words += f", with the fault {_amperes(loaded.faulty.breaker_current(*pole))}"
    return words


def _volts(value: Value) -> str:
    return unknown_in_words(value) if isinstance(value, Unknown) else f"{abs(value):.1f} V"


def _amperes(value: Value) -> str:
    return unknown_in_words(value) if isinstance(value, Unknown) else f"{abs(value):.2f} A"


def unknown_in_words(value: Unknown) -> str:
    """What a value that cannot be told hangs on."""
    found = sorted(map(_reason, value.because))
    return f"cannot be told without the {join_words(found)}"


def _reason(reason: object) -> str:
    if isinstance(reason, Missing):
        return f"{reason.fact.replace('_', ' ')} of {reason.kind} {reason.ref}"
    return f"steady state of {reason.load}" if isinstance(reason, Unsteady) else str(reason)
