"""The Python files of the project, parsed once for the tests in this folder."""

import ast
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import TypeGuard

ROOT = Path(__file__).resolve().parents[2]


@cache
def modules() -> dict[str, ast.Module]:
    """The parsed modules under linter/, by their path from the root of the repository."""
    return {
        path.relative_to(ROOT).as_posix(): ast.parse(path.read_text(encoding="utf-8"))
        for path in sorted((ROOT / "linter").rglob("*.py"))
    }


def package_of(path: str) -> str:
    """The package a module belongs to: `language` for linter/language/parse.py."""
    parts = Path(path).with_suffix("").parts[1:]
    return parts[0] if parts != ("__init__",) else ""


def calls(tree: ast.Module, *names: str) -> list[int]:
    """The lines on which one of the builtins of those names is called."""
    return [
        node.lineno
        for node in ast.walk(tree)
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in names
    ]


def literals(tree: ast.Module) -> Iterator[tuple[int, str]]:
    """The texts a module can show, with their lines: all string literals but docstrings."""
    docstrings = {id(node.value) for node in ast.walk(tree) if _is_docstring(node)}
    for node in ast.walk(tree):
        if (
            isinstance(node, ast.Constant)
            and isinstance(node.value, str)
            and id(node) not in docstrings
        ):
            yield node.lineno, node.value


def _is_docstring(node: ast.AST) -> TypeGuard[ast.Expr]:
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
