"""Limits: one value each, a quantity, a number, yes or no, a word, or a list of words."""

from linter.packs.clauses import Ground, read_history
from linter.packs.entries import Entry
from linter.packs.model import LimitValue, PackLimit
from linter.packs.values import read_value, refusal_of, type_named
from linter.text import Refusal
from linter.text.yaml_places import Node
from linter.units import NotAQuantity, read_quantity
from linter.vocabulary.model import FactType, Shape
from linter.vocabulary.shorthand import YES_NO, quantity, word

Typed = tuple[FactType, LimitValue]
_BEGINS_A_NUMBER = "0123456789+-.#"


def read_limit(entry: Entry, ground: Ground) -> PackLimit | None:
    """The limit; None where its value is refused."""
    history = read_history(entry, ground)
    node = entry.fields["value"].node
    of = entry.fields["of"].text if "of" in entry.fields else ""
    before = entry.before.get("value")
    try:
        type_, value = _read(node, of)
        if before is not None:
            _hold_to(_read(before.node, of), node, (type_, value))
    except NotAQuantity as error:
        also = (before.node.place, f'stated as "{_written(before.node)}"') if before else None
        ground.refusals.append(refusal_of(error, node)._replace(also=also))
        return None
    twice = next(
        (each for each in node.items if [n.text for n in node.items].count(each.text) > 1), None
    )
    if twice is not None:
        ground.refusals.append(
            Refusal(twice.place, f'"{twice.text}" stands twice in the list', "", "leave one out")
        )
    meaning = entry.fields["meaning"].text if "meaning" in entry.fields else ""
    return PackLimit(entry.key.name, type_, value, _written(node), meaning, history)


def _read(node: Node, of: str) -> Typed:
    return _read_list(node, of) if isinstance(node.value, list) else _read_one(node, of)


def _hold_to(old: Typed, node: Node, new: Typed) -> None:
    """Raise `NotAQuantity` where an amended value is of another kind than the one it replaces.

    What uses the limit would be refused for it otherwise, in files that are in order.
    """
    if _kind(*old) == _kind(*new):
        return
    if old[0].shape is not Shape.WORD:
        read_value(node, old[0])
    raise NotAQuantity(
        f'"{_written(node)}" stands here for {_kind(*old)}',
        f"{_kind(*old)}, as it was before",
        "write a value of the kind that it was",
    )


def _kind(type_: FactType, value: LimitValue) -> str:
    if type_.shape is Shape.WORD:
        return "a list of words" if isinstance(value, tuple) else "a word"
    return str(type_.dimension or type_.shape.value)


def _read_list(node: Node, of: str) -> Typed:
    if of not in ("", "words"):
        raise NotAQuantity("A list stands here", f"one value of {of}", "write one value")
    words = tuple(each.text for each in node.items)
    return word(*dict.fromkeys(words)), words


def _read_one(node: Node, of: str) -> Typed:
    if of == "words":
        raise NotAQuantity("One word stands here", "a list of words", "write the word in brackets")
    if of == "word" or (not of and _is_word(node)):
        return word(node.text), node.text
    type_ = type_named(of) if of else _type_of(node)
    return type_, read_value(node, type_)


def _type_of(node: Node) -> FactType:
    if node.text in ("yes", "no", "true", "false"):
        return YES_NO
    return quantity(read_quantity(node.text).dimension)


def _is_word(node: Node) -> bool:
    yes_no = node.text in ("yes", "no", "true", "false")
    return not yes_no and node.text[:1] not in _BEGINS_A_NUMBER


def _written(node: Node) -> str:
    if isinstance(node.value, list):
        return ", ".join(each.text for each in node.items) or "nothing"
    return node.text


def is_list(limit: PackLimit) -> bool:
    """Whether the limit is a list of words."""
    return limit.type.shape is Shape.WORD and isinstance(limit.value, tuple)
