"""Proofs of measures and rules: small cases, read with all their facts and kept as JSON text."""

import json
from collections.abc import Mapping, Sequence
from typing import Literal, NamedTuple, cast

from linter.packs.entries import Entry, Stated
from linter.packs.proof_trees import UNKNOWN, Tree, merged, read_tree, told_apart
from linter.packs.scopes import measure_type
from linter.packs.values import read_value, refusal_of
from linter.text import Place, Refusal
from linter.text.yaml_places import Node
from linter.units import NotAQuantity

Outcome = Literal[
    "holds", "breaks", "does not apply", "cannot tell", "gives", "listed", "not listed"
]
Proved = Literal["measure", "rule", "item"]
RULE_OUTCOMES: tuple[Outcome, ...] = ("holds", "breaks", "does not apply", "cannot tell")
MEASURE_OUTCOMES: tuple[Outcome, ...] = ("gives", "cannot tell")
ITEM_OUTCOMES: tuple[Outcome, ...] = ("listed", "not listed")
OUTCOMES: Mapping[Proved, tuple[Outcome, ...]] = {
    "rule": RULE_OUTCOMES,
    "measure": MEASURE_OUTCOMES,
    "item": ITEM_OUTCOMES,
}


class Proof(NamedTuple):
    """One case: what is to come out, the facts, and, where it cannot be told, because of which.

    `gives` is the value a measure comes to, with its text; `about` the kind of the subject; `layer`
    the pack that states the case.
    """

    what: Proved
    name: str
    about: str
    outcome: Outcome
    facts: Tree
    because: tuple[str, ...]
    gives: object
    written: str
    story: str
    layer: str
    place: Place


def read_proofs(entry: Entry, refusals: list[Refusal]) -> list[Proof]:
    """The cases of a measure, a rule or an item whose kind is known; an item may have none.

    A case that a layer proves takes the place of the one below that has the same facts.
    """
    if "proofs" not in entry.fields:
        return []
    common = _common(entry, refusals)
    cases: list[Proof] = []
    for number, stated in enumerate((entry.fields["proofs"], *entry.proved)):
        node = stated.node.fields["proofs"] if number else stated.node
        read = [_read(entry, common, Stated(case, stated.layer), refusals) for case in node.items]
        known = [each for each in read if each is not None]
        cases = _over(cases, known, refusals) if number else known
    return cases


def _common(entry: Entry, refusals: list[Refusal]) -> Tree:
    """The facts common to all cases: those given, and those that layers give when they prove."""
    own = entry.fields.get("given")
    nodes = [each.node.fields["given"] for each in entry.proved if "given" in each.node.fields]
    common: Tree = {}
    for node in [*([own.node] if own is not None else []), *nodes]:
        common = merged(common, read_tree(node, entry.fields["about"].text, refusals))
    return common


def _over(below: Sequence[Proof], above: Sequence[Proof], refusals: list[Refusal]) -> list[Proof]:
    """The cases of both, in order; of two with the same facts, the upper one."""
    cases = list(below)
    places = {told_apart(each.facts): number for number, each in enumerate(below)}
    for case in above:
        number = places.get(told_apart(case.facts))
        if number is None:
            cases.append(case)
        elif _comes_out(case) == _comes_out(cases[number]):
            refusals.append(_as_below(case, cases[number]))
        else:
            cases[number] = case
    return cases


def _comes_out(case: Proof) -> tuple[object, ...]:
    return case.outcome, sorted(case.because), case.gives


def _as_below(case: Proof, below: Proof) -> Refusal:
    return Refusal(
        case.place,
        "The case comes out as one of the layers below says already",
        "a case that comes out otherwise here, or a new one",
        "leave it out",
        also=(below.place, "stated"),
    )


def to_text(proofs: Sequence[Proof]) -> str:
    """The proofs as JSON text."""
    return json.dumps(proofs, ensure_ascii=False, separators=(",", ":"))


def from_text(text: str) -> tuple[Proof, ...]:
    """The proofs that `to_text` wrote."""
    read = [Proof._make(fields) for fields in json.loads(text)]
    return tuple(
        each._replace(because=tuple(each.because), place=Place(*each.place)) for each in read
    )


def _read(entry: Entry, common: Tree, stated: Stated, refusals: list[Refusal]) -> Proof | None:
    case, about = stated.node, entry.fields["about"].text
    what = cast("Proved", entry.key.what)  # limits and tables have no cases
    outcomes = OUTCOMES[what]
    told = [outcome for outcome in outcomes if outcome in case.fields]
    problem = _problem(case, told, outcomes)
    if problem is not None:
        refusals.append(problem)
        return None
    outcome = told[0]
    facts_node = case.fields["when" if outcome == "gives" else outcome]
    facts = merged(common, read_tree(facts_node, about, refusals))
    because = (
        tuple(each.text for each in case.fields["because"].items)
        if "because" in case.fields
        else ()
    )
    gives = case.fields.get("gives")
    return Proof(
        what,
        entry.key.name,
        about,
        outcome,
        facts,
        because,
        None if gives is None else _gives(entry, gives, refusals),
        "" if gives is None else gives.text,
        case.fields["story"].text if "story" in case.fields else "",
        stated.layer,
        case.place,
    )


def _gives(entry: Entry, node: Node, refusals: list[Refusal]) -> object:
    try:
        return read_value(node, measure_type(entry))
    except NotAQuantity as error:
        refusals.append(refusal_of(error, node))
        return None


def _problem(case: Node, told: Sequence[Outcome], outcomes: Sequence[Outcome]) -> Refusal | None:
    """What is wrong with the keys of a case, taken together."""
    if len(told) != 1:
        found = "says nothing of what is to come out" if not told else f"says {' and '.join(told)}"
        return Refusal(
            case.place, f"The case {found}", f"one of: {', '.join(outcomes)}", "say one of them"
        )
    wanted = {"gives": ["when"], "cannot tell": ["because"]}.get(told[0], [])
    allowed = {told[0], "story", *wanted}
    missing = next((name for name in wanted if name not in case.fields), None)
    if missing is not None:
        words = "the facts with which it does" if missing == "when" else "the facts it hangs on"
        mend = f'add "{missing}{_as_far_as_seen(case, told[0])}"'
        return Refusal(case.place, f'The case has no "{missing}"', words, mend)
    extra = next((name for name in case.fields if name not in allowed), None)
    if extra is not None:
        return Refusal(
            case.keys[extra],
            f'"{extra}" does not belong to a case that says "{told[0]}"',
            "",
            f'leave "{extra}" out',
        )
    return None


def _as_far_as_seen(case: Node, told: Outcome) -> str:
    """What a missing "because" says, where the case itself states facts to be unknown."""
    unsaid = [name for name, node in case.fields[told].fields.items() if node.text == UNKNOWN]
    return f": [{', '.join(unsaid)}]" if unsaid else ""
