"""Rules and items whose reference wants confirming: held to advice, with what is unsure and why."""

from collections.abc import Iterator

from linter.packs.model import History, Item, Pack, Rule, Unsure
from linter.packs.reliance import reliance_of


def held(pack: Pack) -> Pack:
    """The pack with every rule and item that is unsure at most advice.

    A rule is unsure where its clause is not confirmed for the edition at hand, or where its clause
    or that of what it uses is of low confidence. That what it uses is not confirmed does not count:
    who confirms a rule confirms it with its values.
    """
    rules = tuple(_rule(pack, each) for each in pack.rules)
    return pack._replace(rules=rules, items=tuple(map(_item, pack.items)))


def _rule(pack: Pack, rule: Rule) -> Rule:
    unsure = (*_own("rule", rule), *_used(pack, rule))
    return rule._replace(weight="advice", unsure=unsure) if unsure else rule


def _item(item: Item) -> Item:
    unsure = tuple(_own("item", item))
    return item._replace(weight="advice", unsure=unsure) if unsure else item


def _own(what: str, each: Rule | Item) -> Iterator[Unsure]:
    if each.clause.unconfirmed_in:
        yield Unsure(what, each.name, "not confirmed for this edition")
    if _is_low(each.history):
        yield Unsure(what, each.name, "low confidence")


def _used(pack: Pack, rule: Rule) -> Iterator[Unsure]:
    """What the rule uses, also through measures, that is of low confidence."""
    conditions = [each for each in (rule.where, rule.need) if each is not None]
    used = reliance_of(conditions, pack.library)
    histories = [
        *(("limit", name, pack.limits[name].history) for name in used.limits),
        *(("table", name, pack.tables[name].history) for name in used.tables),
        *(("measure", ".".join(key), pack.measures[key].history) for key in used.measures),
    ]
    for what, name, history in histories:
        if _is_low(history):
            yield Unsure(what, name, "low confidence")


def _is_low(history: History) -> bool:
    return any(clause.confidence for clause, _ in history.holding)
