"""Every published example for the United States has its case, or says why it has none."""

from typing import Any

import pytest

from tests.outside.path import table

EXAMPLES = table("us_examples.yaml")
FILES = [name for name in EXAMPLES if name.endswith(".yaml")]


@pytest.mark.parametrize("name", FILES)
def test_each_example_is_a_case_of_its_table(name: str) -> None:
    listed: list[str] = EXAMPLES[name]
    assert len(set(listed)) == len(listed)
    data = table(name)
    rows: list[Any] = data["cases"] if isinstance(data, dict) else data
    assert set(listed) <= {row["case"] for row in rows}


def test_what_is_not_reproduced_says_why() -> None:
    assert all(row["example"] and row["why"] for row in EXAMPLES["not reproduced"])
