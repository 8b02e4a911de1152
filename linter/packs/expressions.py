"""Expressions and sentences of a pack, parsed and checked at their places in the file."""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from linter.language.check import check
from linter.language.checked import Checked
from linter.language.checking import a
from linter.language.parse import parse
from linter.language.scope import Scope
from linter.language.tree import FactOf, LookUp, Path, Variable, children
from linter.language.tree import Node as Tree
from linter.packs.entries import Change, Key, Stated
from linter.packs.model import Sentence, What
from linter.text import Place, Refusal, Refused
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import FactType, Shape


class Names(NamedTuple):
    """What expressions may name: the scope of the pack, its words, and what was taken away."""

    scope: Scope
    words: Mapping[str, str]
    withdrawn: Mapping[Key, Change]


def read_expression(
    stated: Stated, names: Names, expect: FactType | None, refusals: list[Refusal]
) -> Checked | None:
    """The checked expression; None where it is refused."""
    node = stated.node
    if node.text_place is None:
        refusals.append(
            Refusal(
                node.place,
                "The expression goes over several lines",
                "one line, or a literal block after |",
                "write it on one line, or write | and begin it on the next line",
            )
        )
        return None
    return check_text(node.text.rstrip("\n"), node.text_place, names, expect, refusals)


def check_text(
    text: str, place: Place, names: Names, expect: FactType | None, refusals: list[Refusal]
) -> Checked | None:
    """The checked expression that a text at a place stands for; None where it is refused."""
    try:
        tree = parse(text, place)
        gone = list(_gone(tree, names))
        refusals.extend(gone)
        return None if gone else check(tree, names.scope, expect)
    except Refused as refused:
        refusals.extend(refused.refusals)
        return None


def read_sentence(stated: Stated, names: Names, refusals: list[Refusal]) -> Sentence:
    """The sentence with the values in its braces checked.

    In braces stands the subject, a path, a measure, a limit, or a word that the pack may show
    otherwise.
    """
    parts: list[str | Checked] = []
    text = stated.text
    position = 0
    while (opened := text.find("{", position)) >= 0:
        closed = text.find("}", opened)
        if closed < 0 or "{" in text[opened + 1 : closed]:
            refusals.append(_not_closed(stated, opened))
            return ()
        hole = _hole(stated, opened, text[opened + 1 : closed], names, refusals)
        parts.extend(part for part in (text[position:opened], hole) if part)
        position = closed + 1
    if "}" in text[position:]:
        refusals.append(_not_closed(stated, text.index("}", position)))
    return (*parts, text[position:]) if text[position:] else tuple(parts)


def _hole(
    stated: Stated, opened: int, text: str, names: Names, refusals: list[Refusal]
) -> str | Checked | None:
    scope = names.scope
    named = text in scope.limits or text == scope.subject or (scope.subject, text) in scope.measures
    if not named and (text in KINDS or KINDS[scope.subject].fact(text) is not None):
        # As a word it would be shown bare, where what it names was meant.
        refusals.append(_not_this_thing(text, scope.subject, _place_in(stated, opened + 1)))
        return None
    if text in names.words and not named:
        return names.words[text]
    things = _things(text, names.scope.subject)
    if things is not None:
        return things
    return check_text(text, _place_in(stated, opened + 1), names, None, refusals)


def _things(text: str, subject: str) -> Checked | None:
    """The subject, or the thing or things at the end of a path; None where it is no such path.

    An expression is never a thing; a sentence may name one.
    """
    first, *names = text.split(".")
    if first != subject:
        return None
    node: Tree = Variable(subject, subject)
    type_ = FactType(Shape.THING, kind=subject)
    for name in names:
        fact = KINDS[type_.kind].fact(name) if type_.shape is Shape.THING else None
        if fact is None or fact.type.shape not in (Shape.THING, Shape.THINGS):
            return None
        node, type_ = FactOf(node, type_.kind, name), fact.type
    return Checked(subject, type_, node)


def _place_in(stated: Stated, position: int) -> Place:
    """Where a character of the text stands, or the text itself where that cannot be told."""
    begin = stated.node.text_place
    if begin is None:
        return stated.node.place
    before = stated.text[:position]
    line = before.count("\n")
    return Place(begin.file, begin.line + line, begin.column + position - before.rfind("\n") - 1)


def _not_closed(stated: Stated, position: int) -> Refusal:
    return Refusal(
        _place_in(stated, position),
        "A brace has no partner",
        "a value between { and }",
        "close the brace, or leave it out",
    )


def _not_this_thing(text: str, subject: str, place: Place) -> Refusal:
    kind = KINDS[subject]
    leads = [fact.name for fact in kind.facts if fact.type.kind == text] or [text]
    known = [f"{subject}.{name}" for name in leads if kind.fact(name) is not None]
    mend = f'write "{{{known[0]}}}"' if known else "write the word without braces"
    about = a(FactType(Shape.THING, kind=subject))
    return Refusal(
        place,
        f'"{text}" is not known by itself in a sentence about {about}',
        f"{subject}, a fact of it by its path, a limit or a measure",
        mend,
    )


def _gone(tree: Tree, names: Names) -> list[Refusal]:
    """A refusal for each name that a layer took away and none put there again."""
    return [
        _withdrawn(key, change, place)
        for what, name, place in _names_in(tree)
        for key, change in names.withdrawn.items()
        if key.what == what and key.name == name
    ]


def _names_in(tree: Tree) -> Iterator[tuple[What, str, Place]]:
    """The names of limits, tables and measures that a parsed tree may mean."""
    if isinstance(tree, LookUp):
        yield "table", tree.table, tree.place
    if isinstance(tree, Path):
        yield "measure", tree.names[-1], tree.place
        if len(tree.names) == 1:
            yield "limit", tree.names[0], tree.place
    for child in children(tree):
        yield from _names_in(child)


def _withdrawn(key: Key, change: Change, place: Place) -> Refusal:
    return Refusal(
        place,
        f'This uses {key}, which the layer "{change.layer}" withdraws',
        "",
        "amend or withdraw what uses it too, or keep it",
        also=(change.place, "withdrawn"),
    )
