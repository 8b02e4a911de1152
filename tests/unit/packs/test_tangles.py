"""Measures that rest on each other: in a ring, too deep, or as they may."""

import pytest

from linter.packs.assemble import assemble
from linter.packs.prove import prove
from linter.packs.tangles import DEEPEST
from linter.text import Refused
from tests.cases.small_packs import BASE, edited, texts_of


def chain(length: int) -> dict[str, object]:
    """An edit that adds measures, each of which is the one before it and one more."""
    steps = ['"1"', *(f"m{number} + 1" for number in range(length - 1))]
    measures = "".join(
        f"  - {{measure: m{number}, about: wire_end, gives: number, steps: [{{one: {step}}}],"
        f" clause: {{id: 1, known: memory}}, proofs: [{{gives: {number + 1}, when: {{}}}}]}}\n"
        for number, step in reversed(list(enumerate(steps)))
    )
    begin = "rules:\n  - rule: wire-end"
    return {"edit": {"wire-ends.yaml": {"from": begin, "to": f"measures:\n{measures}{begin}"}}}


def test_measures_may_rest_on_measures() -> None:
    report = prove(assemble(texts_of(edited(chain(DEEPEST))), BASE))
    assert not report.failing
    assert report.measures == DEEPEST + 1


# The longer one is deeper than Python itself would follow.
@pytest.mark.parametrize("length", [DEEPEST + 1, 1100])
def test_measures_that_rest_too_deep_are_refused(length: int) -> None:
    with pytest.raises(Refused, match="rests on measures more than 40 deep"):
        assemble(texts_of(edited(chain(length))), BASE)
