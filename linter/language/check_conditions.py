"""Comparisons, lists, and conditions joined, turned round, or asked of several things."""

from __future__ import annotations

from linter.language.check_names import check_path, refuse_number_of_a_code
from linter.language.check_values import agreed
from linter.language.checking import Checker, Found, a, alike, mend_of_pair
from linter.language.tree import (
    Comparison,
    Count,
    Extreme,
    ForThings,
    Is,
    LimitList,
    Node,
    Number,
    OneOf,
    Path,
    Sum,
    Word,
    WordList,
)
from linter.text import join_words, nearest
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import FactType, Shape
from linter.vocabulary.shorthand import COUNT, YES_NO


def check_comparison(checker: Checker, node: Comparison) -> Found:
    """Two quantities of one dimension."""
    left, right = checker.quantity(node.left, "compared"), checker.quantity(node.right, "compared")
    _check_for_two(checker, left.node, right.node)
    if left.type and right.type and left.type.dimension != right.type.dimension:
        said = f"{a(left.type)} cannot be compared with {a(right.type)}"
        mend = mend_of_pair(left.type, right.type)
        checker.refuse(node.right.place, said, a(left.type), mend)
    return Found(Comparison(node.order, left.node, right.node, node.place), YES_NO)


def check_is(checker: Checker, node: Is) -> Found:
    """Two values of one type; a word that the other can be."""
    left, right = checker.node(node.left), checker.node(node.right)
    _check_for_two(checker, left.node, right.node)
    if left.type and right.type:
        if not alike(left.type, right.type) or left.type.shape is Shape.THINGS:
            said = f"{a(left.type)} cannot be the same as {a(right.type)}"
            mend = mend_of_pair(left.type, right.type)
            checker.refuse(node.right.place, said, a(left.type), mend)
        else:
            _check_words(checker, node.left, left.type, right.type)
            _check_words(checker, node.right, right.type, left.type)
    return Found(Is(node.negated, left.node, right.node, node.place), YES_NO)


def _check_for_two(checker: Checker, *sides: Node) -> None:
    """Refuses a plain 2 that something is compared with: what a code allows is a limit."""
    for side in sides:
        if side == Number(2):
            refuse_number_of_a_code(
                checker, side, "2 is a number of a code, as something is compared with it"
            )


def check_one_of(checker: Checker, node: OneOf) -> Found:
    """A word among words, or a thing among things of its kind."""
    value = checker.node(node.value)
    if isinstance(node.among, WordList):
        among = _check_list(checker, node.among, value.type)
    else:
        among = _check_among(checker, node.among, value.type)
    return Found(OneOf(node.negated, value.node, among, node.place), YES_NO)


def _check_list(checker: Checker, words: WordList, value: FactType | None) -> Node:
    texts = [word.text for word in words.words]
    if len(texts) == 1:
        mend = f'write "is" and the word: is "{texts[0]}"'
        checker.refuse(words.place, "a list of one word is that word", "two words or more", mend)
    for index, word in enumerate(words.words):
        if word.text in texts[:index]:
            mend = "leave it out the second time"
            checker.refuse(word.place, f'"{word.text}" stands twice', "each word once", mend)
        elif value and not alike(value, FactType(Shape.TEXT)):
            said = f"{a(value)} cannot be one of these words"
            checker.refuse(words.place, said, "a word", mend_of_pair(value, FactType(Shape.TEXT)))
            break
        elif value:
            _check_words(checker, word, FactType(Shape.WORD, words=(word.text,)), value)
    return words


def _check_among(checker: Checker, node: Node, value: FactType | None) -> Node:
    """A limit that is a list, or things; the path alone says which."""
    if isinstance(node, Path) and len(node.names) == 1 and node.names[0] in checker.scope.lists:
        name = node.names[0]
        if value and not alike(value, FactType(Shape.TEXT)):
            said = f'{a(value)} cannot be one of the words of "{name}"'
            checker.refuse(node.place, said, "a list of what it can be", "name another list")
        elif value and value.shape is Shape.WORD:
            _check_list_of(checker, node, value)
        return LimitList(name, node.place)
    found = checker.node(node)
    if found.type and found.type.shape is not Shape.THINGS:
        said = f"this is {a(found.type)}, not several"
        checker.refuse(node.place, said, "a list of words, or things", 'write "is" for one value')
    elif found.type and value and (value.shape, value.kind) != (Shape.THING, found.type.kind):
        said = f"{a(value)} cannot be one of {a(found.type)}"
        checker.refuse(node.place, said, "things of its own kind", "name other things")
    return found.node


def _check_list_of(checker: Checker, node: Path, value: FactType) -> None:
    strange = [word for word in checker.scope.lists[node.names[0]] if word not in value.words]
    if strange:
        said = f'"{strange[0]}" of the list "{node.names[0]}" is nothing that this can be'
        near = nearest(strange[0], value.words)
        checker.refuse(node.place, said, join_words(value.words, "or"), "mend the list", near)


def _check_words(checker: Checker, node: Node, word: FactType, other: FactType) -> None:
    """Refuses a word that the other value can never be."""
    if not isinstance(node, Word) or other.shape is not Shape.WORD or node.text in other.words:
        return
    near = nearest(node.text, other.words)
    mend = f'write "{near[0]}"' if near else "write one of the words expected"
    said = f'"{word.words[0]}" is nothing that this can be'
    checker.refuse(node.place, said, f"one of: {', '.join(other.words)}", mend, near)


def check_for_things(checker: Checker, node: ForThings) -> Found:
    """A condition on each of several things, and one that says which of them."""
    things, kind = _things(checker, node.things)
    _check_name(checker, node)
    with checker.going_through(node.name, kind):
        where = node.where and checker.condition(node.where)
        with checker.after_has(node.name):
            condition = checker.condition(node.condition)
    return Found(ForThings(node.which, node.name, things, where, condition, node.place), YES_NO)


def check_count(checker: Checker, node: Count) -> Found:
    """A number of things."""
    things, kind = _things(checker, node.things)
    _check_name(checker, node)
    with checker.going_through(node.name, kind):
        where = node.where and checker.condition(node.where, _LONG_WHERE)
    return Found(Count(node.name, things, where, node.place), COUNT)


def check_sum(checker: Checker, node: Sum) -> Found:
    """A quantity of each thing."""
    things, kind = _things(checker, node.things)
    _check_name(checker, node)
    with checker.going_through(node.name, kind):
        where = node.where and checker.condition(node.where, _LONG_WHERE)
        value = checker.quantity(node.value, "added up")
    return Found(Sum(value.node, node.name, things, where, node.place), value.type)


def check_extreme(checker: Checker, node: Extreme) -> Found:
    """A quantity of each thing, and one for the case that there is none."""
    things, kind = _things(checker, node.things)
    _check_name(checker, node)
    with checker.going_through(node.name, kind):
        where = node.where and checker.condition(node.where)
        value = checker.quantity(node.value, "compared")
    if_none = checker.quantity(node.if_none, "compared")
    found = Extreme(node.which, value.node, node.name, things, where, if_none.node, node.place)
    return Found(found, agreed(checker, [(node.value, value), (node.if_none, if_none)]))


_LONG_WHERE = (
    'if this is to be compared with the count or sum, put parentheses around that, "where" too'
)


def _things(checker: Checker, node: Node) -> tuple[Node, str]:
    """The things gone through, and their kind; no kind if they were refused."""
    found = check_path(checker, node) if isinstance(node, Path) else checker.node(node)
    if found.type is None:
        return found.node, ""
    if found.type.shape is not Shape.THINGS:
        said = f"this is {a(found.type)}, not several things"
        near = _sets_of(found.type)
        mend = f"go through one of its {near}" if near else "name a fact that is several things"
        checker.refuse(node.place, said, "things to go through, as in box.wire_ends", mend)
        return found.node, ""
    return found.node, found.type.kind


def _sets_of(fact_type: FactType) -> str:
    if fact_type.shape is not Shape.THING:
        return ""
    facts = KINDS[fact_type.kind].facts
    return join_words([fact.name for fact in facts if fact.type.shape is Shape.THINGS], "or")


def _check_name(checker: Checker, node: ForThings | Sum | Count | Extreme) -> None:
    """Refuses a name for each thing in turn that already means something."""
    scope = checker.scope
    if node.name in checker.variables:
        taken = "a thing"
    elif node.name in scope.limits or node.name in scope.lists:
        taken = "a limit"
    elif node.name in scope.steps or (scope.subject, node.name) in scope.measures:
        taken = "a step or a measure"
    else:
        return
    said = f'"{node.name}" is already the name of {taken}'
    mend = f'write "{node.name[0]}2", or another name, here and where the fact is asked for'
    checker.refuse(node.place, said, "a name of its own for each thing in turn", mend)
