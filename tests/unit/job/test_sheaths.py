import pytest

from linter.job.sheaths import read_sheath
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
    ],
)
def test_what_sheaths_say(text: str, gauge: int, colours: str, kind: str, bond: bool) -> None:
    sheath = read_sheath(text)
    assert sheath.size.value == pytest.approx(awg_area(gauge))
    assert sheath.colours == tuple(colours.split())
    assert (sheath.type, sheath.has_bond, str(sheath)) == (kind, bond, text)


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
