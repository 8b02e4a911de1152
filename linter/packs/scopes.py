"""What expressions about one kind of thing may name, and names that would mean two things."""

from collections.abc import Mapping

from linter.language.scope import Scope
from linter.packs.entries import Entry
from linter.packs.limits import is_list
from linter.packs.model import LimitValue, PackLimit, PackTable
from linter.packs.values import type_named
from linter.text import Refusal, nearest
from linter.text.yaml_places import Node
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import FactType, Kind


class Grounds:
    """The limits, tables and measures of a pack, from which the scope of each kind is made."""

    def __init__(
        self,
        limits: Mapping[str, PackLimit],
        tables: Mapping[str, PackTable],
        measures: Mapping[tuple[str, str], FactType],
    ) -> None:
        self.limits = {name: each.type for name, each in limits.items() if not is_list(each)}
        self.lists = {name: _words(each.value) for name, each in limits.items() if is_list(each)}
        self.tables = {name: each.table.shape for name, each in tables.items()}
        self.measures = measures

    def scope(self, subject: str, steps: Mapping[str, FactType] | None = None) -> Scope:
        """What an expression about a kind may name, after the steps before it."""
        return Scope(subject, self.limits, self.lists, self.tables, self.measures, steps or {})


def kind_of(node: Node, refusals: list[Refusal]) -> Kind | None:
    """The kind that `about` names; None where it is refused."""
    kind = KINDS.get(node.text)
    if kind is None:
        refusals.append(
            Refusal(
                node.place,
                f'"{node.text}" is no kind of thing',
                f"one of: {', '.join(KINDS)}",
                "write the name of a kind",
                nearest(node.text, KINDS),
            )
        )
    return kind


def measure_type(entry: Entry) -> FactType:
    """The type of what a measure gives."""
    return type_named(entry.fields["gives"].text)


def refuse_double_meanings(entry: Entry, grounds: Grounds, refusals: list[Refusal]) -> None:
    """Refuse a measure that is called as a fact of its kind or as a limit is."""
    name, kind = entry.key.name, KINDS.get(entry.key.about)
    if kind is not None and kind.fact(name) is not None:
        refusals.append(_double(entry, f'a fact of "{kind.name}"'))
    elif name in grounds.limits or name in grounds.lists:
        refusals.append(_double(entry, "a limit"))


def _double(entry: Entry, what: str) -> Refusal:
    return Refusal(
        entry.place,
        f'"{entry.key.name}" is the name of a measure and of {what}',
        "one meaning for one name",
        "give the measure another name",
    )


def _words(value: LimitValue) -> tuple[str, ...]:
    return value if isinstance(value, tuple) else ()
