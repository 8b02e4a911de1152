"""What cannot be told yet, by the measurement that would settle it, the most useful first."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.audit.findings import WEIGHTS, Asked, OpenQuestion
from linter.language.verdict import NoRow, Reason
from linter.text import join_words
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import FactRef

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from linter.audit.judging import Untold
    from linter.audit.stops import Walk
    from linter.audit.trials import Trials
    from linter.facts import Facts


class Topic(NamedTuple):
    """What a question asks for: a fact of a kind of thing, or a row that a table lacks."""

    kind: str
    fact: str
    lacking: str = ""


def open_questions(
    untold: Iterable[Untold], facts: Facts, walk: Walk, trials: Trials
) -> tuple[OpenQuestion, ...]:
    """The questions that would settle what is untold: the most useful first, then by name."""
    hanging: dict[Topic, list[Untold]] = {}
    asked: dict[Topic, set[FactRef]] = {}
    for check in untold:
        for topic, refs in _topics(check.because).items():
            hanging.setdefault(topic, []).append(check)
            asked.setdefault(topic, set()).update(refs)
    questions = [
        _question(topic, checks, _asked(asked[topic], facts, walk), trials)
        for topic, checks in hanging.items()
    ]
    return tuple(
        sorted(questions, key=lambda each: (-each.settles, -each.helps, each.kind, each.fact))
    )


def _topics(because: Iterable[Reason]) -> Mapping[Topic, set[FactRef]]:
    topics: dict[Topic, set[FactRef]] = {}
    for reason in because:
        if isinstance(reason, FactRef):
            topics.setdefault(Topic(reason.kind, reason.fact), set()).add(reason)
            continue
        for ref in reason.facts:
            topics.setdefault(Topic(ref.kind, ref.fact, _lacking(reason)), set()).add(ref)
    return topics


def _lacking(reason: Reason) -> str:
    if isinstance(reason, NoRow):
        keys = join_words([str(key) for key in reason.keys])
        return f"the table {reason.table.replace('_', ' ')} has no row for {keys}"
    return "the working would divide by nothing"


def _asked(refs: Iterable[FactRef], facts: Facts, walk: Walk) -> tuple[Asked, ...]:
    things = [facts.thing(ref.kind, ref.ref) for ref in refs]
    asked = [Asked(each.ref, each.label, walk.stop_of(each), each.place) for each in things]
    return tuple(sorted(asked, key=lambda each: (each.stop.order, each.place, each.ref)))


def _question(
    topic: Topic, checks: list[Untold], asked: tuple[Asked, ...], trials: Trials
) -> OpenQuestion:
    alone = sum(1 for check in checks if len(_topics(check.because)) == 1)
    fact = KINDS[topic.kind].fact(topic.fact)
    ask = fact.ask if fact else ""
    if topic.lacking:
        ask = f"Here {topic.lacking}: check what the job states, or look it up in the code itself."
    return OpenQuestion(
        kind=topic.kind,
        fact=topic.fact,
        label=fact.label if fact else topic.fact,
        ask=ask or "Say it in the job file.",
        settles=alone,
        helps=len(checks) - alone,
        weight=min((check.rule.weight for check in checks), key=WEIGHTS.index),
        things=asked,
        answers=trials.answers(checks),
    )
