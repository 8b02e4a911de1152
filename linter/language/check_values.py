"""Sums, products, roundings, choices and look-ups: their types, and what they refuse."""

from __future__ import annotations

from functools import reduce
from typing import TYPE_CHECKING

from linter.language.check_names import refuse_number_of_a_code
from linter.language.checked import merged, type_of
from linter.language.checking import Checker, Found, a, alike, mend_of_pair
from linter.language.tree import Arithmetic, Choice, LookUp, Node, Number, Pick, Rounded, Word
from linter.text import join_words, nearest
from linter.vocabulary.model import FactType, Shape

if TYPE_CHECKING:
    from linter.language.scope import KeyShape, TableShape

_DOING = {"+": "added", "-": "subtracted", "*": "multiplied", "/": "divided"}


def check_arithmetic(checker: Checker, node: Arithmetic) -> Found:
    """Two quantities; of one dimension if they are added or subtracted."""
    doing = _DOING[node.sign]
    left, right = checker.quantity(node.left, doing), checker.quantity(node.right, doing)
    found = Arithmetic(node.sign, left.node, right.node, node.place)
    if left.type is None or right.type is None:
        return Found(found, None)
    if node.sign in "+-" and left.type.dimension != right.type.dimension:
        said = f"{a(left.type)} and {a(right.type)} cannot be {doing}"
        mend = mend_of_pair(left.type, right.type)
        checker.refuse(node.right.place, said, a(left.type), mend)
        return Found(found, None)
    if isinstance(left.node, Number) and isinstance(right.node, Number):
        refuse_number_of_a_code(checker, node, "this is reckoned from plain numbers alone")
        return Found(found, None)
    if node.sign == "/" and node.right == Number(0):
        checker.refuse(node.right.place, "nothing can be divided by 0", "a divisor", "leave it out")
        return Found(found, None)
    return Found(found, type_of(found))


def check_rounded(checker: Checker, node: Rounded) -> Found:
    """A quantity, and one of its dimension to whose multiples it is rounded."""
    value, step = checker.quantity(node.value, "rounded"), checker.quantity(node.step, "rounded to")
    found = Rounded(node.way, value.node, step.node, node.place)
    if value.type is None or step.type is None:
        return Found(found, None)
    if node.step == Number(0):
        said = "nothing can be rounded to multiples of 0"
        checker.refuse(node.step.place, said, a(value.type), "name a limit that is not 0")
        return Found(found, None)
    if value.type.dimension != step.type.dimension:
        said = f"{a(value.type)} cannot be rounded to multiples of {a(step.type)}"
        mend = mend_of_pair(value.type, step.type)
        checker.refuse(node.step.place, said, a(value.type), mend)
        return Found(found, None)
    return Found(found, value.type)


def check_choice(checker: Checker, node: Choice) -> Found:
    """A condition, and two values of one type."""
    condition = checker.condition(node.condition)
    then, otherwise = checker.node(node.then), checker.node(node.otherwise)
    found = Choice(condition, then.node, otherwise.node, node.place)
    return Found(found, agreed(checker, [(node.then, then), (node.otherwise, otherwise)]))


def check_pick(checker: Checker, node: Pick) -> Found:
    """Two or more quantities of one dimension."""
    values = [(each, checker.quantity(each, "compared")) for each in node.values]
    found = Pick(node.which, tuple(each.node for _, each in values), node.place)
    return Found(found, agreed(checker, values))


def agreed(checker: Checker, values: list[tuple[Node, Found]]) -> FactType | None:
    """The one type of several values; those that differ from the first are refused."""
    first = values[0][1].type
    if first is None or any(each.type is None for _, each in values):
        return None
    if first.shape in (Shape.THING, Shape.THINGS):
        said = f"this is {a(first)}"
        checker.refuse(
            values[0][0].place, said, "a quantity, a word or a condition", "name a fact of it"
        )
        return None
    unlike = [
        (node, each.type) for node, each in values if each.type and not alike(first, each.type)
    ]
    for node, other in unlike:
        said = f"this is {a(other)}, where the first value is {a(first)}"
        checker.refuse(node.place, said, a(first), mend_of_pair(first, other))
    if unlike:
        return None
    return reduce(merged, [each.type for _, each in values if each.type])


def check_look_up(checker: Checker, node: LookUp) -> Found:
    """A table of the pack, one of its columns, and a value for each of its keys."""
    keys = [(each, checker.node(each)) for each in node.keys]
    table = checker.scope.tables.get(node.table)
    if table is None:
        near = nearest(node.table, checker.scope.tables)
        mend = f'write "{near[0]}"' if near else "add the table to the pack"
        said = f'there is no table "{node.table}"'
        checker.refuse(node.place, said, "the name of a table", mend, near)
        return Found(node, None)
    column = _column(checker, node, table)
    fits = _check_keys(checker, node, table, keys)
    found = tuple(each.node for _, each in keys)
    if not column or not fits:
        return Found(LookUp(node.table, column, found, None, node.place), None)
    gives = table.columns[column]
    return Found(LookUp(node.table, column, found, gives, node.place), gives)


def _column(checker: Checker, node: LookUp, table: TableShape) -> str:
    """The name of the column that is meant, or nothing if it was refused."""
    names = list(table.columns)
    if node.column in names:
        return node.column
    if not node.column and len(names) == 1:
        return names[0]
    near = nearest(node.column, names)
    said = f'"{node.table}" has no column "{node.column}"'
    if not node.column:
        said = f'"{node.table}" has several columns'
    mend = f'write "{node.table}.{near[0] if near else names[0]}"'
    checker.refuse(node.place, said, f"one of {join_words(names, 'or')}", mend, near)
    return ""


def _check_keys(
    checker: Checker, node: LookUp, table: TableShape, keys: list[tuple[Node, Found]]
) -> bool:
    if len(keys) != len(table.keys):
        names = join_words([key.name.replace("_", " ") for key in table.keys])
        said = f'"{node.table}" is looked up at {len(table.keys)} values, not {len(keys)}'
        mend = f"give a value for each of them, in this order: {names}"
        checker.refuse(node.place, said, names, mend)
        return False
    judged = [_fits(checker, *pair, key) for pair, key in zip(keys, table.keys, strict=True)]
    return all(judged)


def _fits(checker: Checker, node: Node, found: Found, key: KeyShape) -> bool:
    if found.type is None:
        return False
    if not alike(found.type, key.type):
        said = f'this is {a(found.type)}, where "{key.name}" is {a(key.type)}'
        checker.refuse(node.place, said, a(key.type), mend_of_pair(found.type, key.type))
        return False
    if isinstance(node, Word) and key.words and node.text not in key.words:
        near = nearest(node.text, sorted(key.words))
        mend = f'write "{near[0]}"' if near else "add a row to the table"
        said = f'the table has no row for "{node.text}"'
        checker.refuse(node.place, said, join_words(sorted(key.words), "or"), mend, near)
        return False
    return True
