"""What is taken as none where a job says nothing of it, and is recorded so that reports can say so.

Only what could hide a defect stands here. What a trade takes for granted is no such thing: one
gang, one pole, a device without protection of its own, no handle tie.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Mapping


class LeftOut(NamedTuple):
    """The fact that a field states first, and what is none: "bundles", "sinks"."""

    fact: str
    noun: str


LEFT_OUT: Mapping[str, Mapping[str, LeftOut]] = {
    "room": {
        "sink": LeftOut("has_sink", "sinks"),
        "tub": LeftOut("has_tub", "tubs"),
        "damp": LeftOut("is_damp", "dampness"),
        "wet": LeftOut("is_wet", "wetting"),
    },
    "box": {
        "fixture_studs": LeftOut("fixture_studs", "fixture studs"),
        "hickeys": LeftOut("hickeys", "hickeys"),
        "terminal_blocks": LeftOut("terminal_blocks", "terminal blocks"),
    },
    "cable": {"bundled": LeftOut("bundled_conductors", "bundles")},
    "cable_end": {"shares_clamp_with": LeftOut("shares_clamp_with", "shared clamps")},
    "bored_hole": {"metal": LeftOut("is_in_metal", "metal framing")},
    "appliance": {"largest_breaker": LeftOut("has_largest_breaker", "largest breakers")},
}
NOTHING: Mapping[str, LeftOut] = {}


def noun_of(kind: str, fact: str) -> str:
    """What is taken as none, by the fact that says so first.

    >>> noun_of("cable", "bundled_conductors")
    'bundles'
    """
    return next(each.noun for each in LEFT_OUT[kind].values() if each.fact == fact)
