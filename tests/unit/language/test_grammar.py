"""The grammar: without conflicts, without nameless words, and apart from the vocabulary's names."""

import logging
import re
from importlib.resources import files

import lark
import pytest

from linter.language.parse import parse
from linter.language.print import to_text
from linter.text import Place
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import Thing

GRAMMAR = files("linter.language").joinpath("grammar.lark").read_text(encoding="utf-8")
KEYWORDS = set(re.findall(r'^[A-Z]+: "([a-z]+)"$', GRAMMAR, re.MULTILINE))


def conflicts(grammar: str, caplog: pytest.LogCaptureFixture) -> list[str]:
    """What the parser's maker remarks on: a word that could be taken in two ways."""
    with caplog.at_level(logging.DEBUG, logger=lark.logger.name):
        lark.Lark(grammar, start="expression", parser="lalr", lexer="basic", debug=True)
    return [each.getMessage() for each in caplog.records if "onflict" in each.getMessage()]


def test_no_word_can_be_taken_in_two_ways(caplog: pytest.LogCaptureFixture) -> None:
    assert not conflicts(GRAMMAR, caplog)


def test_a_conflict_would_be_noticed(caplog: pytest.LogCaptureFixture) -> None:
    ambiguous = 'expression: expression PLUS expression | ONE\nPLUS: "+"\nONE: "1"'
    assert conflicts(ambiguous, caplog)


def test_every_word_of_the_language_has_a_name() -> None:
    productions = [line for line in GRAMMAR.splitlines() if re.match(r"[?_]?[a-z_]+:", line)]
    assert productions
    assert not [line for line in productions if '"' in line]


def test_every_production_has_a_remark_with_an_example() -> None:
    lines = GRAMMAR.splitlines()
    begins = [index for index, line in enumerate(lines) if re.match(r"[?_]?[a-z_]+:", line)]
    remark = re.compile(r"// .*\.  +\S")
    assert not [lines[index] for index in begins if not remark.match(lines[index - 1])]


def test_every_example_of_the_grammar_is_of_the_language() -> None:
    examples = re.findall(r"^// .*?\.  +(\S.*)$", GRAMMAR, re.MULTILINE)
    whole = [each for each in examples if not each.startswith(('("', "(conductor.size"))]
    assert len(whole) == len(examples) - 2  # a list of words and keys stand only within others
    for each in whole:
        tree = parse(each, Place("grammar", 1, 1))
        assert parse(to_text(tree), Place("grammar", 1, 1)) == tree


def test_no_name_of_the_vocabulary_is_a_word_of_the_language() -> None:
    names = {fact.name for kind in KINDS.values() for fact in kind.facts} | set(KINDS)
    assert not names & KEYWORDS


def test_no_fact_is_called_what_a_thing_itself_has() -> None:
    own = {name for name in dir(Thing) if not name.startswith("_")}
    facts = {(kind.name, fact.name) for kind in KINDS.values() for fact in kind.facts}
    assert not [each for each in facts if each[1] in own]
