"""Findings told earlier as JSON, read again, and what is new against them.

A finding is known where the same rule was told of the same thing, from the same facts, with no less
weight, and counted then: whoever takes back a sign-off makes its finding new.
"""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, NamedTuple

from linter.audit.findings import WEIGHTS
from linter.signoff.standing import key_of
from linter.text import Place, Refusal, Refused

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from linter.audit.findings import Finding
    from linter.audit.open_checks import OpenCheck
    from linter.signoff.said import Key

NEW, CHANGED, KNOWN = "new", "changed", "known"

_FORMAT = 1


class Before(NamedTuple):
    """A finding as it was told earlier; `counted` tells that no sign-off had settled it."""

    weight: str
    fingerprint: str
    sentence: str
    counted: bool


class EarlierFile(NamedTuple):
    """What was told of one job file: findings, and checks that could not be told, with weights."""

    findings: Mapping[Key, Before]
    untold: Mapping[Key, str]


class Earlier(NamedTuple):
    """The findings of the file `name`, job file by job file."""

    name: str
    files: Mapping[str, EarlierFile]


class News(NamedTuple):
    """What is new of a job against the findings of the file `name`.

    `states` has each finding as new, changed or known; `before` is what was found then; `untold`
    are the checks that could be told then, or did not count; `gone` is what was found then, and is
    not any more.
    """

    name: str
    states: Mapping[Key, str]
    before: Mapping[Key, Before]
    untold: frozenset[Key]
    gone: tuple[tuple[Key, Before], ...]

    def of(self, finding: Finding) -> str:
        """Whether a finding is new, changed or known."""
        return self.states[key_of(finding)]

    def is_known(self, finding: Finding) -> bool:
        """Whether it was told then as it is now."""
        return self.of(finding) == KNOWN

    def told(self, finding: Finding) -> str:
        """In words, what is new of a finding."""
        match self.of(finding):
            case "new":
                return f"New: not counted in {self.name}."
            case "changed":
                return f"Changed since {self.name}: {self.before[key_of(finding)].sentence}"
            case _:
                return f"Known from {self.name}."


def read_earlier(text: str, name: str) -> Earlier:
    """The findings that `precover audit --form json` wrote into the file `name`.

    Raises `Refused` where it holds no such findings.
    """
    try:
        told = json.loads(text)
    except json.JSONDecodeError as error:
        raise _no_findings(name, error.lineno, error.colno) from error
    if not isinstance(told, dict) or told.get("precover_findings") != _FORMAT:
        raise _no_findings(name)
    try:
        files = {
            each["file"]: _file(each) for each in told["files"] if each["outcome"] == "audited"
        }
    except (KeyError, TypeError, AttributeError) as error:
        raise _no_findings(name) from error
    return Earlier(name, files)


def news_of(
    earlier: Earlier, file: str, findings: Iterable[Finding], checks: Sequence[OpenCheck]
) -> News:
    """What is new of a job file; all of it where the file was not audited then."""
    before = earlier.files.get(file, EarlierFile({}, {}))
    states = {key_of(each): _state(each, before.findings) for each in findings}
    known = before.untold
    untold = frozenset(key_of(each) for each in checks if _is_heavier(each, known))
    open_now = {key_of(each) for each in checks}
    gone = tuple(
        (key, each)
        for key, each in before.findings.items()
        if key not in states and key not in open_now
    )
    return News(earlier.name, states, before.findings, untold, gone)


def _state(finding: Finding, before: Mapping[Key, Before]) -> str:
    then = before.get(key_of(finding))
    if then is None or not then.counted:
        return NEW
    lighter = WEIGHTS.index(then.weight) > WEIGHTS.index(finding.weight)
    return CHANGED if lighter or then.fingerprint != finding.fingerprint else KNOWN


def _is_heavier(check: OpenCheck, before: Mapping[Key, str]) -> bool:
    """Whether it was not open then, or weighed less."""
    then = before.get(key_of(check))
    return then is None or WEIGHTS.index(then) > WEIGHTS.index(check.weight)


def _file(told: Mapping[str, list[dict[str, object]]]) -> EarlierFile:
    findings = {_key(each): _before(each) for each in told["findings"]}
    untold = {
        (str(each["rule"]), str(each["kind"]), str(ref)): _weight(each)
        for each in told["untold"]
        for ref in _list(each["things"])
    }
    settled = {
        (str(each["rule"]), str(each["kind"]), str(each["ref"]))
        for each in _list(_map(told["sign_off"])["open"])
        if not _map(each["signed"])["counts"]
    }
    return EarlierFile(findings, {key: each for key, each in untold.items() if key not in settled})


def _key(told: Mapping[str, object]) -> Key:
    subject = _map(told["subject"])
    return str(told["rule"]), str(subject["kind"]), str(subject["ref"])


def _before(told: Mapping[str, object]) -> Before:
    signed = told["signed"]
    counted = signed is None or bool(_map(signed)["counts"])
    return Before(_weight(told), str(told["fingerprint"]), str(told["sentence"]), counted)


def _weight(told: Mapping[str, object]) -> str:
    weight = str(told["weight"])
    if weight not in WEIGHTS:
        raise KeyError(weight)
    return weight


def _map(value: object) -> dict[str, object]:
    if not isinstance(value, dict):
        raise TypeError
    return value


def _list(value: object) -> list[dict[str, object]]:
    if not isinstance(value, list):
        raise TypeError
    return value


def _no_findings(name: str, line: int = 1, column: int = 1) -> Refused:
    return Refused(
        [
            Refusal(
                Place(name, line, column),
                "this file holds no findings of an earlier audit",
                'what "precover audit --form json" writes',
                "write them with this version of precover: precover audit FILE… --form json",
            )
        ]
    )
