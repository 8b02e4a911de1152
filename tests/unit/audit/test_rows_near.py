"""A text that a table has no row for is answered with the rows it was probably meant for."""

import pytest

from linter.audit.audit import audit
from linter.cli.shelf import Shelf
from linter.jobfile import read_job


@pytest.mark.parametrize(
    ("stated", "near"),
    [
        ("4 sq deep", "; there is 4 x 1-1/4 square, 4 x 1-1/2 square or 4 x 2-1/8 square"),
        ("4 x 2-1/8 squere", "; there is 4 x 2-1/8 square"),
        ("nine by nine", ""),
    ],
)
def test_a_trade_size_without_a_row_names_those_near_it(stated: str, near: str) -> None:
    text = (
        "{precover: 1, job: {name: Shed, pack: us-nec-2023}, supplies: {shore: {}}, "
        f"rooms: {{shed: {{}}}}, boxes: {{joint: {{room: shed, trade_size: {stated}, "
        "clamps: none}}}"
    )
    job = read_job(text, "shed.yaml")
    found = [each.lacking for each in audit(job, Shelf().pack_of(job)).open if each.lacking]
    assert len(found) == 1
    assert found[0].startswith(f"no row in trade size volume for {stated}{near}")
    assert ("there is" in found[0]) == bool(near)
