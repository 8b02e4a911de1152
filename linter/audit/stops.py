"""Where on the walk through the rooms each thing of a job belongs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.audit.findings import Stop
from linter.text import join_words
from linter.vocabulary.model import Thing

if TYPE_CHECKING:
    from collections.abc import Mapping

# What one stops at in a room, in the order in which one looks at it.
_STOPPED_AT = ("room", "box", "cable", "panel", "circuit", "breaker", "appliance")
# The facts that lead from a thing to what one stops at, nearest first.
_TO_A_STOP = {"box": "box", "cable": "cable", "panel": "panel"}
# The facts that lead from there to its room; of several things, the last with a room tells.
_TO_A_ROOM = ("room", "ends", "box", "panel", "breakers", "outlets")


class Walk:
    """The order of the rooms and of what stands in them, as the job file has it."""

    def __init__(self, things: Mapping[str, tuple[Thing, ...]]) -> None:
        self._numbers = {
            (each.kind, each.ref): number
            for kind in _STOPPED_AT
            for number, each in enumerate(things.get(kind, ()))
        }
        self._rooms = len(things.get("room", ()))
        self._known: dict[tuple[str, str], Stop] = {}

    def stop_of(self, thing: Thing) -> Stop:
        """Where one stops to look at the thing."""
        key = thing.kind, thing.ref
        if key not in self._known:
            self._known[key] = self._find(thing)
        return self._known[key]

    def _find(self, thing: Thing) -> Stop:
        stop = _stop_thing(thing)
        room = _room_of(stop, set())
        return Stop(
            room=room.ref if room else "",
            box=stop.ref if stop.kind == "box" else "",
            circuit=_circuits(thing),
            heading=stop.label,
            place=stop.place,
            order=self._order(stop, room),
        )

    def _order(self, stop: Thing, room: Thing | None) -> tuple[int, int, int]:
        in_room = self._numbers[("room", room.ref)] if room else self._rooms
        rank = _STOPPED_AT.index(stop.kind) if stop.kind in _STOPPED_AT else len(_STOPPED_AT)
        return in_room, rank, self._numbers.get((stop.kind, stop.ref), 0)


def stopped_at(stop: Stop) -> str:
    """The kind of what one stops at; empty for what has no place on the walk."""
    rank = stop.order[1]
    return _STOPPED_AT[rank] if rank < len(_STOPPED_AT) else ""


def _stop_thing(thing: Thing) -> Thing:
    for fact, kind in _TO_A_STOP.items():
        value = thing.__dict__.get(fact)
        if type(value) is Thing and value.kind == kind:
            return value
    return thing


def _room_of(thing: Thing, seen: set[tuple[str, str]]) -> Thing | None:
    if thing.kind == "room":
        return thing
    seen.add((thing.kind, thing.ref))
    for fact in _TO_A_ROOM:
        value = thing.__dict__.get(fact)
        for each in reversed(value if type(value) is tuple else (value,)):
            if type(each) is Thing and (each.kind, each.ref) not in seen:
                room = _room_of(each, seen)
                if room:
                    return room
    return None


def _circuits(thing: Thing) -> str:
    if thing.kind == "circuit":
        return thing.ref
    circuits = thing.__dict__.get("circuits")
    return join_words([each.ref for each in circuits]) if type(circuits) is tuple else ""
