"""Laws of the job file: any text is read or refused; order and notation change nothing."""

import copy
import json
from pathlib import Path
from typing import Any

import yaml
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import BaseModel, ValidationError

from linter.job.jobs import Job
from linter.jobfile import read_job
from linter.jobfile.schema import job_validator
from linter.jobfile.things import job_fields
from linter.text import Refused
from linter.text.yaml_places import read_places

SOUND = (Path(__file__).parents[1] / "cases" / "jobs" / "boathouse.yaml").read_text("utf-8")
PLAIN: Any = read_places(SOUND, "boathouse.yaml").plain()
WORDS = st.sampled_from(
    ["unknown", "none", "yes", "no", "6 in", "20 A", "-1 m", "12/2 NM-B", "k1", "k2.black", "panel",
     "slip", "doors", "hot of 3", "feed", "receptacle", "ground-fault", "", "2026-02-30", "white"]
)  # fmt: skip
SCALARS = st.one_of(
    WORDS,
    st.booleans(),
    st.none(),
    st.integers(min_value=-2, max_value=50),
    st.floats(allow_nan=False, allow_infinity=False),
    st.text(max_size=12),
)
VALUES = st.recursive(
    SCALARS,
    lambda inner: st.one_of(
        st.lists(inner, max_size=3), st.dictionaries(st.one_of(WORDS, st.text(max_size=8)), inner)
    ),
    max_leaves=6,
)


def paths(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    steps: Any = ()
    if isinstance(value, dict):
        steps = value.items()
    elif isinstance(value, list):
        steps = enumerate(value)
    return [path, *(deep for step, each in steps for deep in paths(each, (*path, step)))]


PATHS = [path for path in paths(PLAIN) if path]


def at(value: Any, path: tuple[Any, ...]) -> Any:
    for step in path:
        value = value[step]
    return value


def read_or_refused(text: str) -> Job | None:
    """The job, or None if it is refused as a refusal should be: in place, in words, in order."""
    try:
        return read_job(text, "boathouse.yaml")
    except Refused as refused:
        refusals = refused.refusals
    places = [each.place for each in refusals]
    lines = text.count("\n") + 2
    assert places
    assert places == sorted(places)
    assert all(1 <= each.line <= lines and each.column >= 1 for each in places)
    assert all(each.found and each.render() for each in refusals)
    return None


@given(st.text())
def test_any_text_is_read_or_refused(text: str) -> None:
    read_or_refused(text)


@given(st.lists(st.sampled_from([*SOUND.split("\n"), "  ", "- ", "a: ", "{", "}", "[", "]", "|"])))
def test_lines_of_a_job_in_any_order_are_read_or_refused(lines: list[str]) -> None:
    read_or_refused("\n".join(lines))


@given(st.integers(min_value=0, max_value=len(SOUND)), st.integers(0, 40), st.text(max_size=6))
def test_a_job_with_some_characters_changed_is_read_or_refused(
    start: int, length: int, put: str
) -> None:
    read_or_refused(SOUND[:start] + put + SOUND[start + length :])


def mutated(job: Any, path: tuple[Any, ...], how: str, value: Any, other: str) -> None:
    above, step = at(job, path[:-1]), path[-1]
    if how == "drop":
        del above[step]
    elif how == "replace":
        above[step] = value
    elif isinstance(above, list):
        above.insert(step, copy.deepcopy(above[step]))
    elif how == "double":
        above[other] = copy.deepcopy(above[step])
    else:
        above[other] = above.pop(step)


@st.composite
def mutants(draw: st.DrawFn) -> Any:
    job = copy.deepcopy(PLAIN)
    for _ in range(draw(st.integers(1, 3))):
        path = draw(st.sampled_from(PATHS))
        if path not in paths(job):
            continue  # an earlier change has taken it away
        how = draw(st.sampled_from(["drop", "double", "rename", "replace"]))
        mutated(job, path, how, draw(VALUES), draw(st.one_of(WORDS, st.text(max_size=8))))
    return job


@settings(max_examples=150)
@given(mutants())
def test_a_job_with_parts_dropped_doubled_renamed_or_replaced_is_read_or_refused(job: Any) -> None:
    read_or_refused(json.dumps(job))


@given(st.sampled_from(PATHS), st.sampled_from(["misspelt", "nothing", "a list"]))
def test_one_mistake_gives_one_refusal_wherever_it_is_made(path: tuple[Any, ...], how: str) -> None:
    job = copy.deepcopy(PLAIN)
    above, step = at(job, path[:-1]), path[-1]
    if how != "misspelt":
        above[step] = None if how == "nothing" else [[]]
    elif isinstance(above, dict):
        kept = {(f"{key}x" if key == step else key): above[key] for key in above}
        above.clear()
        above.update(kept)
    try:
        read_job(json.dumps(job), "boathouse.json")
    except Refused as refused:
        found = [each.found for each in refused.refusals]
    else:
        found = []
    # Some names nothing refers to; and a key that is not misspelt in a list changes nothing.
    assert len(found) == 1 or (how == "misspelt" and not found)


STATED = st.one_of(
    WORDS,
    st.sampled_from(
        ["20", "1/2 in", "18 ft 6 in", "2 m2", "3 in3", "12 AWG", "240 V", "0 V", "0 in", "7.2 kW",
         "-300 C", "4 in x 2 in", "x"]
    ),
    st.booleans(),
    st.integers(-3, 30),
    st.lists(st.just("6 in"), max_size=1),
)  # fmt: skip
LEAVES = [
    path
    for path in PATHS
    if not isinstance(at(PLAIN, path), (dict, list))
    and path[0] in ("boxes", "cables", "rooms", "panel", "appliances", "usual")
    and path[-1] in (
        "volume", "height", "set_back", "free_length", "support_spacing", "sheath_inside", "rating",
        "main", "area", "load", "voltage", "distance_to_sink", "distance_to_edge", "directory",
        "finished", "damp", "sink", "wet", "clamped", "tamper_resistant", "plated", "count", "size",
        "wet_rated", "bond_screw", "outdoors", "opening", "sheath", "length", "loop",
        "domed_canopy",
    )
]  # fmt: skip


@settings(max_examples=200)
@given(st.sampled_from(LEAVES), STATED)
def test_schema_and_models_give_the_same_answer(path: tuple[Any, ...], value: Any) -> None:
    job = copy.deepcopy(PLAIN)
    at(job, path[:-1])[path[-1]] = value
    fields = job_fields(read_places(json.dumps(job), "boathouse.json"))
    try:
        Job.model_validate({"name": "", **fields})
        taken = True
    except ValidationError:
        taken = False
    assert job_validator().is_valid(job) == taken


def without_places(thing: Any) -> Any:
    if isinstance(thing, BaseModel):
        fields = {name: getattr(thing, name) for name in type(thing).model_fields}
        kept = {name for name in fields if name not in ("place", "field_places")}
        return {name: without_places(fields[name]) for name in kept}
    if isinstance(thing, dict):
        return {key: without_places(each) for key, each in thing.items()}
    if isinstance(thing, tuple) and not hasattr(thing, "_fields"):
        return [without_places(each) for each in thing]
    return thing


def shuffled(value: Any, draw: st.DrawFn) -> Any:
    if isinstance(value, dict):
        return {key: shuffled(value[key], draw) for key in draw(st.permutations(list(value)))}
    if isinstance(value, list):
        return [shuffled(each, draw) for each in value]
    return value


@st.composite
def orders(draw: st.DrawFn) -> Any:
    return shuffled(PLAIN, draw)


@settings(max_examples=30)
@given(orders())
def test_the_order_of_keys_changes_nothing_but_places(job: Any) -> None:
    read = read_or_refused(json.dumps(job))
    assert read is not None
    assert without_places(read) == without_places(read_job(SOUND, "boathouse.yaml"))


@settings(max_examples=30)
@given(st.sampled_from([None, 1, 4]), st.booleans(), st.booleans())
def test_yaml_and_json_of_one_job_are_the_same_job(
    indent: int | None, flow: bool, ascii_only: bool
) -> None:
    texts = (
        json.dumps(PLAIN, indent=indent, ensure_ascii=ascii_only),
        yaml.safe_dump(PLAIN, default_flow_style=flow, indent=indent or 2, sort_keys=False),
    )
    same = without_places(read_job(SOUND, "boathouse.yaml"))
    for text in texts:
        read = read_or_refused(text)
        assert read is not None
        assert without_places(read) == same
