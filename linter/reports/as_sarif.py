"""The outcomes of an audit in the Static Analysis Results Interchange Format, SARIF 2.1.0.

One run. Each pack is a component of the tool, with the rules that results name. A finding is of the
kind "fail", with a level by its weight; a check that cannot be told is "open"; an item of the
walk-through is to "review". What a person said of a finding is a suppression: accepted where it
does not count, rejected where it counts all the same.
"""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

from linter import __version__
from linter.reports.outcomes import Audited, OurFault, Outcome, TurnedAway
from linter.reports.sarif_results import results
from linter.reports.sarif_rules import Components
from linter.reports.sarif_words import ROOT, Addresses, Data, inert, message
from linter.reports.sayings import CAUTION, CLOSING

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

SCHEMA = (
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
)


def as_sarif(outcomes: Sequence[Outcome], find: Callable[[str], str]) -> str:
    """All outcomes as one log of one run; beyond ASCII everything is escaped.

    `find` gives the address of a file relative to the root of the repository, by the name that a
    person gave. Every audit knows its pack.
    """
    components, addresses = Components(), Addresses(find)
    found = [
        result
        for each in outcomes
        if isinstance(each, Audited)
        for result in results(each, components, addresses)
    ]
    run: Data = {
        "tool": {"driver": _driver(), "extensions": components.all()},
        "invocations": [_invocation(outcomes, addresses)],
        "originalUriBaseIds": {ROOT: {"description": message("The root of the repository.")}},
        "columnKind": "unicodeCodePoints",
        "language": "en",
        "results": found,
        "properties": {"caution": CAUTION, "closing": CLOSING},
    }
    log = {"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}
    return json.dumps(inert(log), indent=2) + "\n"


def _driver() -> Data:
    return {
        "name": "precover",
        "version": __version__,
        "semanticVersion": __version__,
        "fullDescription": {"text": CAUTION},
    }


def _invocation(outcomes: Sequence[Outcome], addresses: Addresses) -> Data:
    told = [note for each in outcomes for note in _notes(each, addresses)]
    return {
        "executionSuccessful": not told,
        "toolExecutionNotifications": told,
        "properties": {"files": len(outcomes)},
    }


def _notes(outcome: Outcome, addresses: Addresses) -> Iterator[Data]:
    """What could not be audited: a notification for each refusal, or for our own fault."""
    if isinstance(outcome, TurnedAway):
        for each in outcome.refusals:
            yield {
                "level": "error",
                "message": message(str(each)),
                "locations": [addresses.location(each.place)],
            }
    if isinstance(outcome, OurFault):
        doing = "; ".join(f"while {each}" for each in outcome.doing)
        yield {"level": "error", "message": message(f"precover made a mistake of its own: {doing}")}
