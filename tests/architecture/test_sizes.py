"""A module fits a sitting, a function fits a screen, and both say what they are."""

import ast
from collections.abc import Iterator

import pytest

from tests.architecture.sources import ROOT, modules

MOST_LINES_OF_A_MODULE = 400
MOST_LINES_OF_A_FUNCTION = 40

_Described = ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef


def _lines_without_docstring(function: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    whole = (function.end_lineno or function.lineno) - function.lineno + 1
    first = function.body[0]
    if ast.get_docstring(function) is None or len(function.body) == 1:
        return whole
    return whole - ((first.end_lineno or first.lineno) - first.lineno + 1)


@pytest.mark.parametrize("path", modules())
def test_a_module_fits_a_sitting(path: str) -> None:
    lines = (ROOT / path).read_text(encoding="utf-8").count("\n")
    assert lines <= MOST_LINES_OF_A_MODULE


@pytest.mark.parametrize("path", modules())
def test_a_function_fits_a_screen(path: str) -> None:
    long = {
        f"{path}:{node.lineno} {node.name}": _lines_without_docstring(node)
        for node in ast.walk(modules()[path])
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
        and _lines_without_docstring(node) > MOST_LINES_OF_A_FUNCTION
    }
    assert not long


def _public(body: list[ast.stmt]) -> Iterator[_Described]:
    for node in body:
        if isinstance(node, _Described) and not node.name.startswith("_"):
            yield node
            if isinstance(node, ast.ClassDef):
                yield from _public(node.body)


@pytest.mark.parametrize("path", modules())
def test_what_is_public_has_a_docstring(path: str) -> None:
    tree = modules()[path]
    without = [
        f"{path}:{node.lineno} {node.name}"
        for node in _public(tree.body)
        if not ast.get_docstring(node)
    ]
    assert ast.get_docstring(tree), f"{path} has no docstring"
    assert not without
