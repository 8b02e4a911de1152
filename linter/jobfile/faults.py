"""One thing that the schema has against a file, where it stands, and what is made of it."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.jobfile.schema import Schema
    from linter.text import Place, Refusal
    from linter.text.yaml_places import Node

Path = tuple[str | int, ...]


class Complaint(NamedTuple):
    """A refusal, and the path of what is left out when the rest is judged further."""

    refusal: Refusal
    leave_out: Path


class Fault(NamedTuple):
    """What a keyword of the schema has against a value, or against a key of the file `root`.

    `within` has the faults that each alternative finds, by its position.
    """

    keyword: str
    limit: object
    value: object
    schema: Schema
    path: Path
    root: Node
    of_key: bool
    within: Sequence[tuple[int, Fault]] = ()

    @property
    def node(self) -> Node:
        """The value that is at fault, or in which a key is."""
        return self.root.at(list(self.path))

    @property
    def name(self) -> str:
        """What a person calls the value: its key, or its position in a list; empty for the file."""
        steps = [step if isinstance(step, str) else f"number {step + 1}" for step in self.path]
        in_list = bool(self.path) and isinstance(self.path[-1], int)
        return " ".join(steps[-2:] if in_list else steps[-1:])

    @property
    def place_of_thing(self) -> Place:
        """Where the key of the value stands, or the value itself if it has none."""
        if self.path and isinstance(self.path[-1], str):
            above = self.root.at(list(self.path[:-1]))
            return above.keys.get(self.path[-1], above.place)
        return self.node.place

    def complaint(self, refusal: Refusal, *below: str) -> Complaint:
        """The complaint that leaves out the value, or what stands below it."""
        return Complaint(refusal, (*self.path, *below))
