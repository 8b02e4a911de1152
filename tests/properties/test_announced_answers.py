"""The law of open questions: filling an unknown gives the outcome that was announced for it."""

from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from linter.audit.hints import hints_of
from linter.audit.judging import Untold, in_force, judge_all
from linter.audit.trials import Trials
from linter.cli.shelf import Shelf
from linter.facts import Facts, facts_of
from linter.jobfile import read_job
from linter.language.judge import judge
from linter.language.library import Library
from linter.language.verdict import Verdict
from linter.packs.writing import writer_of
from linter.trace import trace
from linter.units import CURRENT, LENGTH, NUMBER, TEMPERATURE, Dimension, Unknown, read_quantity
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import FactRef
from linter.wiring import derive

STUDIO = Path(__file__).resolve().parents[2] / "examples/pottery-studio"
# The studio as pulled; and put right, but for one value that nobody knows, so that what hangs on it
# through measures and tables can be told from it alone.
JOBS = [("as-pulled.yaml", "", "")] + [
    ("put-right.yaml", known, f"{known.partition(':')[0]}: unknown")
    for known in (
        "ambient: 30 C", "rating: 40 A", "set_back: 1/8 in", "bend_radius: 3 in",
        "insulation_temperature: 90 C", "distance_to_sink: 12 ft", "largest_breaker: 40 A",
    )
]  # fmt: skip
REACH = {LENGTH: (0.0, 30.0), CURRENT: (0.2, 400.0), TEMPERATURE: (255.0, 360.0), NUMBER: (0, 60)}
ROUNDED = 2e-3  # how far an announced boundary may lie from the true one, written as it is
EXACT = 1e-9
OTHER = "any other answer"
When = tuple[tuple[str, str], ...]


class Asked(NamedTuple):
    """A check, the one fact that it hangs on, and what was announced."""

    check: Untold
    ref: FactRef
    dimension: Dimension
    when: When


class Studio(NamedTuple):
    """A studio, with all that can be asked of it about quantities."""

    facts: Facts
    library: Library
    asked: tuple[Asked, ...]


@cache
def studios() -> list[Studio]:
    return [studio(*each) for each in JOBS]


def studio(name: str, known: str, unknown: str) -> Studio:
    text = (STUDIO / name).read_text(encoding="utf-8")
    assert known in text
    job = read_job(text.replace(known, unknown, 1), name)
    pack = Shelf().pack_of(job)
    wiring = derive(job)
    facts = facts_of(job, wiring, trace(job, wiring))
    untold = judge_all(facts.things, in_force(pack.rules, "energised"), pack.library).untold
    trials = Trials(pack.library, writer_of(pack))
    return Studio(facts, pack.library, tuple(_asked(untold, trials)))


def _asked(untold: tuple[Untold, ...], trials: Trials) -> Iterator[Asked]:
    """One check of each rule and fact: the first."""
    seen = set()
    for check in untold:
        for ref in check.because:
            if not isinstance(ref, FactRef) or len(check.because) > 1:
                continue
            fact = KINDS[ref.kind].fact(ref.fact)
            dimension = fact.type.dimension if fact else None
            key = check.rule.name, ref.kind, ref.fact
            (answer,) = trials.answers([check])
            if dimension in REACH and answer.when and key not in seen:
                seen.add(key)
                yield Asked(check, ref, dimension, answer.when)


@contextmanager
def filled(facts: Facts, ref: FactRef, value: object) -> Iterator[None]:
    """The facts with the unknown filled in, wherever it shows."""
    places = [
        (thing, name, was)
        for things in facts.things.values()
        for thing in things
        for name, was in thing.__dict__.items()
        if type(was) is Unknown and was.because == {ref} and name == ref.fact
    ]
    for thing, name, _ in places:
        thing.__dict__[name] = value
    yield
    for thing, name, was in places:
        thing.__dict__[name] = was


def announced(when: When, value: float, dimension: Dimension) -> set[str]:
    """The outcomes announced for an answer."""
    stretches = [(_stretch(words, dimension), outcome) for words, outcome in when if words != OTHER]
    told = {
        outcome
        for (least, most), outcome in stretches
        if least <= value <= most or is_at(value, least) or is_at(value, most)
    }
    return told or {outcome for words, outcome in when if words == OTHER}


def is_too_near(when: When, value: float, dimension: Dimension) -> bool:
    """Whether a boundary, written as it is, lies too near an answer to say on which side it is."""
    ends = [_stretch(words, dimension) for words, _ in when]
    parting = [end for least, most in ends if least < most for end in (least, most)]
    return any(abs(value - end) <= ROUNDED * abs(value) for end in parting)


def is_at(value: float, end: float) -> bool:
    return abs(value - end) <= EXACT * abs(value)


def _stretch(words: str, dimension: Dimension) -> tuple[float, float]:
    if words in ("any answer", OTHER):
        return float("-inf"), float("inf")
    if words.endswith(" or more"):
        return _value(words.removesuffix(" or more"), dimension), float("inf")
    if words.startswith("more than "):
        return _value(words.removeprefix("more than "), dimension), float("inf")
    if words.endswith(" or less") or words.startswith("less than "):
        word = words.removesuffix(" or less").removeprefix("less than ")
        return float("-inf"), _value(word, dimension)
    least, _, most = words.partition(" to ")
    return _value(least, dimension), _value(most or least, dimension)


def _value(words: str, dimension: Dimension) -> float:
    return float(words) if dimension == NUMBER else read_quantity(words, dimension).value


@settings(deadline=None)
@given(st.data())
def test_an_answer_has_the_outcome_that_was_announced(data: Any) -> None:
    of = data.draw(st.sampled_from([each for each in studios() if each.asked]))
    asked = data.draw(st.sampled_from(range(len(of.asked))).map(of.asked.__getitem__))
    least, most = REACH[asked.dimension]
    # Most limits lie near the lower end.
    anywhere = st.floats(0, 1).map(lambda part: least + (most - least) * part**3)
    stated = hints_of(of.library)(asked.check.rule, asked.dimension)
    value = data.draw(st.one_of(anywhere, st.sampled_from(stated)) if stated else anywhere)
    if asked.dimension == NUMBER:
        value = float(round(value))
    assume(not is_too_near(asked.when, value, asked.dimension) or asked.dimension == NUMBER)
    expected = announced(asked.when, value, asked.dimension)
    with filled(of.facts, asked.ref, value):
        check = asked.check
        got = judge(check.rule.where, check.rule.need, check.thing, of.library)
    told = {got.value} if isinstance(got, Verdict) else set()
    assert told == expected, (asked.check.rule.name, asked.ref, value, asked.when)


def test_many_rules_are_asked_about() -> None:
    assert len({each.check.rule.name for of in studios() for each in of.asked}) >= 12
