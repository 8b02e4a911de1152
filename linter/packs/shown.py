"""Words, units and titles that manifests choose for showing, checked."""

from collections.abc import Collection, Iterator, Mapping, Sequence

from linter.packs.texts import PackFiles
from linter.packs.values import WIRE, dimension_named
from linter.text import Place, Refusal, nearest
from linter.units import AREA, DIMENSIONS_BY_NAME, unit_names
from linter.vocabulary.kinds import KINDS


def read_words(ordered: Sequence[PackFiles], refusals: list[Refusal]) -> dict[str, str]:
    """The word shown for each word of ours that a manifest replaces; the uppermost layer's."""
    ours = dict.fromkeys(our_words())  # in their order, so that nearest names come in one, too
    words: dict[str, str] = {}
    for pack, name, place in _stated(ordered, "words"):
        if name in ours:
            words[name] = pack.manifest.words[name]
        else:
            refusals.append(
                Refusal(
                    place,
                    f'"{name}" is not a word that precover shows',
                    "the name of a kind, of a fact, or a word that a fact can be",
                    "write the word as precover has it",
                    nearest(name, ours),
                )
            )
    return words


def read_units(ordered: Sequence[PackFiles], refusals: list[Refusal]) -> dict[str, str]:
    """The unit in which each dimension is written; upper layers over lower ones."""
    units: dict[str, str] = {}
    for pack, name, place in _stated(ordered, "units"):
        unit = pack.manifest.units[name]
        refused = unit_refused(name, unit, place, pack.manifest_node.at(["units", name]).place)
        if refused is None:
            units[name] = unit
        else:
            refusals.append(refused)
    return units


def read_titles(
    ordered: Sequence[PackFiles], rules: Collection[str], refusals: list[Refusal]
) -> dict[str, dict[str, str]]:
    """The titles of rules by language; upper layers over lower ones.

    A title is refused whose rule the layers have nowhere; one whose rule a layer took away is left
    out.
    """
    titles: dict[str, dict[str, str]] = {}
    for pack in ordered:
        node = pack.manifest_node.fields.get("titles")
        for language, named in pack.manifest.titles.items():
            for rule, title in named.items():
                if rule in rules:
                    titles.setdefault(language, {})[rule] = title
                elif pack is ordered[-1] and node is not None:
                    place = node.fields[language].keys[rule]
                    refusals.append(_no_rule(place, rule, rules))
    return titles


def _no_rule(place: Place, rule: str, rules: Collection[str]) -> Refusal:
    return Refusal(
        place,
        f'"{rule}" is not a rule of this pack',
        "the name of a rule",
        "correct the name, or leave the title out",
        nearest(rule, rules),
    )


def unit_refused(name: str, unit: str, place: Place, unit_place: Place) -> Refusal | None:
    """What there is to say against writing a dimension in a unit; None where nothing is."""
    known = [WIRE if each == "area" else each for each in DIMENSIONS_BY_NAME if each != "number"]
    if name not in known:
        mend = f'write "{WIRE}"' if name == "area" else "write the name of a dimension"
        expected = f"one of: {', '.join(known)}"
        found = f'"{name}" is no dimension'
        return Refusal(place, found, expected, mend, nearest(name, known))
    names = unit_names(AREA if name == WIRE else dimension_named(name))
    if unit in names:
        return None
    found, expected = f'"{unit}" is no unit for {name}', f"one of: {', '.join(names)}"
    return Refusal(unit_place, found, expected, "write one of these units", nearest(unit, names))


def all_words(shown: Mapping[str, str]) -> dict[str, str]:
    """Every word of ours with the word that is shown for it."""
    return {word: shown.get(word, word) for word in our_words()}


def our_words() -> Iterator[str]:
    """The words of the vocabulary: kinds, facts, and what facts can be."""
    for kind in KINDS.values():
        yield kind.label
        yield kind.plural
        for fact in kind.facts:
            yield fact.label
            yield from fact.type.words


def _stated(ordered: Sequence[PackFiles], section: str) -> Iterator[tuple[PackFiles, str, Place]]:
    for pack in ordered:
        node = pack.manifest_node.fields.get(section)
        for name, place in node.keys.items() if node is not None else ():
            yield pack, name, place
