"""Things, rules and findings made by hand for the tests of audit and reports."""

from collections.abc import Mapping
from typing import Any

from linter.audit.findings import (
    Answer,
    Asked,
    Audit,
    Basis,
    Finding,
    OpenQuestion,
    Reference,
    Relied,
    Stop,
)
from linter.language.work import WorkLine
from linter.text import Place
from linter.vocabulary.model import Thing

FILE = "boathouse.yaml"
REFERENCE = Reference("4-2", "Example code", "first", "read", '"Handout 7" (2019)', "", "example")


def thing(kind: str, ref: str, line: int = 1, **values: Any) -> Thing:
    """A thing stated on a line, with the values of its facts."""
    return Thing(kind, ref, Place(FILE, line, 3), values)


def stop(room: str, box: str, line: int, order: tuple[int, int, int]) -> Stop:
    """A stop at a box of a room."""
    return Stop(room, box, "slip", box, Place(FILE, line, 3), order)


def finding(**other: Any) -> Finding:
    """A finding about a wire end in the bench box of the boathouse, but for what is given."""
    said: dict[str, Any] = {
        "rule": "wire-end-long-enough",
        "weight": "violation",
        "reference": REFERENCE,
        "kind": "wire_end",
        "ref": "k1.black@bench",
        "label": "the black of k1 in bench",
        "stop": stop("slip", "bench", 12, (0, 1, 0)),
        "place": Place(FILE, 31, 5),
        "sentence": "The black of k1 in bench leaves 4 in; 6 in is needed.",
        "working": (
            WorkLine(
                "",
                "wire_end.free_length at least least_free_length",
                "4 in at least 6 in",
                "not met",
                "free length 4 in; least free length 6 in: short by 2 in",
            ),
        ),
        "do": "Pull more cable into the box while the wall is open.",
        "caution": "",
        "relies_on": (Relied("wire_end", "k1.black@bench", "free_length", "4 in", usual=False),),
        "rests_on": (Basis("limit", "least_free_length", "6 in", REFERENCE),),
        "fingerprint": "3f2a90c1d4e5b607",
        "stated_weight": "violation",
    }
    return Finding(**{**said, **other})


def question(**other: Any) -> OpenQuestion:
    """An open question about the free length at two boxes, but for what is given."""
    places = [("slip", "bench", 12, 0), ("loft", "top", 15, 1)]
    said: dict[str, Any] = {
        "kind": "wire_end",
        "fact": "free_length",
        "label": "free length",
        "ask": "Measure the conductor from the end of its sheath.",
        "lacking": "",
        "settles": 2,
        "helps": 0,
        "along": (),
        "everywhere": False,
        "weight": "violation",
        "things": tuple(
            Asked(f"k1.black@{box}", f"the black of k1 in {box}", stop(room, box, line, (n, 1, n)),
                  Place(FILE, line, 5))
            for room, box, line, n in places
        ),
        "answers": (
            Answer("wire-end-long-enough", "violation", 2, ("k1.black@bench", "k1.black@top"),
                   (("6 in or more", "met"), ("less than 6 in", "broken")), needs_more=False),
        ),
    }  # fmt: skip
    return OpenQuestion(**{**said, **other})


def audit_of(*findings: Finding, open_questions: tuple[OpenQuestion, ...] = ()) -> Audit:
    """An audit of the boathouse with these findings and open questions."""
    untold = sum(each.settles for each in open_questions)
    return Audit(
        job="Boathouse",
        stage="made up",
        pack="example",
        title="Example code",
        layers=("example-county",),
        findings=findings,
        open=open_questions,
        checks=40,
        counts=_counts(findings),
        cannot_tell={"danger": 0, "violation": untold, "advice": 0},
    )


def _counts(findings: tuple[Finding, ...]) -> Mapping[str, int]:
    weights = [each.weight for each in findings]
    return {weight: weights.count(weight) for weight in ("danger", "violation", "advice")}
