"""Whole outputs, compared with those saved beside this file.

They are renewed by `pytest tests/golden --renew-golden` and reviewed as a diff. Each is made by a
fresh process, once under each of two hash seeds and time zones: the bytes must be the same. The
first of all finds no kept packs, the others those that it kept.
"""

import json
from pathlib import Path

import jsonschema
import pytest

from linter.resources import schemas_dir
from tests.architecture.test_words import NOT_IN_OUR_VOCABULARY
from tests.golden.fresh import Fresh, run_fresh

HERE = Path(__file__).parent
STUDIO = "examples/pottery-studio"
PACKS = ("--packs", "tests/cases/packs")

OUTPUTS = {
    "boathouse.txt": ("audit", "tests/golden/boathouse.yaml", *PACKS),
    "boathouse.json": ("audit", "tests/golden/boathouse.yaml", "--form", "json", *PACKS),
    "studio-as-pulled.txt": ("audit", f"{STUDIO}/as-pulled.yaml"),
    "studio-with-mistakes.txt": ("audit", f"{STUDIO}/with-mistakes.yaml"),
    "studio-with-mistakes.json": ("audit", f"{STUDIO}/with-mistakes.yaml", "--form", "json"),
    "boathouse.sarif": ("audit", "tests/golden/boathouse.yaml", "--form", "sarif", *PACKS),
    "net-shed-energised.txt": (
        "progress",
        "examples/net-shed/trimmed.yaml",
        "examples/net-shed/energised.yaml",
    ),
    "studio-put-right.txt": ("audit", f"{STUDIO}/put-right.yaml"),
    "studio-loads.txt": ("loads", f"{STUDIO}/put-right.yaml"),
    "studio-stair-bottom.txt": ("makeup", f"{STUDIO}/put-right.yaml", "stair-bottom"),
}


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder for kept packs, empty at first."""
    return tmp_path_factory.mktemp("kept")


@pytest.mark.parametrize("name", OUTPUTS)
def test_the_output_is_the_one_saved(name: str, renew_golden: bool, kept: Path) -> None:
    one = run_fresh(OUTPUTS[name], kept, hash_seed="1", zone="Pacific/Auckland")
    other = run_fresh(OUTPUTS[name], kept, hash_seed="4027", zone="America/St_Johns")
    assert one == other
    saved = HERE / name
    if renew_golden:
        saved.write_bytes(one.out)
    assert one == Fresh(one.status, saved.read_bytes(), b"")


@pytest.mark.parametrize("name", OUTPUTS)
def test_no_saved_output_sounds_like_a_verdict(name: str) -> None:
    assert not NOT_IN_OUR_VOCABULARY.search((HERE / name).read_text(encoding="utf-8"))


@pytest.mark.parametrize("name", [name for name in OUTPUTS if name.endswith(".json")])
def test_saved_findings_are_valid_under_the_published_schema(name: str) -> None:
    schema = json.loads((schemas_dir() / "findings.schema.json").read_text(encoding="utf-8"))
    jsonschema.validate(json.loads((HERE / name).read_text(encoding="utf-8")), schema)
