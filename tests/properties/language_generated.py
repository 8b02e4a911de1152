"""Well-typed expressions and boxes at random, and a naive evaluator that walks the tree.

The naive evaluator works on the tree as parsed, with its own scope and its own arithmetic; it knows
nothing of the compiler or of the careful evaluator. It has no answer where an unknown comes in its
way.
"""

import math
from typing import Any

from hypothesis import strategies as st

from linter.language import tree
from linter.language.tree import Node, Path
from linter.units import Unknown
from linter.vocabulary.model import FactRef, Thing
from tests.cases.language_world import LIMITS, LISTS, PLACE, TABLES

_LENGTHS = (0.0, 0.0254, 0.1524, 0.2, 1.0)
_COUNTS = (0.0, 1.0, 2.0, 5.0, 9.0)
_BOX_LENGTHS = ("depth", "height", "set_back")
_BOX_COUNTS = ("gangs", "hickeys", "internal_clamps")
_BOX_YES_NO = ("is_metal", "has_cover", "is_bonded")
_END_YES_NO = ("is_bond", "is_connected", "is_insulated")
_ROLES = ("hot", "neutral", "spare")


class DoesNotKnow(Exception):
    """The naive evaluator met an unknown, or something that has no value."""


# Things, with or without unknowns


def _fact(kind: str, ref: str, name: str, known: st.SearchStrategy[Any], holes: bool) -> Any:
    unknown = st.builds(Unknown, st.just([FactRef(kind, ref, name)]))
    return st.one_of(known, unknown) if holes else known


def _facts(kind: str, ref: str, holes: bool, **known: tuple[Any, ...]) -> st.SearchStrategy[Any]:
    return st.fixed_dictionaries(
        {name: _fact(kind, ref, name, st.sampled_from(of), holes) for name, of in known.items()}
    )


def _end(index: int, holes: bool) -> st.SearchStrategy[Thing]:
    yes_no = dict.fromkeys(_END_YES_NO, (True, False))
    facts = _facts("wire_end", f"e{index}", holes, free_length=_LENGTHS, role=_ROLES, **yes_no)
    return facts.map(lambda values: Thing("wire_end", f"e{index}", PLACE, values))


@st.composite
def boxes(draw: st.DrawFn, *, holes: bool) -> Thing:
    """A box with up to four wire ends; some facts are unknown where `holes` says so."""
    lengths, counts = dict.fromkeys(_BOX_LENGTHS, _LENGTHS), dict.fromkeys(_BOX_COUNTS, _COUNTS)
    yes_no = dict.fromkeys(_BOX_YES_NO, (True, False))
    values = draw(_facts("box", "box", holes, **lengths, **counts, **yes_no))
    ends = tuple(draw(_end(index, holes)) for index in range(draw(st.integers(0, 4))))
    return Thing("box", "box", PLACE, {**values, "wire_ends": ends})


def unknowns(box: Thing) -> list[tuple[Thing, str]]:
    """Where the facts stand that are not known."""
    things = (box, *box.__dict__["wire_ends"])
    return [
        (thing, name)
        for thing in things
        for name, value in thing.__dict__.items()
        if isinstance(value, Unknown)
    ]


def filled(draw: st.DrawFn, box: Thing, all_of_them: bool) -> Thing:
    """The box with some of its unknowns, or all, made known."""

    def fill(thing: Thing) -> Thing:
        values = dict(thing.__dict__)
        for name, value in values.items():
            if isinstance(value, Unknown) and (all_of_them or draw(st.booleans())):
                values[name] = draw(st.sampled_from(_known_values(name)))
            elif name == "wire_ends":
                values[name] = tuple(fill(each) for each in value)
        return Thing(thing.kind, thing.ref, PLACE, values)

    return fill(box)


def _known_values(name: str) -> tuple[Any, ...]:
    if name == "role":
        return _ROLES
    if name in _BOX_COUNTS:
        return _COUNTS
    return _LENGTHS if name in (*_BOX_LENGTHS, "free_length") else (True, False)


# Expressions, as texts


def _paren(text: str) -> str:
    return f"({text})"


def _numbers(depth: int, inner: bool) -> st.SearchStrategy[str]:
    leaves = ["nothing", "share", "most_wires", *(f"box.{name}" for name in _BOX_COUNTS)]
    leaf = st.sampled_from(leaves)
    if depth <= 0:
        return leaf
    less = st.deferred(lambda: _numbers(depth - 1, inner)).map(_paren)
    lengths = st.deferred(lambda: _lengths(depth - 1, inner)).map(_paren)
    condition = st.deferred(lambda: _conditions(depth - 1, inner))
    way = st.sampled_from(("up to", "down to", "to"))
    more = [
        st.tuples(less, st.sampled_from("+-*/"), less).map(" ".join),
        st.builds("{} / {}".format, lengths, lengths),
        st.builds("if {} then {} else {}".format, condition, less, less),
        st.builds("larger of ({}, {})".format, less, less),
        st.builds("smaller of ({}, {})".format, less, less),
        st.builds("{} rounded {} {}".format, less, way, less),
        st.builds("look up bundle_factor at ({})".format, less),
        st.tuples(less, st.sampled_from(("* 2", "/ 2", "- 1", "+ 0"))).map(" ".join),
    ]
    if not inner:
        within = st.deferred(lambda: _conditions(depth - 1, True))
        more += [
            st.just("count of e of box.wire_ends"),
            st.builds("count of e of box.wire_ends where {}".format, within),
        ]
    return st.one_of(leaf, *more)


def _lengths(depth: int, inner: bool) -> st.SearchStrategy[str]:
    leaves = ["least_free_length", "no_length", *(f"box.{name}" for name in _BOX_LENGTHS)]
    leaf = st.sampled_from([*leaves, "e.free_length"] if inner else leaves)
    if depth <= 0:
        return leaf
    less = st.deferred(lambda: _lengths(depth - 1, inner)).map(_paren)
    number = st.deferred(lambda: _numbers(depth - 1, inner)).map(_paren)
    condition = st.deferred(lambda: _conditions(depth - 1, inner))
    more = [
        st.tuples(less, st.sampled_from("+-"), less).map(" ".join),
        st.tuples(less, st.sampled_from("*/"), number).map(" ".join),
        st.builds("if {} then {} else {}".format, condition, less, less),
        st.builds("larger of ({}, {})".format, less, less),
    ]
    if not inner:
        value = st.deferred(lambda: _lengths(depth - 1, True)).map(_paren)
        within = st.deferred(lambda: _conditions(depth - 1, True))
        more += [
            st.builds("sum of {} for e of box.wire_ends".format, value),
            st.builds("sum of {} for e of box.wire_ends where {}".format, value, within),
            st.builds("largest of {} for e of box.wire_ends, or {} if none".format, value, less),
            st.builds("smallest of {} for e of box.wire_ends where {}, or {} if none".format,
                      value, within, less),
        ]  # fmt: skip
    return st.one_of(leaf, *more)


def _conditions(depth: int, inner: bool) -> st.SearchStrategy[str]:
    leaves = ["metal_allowed", *(f"box.{name}" for name in _BOX_YES_NO)]
    if inner:
        leaves += [
            *(f"e.{name}" for name in _END_YES_NO),
            'e.role is "hot"',
            "e.role is usual_role",
        ]
        leaves += ['e.role is not one of ("hot", "spare")', 'e.role is one of ("neutral", "spare")']
    leaf = st.sampled_from(leaves)
    if depth <= 0:
        return leaf
    less = st.deferred(lambda: _conditions(depth - 1, inner)).map(_paren)
    number = st.deferred(lambda: _numbers(depth - 1, inner)).map(_paren)
    length = st.deferred(lambda: _lengths(depth - 1, inner)).map(_paren)
    order = st.sampled_from(("at least", "at most", "more than", "less than", "is", "is not"))
    more = [
        less.map("not {}".format),
        st.lists(less, min_size=2, max_size=3).map(" and ".join),
        st.lists(less, min_size=2, max_size=3).map(" or ".join),
        st.tuples(number, order, number).map(" ".join),
        st.tuples(length, order, length).map(" ".join),
        st.tuples(less, st.sampled_from(("is", "is not")), less).map(" ".join),
        st.builds("if {} then {} else {}".format, less, less, less),
    ]
    if not inner:
        within = st.deferred(lambda: _conditions(depth - 1, True)).map(_paren)
        which = st.sampled_from(("every", "some", "no"))
        more += [
            st.builds("{} e of box.wire_ends has {}".format, which, within),
            st.builds("{} e of box.wire_ends where {} has {}".format, which, within, within),
        ]
    return st.one_of(leaf, *more)


conditions = _conditions(3, False)
values = st.one_of(_numbers(3, False), _lengths(3, False))


# The naive evaluator


def naive(node: Node, names: dict[str, Thing]) -> Any:
    """The value of a parsed expression in the plainest way; `DoesNotKnow` if it must."""
    result = _walk(node, names)
    if isinstance(result, Unknown):
        raise DoesNotKnow
    return result


def _same(a: Any, b: Any) -> bool:
    if isinstance(a, float) and isinstance(b, float):
        return math.isclose(a, b, rel_tol=1e-9, abs_tol=0.0)
    return bool(a == b)


def _walk(node: Node, names: dict[str, Thing]) -> Any:  # noqa: C901, PLR0911, PLR0912
    match node:
        case tree.Number(value):
            return value
        case tree.Word(text):
            return text
        case Path((name,)):
            return LISTS[name] if name in LISTS else LIMITS[name][1]
        case Path((name, fact)):
            return names[name].__dict__[fact]
        case tree.Arithmetic(sign, left, right):
            a, b = naive(left, names), naive(right, names)
            if sign == "/" and b == 0:
                raise DoesNotKnow
            return {"+": a + b, "-": a - b, "*": a * b}[sign] if sign != "/" else a / b
        case tree.Rounded(way, value, step):
            return _round(way, naive(value, names), naive(step, names))
        case tree.Choice(condition, then, otherwise):
            return naive(then if naive(condition, names) else otherwise, names)
        case tree.Pick(which, of):
            all_of = [naive(each, names) for each in of]
            return max(all_of) if which == "larger" else min(all_of)
        case tree.LookUp("bundle_factor", _, (key,)):
            wires = naive(key, names)
            rows = [row for row in TABLES["bundle_factor"].rows if _fits(row[0], wires)]
            if not rows:
                raise DoesNotKnow
            return max(rows)[1]
        case tree.Comparison(order, left, right):
            a, b = naive(left, names), naive(right, names)
            if _same(a, b):
                return order in ("at least", "at most")
            return (a > b) if order in ("at least", "more than") else (a < b)
        case tree.Is(negated, left, right):
            return _same(naive(left, names), naive(right, names)) is not negated
        case tree.OneOf(negated, value, tree.WordList(words)):
            return (naive(value, names) in [word.text for word in words]) is not negated
        case tree.Not(condition):
            return not naive(condition, names)
        case tree.AllOf(parts):
            return all(naive(each, names) for each in parts)
        case tree.AnyOf(parts):
            return any(naive(each, names) for each in parts)
        case _:
            return _over_ends(node, names)


def _fits(begin: Any, wires: float) -> bool:
    return bool(begin <= wires or _same(begin, wires))


def _over_ends(node: Any, names: dict[str, Thing]) -> Any:
    """Sums, counts and conditions over the wire ends of the box."""
    ends = [{**names, node.name: end} for end in names["box"].__dict__["wire_ends"]]
    meant = [each for each in ends if node.where is None or naive(node.where, each)]
    match node:
        case tree.Count():
            return float(len(meant))
        case tree.Sum(value):
            return float(sum(naive(value, each) for each in meant))
        case tree.Extreme(which, value):
            if not meant:
                return naive(node.if_none, names)
            return (max if which == "largest" else min)(naive(value, each) for each in meant)
        case tree.ForThings("every"):
            return all(naive(node.condition, each) for each in meant)
        case tree.ForThings(which):
            return any(naive(node.condition, each) for each in meant) is (which == "some")
    raise AssertionError(node)


def _round(way: str, value: float, step: float) -> float:
    if step == 0:
        raise DoesNotKnow
    parts = value / step
    if _same(parts, float(round(parts))):
        return round(parts) * step
    if way == "to":
        half = abs(parts) + 0.5
        whole = round(half) if _same(half, float(round(half))) else math.floor(half)
        return math.copysign(whole, parts) * step
    return (math.ceil(parts) if way == "up to" else math.floor(parts)) * step
