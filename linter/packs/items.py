"""Items of the walk-through: what a person is to look at, with conditions and sentences checked."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from linter.packs.clauses import read_history
from linter.packs.entries import Key
from linter.packs.model import Item
from linter.packs.rules import FIRST_STAGE, text_of
from linter.packs.scopes import kind_of
from linter.text import Refusal
from linter.vocabulary.kinds.dwelling import STAGES

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.packs.entries import Entry
    from linter.packs.model import Weight
    from linter.packs.rules import Reader


def read_item(entry: Entry, entries: Mapping[Key, Entry], reader: Reader) -> Item | None:
    """The item; None where it is refused."""
    history = read_history(entry, reader.ground)
    if kind_of(entry.fields["about"].node, reader.refusals) is None:
        return None
    reader.refusals.extend(_wrong(entry, entries))
    about = entry.fields["about"].text
    names = reader.names(about)
    where = reader.condition(entry, "where", names)
    sentences = {name: reader.sentence(entry, name, names) for name in ("ask", "do", "caution")}
    if where is None and "where" in entry.fields:
        return None
    return Item(
        entry.key.name,
        about,
        text_of(entry, "from stage") or FIRST_STAGE,
        text_of(entry, "until stage"),
        where,
        sentences["ask"],
        cast("Weight", text_of(entry, "weight")),  # the schema lets nothing else stand there
        text_of(entry, "subject"),
        sentences["do"],
        sentences["caution"],
        history,
        cast("Weight", text_of(entry, "weight")),
    )


def _wrong(entry: Entry, entries: Mapping[Key, Entry]) -> list[Refusal]:
    """What is wrong with an item whatever its expressions say."""
    found = []
    rule = entries.get(Key("rule", entry.key.name))
    if rule is not None:
        found.append(
            Refusal(
                entry.place,
                f'"{entry.key.name}" names an item of the walk-through and a rule',
                "one meaning for one name",
                "give the item another name",
                also=(rule.place, "the rule is stated"),
            )
        )
    begin, end = text_of(entry, "from stage") or FIRST_STAGE, text_of(entry, "until stage")
    if end and STAGES.index(end) <= STAGES.index(begin):
        found.append(
            Refusal(
                entry.fields["until stage"].node.place,
                f'The item can be looked at from "{begin}" and no more from "{end}"',
                f"a stage after {begin}",
                'name the stage from which it can no longer be seen, or leave "until stage" out',
            )
        )
    return found
