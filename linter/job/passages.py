"""Stairs, and doors that lead out of doors."""

from typing import Annotated, Literal

from linter.job.stated import DeviceId, ReadAs, RoomId, Stated
from linter.job.values import Count, YesNo


def _level(value: object) -> str | Literal[False] | None:
    if value in ("none", False):
        return False
    return value if isinstance(value, str) and value != "unknown" else None


Level = Annotated[str | Literal[False] | None, ReadAs(_level)]


class Stair(Stated):
    """A stair: `levels` has, for each floor level and landing that it serves, the switch there.

    The switch of a level is False where there is none, and None where that is not known.
    """

    name: str
    room: RoomId
    risers: Count | None = None
    levels: dict[str, Level] | None = None
    lights: tuple[DeviceId, ...] | None = None
    lit_throughout: YesNo | None = None
    note: str | None = None


class Door(Stated):
    """A door that leads out of doors: from `room` to the place `to`."""

    name: str
    room: RoomId
    to: RoomId | None = None
    from_grade: YesNo | None = None
    vehicles: YesNo | None = False
    lights: tuple[DeviceId, ...] | None = None
    note: str | None = None
