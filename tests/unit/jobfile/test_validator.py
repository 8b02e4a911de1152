"""The quick validator of job files, held against the one it is made from."""

from pathlib import Path
from typing import Any

import pytest
import yaml
from jsonschema import Draft202012Validator, ValidationError

from linter.jobfile.schema import job_schema, job_validator
from linter.text import Refused
from linter.text.yaml_places import read_places

ROOT = Path(__file__).resolve().parents[3]
REFUSED = ROOT / "tests/cases/refusals/jobs"
JOB = (ROOT / "tests/cases/jobs/boathouse.yaml").read_text(encoding="utf-8")


def documents() -> list[Any]:
    """The jobs that the tables of refusals make, as far as they are YAML."""
    found = []
    for path in sorted(REFUSED.glob("*.yaml")):
        for case in yaml.safe_load(path.read_text(encoding="utf-8")):
            if "instead of" not in case:
                continue
            text = JOB.replace(case["instead of"], case["write"])
            try:
                found.append(pytest.param(read_places(text, "job.yaml").plain(), id=case["case"]))
            except Refused:
                continue
    return found


def told(errors: Any) -> list[tuple[object, ...]]:
    return sorted(map(one, errors), key=repr)


def one(error: ValidationError) -> tuple[object, ...]:
    inside = told(error.context)
    where = list(error.absolute_path), list(error.absolute_schema_path)
    return error.message, error.validator, error.validator_value, *where, error.instance, inside


@pytest.mark.parametrize("document", documents())
def test_it_finds_what_the_validator_of_the_draft_finds(document: Any) -> None:
    quick = job_validator()
    plain = Draft202012Validator(job_schema(), format_checker=quick.format_checker)
    assert told(quick.iter_errors(document)) == told(plain.iter_errors(document))


def test_there_are_documents_with_errors_to_hold_it_against() -> None:
    errors = [list(job_validator().iter_errors(each.values[0])) for each in documents()]
    assert sum(map(bool, errors)) > 50
