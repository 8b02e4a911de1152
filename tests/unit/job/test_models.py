import pytest
from pydantic import ValidationError

from linter.job.boxes import Box
from linter.job.cables import Cable, CableEnd
from linter.job.panel import Breaker
from linter.text import Place

HERE, THERE = Place("boathouse.yaml", 4, 3), Place("boathouse.yaml", 2, 9)


def test_a_box_reads_texts_and_keeps_how_they_are_written() -> None:
    box = Box.model_validate(
        {"place": HERE, "name": "bench", "room": "slip", "volume": "22.5 in3", "cover": "yes"}
    )
    assert str(box.volume) == "22.5 in3"
    assert box.cover is True
    assert box.bond_screw is None


def test_a_thing_knows_where_its_fields_are_stated() -> None:
    box = Box.model_validate(
        {
            "place": HERE,
            "name": "bench",
            "room": "slip",
            "depth": None,
            "field_places": {"depth": THERE},
        }
    )
    assert (box.says("depth"), box.says("height")) == (True, False)
    assert (box.place_of("depth"), box.place_of("height")) == (THERE, HERE)


@pytest.mark.parametrize(
    "wrong", [{"depth": "3 A"}, {"depth": 3}, {"cover": 1}, {"colour": "grey"}]
)
def test_a_model_takes_no_other_dimension_type_or_key(wrong: dict[str, object]) -> None:
    with pytest.raises(ValidationError):
        Box.model_validate({"place": HERE, "name": "bench", "room": "slip", **wrong})


def test_a_two_pole_breaker_takes_two_spaces_of_one_side() -> None:
    breaker = Breaker.model_validate({"place": HERE, "panel": "panel", "space": 2, "poles": 2})
    assert breaker.spaces == (2, 4)


@pytest.mark.parametrize(
    ("stated", "colours"),
    [
        ({"sheath": "12/2 NM-B"}, ("black", "white", "bare")),
        ({"sheath": "12/2 NM-B without ground"}, ("black", "white")),
        ({"sheath": "12/2 NM-B", "conductors": ["red", "black"]}, ("red", "black")),
        ({}, None),
    ],
)
def test_the_colours_of_a_cable(stated: dict[str, object], colours: tuple[str, ...] | None) -> None:
    end = CableEnd(place=HERE)
    fields = {"place": HERE, "name": "k1", "from_": "a", "to": "b", "at_from": end, "at_to": end}
    assert Cable.model_validate({**fields, **stated}).colours == colours
