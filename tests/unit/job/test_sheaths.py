import json

import pytest
import yaml

from linter.job.catalogue import ANY_METRIC, PAGE
from linter.job.sheaths import read_sheath
from linter.resources import rulesets_dir, schemas_dir
from linter.units import NotAQuantity, awg_area


@pytest.mark.parametrize(
    ("text", "gauge", "colours", "kind", "bond"),
    [
        ("12/2 NM-B", 12, "black white", "NM-B", True),
        ("14-2 NMD90", 14, "black white", "NMD90", True),
        ("6/3 NM-B", 6, "black red white", "NM-B", True),
        ("14/2/2 NM-B", 14, "black white red white-red", "NM-B", True),
        ("12/2 NM-B without ground", 12, "black white", "NM-B", False),
        ("12/2 NM-B with ground", 12, "black white", "NM-B", True),
        ("12/2 without bond", 12, "black white", "", False),
        ("14/4 NM-B", 14, "black red blue white", "NM-B", True),
        ("2/0-3 SER", -1, "black red white", "SER", True),
        ("10 AWG/3 UF-B", 10, "black red white", "UF-B", True),
        ("12/1 UF-B", 12, "black", "UF-B", True),
        ("12/2 NM-B w/G", 12, "black white", "NM-B", True),
        ("12-2 w/ground", 12, "black white", "", True),
        ("12/2 WG", 12, "black white", "", True),
        ("14/3 w/ gnd", 14, "black red white", "", True),
        ("12/2 NM-B w/o ground", 12, "black white", "NM-B", False),
        ("#12/2 NM-B", 12, "black white", "NM-B", True),
        ("12/2 nm-b W/Ground", 12, "black white", "NM-B", True),
        ("14/3 NMD90", 14, "black red white", "NMD90", True),
        ("12/2 NMD90 red", 12, "black red", "NMD90", True),
        ("12/2 nmd90 Red jacket", 12, "black red", "NMD90", True),
        ("12/3 NMD90 red", 12, "black red white", "NMD90", True),
        ("12/2 NM-B red", 12, "black white", "NM-B", True),
    ],
)
def test_what_sheaths_say(text: str, gauge: int, colours: str, kind: str, bond: bool) -> None:
    sheath = read_sheath(text)
    assert sheath.size.value == pytest.approx(awg_area(gauge))
    assert sheath.colours == tuple(colours.split())
    assert (sheath.type, sheath.has_bond, str(sheath)) == (kind, bond, text)


@pytest.mark.parametrize(
    ("text", "size", "colours", "kind", "bond"),
    [
        ("3G2.5", 2.5, "brown blue", "", "green-yellow"),
        ("3g2,5 mm²", 2.5, "brown blue", "", "green-yellow"),
        ("3 G 2.5 mm2", 2.5, "brown blue", "", "green-yellow"),
        ("4G1.5", 1.5, "brown black grey", "", "green-yellow"),
        ("5G6", 6, "brown black grey blue", "", "green-yellow"),
        ("2x1.5", 1.5, "brown blue", "", ""),
        ("3\u00d71.5", 1.5, "brown black grey", "", ""),
        ("NYM-J 3x1.5", 1.5, "brown blue", "NYM-J", "green-yellow"),
        ("nym-o 2x1.5", 1.5, "brown blue", "NYM-O", ""),
        ("H05VV-F 3G0.75", 0.75, "brown blue", "H05VV-F", "green-yellow"),
    ],
)
def test_what_metric_sheaths_say(
    text: str, size: float, colours: str, kind: str, bond: str
) -> None:
    sheath = read_sheath(text)
    assert sheath.size.value == pytest.approx(size * 1e-6)
    assert sheath.colours == tuple(colours.split())
    assert (sheath.type, sheath.bond, str(sheath)) == (kind, bond, text)
    assert sheath.bond_size is not None
    assert sheath.bond_size.value == sheath.size.value
    assert not sheath.is_armour


@pytest.mark.parametrize(
    ("text", "words"),
    [("3G2.4", "2.4 mm2"), ("9G2.5", "9 conductors"), ("1G2.5", "1 conductors")],
)
def test_metric_sheaths_that_are_not_made(text: str, words: str) -> None:
    with pytest.raises(NotAQuantity, match=words):
        read_sheath(text)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "12",
        "12/2/3 NM-B",
        "12/0 NM-B",
        "99/2 NM-B",
        "NM-B 12/2",
        "12/2 NM-B, black",
        "12/2" * 50,
    ],
)
def test_what_is_no_sheath(text: str) -> None:
    with pytest.raises(NotAQuantity) as caught:
        read_sheath(text)
    assert caught.value.expected
    assert caught.value.mend


@pytest.mark.parametrize(
    ("text", "bond"),
    [
        ("12/2 NM-B", "bare"),
        ("12/2 mc", "green"),
        ("12/2 AC", "armour"),
        ("12/2 MC without ground", ""),
    ],
)
def test_the_bond_of_a_type(text: str, bond: str) -> None:
    assert read_sheath(text).bond == bond


@pytest.mark.parametrize(
    ("text", "near"),
    [("13/2 NM-B", ("14/2 NM-B", "12/2 NM-B")), ("5/3", ("6/3", "4/3")), ("22/2 MC", ())],
)
def test_a_size_that_no_cable_has_names_those_beside_it(text: str, near: tuple[str, ...]) -> None:
    with pytest.raises(NotAQuantity) as caught:
        read_sheath(text)
    assert "No cable is made of" in caught.value.found
    assert caught.value.nearest == near


@pytest.mark.parametrize(
    ("text", "bond"),
    [
        ("14/2 NM-B", 14),
        ("12/2 NM-B", 12),
        ("10/3 NM-B", 10),
        ("8/3 NM-B", None),
        ("14/2 NMD90", 14),
        ("12/2 NMD90", 14),
        ("12/2 NMD90 red", 14),
        ("10/3 NMD90", 12),
        ("8/3 NMD90", 10),
        ("6/3 NMD90", 8),
        ("4/3 NMD90", None),
    ],
)
def test_the_size_of_the_bond_in_a_cable(text: str, bond: int | None) -> None:
    size = read_sheath(text).bond_size
    assert (size and size.value) == (bond and pytest.approx(awg_area(bond)))


def test_every_entry_of_the_page_of_sheaths_can_be_used() -> None:
    schema = json.loads((schemas_dir() / "job.schema.json").read_text(encoding="utf-8"))
    colours = set(schema["$defs"]["colour"]["enum"])
    page = yaml.safe_load((rulesets_dir() / PAGE).read_text(encoding="utf-8"))["sheaths"]
    for entry in page:
        assert entry["known"] in {"read", "memory", "common-practice"}
        assert entry["known"] != "read" or entry["source"]
        for count, names in entry.get("conductors", {}).items():
            assert sum(map(int, count.rstrip("xG").split("/"))) == len(names) + count.count("G")
            assert colours.issuperset(names)
        for type_ in set(entry["types"]) - {ANY_METRIC}:
            made = read_sheath(" ".join(("12/2", type_, entry.get("jacket", ""))).strip())
            assert made.bond in {"bare", "green", "armour"}
            assert made.jacket == entry.get("jacket", "")
