from tests.unit.cli.running import Runner


def test_a_box_is_shown_with_cables_joints_pigtails_terminals_and_caps(precover: Runner) -> None:
    ran = precover("makeup", "boathouse.yaml", "winch")
    assert (ran.status, ran.err) == (0, "")
    for words in (
        "CAUTION An aid for a person to confirm",
        "winch, slip, at boathouse.yaml:26:3",
        "k2, 12/2 NM-B, to bench: black hot (slip); white neutral (slip); bare bond",
        "hot (slip): k2.black, k3.black and a pigtail to winch.hot (3 conductors, 3 of 12 AWG)",
        "1 white, 12 AWG",
        "winch, hot: the pigtail from k2.black and k3.black",
        "Cap k4.black",
        "a licensed electrician",
    ):
        assert words in ran.said


def test_a_box_that_the_job_has_not_is_wrong_use_with_the_nearest(precover: Runner) -> None:
    ran = precover("makeup", "boathouse.yaml", "whinch")
    assert ran.status == 64
    assert '"whinch" is not a box of this job.' in ran.err
    assert "Nearest: winch." in ran.err


def test_a_job_that_is_not_understood_is_refused(precover: Runner) -> None:
    assert precover("makeup", "nowhere.yaml", "winch").status == 65
