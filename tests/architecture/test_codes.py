"""Nothing under linter/ knows a code: no jurisdiction, document, clause or number of a pack.

What is looked for is gathered from the packs themselves, so a new pack widens the test.
"""

import ast
import re
from collections.abc import Iterator
from functools import cache
from typing import Any

import yaml

from linter.units import LENGTH, NotAQuantity, read_quantity
from tests.architecture.sources import ROOT, calls, modules

_CLAUSE = re.compile(r"\b\d+[.-]\d{3,}\b|\b\d{3}\.\d+\b")
_READERS = ("read_quantity", "read_measure", "awg_area")
# The packages that reckon what codes compare; in the others a decimal is a share of a screen or a
# second.
_RECKONING = ("facts", "wiring", "trace", "solve", "audit", "job")


@cache
def _packs() -> tuple[Any, ...]:
    files = sorted((ROOT / "rulesets").glob("*/*.yaml"))
    return tuple(yaml.load(each.read_text(encoding="utf-8"), yaml.CSafeLoader) for each in files)


def _values(part: object, key: str) -> Iterator[object]:
    """Everything that stands under a key, however deep."""
    if isinstance(part, dict):
        if key in part:
            yield part[key]
        for each in part.values():
            yield from _values(each, key)
    elif isinstance(part, list):
        for each in part:
            yield from _values(each, key)


def _named(key: str) -> set[str]:
    return {each for part in _packs() for each in _values(part, key) if isinstance(each, str)}


def _clauses() -> set[str]:
    ids = _named("id")
    return {found for each in ids for found in _CLAUSE.findall(str(each))}


def _limits() -> set[float]:
    """The decimals among the limits of all packs, in base units and as written."""
    found: set[float] = set()
    for part in _packs():
        for value in _values(part, "value"):
            try:
                quantity = read_quantity(str(value))
            except NotAQuantity:
                continue
            found |= {quantity.value} if not quantity.value.is_integer() else set()
    return found


def test_the_packs_state_clauses_and_decimals_to_look_for() -> None:
    assert len(_clauses()) > 50
    assert read_quantity("6 in", LENGTH).value in _limits()


def test_no_module_names_what_a_pack_is_of() -> None:
    names = _named("jurisdiction") | _named("document") | _named("pack") - {"none"}
    for path in modules():
        text = (ROOT / path).read_text(encoding="utf-8")
        assert not [each for each in names if re.search(rf"\b{re.escape(each)}\b", text)], path


def test_no_module_names_a_clause() -> None:
    clauses = _clauses()
    for path in modules():
        text = (ROOT / path).read_text(encoding="utf-8")
        assert clauses.isdisjoint(_CLAUSE.findall(text)), path


def test_no_module_reckons_with_a_quantity_written_out() -> None:
    for path, tree in modules().items():
        lines = set(calls(tree, *_READERS))
        written = [
            node.lineno
            for node in ast.walk(tree)
            if isinstance(node, ast.Call)
            and node.lineno in lines
            and node.args
            and isinstance(node.args[0], ast.Constant)
        ]
        assert not written, f"{path}:{written}"


def test_no_module_that_reckons_has_a_decimal_of_a_code() -> None:
    limits = _limits()
    for path, tree in modules().items():
        if path.split("/")[1] not in _RECKONING:
            continue
        numbers = [
            (node.lineno, node.value)
            for node in ast.walk(tree)
            if isinstance(node, ast.Constant) and isinstance(node.value, float)
        ]
        assert not [each for each in numbers if each[1] in limits], path
