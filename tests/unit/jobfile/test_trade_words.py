"""The words said on a site lead to words that can be written, and to nothing else."""

import json
import re

from linter.jobfile.trade_words import KEYS, PHRASES, VALUES
from linter.resources import schemas_dir

SCHEMA = (schemas_dir() / "job.schema.json").read_text(encoding="utf-8")


def _allowed(part: object) -> set[str]:
    """Every word that an enum or a pattern of alternatives of the schema allows."""
    if isinstance(part, list):
        return set().union(*map(_allowed, part))
    if not isinstance(part, dict):
        return {part} if isinstance(part, str) else set()
    found = {each for each in part.get("enum", ()) if isinstance(each, str)}
    if isinstance(part.get("const"), str):
        found.add(part["const"])
    roles = re.fullmatch(r"\^\((hot\|.*)\)\$", str(part.get("pattern", "")))
    if roles:
        plain = re.sub(r"\( of \\S\+\)\?|hot of \\S\+\|", "", roles[1])
        found |= {f"traveller {n}" for n in "12"} | set(plain.split("|"))
    inside = [each for key, each in part.items() if isinstance(each, dict | list)]
    return found.union(*(_allowed(each) for each in inside if each))


def test_each_word_leads_to_one_that_the_schema_allows() -> None:
    allowed = _allowed(json.loads(SCHEMA))
    assert {needs for needs, _, _ in PHRASES} | set(VALUES) <= allowed


def test_each_key_is_a_key_of_the_schema() -> None:
    assert {key for key in KEYS if f'"{key}": {{' not in SCHEMA} == set()


def test_no_word_is_said_twice_for_one_thing() -> None:
    for said in [*VALUES.values(), *KEYS.values(), *(each for _, _, each in PHRASES)]:
        words = said.split(", ")
        assert len(words) == len(set(words))
