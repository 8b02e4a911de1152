"""Mutants of packs: whatever is changed in a rule, a measure or a limit, some proof notices."""

import pytest

from linter.packs.assemble import assemble
from linter.packs.pack_text import PackText
from linter.resources import rulesets_dir
from tests.cases.small_packs import BASE, COUNTY, edited, texts_of
from tests.mutation.mutants import mutants_of


def shipped() -> list[PackText]:
    return [
        PackText(
            folder.name,
            {
                path.relative_to(rulesets_dir().parent).as_posix(): path.read_text("utf-8")
                for path in sorted(folder.glob("*.yaml"))
            },
        )
        for folder in sorted(rulesets_dir().iterdir())
        if folder.is_dir()
    ]


def base_of(text: PackText) -> str:
    """What the pack stands on at the bottom, or the pack itself."""
    manifest = next(words for path, words in text.files.items() if path.endswith("pack.yaml"))
    line = next(line for line in manifest.splitlines() if line.startswith("extends:"))
    below = line.removeprefix("extends:").strip()
    lower = {each.id: each for each in shipped()}
    return text.id if below == "nothing" else base_of(lower[below])


# Mutants that change nothing, each with the reason.
ALIKE = {
    "limit small_heater_current: 13.3 to 10.64": (
        "from 10.64 A to 13.3 A, half as much again comes up to 20 A in the table of breakers, too"
    ),
}


@pytest.mark.parametrize("text", shipped(), ids=lambda text: text.id)
def test_no_mutant_of_a_shipped_pack_survives(text: PackText) -> None:
    base = base_of(text)
    mutants = list(mutants_of(assemble(shipped(), base, [text.id]), text.id))
    assert mutants
    survivors = [mutant.change for mutant in mutants if mutant.survives()]
    assert not [change for change in survivors if change not in ALIKE]


@pytest.mark.parametrize("layer", [BASE, COUNTY])
def test_no_mutant_of_the_examples_survives(layer: str) -> None:
    mutants = list(mutants_of(assemble(texts_of(edited({})), BASE, [layer]), layer))
    assert mutants
    assert not [mutant.change for mutant in mutants if mutant.survives()]


def test_a_missing_proof_lets_a_mutant_survive() -> None:
    breaks = "      - breaks: {wire_end.free_length: 5.9 in}\n"
    case = {"edit": {"wire-ends.yaml": {"from": breaks, "to": ""}}}
    mutants = mutants_of(assemble(texts_of(edited(case)), BASE), BASE)
    assert [mutant.change.partition(":")[0] for mutant in mutants if mutant.survives()] == [
        "limit least_free_length"
    ]
