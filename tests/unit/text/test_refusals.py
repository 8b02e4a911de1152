"""Refusals as they are shown, one by one and together."""

from linter.text import Place, Refusal, Refused

KILN = Place("kiln-room.yaml", 14, 12)


def test_a_refusal_has_four_parts_in_order() -> None:
    refusal = Refusal(
        KILN,
        '"recepticle" is not a kind of device',
        "one of: receptacle, switch, luminaire, splice only",
        'write "receptacle", or describe the device under "other devices"',
        ("receptacle",),
    )
    assert str(refusal) == (
        'kiln-room.yaml:14:12  "recepticle" is not a kind of device.\n'
        "    Expected one of: receptacle, switch, luminaire, splice only.\n"
        "    Nearest: receptacle.\n"
        '    To mend: write "receptacle", or describe the device under "other devices".'
    )


def test_parts_that_are_empty_are_left_out() -> None:
    assert Refusal(KILN, "Nothing is written here.", "", "").render() == (
        "kiln-room.yaml:14:12  Nothing is written here."
    )


def test_a_second_place_is_named() -> None:
    first = Place("kiln-room.yaml", 8, 3)
    refusal = Refusal(KILN, '"bench" names two boxes', "", "", also=(first, "first stated"))
    assert "First stated at kiln-room.yaml:8:3." in str(refusal)


def test_text_of_the_file_cannot_steer_the_terminal_or_forge_a_line() -> None:
    refusal = Refusal(KILN, '"\x1b[31mred\u202e\nkiln.yaml:1:1" is no box', "", "")
    assert "\x1b" not in str(refusal)
    assert "\u202e" not in str(refusal)
    assert "\n" not in str(refusal)


def test_refusals_stand_in_file_order() -> None:
    later, earlier = (Refusal(Place("a.yaml", line, 1), "x", "", "") for line in (10, 9))
    assert Refused([later, earlier]).refusals == (earlier, later)


def test_fifty_are_shown_and_the_rest_is_counted() -> None:
    many = [Refusal(Place("a.yaml", line, 1), "x", "", "") for line in range(1, 54)]
    assert str(Refused(many[:50])).count("a.yaml") == 50
    assert "more" not in str(Refused(many[:50]))
    assert str(Refused(many[:51])).endswith("\n1 more is not shown.")
    assert str(Refused(many)).endswith("a.yaml:50:1  x.\n3 more are not shown.")
    assert len(Refused(many).refusals) == 53
