"""The report is the same bytes each time; of its drawings one is saved beside this file.

It is renewed by `pytest tests/golden --renew-golden`, and looked at in a browser.
"""

import re
from pathlib import Path

from tests.golden.fresh import run_fresh

SAVED = Path(__file__).with_name("studio-stair-bottom.svg.txt")
COMMAND = ("report", "examples/pottery-studio/put-right.yaml", "-o", "-")


def test_the_report_is_the_same_bytes_and_draws_the_box_saved(
    renew_golden: bool, tmp_path: Path
) -> None:
    one = run_fresh(COMMAND, tmp_path, hash_seed="1", zone="Pacific/Auckland")
    other = run_fresh(COMMAND, tmp_path, hash_seed="4027", zone="America/St_Johns")
    assert one == other
    assert (one.status, one.err) == (0, b"")
    page = one.out.decode("utf-8")
    drawing = re.search(r"<svg[^>]*><title>Box stair-bottom\..*?</svg>", page, re.DOTALL)
    assert drawing is not None
    shown = drawing.group(0).replace("><", ">\n<") + "\n"
    if renew_golden:
        SAVED.write_text(shown, encoding="utf-8")
    assert shown == SAVED.read_text(encoding="utf-8")
