"""Proofs run: what each case comes to, what it was to come to, and which cases are missing."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from itertools import chain
from typing import NamedTuple

from linter.language.checked import Checked
from linter.language.evaluate import evaluate, measure_of
from linter.language.judge import judge
from linter.language.library import Library, Measure
from linter.language.tree import MeasureOf, Variable
from linter.language.verdict import CannotTell, NoRow, Verdict
from linter.language.work import WorkLine, working
from linter.packs.amended import amended_since
from linter.packs.edges import edges_missing
from linter.packs.model import History, Item, Pack, Rule
from linter.packs.proofs import ITEM_OUTCOMES, Outcome, Proof, from_text
from linter.packs.reliance import may_be_unknown, reliance_of
from linter.packs.table_proofs import Watching, gaps
from linter.packs.things import path_of, subject_of
from linter.packs.touched import touched_by
from linter.packs.writing import writer_of
from linter.text import Place, join_words
from linter.units import Unknown, same_value
from linter.vocabulary.model import FactRef, Thing

# What is proved: "rule", "measure" or "item", the kind it is about, its name.
Proved = tuple[str, str, str]
_OUTCOMES: dict[Verdict, Outcome] = {
    Verdict.MET: "holds",
    Verdict.BROKEN: "breaks",
    Verdict.DOES_NOT_APPLY: "does not apply",
}


class Failing(NamedTuple):
    """A case that comes to something else or is missing, or a limit or table that nothing uses.

    `number` counts the cases of the rule or measure from 1; it is 0 where there is no case. `work`
    is the arithmetic of a case that could be worked out, `amended` says which layer changed what a
    case of a layer below rests on.
    """

    what: str
    name: str
    number: int
    place: Place
    expected: str
    actual: str
    story: str
    work: tuple[WorkLine, ...]
    amended: str = ""

    def render(self) -> str:
        """The failing case as it is shown, over several lines."""
        case = f", case {self.number}" if self.number else ""
        lines = [f"{self.place}  {self.what} {self.name}{case}: {self.actual}."]
        lines.append(f"Expected: {self.expected}.")
        lines.extend([self.amended] if self.amended else [])
        lines.extend(_line(each) for each in self.work)
        return "\n    ".join(lines)


def _line(work: WorkLine) -> str:
    """A step as it is shown: its name, the expression, the same with values, the result."""
    name = f"{work.name}: " if work.name else ""
    parts = dict.fromkeys((work.text, work.values, work.result))
    return name + " = ".join(parts)


class ProofReport(NamedTuple):
    """How many cases ran, for how many rules, measures and items that pick, and those that fail."""

    rules: int
    measures: int
    cases: int
    failing: tuple[Failing, ...]
    items: int = 0


def prove(pack: Pack, of_layer: str = "") -> ProofReport:
    """All cases of a pack run, and a line for each that fails or is missing, in file order.

    A limit or a table that nothing uses has a line as well: no case can speak for it. With
    `of_layer` only the cases run that hang on what that layer touches; the others come out as they
    do in the pack below it.
    """
    every = cases_of(pack)
    cases: Mapping[Proved, Sequence[Proof]] = every
    tables = frozenset(pack.tables)
    if of_layer:
        cases, tables = touched_by(pack, of_layer, every)
    failing = [each for proofs in cases.values() for each in failing_cases(pack, proofs)]
    failing.extend(_missing(pack, every))
    failing.extend(_unproved_items(pack, every))
    failing.extend(_one_sided(pack, cases))
    failing.extend(_idle(pack))
    if tables:
        failing.extend(each for each in _unproved_rows(pack, cases) if each.name in tables)
    failing.sort(key=lambda each: (each.place, each.number))
    ran = sum(map(len, cases.values()))
    items = sum(item.where is not None for item in pack.items)
    return ProofReport(len(pack.rules), len(pack.measures), ran, tuple(failing), items)


def cases_of(pack: Pack) -> dict[Proved, list[Proof]]:
    """The cases of each rule and measure, in file order."""
    cases: dict[Proved, list[Proof]] = {}
    for proof in from_text(pack.proofs):
        cases.setdefault((proof.what, proof.about, proof.name), []).append(proof)
    return cases


class _Actual(NamedTuple):
    """What a case comes to: the outcome in words, the reasons, the value of a measure."""

    outcome: str
    because: frozenset[str] = frozenset()
    value: object = None


def failing_cases(pack: Pack, cases: Sequence[Proof]) -> Iterator[Failing]:
    """A line for each of the cases of one rule or measure that does not come to what it says."""
    for number, proof in enumerate(cases, 1):
        thing = subject_of(proof)
        try:
            actual = _actual(pack, proof, thing)
        except AttributeError as error:
            if not isinstance(error.obj, Thing):
                raise
            said = (
                f"the proof says nothing of {path_of(FactRef('', error.obj.ref, error.name or ''))}"
            )
            yield _failing(proof, number, _expected(proof), said, ())
            continue
        if _is_awake(pack, proof, thing):
            yield _failing(proof, number, "at rest, as its limit says", "it applies", ())
        if not _as_expected(proof, actual):
            said = _said(pack, proof, actual)
            failing = _failing(proof, number, _expected(proof), said, _work(pack, proof, thing))
            yield failing._replace(amended=amended_since(pack, proof, _expressions(pack, proof)))


def _actual(pack: Pack, proof: Proof, thing: Thing) -> _Actual:
    if proof.what == "measure":
        return _measured(measure_of(proof.about, proof.name, thing, pack.library))
    if proof.what == "item":
        # What cannot be told of it keeps an item on the list.
        where = pack.item(proof.name).where
        library = _at_work(pack, pack.item(proof.name))
        listed = where is None or evaluate(where, thing, library) is not False
        return _Actual("listed" if listed else "not listed")
    rule = pack.rule(proof.name)
    found = judge(rule.where, rule.need, thing, _at_work(pack, rule))
    if isinstance(found, CannotTell):
        return _Actual("cannot tell", _paths(found.because))
    return _Actual(_OUTCOMES[found])


def _at_work(pack: Pack, rule: Rule | Item) -> Library:
    """The library in which the cases of a rule or an item run: that of one at rest is turned."""
    if not rule.at_rest_by:
        return pack.library
    return pack.library.with_limit(rule.at_rest_by, not pack.limits[rule.at_rest_by].value)


def _is_awake(pack: Pack, proof: Proof, thing: Thing) -> bool:
    """Whether what is at rest applies in the case all the same, with the limits of the pack."""
    if proof.what == "measure":
        return False
    rule = pack.rule(proof.name) if proof.what == "rule" else pack.item(proof.name)
    if not rule.at_rest_by or rule.where is None:
        return False
    return evaluate(rule.where, thing, pack.library) is not False


def _measured(value: object) -> _Actual:
    if isinstance(value, Unknown):
        return _Actual("cannot tell", _paths(value.because))
    return _Actual("gives", value=value)


def _paths(because: Iterable[object]) -> frozenset[str]:
    return frozenset(_path(reason) for reason in because)


def _path(reason: object) -> str:
    if isinstance(reason, FactRef):
        return path_of(reason)
    return f"no row in {reason.table}" if isinstance(reason, NoRow) else "divided by nothing"


def _as_expected(proof: Proof, actual: _Actual) -> bool:
    if actual.outcome != proof.outcome:
        return False
    if proof.outcome == "cannot tell":
        return actual.because == frozenset(proof.because)
    return proof.outcome != "gives" or _same(proof.gives, actual.value)


def _same(one: object, other: object) -> bool:
    if isinstance(one, float) and isinstance(other, float):
        return same_value(one, other)
    return one == other


def _expected(proof: Proof) -> str:
    if proof.outcome == "cannot tell":
        return f"cannot tell, because of {join_words(sorted(proof.because))}"
    return f"gives {proof.written}" if proof.outcome == "gives" else proof.outcome


def _said(pack: Pack, proof: Proof, actual: _Actual) -> str:
    if actual.outcome == "cannot tell":
        return f"cannot tell, because of {join_words(sorted(actual.because))}"
    if actual.outcome == "gives":
        type_ = pack.measures[proof.about, proof.name].measure.type
        return f"gives {writer_of(pack)(actual.value, type_, None)}"
    return actual.outcome


def _failing(
    proof: Proof, number: int, expected: str, actual: str, work: tuple[WorkLine, ...]
) -> Failing:
    return Failing(proof.what, proof.name, number, proof.place, expected, actual, proof.story, work)


def _work(pack: Pack, proof: Proof, thing: Thing) -> tuple[WorkLine, ...]:
    """The arithmetic of a case, as far as the facts it gives allow."""
    write, library = writer_of(pack), pack.library
    if proof.what == "rule":
        library = _at_work(pack, pack.rule(proof.name))
    lines: list[WorkLine] = []
    for checked in _expressions(pack, proof):
        try:
            lines.extend(working(checked, thing, library, write))
        except AttributeError as error:
            if not isinstance(error.obj, Thing):
                raise
    # The last line of a measure asks for the measure itself, which the line before has given.
    return tuple(lines[:-1] if proof.what == "measure" else lines)


def _expressions(pack: Pack, proof: Proof) -> list[Checked]:
    if proof.what == "measure":
        measure = pack.measures[proof.about, proof.name].measure
        return [measure_as_expression(measure)]
    if proof.what == "item":
        where = pack.item(proof.name).where
        return [] if where is None else [where]
    rule = pack.rule(proof.name)
    return [each for each in (rule.where, rule.need) if each is not None]


def measure_as_expression(measure: Measure) -> Checked:
    """The expression that asks for a measure of the subject itself."""
    subject = Variable(measure.kind, measure.kind)
    node = MeasureOf(subject, measure.kind, measure.name, measure.type)
    return Checked(measure.kind, measure.type, node)


def _missing(pack: Pack, cases: Mapping[Proved, Sequence[Proof]]) -> Iterator[Failing]:
    """A line for each case that a rule or a measure should have and has not."""
    for (what, about, name), proofs in cases.items():
        have = {proof.outcome for proof in proofs}
        for outcome in _wanted(pack, what, about, name):
            if outcome not in have:
                expected = f"a case that says {outcome}"
                actual = f"no case says {outcome}"
                yield Failing(what, name, 0, proofs[0].place, expected, actual, "", ())


def _unproved_items(pack: Pack, cases: Mapping[Proved, Sequence[Proof]]) -> Iterator[Failing]:
    """A line for each item of the walk-through that picks its things and has no case at all."""
    for item in pack.items:
        if item.where is not None and ("item", item.about, item.name) not in cases:
            place = item.history.origin_of("where").place
            expected = "a case that says listed, and one that says not listed"
            yield Failing("item", item.name, 0, place, expected, "it has no case", "", ())


def _wanted(pack: Pack, what: str, about: str, name: str) -> Iterator[Outcome]:
    if what == "item":
        yield from ITEM_OUTCOMES if pack.item(name).where is not None else ()
        return
    if what == "measure":
        yield "gives"
        steps = [checked for _, checked in pack.measures[about, name].measure.steps]
        if may_be_unknown(steps, pack.library):
            yield "cannot tell"
        return
    rule = pack.rule(name)
    yield "holds"
    yield "breaks"
    conditions = [rule.need]
    if rule.where is not None:
        yield "does not apply"
        conditions.append(rule.where)
    if may_be_unknown(conditions, pack.library):
        yield "cannot tell"


def _one_sided(pack: Pack, cases: Mapping[Proved, Sequence[Proof]]) -> Iterator[Failing]:
    """A line for each limit of a rule's need that its cases, all in order, do not stand around."""
    for rule in pack.rules:
        proofs = cases.get(("rule", rule.about, rule.name), ())
        if not proofs or any(failing_cases(pack, proofs)):
            continue

        def notices(changed: Pack, proofs: Sequence[Proof] = proofs) -> bool:
            return any(failing_cases(changed, proofs))

        for edge in edges_missing(pack, rule, notices):
            place = proofs[0].place
            yield Failing("rule", rule.name, 0, place, edge.wanted, edge.missing, "", ())


def _idle(pack: Pack) -> Iterator[Failing]:
    """A line for each limit and table that no rule, measure or worksheet uses."""
    used = reliance_of(_all_expressions(pack), pack.library)
    kept: list[tuple[str, str, History]] = [
        *(("limit", name, each.history) for name, each in pack.limits.items()),
        *(("table", name, each.history) for name, each in pack.tables.items()),
    ]
    for what, name, history in kept:
        if name not in (used.limits if what == "limit" else used.tables):
            expected = "a rule or a measure that uses it; else withdraw it, or leave it out"
            place = history.origin.place
            yield Failing(what, name, 0, place, expected, "nothing uses it", "", ())


def _unproved_rows(pack: Pack, cases: Mapping[Proved, Sequence[Proof]]) -> Iterator[Failing]:
    """A line for each table of which some rows are looked up by no case, or do not add up."""
    watching = Watching(pack.library)
    for proof in (proof for proofs in cases.values() for proof in proofs):
        thing = subject_of(proof)
        # Where a rule does not apply, what it needs is not looked up.
        asked = _expressions(pack, proof)[: 1 if proof.outcome == "does not apply" else None]
        for checked in asked:
            with suppress(AttributeError):  # of facts that the proof does not give
                evaluate(checked, thing, watching)
    used = reliance_of(_all_expressions(pack), pack.library).tables
    for gap in gaps(pack, watching.looked_up):
        if gap.table not in used:
            continue  # that nothing uses it is said already
        yield Failing("table", gap.table, 0, gap.place, gap.expected, gap.actual, "", ())


def _all_expressions(pack: Pack) -> Iterator[Checked]:
    """Every expression of the pack, those in sentences too."""
    rules = [(r.where, r.need, *r.say, *r.do, *r.caution) for r in pack.rules]
    items = [(each.where, *each.ask, *each.do, *each.caution) for each in pack.items]
    for part in chain.from_iterable((*rules, *items)):
        if isinstance(part, Checked):
            yield part
    for each in pack.measures.values():
        yield from (step for _, step in each.measure.steps)
    for sheet in pack.worksheets:
        yield from sheet.expressions
