"""What cannot be told yet, by the measurement that would settle it, the most useful first."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.audit.findings import WEIGHTS, Asked, OpenQuestion
from linter.language.verdict import NoQuotient, NoRow
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


class _Hanging(NamedTuple):
    """The checks that hang on one topic, the facts asked for, and what else the checks hang on."""

    checks: list[Untold]
    asked: set[FactRef]
    others: dict[Topic, None]

    @property
    def settles(self) -> int:
        """How many of the checks hang on this topic alone."""
        return sum(1 for check in self.checks if len(_topics(check)) == 1)


def open_questions(
    untold: Iterable[Untold], facts: Facts, walk: Walk, trials: Trials
) -> tuple[OpenQuestion, ...]:
    """The questions that would settle what is untold: the most useful first, then by name."""
    hanging: dict[Topic, _Hanging] = {}
    for check in untold:
        topics = _topics(check)
        for topic, refs in topics.items():
            here = hanging.setdefault(topic, _Hanging([], set(), {}))
            here.checks.append(check)
            here.asked.update(refs)
            here.others.update(dict.fromkeys(other for other in topics if other != topic))
    questions = [
        _question(topic, here, _asked(here.asked, facts, walk), facts, trials)
        for topic, here in hanging.items()
    ]
    return tuple(
        sorted(questions, key=lambda each: (-each.settles, -each.helps, each.kind, each.fact))
    )


def _topics(check: Untold) -> Mapping[Topic, set[FactRef]]:
    topics: dict[Topic, set[FactRef]] = {}
    for reason in check.because:
        if isinstance(reason, FactRef):
            topics.setdefault(Topic(reason.kind, reason.fact), set()).add(reason)
            continue
        lacking = _lacking(reason)
        # A row may be asked for by what is no fact at all; then the subject itself is looked at.
        for ref in reason.facts or [FactRef(check.thing.kind, check.thing.ref, "")]:
            topics.setdefault(Topic(ref.kind, ref.fact, lacking), set()).add(ref)
    return topics


def _lacking(reason: NoRow | NoQuotient) -> str:
    if isinstance(reason, NoRow):
        keys = join_words([str(key) for key in reason.keys])
        return f"the table {reason.table.replace('_', ' ')} has no row for {keys}"
    return "the working would divide by nothing"


def _asked(refs: Iterable[FactRef], facts: Facts, walk: Walk) -> tuple[Asked, ...]:
    things = [facts.thing(ref.kind, ref.ref) for ref in refs]
    asked = [Asked(each.ref, each.label, walk.stop_of(each), each.place) for each in things]
    return tuple(sorted(asked, key=lambda each: (each.stop.order, each.place, each.ref)))


def _question(
    topic: Topic, here: _Hanging, asked: tuple[Asked, ...], facts: Facts, trials: Trials
) -> OpenQuestion:
    fact = KINDS[topic.kind].fact(topic.fact)
    ask = fact.ask if fact else ""
    if topic.lacking:
        ask = f"Here {topic.lacking}: check what the job states, or look it up in the code itself."
    return OpenQuestion(
        kind=topic.kind,
        fact=topic.fact,
        label=_label(topic),
        ask=ask or "Say it in the job file.",
        settles=here.settles,
        helps=len(here.checks) - here.settles,
        along=tuple(sorted({_label(other) for other in here.others})),
        weight=min((check.rule.weight for check in here.checks), key=WEIGHTS.index),
        things=asked,
        everywhere=_is_everywhere(topic, asked, facts),
        answers=trials.answers(here.checks),
    )


def _label(topic: Topic) -> str:
    fact = KINDS[topic.kind].fact(topic.fact)
    return fact.label if fact else topic.lacking


def _is_everywhere(topic: Topic, asked: tuple[Asked, ...], facts: Facts) -> bool:
    """Whether it is asked at every box, or else of every thing of its kind; of two at least."""
    boxes = {each.stop.box for each in asked}
    if "" not in boxes:
        return 1 < len(boxes) == len(facts.things["box"])
    return 1 < len(asked) == len(facts.things[topic.kind])
