from tests.unit.cli.running import PACKS, Runner


def test_a_box_is_shown_with_cables_joints_pigtails_terminals_and_caps(precover: Runner) -> None:
    ran = precover("makeup", "boathouse.yaml", "winch")
    assert (ran.status, ran.err) == (0, "")
    for words in (
        "CAUTION An aid to confirm, not an approval. Switch off, lock, test first.",
        "winch, slip, at boathouse.yaml:26:3",
        "k2, 12/2 NM-B, to bench: black hot of space 1 (slip); white neutral (slip); bare bond",
        "(slip): k2.black, k3.black and a pigtail to receptacle winch, hot (3 ",
        "1 white, 12 AWG",
        "receptacle winch, hot: pigtail from k2.black and k3.black",
        "Cap k4.black",
    ):
        assert words in ran.said


def test_a_box_that_the_job_has_not_is_wrong_use_with_the_nearest(precover: Runner) -> None:
    ran = precover("makeup", "boathouse.yaml", "whinch")
    assert ran.status == 64
    assert '"whinch" is not a box of this job.' in ran.err
    assert "Nearest: winch." in ran.err


def test_a_job_that_is_not_understood_is_refused(precover: Runner) -> None:
    assert precover("makeup", "nowhere.yaml", "winch").status == 65


def test_without_a_box_the_boxes_are_listed_room_by_room(precover: Runner) -> None:
    ran = precover("makeup", "boathouse.yaml")
    assert ran.status == 0
    assert ran.out.split() == ["slip", "bench", "winch", "loft", "top"]


def test_all_boxes_are_drawn_in_walking_order(precover: Runner) -> None:
    out = precover("makeup", "boathouse.yaml", "all").out
    places = [
        out.index(f"{box}, at boathouse") for box in ("bench, slip", "winch, slip", "top, loft")
    ]
    assert places == sorted(places)


def test_the_pack_of_the_job_gives_its_words_and_how_full_the_box_is(precover: Runner) -> None:
    without = precover("makeup", "boathouse.yaml", "winch").said
    assert "bare bond" in without
    with_pack = precover("makeup", "boathouse.yaml", "winch", "--packs", PACKS).said
    assert "bare earthing conductor" in with_pack
    assert "Fill: 17.8 in3 used of 20 in3, 2.2 in3 left." in with_pack
