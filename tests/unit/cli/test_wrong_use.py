"""Command lines that are not understood: status 64, what was expected, the nearest word."""

import pytest

from linter.cli.guides import GUIDES
from tests.unit.cli.running import Runner


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (
            [],
            ["A command is missing.", ", ".join(GUIDES)],
        ),
        (["audti", "a.yaml"], ['"audti" is not a command.', "Nearest: audit."]),
        (["packs"], ['"packs" needs one more word.', "packs list, packs show, packs prove"]),
        (["packs", "lst"], ['"packs lst" is not a command.', "Nearest: packs list."]),
        (["audit"], ["A file to audit is missing."]),
        (["audit", "a.yaml", "--from", "json"], ['"--from" is not an option', "Nearest: --form."]),
        (["audit", "a.yaml", "--form", "jsno"], ['"jsno" is not a form.', "Nearest: json."]),
        (["audit", "a.yaml", "--form"], ["--form has no value."]),
        (["audit", "a.yaml", "--hold-on", "dangre"], ["is not a weight.", "Nearest: danger."]),
        (["audit", "a.yaml", "--packs", "nowhere"], ['"nowhere" is not a folder.']),
        (["audit", "a.yaml", "--form", "json", "--form", "text"], ["--form is given twice"]),
        (["makeup"], ["A job file and the name of a box are missing."]),
        (["packs", "prove"], ["Which pack to prove is missing."]),
        (["packs", "prove", "example-nowhere"], ['There is no pack "example-nowhere".']),
        (["packs", "show"], ["Which rule to show is missing."]),
        (["packs", "words", "bxo"], ['"bxo" is no kind of thing.', "Nearest: box."]),
        (
            ["packs", "words", "box.marked_volme"],
            ['A box has no fact "marked_volme".', "Nearest: marked_volume"],
        ),
        (["packs", "words", "box", "cable"], ["Only one kind or fact can be shown."]),
        (["packs", "list", "all"], ['"all" is one word too many.']),
    ],
    ids=lambda value: " ".join(value) if isinstance(value, list) else None,
)
def test_a_command_line_that_is_not_understood(
    precover: Runner, words: list[str], said: list[str]
) -> None:
    ran = precover(*words)
    assert (ran.status, ran.out) == (64, "")
    for each in said:
        assert each in ran.err


@pytest.mark.parametrize(
    "command",
    ["audit", "makeup", "trace", "packs list", "packs show", "packs prove", "packs words"],
)
def test_every_command_tells_what_it_does_when_asked(precover: Runner, command: str) -> None:
    ran = precover(*command.split(), "--help")
    assert (ran.status, ran.err) == (0, "")
    assert ran.out.startswith(f"precover {command}")
    assert f"precover {command}" in precover("--help").out


def test_the_commands_on_packs_are_told_when_asked(precover: Runner) -> None:
    assert precover("packs", "--help").out == precover("--help").out


def test_the_version_is_told(precover: Runner) -> None:
    assert precover("--version").out.startswith("precover 0.")


@pytest.mark.parametrize("name", GUIDES)
def test_every_command_that_is_told_of_can_be_run(precover: Runner, name: str) -> None:
    """One that is not there would be our own fault, with status 70."""
    ran = precover(*name.split(), "--no-such-option")
    assert (ran.status, '"--no-such-option" is not an option' in ran.err) == (64, True)
