"""The packs that ship: each loads, proves, and comes to the same bytes under any hash seed."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from linter.packs.prove import prove
from tests.cases.shipped_packs import base_of, shipped_packs, with_layer

ROOT = Path(__file__).resolve().parents[2]
DIGEST = """
import hashlib, json, sys
from linter.packs.data import pack_to_data
from tests.cases.shipped_packs import with_layer
data = json.dumps(pack_to_data(with_layer(sys.argv[1])))
print(hashlib.sha256(data.encode()).hexdigest())
"""


@pytest.mark.parametrize("name", [text.id for text in shipped_packs()])
def test_every_case_of_a_shipped_pack_comes_out_as_stated(name: str) -> None:
    is_base = base_of(name) == name
    # Of a layer, the cases that hang on what it touches; the others are proved in the pack below.
    report = prove(with_layer(name), "" if is_base else name)
    assert report.cases > (report.rules if is_base else 0)
    assert not [each.render() for each in report.failing]


def test_a_pack_is_the_same_bytes_under_two_hash_seeds() -> None:
    name = shipped_packs()[0].id
    digests = {
        subprocess.run(  # noqa: S603  our own Python, on the program above
            [sys.executable, "-c", DIGEST, name],
            cwd=ROOT,
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert len(digests) == 1
