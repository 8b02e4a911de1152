"""Measures and rules: their expressions and sentences, checked."""

from collections.abc import Mapping
from typing import cast

from linter.language.checked import Checked, limits_used
from linter.language.evaluate import evaluate
from linter.language.library import Library, Measure
from linter.packs.clauses import Ground, read_history
from linter.packs.entries import Change, Entry, Key, Stated
from linter.packs.expressions import Names, read_expression, read_sentence
from linter.packs.model import Days, History, Item, PackMeasure, Rule, Sentence, Weight
from linter.packs.scopes import Grounds, kind_of, measure_type, refuse_double_meanings
from linter.text import Place, Refusal
from linter.text.yaml_places import Node
from linter.units import Unknown
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import FactRef, FactType, Thing
from linter.vocabulary.shorthand import YES_NO

FIRST_STAGE = "pulled"
PERMITS_FROM, PERMITS_UNTIL = "for permits from", "for permits until"


class Reader:
    """What reading measures and rules needs: grounds, words, what was withdrawn."""

    def __init__(
        self,
        ground: Ground,
        grounds: Grounds,
        words: Mapping[str, str],
        withdrawn: Mapping[Key, Change],
    ) -> None:
        self.ground, self.grounds, self.words = ground, grounds, words
        self.withdrawn = withdrawn
        self.refusals = ground.refusals

    def history(self, entry: Entry) -> History:
        """Where the entry was first stated, and what layers changed since."""
        return read_history(entry, self.ground)

    def measure(self, entry: Entry) -> PackMeasure | None:
        """The measure with its steps; None where it is refused."""
        history = self.history(entry)
        if kind_of(entry.fields["about"].node, self.refusals) is None:
            return None
        refuse_double_meanings(entry, self.grounds, self.refusals)
        steps = self.steps(entry)
        if steps is None:
            return None
        measure = Measure(entry.key.about, entry.key.name, measure_type(entry), steps)
        return PackMeasure(measure, text_of(entry, "meaning"), history)

    def steps(self, entry: Entry) -> tuple[tuple[str, Checked], ...] | None:
        """The steps in order, each seeing those before it; None from the first that is refused."""
        stated = entry.fields["steps"]
        types: dict[str, FactType] = {}
        steps: list[tuple[str, Checked]] = []
        nodes = stated.node.items
        for node in nodes:
            name, value = next(iter(node.fields.items()))
            if name in types or name in self.grounds.limits or name in self.grounds.lists:
                self.refusals.append(_step_named_twice(node, name))
                return None
            expect = measure_type(entry) if node is nodes[-1] else None
            names = self.names(entry.key.about, types)
            checked = read_expression(Stated(value, stated.layer), names, expect, self.refusals)
            if checked is None:
                return None
            types[name] = checked.type
            steps.append((name, checked))
        return tuple(steps)

    def rule(self, entry: Entry) -> Rule | None:
        """The rule; None where it is refused."""
        history = self.history(entry)
        if kind_of(entry.fields["about"].node, self.refusals) is None:
            return None
        about = entry.fields["about"].text
        names = self.names(about)
        where = self.condition(entry, "where", names)
        need = self.condition(entry, "need", names)
        sentences = {name: self.sentence(entry, name, names) for name in ("say", "do", "caution")}
        if need is None or (where is None and "where" in entry.fields):
            return None
        return Rule(
            entry.key.name,
            about,
            text_of(entry, "from stage") or FIRST_STAGE,
            where,
            need,
            cast("Weight", text_of(entry, "weight")),  # the schema lets nothing else stand there
            text_of(entry, "subject"),
            sentences["say"],
            sentences["do"],
            sentences["caution"],
            history,
            cast("Weight", text_of(entry, "weight")),
            permits=_days(entry, self.refusals),
        )

    def condition(self, entry: Entry, name: str, names: Names) -> Checked | None:
        """The condition in a field of a rule; None where it has none or it is refused."""
        if name not in entry.fields:
            return None
        return read_expression(entry.fields[name], names, YES_NO, self.refusals)

    def sentence(self, entry: Entry, name: str, names: Names) -> Sentence:
        """The sentence in a field of a rule; empty where it has none."""
        if name not in entry.fields:
            return ()
        return read_sentence(entry.fields[name], names, self.refusals)

    def names(self, about: str, steps: Mapping[str, FactType] | None = None) -> Names:
        """What an expression about a kind may name."""
        return Names(self.grounds.scope(about, steps), self.words, self.withdrawn)


def at_rest_by(rule: Rule | Item, entry: Entry, library: Library, refusals: list[Refusal]) -> str:
    """The yes-or-no limit that alone makes the `where` of a rule or item false whatever the facts.

    Empty where it can be true. It is refused where it is false for another reason.
    """
    where = rule.where
    if where is None or _may_apply(where, library):
        return ""
    for name in sorted(limits_used(where)):
        value = library.limits[name]
        if isinstance(value, bool) and _may_apply(where, library.with_limit(name, not value)):
            return name
    stated = entry.fields["where"]
    refusals.append(
        Refusal(
            stated.node.place,
            f'The {entry.key.what} "{rule.name}" can never apply: '
            'its "where" is false whatever the facts are',
            "a condition that some job can meet",
            "mend the condition or the limit it names, or withdraw the rule",
        )
    )
    return ""


def _may_apply(where: Checked, library: Library) -> bool:
    return evaluate(where, _all_unknown(where.subject), library) is not False


def _days(entry: Entry, refusals: list[Refusal]) -> Days:
    """The first and the last day of the permits that a rule is for."""
    first, last = text_of(entry, PERMITS_FROM), text_of(entry, PERMITS_UNTIL)
    if first and last and last < first:
        node = entry.fields[PERMITS_UNTIL].node
        found, mend = f"The rule is for permits until {last}, and from {first}", "swap the two days"
        refusals.append(Refusal(node.place, found, f"a day from {first} on", mend))
    return first, last


def _all_unknown(kind: str) -> Thing:
    facts = KINDS[kind].facts
    values: dict[str, object] = {
        fact.name: Unknown([FactRef(kind, kind, fact.name)]) for fact in facts
    }
    return Thing(kind, kind, Place("", 1, 1), values)


def _step_named_twice(node: Node, name: str) -> Refusal:
    return Refusal(
        node.keys[name],
        f'"{name}" names this step and another step or a limit',
        "one meaning for one name",
        "give the step another name",
    )


def text_of(entry: Entry, name: str) -> str:
    """What stands in a field of the entry; empty where it has none."""
    return entry.fields[name].text if name in entry.fields else ""
