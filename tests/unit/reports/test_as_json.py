import json

import jsonschema
import pytest

from linter.reports.as_json import as_json
from linter.reports.outcomes import Audited, OurFault, Outcome, TurnedAway
from linter.resources import schemas_dir
from linter.text import Place, Refusal
from tests.unit.audit.made import FILE, audit_of, finding, question

SCHEMA = json.loads((schemas_dir() / "findings.schema.json").read_text(encoding="utf-8"))
REFUSED = TurnedAway(
    "loft.yaml",
    (Refusal(Place("loft.yaml", 9, 3), "two boxes of one name", "", "rename one", ("a",),
             (Place("loft.yaml", 4, 3), "first stated")),),
)  # fmt: skip
OUTCOMES: list[Outcome] = [
    Audited(FILE, audit_of(finding(), open_questions=(question(),))),
    REFUSED,
    OurFault("slip.yaml", ("judging the rule box-has-room for box bench",)),
]


def test_the_schema_is_a_schema_and_describes_every_property() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    without = []

    def look(value: object, path: str) -> None:
        if isinstance(value, dict):
            for name, each in value.get("properties", {}).items():
                if "description" not in each or not ("examples" in each or "const" in each):
                    without.append(f"{path}.{name}")
            for key, each in value.items():
                look(each, f"{path}.{key}")

    look(SCHEMA, "")
    assert not without


@pytest.mark.parametrize("number", [1, 2, 3])
def test_every_outcome_is_valid_under_the_schema(number: int) -> None:
    jsonschema.validate(json.loads(as_json(OUTCOMES[:number])), SCHEMA)


def test_the_schema_refuses_a_finding_that_lacks_its_clause() -> None:
    document = json.loads(as_json(OUTCOMES))
    del document["files"][0]["findings"][0]["reference"]["clause"]
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(document, SCHEMA)


def test_counts_are_of_all_files_together() -> None:
    document = json.loads(as_json([OUTCOMES[0], OUTCOMES[0]]))
    assert document["counts"] == {"danger": 0, "violation": 2, "advice": 0}
    assert document["cannot_tell"] == {"danger": 0, "violation": 4, "advice": 0}


def test_direction_and_control_characters_are_escaped() -> None:
    text = as_json([Audited(FILE, audit_of(finding(sentence="bench \u202eleft \x1b[2J")))])
    assert text.isascii()
    assert "\\u202e" in text
    assert "\\u001b" in text
