"""Layers point one way: the table of packages, and every import judged against it."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.architecture.sources import modules, package_of

# What a package names itself; it may also import what those may import. "" is linter/__init__.py
# (the version), `resources` says where shipped data lies; both import nothing of ours.
MAY_IMPORT = {
    "": (),
    "resources": (),
    "text": (),
    "units": ("text",),
    "vocabulary": ("units",),
    "job": ("units", "resources"),
    "jobfile": ("job", "resources"),
    "wiring": ("job",),
    "trace": ("wiring",),
    "solve": ("wiring",),
    "facts": ("vocabulary", "trace", "solve"),
    "language": ("vocabulary",),
    "packs": ("language", "resources"),
    "audit": ("facts", "packs"),
    "signoff": ("audit",),
    "reports": ("signoff",),
    "cli": ("reports", "jobfile", "resources"),
    "__main__": ("cli",),
}


def _reach(package: str) -> set[str]:
    named = MAY_IMPORT[package]
    return {"", *named, *(far for near in named for far in _reach(near))}


def _resolved(path: str, node: ast.ImportFrom) -> str:
    """The absolute name of the module a `from` import names, relative ones counted up."""
    if not node.level:
        return node.module or ""
    above = Path(path).parent.parts
    base = above[: len(above) - node.level + 1]
    return ".".join((*base, *(node.module or "").split("."))).rstrip(".")


def _imported(path: str, tree: ast.Module) -> Iterator[tuple[int, str]]:
    """Every import of ours, wherever it stands: (line, dotted name below `linter`)."""
    for node in ast.walk(tree):
        names: list[str] = []
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            module = _resolved(path, node)
            names = (
                [f"{module}.{alias.name}" for alias in node.names]
                if module == "linter"
                else [module]
            )
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            # A module named in text, as importlib would need it.
            names = (
                [node.value] if node.value.isascii() and node.value.startswith("linter.") else []
            )
        for name in names:
            if name == "linter" or name.startswith("linter."):
                yield node.lineno, name.removeprefix("linter").removeprefix(".")


def _target(name: str) -> str:
    first = name.partition(".")[0]
    return "" if first.startswith("__") else first


@pytest.mark.parametrize("path", modules())
def test_a_module_imports_only_what_stands_to_its_left(path: str) -> None:
    package = package_of(path)
    assert package in MAY_IMPORT, f"{path}: the package {package} is not in the table"
    allowed = _reach(package) | {package}
    wrong = [
        f"{path}:{line} imports linter.{name}"
        for line, name in _imported(path, modules()[path])
        if _target(name) not in allowed
    ]
    assert not wrong


@pytest.mark.parametrize("path", modules())
def test_a_module_with_an_underscore_stays_in_its_package(path: str) -> None:
    wrong = [
        f"{path}:{line} imports linter.{name}"
        for line, name in _imported(path, modules()[path])
        if _target(name) != package_of(path)
        and any(part.startswith("_") and not part.startswith("__") for part in name.split("."))
    ]
    assert not wrong


def test_the_table_has_no_arrow_back() -> None:
    for package in MAY_IMPORT:
        assert package == "" or package not in _reach(package), f"{package} reaches itself"


def test_job_side_and_pack_side_meet_in_audit_alone() -> None:
    meeting = {p for p in MAY_IMPORT if {"job", "language"} <= _reach(p)}
    assert meeting == {"audit", "signoff", "reports", "cli", "__main__"}
