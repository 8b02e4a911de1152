"""Codes live in packs alone, Python lives in linter/ alone, and some words are said nowhere."""

import json
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
import yaml

from tests.architecture.sources import ROOT, literals, modules

# Words that would sound like a verdict; findings are for a person to confirm.
NOT_IN_OUR_VOCABULARY = re.compile(r"\b(approved|passed|compliant|safe|pass)\b", re.IGNORECASE)

# What would tie the program to one country, edition or clause.
OF_A_CODE = re.compile(
    r"""
    \b(?:NFPA|NEC|CEC|OESC|CSA|HUD|OSHA|BS\s?7671|AS/NZS|IEC\s?60364|NMD90)\b
    | \b(?:us|ca|uk|au|nz)-[a-z]+-?\d*\b
    | National\ Electrical\ Code | Electrical\ Safety\ Code | Wiring\ Rules
    | \b(?:United\ States|America|Canada|Canadian|Ontario|Quebec|Britain|British|Australia)\b
    | \b(?:Article|Section|Table|Rule|Clause)\s\d
    | \b\d{1,3}[.-]\d{1,4}\([A-Z0-9]+\)
    | \b(?:2011|2014|2017|2020|2021|2023|2024|2026)\b(?!-\d)
    """,
    re.VERBOSE,
)

_PACK_FILES = sorted((ROOT / "rulesets").rglob("*.yaml"))
_SCHEMAS = sorted((ROOT / "schemas").rglob("*.json"))


def _texts(value: object) -> Iterator[str]:
    match value:
        case str():
            yield value
        case dict():
            yield from _texts(list(value))
            yield from _texts(list(value.values()))
        case list():
            for each in value:
                yield from _texts(each)


@pytest.mark.parametrize("path", modules())
def test_no_text_of_the_program_sounds_like_a_verdict(path: str) -> None:
    said = [
        f"{path}:{line} {text!r}"
        for line, text in literals(modules()[path])
        if NOT_IN_OUR_VOCABULARY.search(text)
    ]
    assert not said


@pytest.mark.parametrize(
    "path", [*_PACK_FILES, *_SCHEMAS], ids=lambda path: path.relative_to(ROOT).as_posix()
)
def test_no_text_of_a_pack_or_schema_sounds_like_a_verdict(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    data = json.loads(text) if path.suffix == ".json" else yaml.safe_load(text)
    assert not [each for each in _texts(data) if NOT_IN_OUR_VOCABULARY.search(each)]


@pytest.mark.parametrize("path", modules())
def test_no_code_edition_or_clause_stands_in_the_program(path: str) -> None:
    lines = (ROOT / path).read_text(encoding="utf-8").splitlines()
    named = [
        f"{path}:{number} {line.strip()}"
        for number, line in enumerate(lines, 1)
        if OF_A_CODE.search(line)
    ]
    assert not named


def test_no_code_edition_or_clause_stands_in_the_grammar() -> None:
    for path in sorted((ROOT / "linter").rglob("*.lark")):
        assert not OF_A_CODE.search(path.read_text(encoding="utf-8")), path


def test_rule_packs_hold_data_and_nothing_else() -> None:
    kinds = {path.suffix for path in (ROOT / "rulesets").rglob("*") if path.is_file()}
    assert kinds <= {".yaml", ".md"}
