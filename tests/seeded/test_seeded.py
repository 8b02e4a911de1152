"""A sound job, one edit, exactly the findings that the edit brings, and no others.

Each file of this folder names the job it starts from, then rows of one edit each:

    base: examples/pottery-studio/put-right.yaml
    rows:
      - edit: "the wires at the bench are cut short"
        at: usual.cable.free_length   # or several, as edits: [{at, to}, {at, drop: yes}]
        to: 5 in                             # or drop: yes
        expect: [{rule: wire-end-long-enough, at: wire_end k1.black@bench}]
        cannot tell: [{rule: box-has-room, at: bench}]       # left out: nothing more is open
        under: {us-nec-2017: []}             # what it brings by other packs, where that is stated
"""

import json
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from linter.audit.audit import audit
from linter.audit.findings import Audit
from linter.cli.shelf import Shelf
from linter.jobfile import read_job
from tests.seeded.edits import edited, findings_of, load, untold_of

HERE = Path(__file__).parent
ROOT = HERE.parents[1]


def _rows() -> Iterator[Any]:
    for path in sorted(HERE.glob("*.yaml")):
        data = load(path)
        for row in data["rows"]:
            yield pytest.param(data["base"], row, id=f"{path.stem}: {row['edit']}")


@cache
def _shelf() -> Shelf:
    return Shelf()


def _audit(text: str) -> Audit:
    job = read_job(text, "job.yaml")
    return audit(job, _shelf().pack_of(job))


@cache
def _base(name: str) -> tuple[Any, Audit]:
    path = ROOT / name
    return load(path), _audit(path.read_text(encoding="utf-8"))


@pytest.mark.parametrize(("base", "row"), list(_rows()))
def test_an_edit_brings_exactly_its_findings(base: str, row: Any) -> None:
    data, before = _base(base)
    after = _audit(edited(data, row))
    expected = {(each["rule"], each["at"]) for each in row["expect"]}
    assert findings_of(after) - findings_of(before) == expected
    open_now = {(each["rule"], each["at"]) for each in row.get("cannot tell", [])}
    assert untold_of(after) - untold_of(before) == open_now


def _elsewhere() -> Iterator[Any]:
    for case in _rows():
        base, row = case.values
        for pack, expected in row.get("under", {}).items():
            yield pytest.param(base, row, pack, expected, id=f"{case.id}, under {pack}")


@cache
def _base_under(name: str, pack: str) -> set[tuple[str, str]]:
    job = load(ROOT / name)
    job["job"]["pack"] = pack
    return findings_of(_audit(json.dumps(job)))


@pytest.mark.parametrize(("base", "row", "pack", "expected"), list(_elsewhere()))
def test_an_edit_is_judged_otherwise_by_another_pack(
    base: str, row: Any, pack: str, expected: Any
) -> None:
    data, _ = _base(base)
    job = json.loads(edited(data, row))
    job["job"]["pack"] = pack
    found = findings_of(_audit(json.dumps(job))) - _base_under(base, pack)
    assert found == {(each["rule"], each["at"]) for each in expected}


@pytest.mark.parametrize("path", sorted(HERE.glob("*.yaml")), ids=lambda path: path.stem)
def test_every_edit_has_a_sentence_of_its_own(path: Path) -> None:
    sentences = [row["edit"] for row in load(path)["rows"]]
    assert len(sentences) == len(set(sentences))
