import pytest

from linter.audit.findings import Relied
from tests.unit.audit.made import REFERENCE, finding


@pytest.mark.parametrize(
    "missing",
    [
        {"reference": REFERENCE._replace(clause="")},
        {"reference": REFERENCE._replace(known="")},
        {"working": ()},
    ],
    ids=["clause", "provenance", "working"],
)
def test_a_finding_is_not_made_without(missing: dict[str, object]) -> None:
    with pytest.raises(ValueError, match="wire-end-long-enough"):
        finding(**missing)


def test_a_finding_names_each_usual_value_it_rests_on_once() -> None:
    relied = tuple(
        Relied("cable", ref, fact, "no", usual=usual)
        for ref, fact, usual in [
            ("k1", "is_fished", True),
            ("k2", "is_fished", True),
            ("k1", "length", False),
        ]
    )
    assert finding(relies_on=relied).usual == ("fished of the cable",)
