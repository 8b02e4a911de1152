"""What cannot be told yet, by the measurement that would settle it, the most useful first."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, NamedTuple

from linter.audit.findings import WEIGHTS, Asked, OpenQuestion
from linter.language.verdict import NoQuotient, NoRow
from linter.text import join_words, nearest
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import FactRef

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from linter.audit.judging import Untold
    from linter.audit.stops import Walk
    from linter.audit.trials import Trials
    from linter.audit.wording import Wording
    from linter.facts import Facts
    from linter.language.library import Library
    from linter.language.tables import Table
    from linter.language.writing import Writer


class Topic(NamedTuple):
    """What a question asks for: a fact of a kind of thing, or a row that a table lacks."""

    kind: str
    fact: str
    lacking: str = ""


class _Hanging(NamedTuple):
    """The checks that hang on a topic, those that hang on it alone, the facts, and other topics."""

    checks: list[Untold]
    alone: list[Untold]
    asked: set[FactRef]
    others: dict[Topic, None]


_MOST_ROWS_TOLD = 8
Lacks = Callable[["NoRow | NoQuotient"], str]


def lacks_of(library: Library, write: Writer) -> Lacks:
    """A function that says what a working lacks where all its facts are known."""

    def lacks(reason: NoRow | NoQuotient) -> str:
        if isinstance(reason, NoQuotient):
            return "a division by nothing"
        table = library.tables[reason.table]
        told = [
            write(each, key.type, None) for each, key in zip(reason.keys, table.keys, strict=False)
        ]
        said = f"no row in {reason.table.replace('_', ' ')} for {join_words(told)}"
        near = _rows_near(table, reason.keys)
        return f"{said}; there is {join_words(near, 'or')}" if near else said

    return lacks


def _rows_near(table: Table, keys: tuple[object, ...]) -> tuple[str, ...]:
    """The rows that a text without a row was probably meant for: near it, or of words like its."""
    if len(table.keys) > 1 or not isinstance(keys[0], str):
        return ()
    there = [str(row[0]) for row in table.rows]
    like = {each: _words_like(keys[0].split(), each.split()) for each in there}
    most = max(like.values(), default=0)
    alike = [each for each, count in like.items() if count == most > 0]
    return nearest(keys[0], there) or tuple(alike[:_MOST_ROWS_TOLD])


def _words_like(said: Iterable[str], words: Iterable[str]) -> int:
    """How many of the words said are among the words, or begin one that is no figure."""
    listed = list(words)
    return sum(
        any(each == one or (one.isalpha() and each.startswith(one)) for each in listed)
        for one in said
    )


def open_questions(
    untold: Iterable[Untold], facts: Facts, walk: Walk, trials: Trials, lacks: Lacks
) -> tuple[OpenQuestion, ...]:
    """The questions that would settle what is untold: the most useful first, then by name."""
    hanging: dict[Topic, _Hanging] = {}
    for check in untold:
        topics = _topics(check, lacks)
        for topic, refs in topics.items():
            here = hanging.setdefault(topic, _Hanging([], [], set(), {}))
            here.checks.append(check)
            here.asked.update(refs)
            here.alone.extend([check] if len(topics) == 1 else [])
            here.others.update(dict.fromkeys(other for other in topics if other != topic))
    questions = [
        _question(topic, here, _asked(here.asked, facts, walk), facts, trials)
        for topic, here in hanging.items()
    ]
    return tuple(sorted(questions, key=_usefulness))


def in_words(questions: Iterable[OpenQuestion], wording: Wording) -> tuple[OpenQuestion, ...]:
    """The questions as the trade of a pack asks them; what a row lacks is said by the pack."""
    return tuple(
        each._replace(
            label=each.label if each.lacking else wording.of(each.label),
            ask=wording.of(each.ask),
            along=tuple(map(wording.of, each.along)),
        )
        for each in questions
    )


def _usefulness(question: OpenQuestion) -> tuple[object, ...]:
    """The most useful first; what settles checks only together stands together."""
    together = sorted((question.label, *question.along))
    return -question.settles, -question.helps, question.kind, together, question.fact


def _topics(check: Untold, lacks: Lacks) -> Mapping[Topic, set[FactRef]]:
    topics: dict[Topic, set[FactRef]] = {}
    for reason in check.because:
        if isinstance(reason, FactRef):
            topics.setdefault(Topic(reason.kind, reason.fact), set()).add(reason)
            continue
        # A row may be asked for by what is no fact at all; then the subject itself is looked at.
        for ref in reason.facts or [FactRef(check.thing.kind, check.thing.ref, "")]:
            topics.setdefault(Topic(ref.kind, ref.fact, lacks(reason)), set()).add(ref)
    return topics


def _asked(refs: Iterable[FactRef], facts: Facts, walk: Walk) -> tuple[Asked, ...]:
    things = [facts.thing(ref.kind, ref.ref) for ref in refs]
    asked = [Asked(each.ref, each.label, walk.stop_of(each), each.place) for each in things]
    return tuple(sorted(asked, key=lambda each: (each.stop.order, each.place, each.ref)))


def _question(
    topic: Topic, here: _Hanging, asked: tuple[Asked, ...], facts: Facts, trials: Trials
) -> OpenQuestion:
    fact = KINDS[topic.kind].fact(topic.fact)
    ask = (fact.ask if fact else "") or "Say it in the job file."
    if topic.lacking:
        ask = "Check what the job states, or look it up in the code itself."
    return OpenQuestion(
        kind=topic.kind,
        fact=topic.fact,
        label=_label(topic),
        ask=ask,
        lacking=topic.lacking,
        settles=len(here.alone),
        helps=len(here.checks) - len(here.alone),
        along=tuple(sorted({_label(other) for other in here.others})),
        weight=min((check.rule.weight for check in here.checks), key=WEIGHTS.index),
        things=asked,
        everywhere=_is_everywhere(topic, asked, facts),
        answers=trials.answers(here.checks),
    )


def _label(topic: Topic) -> str:
    fact = KINDS[topic.kind].fact(topic.fact)
    return topic.lacking or (fact.label if fact else topic.fact)


def _is_everywhere(topic: Topic, asked: tuple[Asked, ...], facts: Facts) -> bool:
    """Whether it is asked at every box, or else of every thing of its kind; of two at least."""
    boxes = {each.stop.box for each in asked}
    if "" not in boxes:
        return 1 < len(boxes) == len(facts.things["box"])
    return 1 < len(asked) == len(facts.things[topic.kind])
