"""What may happen at one place only: printing, opening, compiling, catching everything."""

import ast

import pytest

from tests.architecture.sources import calls, modules, package_of

_NOT_OF_THE_CORE = {
    "os", "sys", "time", "random", "secrets", "socket", "subprocess", "urllib", "http",
    "getpass", "tempfile", "shutil", "locale", "logging", "platform",
}  # fmt: skip
_NEVER = {"pickle", "marshal", "shelve", "ctypes"}
# Reading the data that ships with the program, beside the code, is not the outside world.
_READ_SHIPPED_DATA = {
    "resources", "job", "jobfile", "packs", "language", "signoff", "reports",
}  # fmt: skip


def _imports(tree: ast.Module) -> set[str]:
    names: set[str] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            names.update(alias.name.partition(".")[0] for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and not node.level:
            names.add((node.module or "").partition(".")[0])
    return names


@pytest.mark.parametrize("path", modules())
def test_only_the_edge_prints_and_asks(path: str) -> None:
    lines = calls(modules()[path], "print", "input", "exit", "quit", "breakpoint")
    assert package_of(path) == "cli" or not lines


@pytest.mark.parametrize("path", modules())
def test_only_the_edge_opens_files(path: str) -> None:
    package = package_of(path)
    assert package == "cli" or not calls(modules()[path], "open")
    writes = [
        node.lineno
        for node in ast.walk(modules()[path])
        if isinstance(node, ast.Attribute)
        and node.attr
        in {"write_text", "write_bytes", "unlink", "mkdir", "rename", "replace_file", "touch"}
    ]
    reads = [
        node.lineno
        for node in ast.walk(modules()[path])
        if isinstance(node, ast.Attribute)
        and node.attr in {"read_text", "read_bytes", "iterdir", "glob", "rglob"}
    ]
    assert package == "cli" or not (writes and path != "linter/packs/cache.py")
    assert package in {"cli", *_READ_SHIPPED_DATA} or not reads


@pytest.mark.parametrize("path", modules())
def test_the_core_asks_nothing_of_the_machine(path: str) -> None:
    found = _imports(modules()[path]) & _NOT_OF_THE_CORE
    # The cache of packs writes aside and moves; its folder is handed in by the edge.
    allowed = {"os", "sys", "tempfile"} if path == "linter/packs/cache.py" else set()
    assert package_of(path) == "cli" or found <= allowed


@pytest.mark.parametrize("path", modules())
def test_nothing_looks_at_the_clock(path: str) -> None:
    asked = [
        node.lineno
        for node in ast.walk(modules()[path])
        if isinstance(node, ast.Attribute) and node.attr in {"now", "today", "utcnow", "localtime"}
    ]
    # The day on which a person signs, unless it is said; one module of the edge asks for it.
    assert path == "linter/cli/today.py" or not asked


@pytest.mark.parametrize("path", modules())
def test_nothing_is_unpickled(path: str) -> None:
    assert not _imports(modules()[path]) & _NEVER


def test_source_is_compiled_in_one_module() -> None:
    compiling = {
        path
        for path, tree in modules().items()
        if calls(tree, "compile", "exec", "eval", "__import__")
    }
    assert len(compiling) == 1
    assert all(path.startswith("linter/language/") for path in compiling)


def test_everything_is_caught_at_one_place() -> None:
    catching = [
        f"{path}:{node.lineno}"
        for path, tree in modules().items()
        for node in ast.walk(tree)
        if isinstance(node, ast.ExceptHandler) and _catches_everything(node)
    ]
    assert len(catching) == 1, catching
    assert catching[0].startswith("linter/cli/")


def _catches_everything(handler: ast.ExceptHandler) -> bool:
    if handler.type is None:
        return True
    caught = handler.type.elts if isinstance(handler.type, ast.Tuple) else [handler.type]
    return any(
        isinstance(each, ast.Name) and each.id in {"Exception", "BaseException"} for each in caught
    )
