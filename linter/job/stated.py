"""What every model of a job has: where it was stated, and which of its values are usual ones."""

from collections.abc import Callable, Mapping
from typing import Annotated, NewType

from pydantic import BaseModel, ConfigDict, Field
from pydantic_core import core_schema

from linter.text import Place

BoxId = NewType("BoxId", str)
PanelId = NewType("PanelId", str)
EndId = NewType("EndId", str)  # a box or a panel: where a cable may end
CableId = NewType("CableId", str)
CircuitId = NewType("CircuitId", str)
RoomId = NewType("RoomId", str)
DeviceId = NewType("DeviceId", str)
ApplianceId = NewType("ApplianceId", str)
ProductId = NewType("ProductId", str)


class ReadAs:
    """Marks a field whose value one function reads; pydantic looks no further into its type.

    It is what makes the models quick to build: a quantity has a dimension, a place has a file.
    """

    __slots__ = ("read",)

    def __init__(self, read: Callable[[object], object]) -> None:
        self.read = read

    def __get_pydantic_core_schema__(
        self, source: object, handler: object
    ) -> core_schema.CoreSchema:
        return core_schema.no_info_plain_validator_function(self.read)


def _place(value: object) -> Place:
    if isinstance(value, Place):
        return value
    raise ValueError(f"{value!r} is no place")


def _as_given(value: object) -> object:
    return value


class Stated(BaseModel):
    """A thing that a job file states.

    `place` is where it begins; `field_places` has the place of each value stated for it, be it at
    the thing itself or among the usual values, also of values said to be unknown, and of the items
    of lists and mappings of plain values (`breakers.0`, `marks.white`); `usual` names the fields
    whose value is a usual one. A field that is unknown is None.
    """

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)

    place: Annotated[Place, ReadAs(_place)]
    field_places: Annotated[Mapping[str, Place], ReadAs(_as_given)] = Field(default_factory=dict)
    usual: frozenset[str] = frozenset()

    def says(self, field: str) -> bool:
        """Whether the job states the field, be it as unknown or as a usual value."""
        return field in self.field_places

    def place_of(self, field: str) -> Place:
        """Where the field is stated; the place of the whole thing if it is left out."""
        return self.field_places.get(field, self.place)
