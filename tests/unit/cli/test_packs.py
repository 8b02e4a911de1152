from pathlib import Path

import pytest

from linter.vocabulary.kinds import KINDS
from tests.unit.cli.running import PACKS, ROOT, Runner

BOATHOUSE = ROOT / "tests/cases/packs/example-boathouse"


def own_pack(folder: Path, old: str = "", new: str = "") -> str:
    """A folder with the boathouse pack in it, one text of its wire ends changed."""
    pack = folder / "packs" / "example-boathouse"
    pack.mkdir(parents=True)
    for path in BOATHOUSE.glob("*.yaml"):
        text = path.read_text(encoding="utf-8")
        (pack / path.name).write_text(text.replace(old, new), encoding="utf-8")
    return str(folder / "packs")


def test_the_list_names_each_pack_what_it_stands_on_and_what_it_holds(precover: Runner) -> None:
    ran = precover("packs", "list", "--packs", PACKS)
    said = ran.said
    assert (ran.status, ran.err) == (0, "")
    assert "example-boathouse Boathouse Wiring Code" in said
    assert "stands by itself; 3 rules, 2 items to look at, 1 measure, 1 table and 6 limits" in said
    assert "on example-boathouse; 3 rules" in said


def test_a_pack_that_is_refused_is_said_and_the_others_are_listed(
    precover: Runner, tmp_path: Path
) -> None:
    packs = own_pack(tmp_path, "at least least_free_length\n", "at least leest_free_length\n")
    ran = precover("packs", "list", "--packs", packs)
    assert ran.status == 65
    assert "leest_free_length" in ran.err
    assert "Nearest: least_free_length" in ran.err
    assert "us-nec-2023" in ran.out


def test_a_rule_is_shown_with_its_clause_its_limits_and_the_layer_behind_each_value(
    precover: Runner,
) -> None:
    county = ("--pack", "example-boathouse-county", "--packs", PACKS)
    ran = precover("packs", "show", "wire-end-long-enough", *county)
    said = ran.said
    assert ran.status == 0
    for words in (
        "wire-end-long-enough, violation, by example-boathouse-county",
        'About: each wire end, from the stage "pulled" on',
        "Need: wire_end.free_length at least least_free_length",
        "limit least_free_length = 8 in",
        "4-2 of Boathouse Wiring Code 2021, read in",
        "by example-boathouse-county, at",
        "Reedmere asks for longer ends; 9-2 of Reedmere County Code 2022",
        "Measure the conductor from the end of its sheath.",
        "1 holds, 1 breaks, 1 cannot tell",
    ):
        assert words in said


def test_a_rule_is_shown_with_its_measures_and_tables(precover: Runner) -> None:
    ran = precover("packs", "show", "box-has-room", "--pack", "example-boathouse", "--packs", PACKS)
    said = ran.said
    assert "measure box.fill, The volume that a box must have." in said
    assert "total = conductors + bonds" in said
    assert "table conductor_volume" in said
    assert "Doubt: The handout does not say how the share is rounded." in said


def test_a_rule_that_no_pack_has_is_wrong_use_with_the_nearest_name(precover: Runner) -> None:
    ran = precover("packs", "show", "box-has-rom", "--packs", PACKS)
    assert ran.status == 64
    assert '"box-has-rom" is not a rule of any pack at hand.' in ran.err
    assert "Nearest: box-has-room." in ran.err


def test_a_pack_whose_proofs_come_out_is_status_0(precover: Runner) -> None:
    ran = precover("packs", "prove", "example-boathouse", "--packs", PACKS)
    assert (ran.status, ran.err) == (0, "")
    assert "every case comes out as stated" in ran.said


def test_a_proof_that_comes_out_otherwise_is_status_1_and_shows_the_case(
    precover: Runner, tmp_path: Path
) -> None:
    packs = own_pack(
        tmp_path, "breaks: {wire_end.free_length: 5.9 in}", "breaks: {wire_end.free_length: 6.1 in}"
    )
    ran = precover("packs", "prove", "example-boathouse", "--packs", packs)
    assert ran.status == 1
    for words in (
        "rule wire-end-long-enough, case 2: holds.",
        "Expected: breaks.",
        "6.1 in at least 6 in",
    ):
        assert words in ran.out
    assert "1 case does not come out as stated" in ran.said


@pytest.mark.parametrize("words", [("packs", "prove", "a", "b"), ("packs", "show", "a", "b")])
def test_one_name_at_a_time(precover: Runner, words: tuple[str, ...]) -> None:
    ran = precover(*words)
    assert ran.status == 64
    assert "Only one" in ran.err


def test_a_pack_of_ones_own_does_not_take_the_name_of_one_that_comes_with_precover(
    precover: Runner, tmp_path: Path
) -> None:
    (tmp_path / "packs/us-nec-2023").mkdir(parents=True)
    (tmp_path / "packs/us-nec-2023/pack.yaml").write_text("pack: us-nec-2023\n", encoding="utf-8")
    ran = precover("packs", "list", "--packs", str(tmp_path / "packs"))
    assert ran.status == 64
    assert "has the name of a pack that comes with precover" in ran.err


@pytest.mark.parametrize("name", ["more.yml", "more.json", "MORE.YAML", "sub/more.yaml", "a/b.yml"])
def test_a_file_of_a_pack_that_would_not_be_read_is_refused(
    precover: Runner, tmp_path: Path, name: str
) -> None:
    packs = own_pack(tmp_path)
    more = tmp_path / "packs/example-boathouse" / name
    more.parent.mkdir(exist_ok=True)
    more.write_text("rubbish: [", encoding="utf-8")
    ran = precover("packs", "prove", "example-boathouse", "--packs", packs)
    assert ran.status == 65
    shown = name if "/" not in name else f"{name.partition('/')[0]}/"
    assert f"example-boathouse/{shown}:1:1  This f" in ran.err
    assert "files that end in .yaml, in the folder of the pack itself" in ran.err


def test_notes_and_pictures_may_stand_beside_the_files_of_a_pack(
    precover: Runner, tmp_path: Path
) -> None:
    packs = own_pack(tmp_path)
    (tmp_path / "packs/example-boathouse/README.md").write_text("Of whom to ask.", "utf-8")
    (tmp_path / "packs/example-boathouse/pictures").mkdir()
    assert precover("packs", "prove", "example-boathouse", "--packs", packs).status == 0


def test_the_folder_of_a_pack_stands_for_the_pack(
    precover: Runner, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    packs = own_pack(tmp_path)
    folder = f"{packs}/example-boathouse"
    assert precover("packs", "prove", "example-boathouse", "--packs", folder).status == 0
    assert precover("packs", "prove", folder).status == 0
    assert "example-boathouse Boathouse" in precover("packs", "list", "--packs", folder).said
    monkeypatch.chdir(folder)
    assert precover("packs", "prove", ".").status == 0


def test_folders_of_packs_add_up(precover: Runner, tmp_path: Path) -> None:
    packs = own_pack(tmp_path)
    town = tmp_path / "towns" / "example-town"
    town.mkdir(parents=True)
    county = (BOATHOUSE.parent / "example-boathouse-county/pack.yaml").read_text(encoding="utf-8")
    manifest = county.replace("example-boathouse-county", "example-town")
    (town / "pack.yaml").write_text(manifest, encoding="utf-8")
    several = ("--packs", packs, "--packs", str(town.parent), "--packs", str(town))
    ran = precover("packs", "prove", "example-town", *several)
    assert (ran.status, ran.err) == (0, "")


def test_two_packs_of_ones_own_are_not_called_alike(precover: Runner, tmp_path: Path) -> None:
    packs, others = own_pack(tmp_path), own_pack(tmp_path / "more")
    ran = precover("packs", "list", "--packs", packs, "--packs", others)
    assert ran.status == 64
    assert 'Two packs are called "example-boathouse"' in ran.err


def test_a_folder_without_a_pack_is_wrong_use(precover: Runner, tmp_path: Path) -> None:
    (tmp_path / "towns/example-town").mkdir(parents=True)
    (tmp_path / "towns/example-town/pack.yml").write_text("pack: example-town", encoding="utf-8")
    for command in (("list",), ("prove", "example-town")):
        ran = precover("packs", *command, "--packs", str(tmp_path / "towns"))
        assert ran.status == 64
        assert "holds no rule pack." in ran.err
        assert "Nearest: " in ran.err
        assert "example-town/pack.yml" in ran.err


def test_the_words_of_rules_are_told_by_kind_and_by_fact(precover: Runner) -> None:
    kinds = precover("packs", "words")
    assert (kinds.status, kinds.err) == (0, "")
    assert all(f"{kind.name}, {kind.meaning}" in kinds.said for kind in KINDS.values())
    wire_end = precover("packs", "words", "wire_end").said
    assert all(f"wire_end.{fact.name}, " in wire_end for fact in KINDS["wire_end"].facts)
    fact = precover("packs", "words", "wire_end.free_length").said
    assert "wire_end.free_length, length: " in fact
    assert "To learn it: " in fact


def test_the_words_of_a_pack_are_its_limits_tables_and_measures(precover: Runner) -> None:
    by = ("--pack", "example-boathouse", "--packs", PACKS)
    said = precover("packs", "words", *by).said
    assert "least_free_length = 6 in, The least length of a conductor" in said
    assert "conductor_volume, volume by size (exact): 2 rows" in said
    assert (
        "box.fill, measure of example-boathouse, volume"
        in precover("packs", "words", "box", *by).said
    )
    assert "total = conductors + bonds" in precover("packs", "words", "box.fill", *by).said
    fact = precover("packs", "words", "wire_end.free_length", *by).said
    assert "Asked by: wire-end-long-enough." in fact


def test_a_pack_may_be_told_by_its_folder_wherever_a_pack_is_told(
    precover: Runner, tmp_path: Path
) -> None:
    pack = own_pack(tmp_path) + "/example-boathouse"
    assert "4-2" in precover("packs", "show", pack).out
    assert "4-2" in precover("packs", "show", "wire-end-long-enough", "--pack", pack).out
    assert "example-boathouse" in precover("packs", "words", "box", "--pack", pack).out
    assert (
        "From example-boathouse to us-nec-2023"
        in precover("packs", "compare", pack, "us-nec-2023").said
    )


def test_the_folder_packs_that_one_works_beside_is_looked_into(
    precover: Runner, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    own_pack(tmp_path)
    monkeypatch.chdir(tmp_path)
    assert "4-2" in precover("packs", "show", "example-boathouse").out
    assert precover("packs", "prove", "example-boathouse").status == 0
    empty = tmp_path / "elsewhere" / "packs"
    empty.mkdir(parents=True)
    monkeypatch.chdir(empty.parent)
    refused = precover("packs", "prove", "example-boathouse")
    assert refused.status == 64
    assert "the folder of a pack, or --packs" in refused.err


def test_a_layer_told_by_its_folder_finds_the_pack_beside_it(
    precover: Runner, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    packs = Path(own_pack(tmp_path))
    town = packs / "example-boathouse-town"
    town.mkdir()
    manifest = (packs / "example-boathouse" / "pack.yaml").read_text(encoding="utf-8")
    manifest = manifest.replace("pack: example-boathouse", "pack: example-boathouse-town")
    manifest = manifest.replace("extends: nothing", "extends: example-boathouse")
    (town / "pack.yaml").write_text(manifest, encoding="utf-8")
    assert precover("packs", "prove", str(town)).status == 0
    monkeypatch.chdir(packs)
    assert precover("packs", "prove", "example-boathouse-town").status == 0
    monkeypatch.chdir(town)
    assert precover("packs", "prove", ".").status == 0
