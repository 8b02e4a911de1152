"""The example packs as texts, and edits of them by which tables of cases make broken ones."""

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from linter.packs.pack_text import PackText

FOLDER = Path(__file__).with_name("packs")
BASE, COUNTY = "example-boathouse", "example-boathouse-county"
GUILD = "example-boathouse-guild"

Files = dict[str, dict[str, str]]


@cache
def example_files() -> Mapping[str, Mapping[str, str]]:
    """The files of the example packs: texts by name of the file, by pack."""
    return {
        folder.name: {
            path.name: path.read_text(encoding="utf-8") for path in sorted(folder.glob("*.yaml"))
        }
        for folder in sorted(FOLDER.iterdir())
    }


def edited(case: Mapping[str, Any]) -> Files:
    """The files of the example packs after the edits of a case."""
    files: Files = {name: dict(texts) for name, texts in example_files().items()}
    files |= case.get("more", {})
    for name in ("edit", "also edit"):
        for file, change in case.get(name, {}).items():
            files[BASE][file] = _changed(files[BASE][file], change)
    for name in ("county", "also county"):
        if name in case:
            amendments = files[COUNTY]["amendments.yaml"]
            files[COUNTY]["amendments.yaml"] = _changed(amendments, case[name])
    if "without" in case:
        del files[BASE][case["without"]]
    return files


def texts_of(files: Mapping[str, Mapping[str, str]]) -> list[PackText]:
    """The files as texts of packs, with paths as messages show them."""
    return [
        PackText(pack, {f"{pack}/{name}": text for name, text in texts.items()})
        for pack, texts in files.items()
    ]


def _changed(text: str, change: Mapping[str, str]) -> str:
    if "all" in change:
        return change["all"]
    assert text.count(change["from"]) == 1, f"not once in the file: {change['from']}"
    return text.replace(change["from"], change["to"])


def with_guild(layer: str, on: str = BASE) -> Files:
    """The example packs with one more layer, of a guild, on one of them."""
    files = edited({})
    files[GUILD] = {
        "pack.yaml": f"pack: {GUILD}\ntitle: Guild of boatwrights\njurisdiction: Lakeland\n"
        f'document: Guild book\nedition: "3"\nextends: {on}\nversion: 0.1.0\n',
        "own.yaml": layer,
    }
    return files
