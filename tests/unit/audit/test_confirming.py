"""What wants confirming weighs no more than advice, and every report says what and why."""

import json
from functools import cache

from linter.audit.audit import audit
from linter.audit.findings import Audit, Finding
from linter.cli.shelf import Shelf
from linter.jobfile import read_job
from linter.reports.as_json import as_json
from linter.reports.layout import plain
from linter.reports.outcomes import Audited
from linter.reports.terminal import report
from tests.unit.cli.running import ROOT

MISTAKES = ROOT / "examples/pottery-studio/with-mistakes.yaml"


@cache
def under(pack: str) -> Audit:
    """The studio with its mistakes, by a pack."""
    text = MISTAKES.read_text(encoding="utf-8").replace("us-nec-2023", pack)
    job = read_job(text, "studio.yaml")
    return audit(job, Shelf().pack_of(job))


def found(pack: str, rule: str) -> Finding:
    return next(each for each in under(pack).findings if each.rule == rule)


def test_a_rule_that_the_edition_does_not_confirm_is_advice_and_says_so() -> None:
    assert found("us-nec-2023", "box-has-room").weight == "violation"
    finding = found("us-nec-2026", "box-has-room")
    assert (finding.weight, finding.stated_weight) == ("advice", "violation")
    assert finding.reference.edition == "2023"
    assert finding.reference.unconfirmed_in == "NFPA 70 2026"


def test_a_rule_that_the_edition_confirms_weighs_what_it_weighed() -> None:
    finding = found("us-nec-2026", "sink-receptacles-ground-fault-protected")
    assert (finding.weight, finding.unsure) == ("violation", ())
    assert (finding.reference.clause, finding.reference.edition) == ("210.8(A)(9)", "2026")


def test_what_is_common_practice_belongs_to_no_edition() -> None:
    findings = [each for each in under("us-nec-2026").findings if not each.unsure]
    assert all(each.weight == each.stated_weight for each in findings)
    assert {each.reference.known for each in findings} >= {"read"}


def test_the_terminal_says_what_wants_confirming() -> None:
    said = " ".join(plain(report([Audited("studio.yaml", under("us-nec-2026"))])).split())
    assert "reference not confirmed for this edition (NFPA 70 2026)" in said
    assert "advice until it is confirmed, then violation." in said
    assert "rules are held to advice:" in said


def test_json_says_what_wants_confirming() -> None:
    told = json.loads(as_json([Audited("studio.yaml", under("us-nec-2026"))]))["files"][0]
    finding = next(each for each in told["findings"] if each["rule"] == "box-has-room")
    assert finding["stated_weight"] == "violation"
    assert finding["wants_confirming"][0] == {
        "what": "rule", "name": "box-has-room", "why": "not confirmed for this edition",
    }  # fmt: skip
    held = told["held_to_advice"]
    assert 0 < held["not_confirmed_for_this_edition"] <= held["rules"] < held["of"]
