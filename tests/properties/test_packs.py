"""Laws of packs: what order may not change, and that any text is read or refused."""

import json
from collections.abc import Callable
from typing import Any

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from linter.packs.assemble import assemble
from linter.packs.data import pack_from_data, pack_to_data
from linter.packs.model import Pack
from linter.packs.pack_text import PackText
from linter.text import Refusal, Refused
from linter.text.yaml_places import read_places
from tests.cases.small_packs import BASE, COUNTY, GUILD, edited, texts_of, with_guild

FEW = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def shown(pack: Pack) -> str:
    """All that a pack is, apart from the name of its texts."""
    return json.dumps(pack_to_data(pack._replace(key="")))


@pytest.fixture(scope="module")
def county() -> Pack:
    return assemble(texts_of(edited({})), BASE, [COUNTY])


def test_a_pack_with_an_empty_layer_is_itself_but_for_the_layer() -> None:
    files = with_guild("# nothing is changed\n")
    del files[GUILD]["own.yaml"]
    laid = assemble(texts_of(files), BASE, [GUILD])
    alone = assemble(texts_of(files), BASE)
    assert [layer.id for layer in laid.layers] == [BASE, GUILD]
    assert shown(laid._replace(layers=())) == shown(alone._replace(layers=()))


@FEW
@given(order=st.permutations(["a", "b", "c", "d"]))
def test_the_order_of_files_and_packs_changes_nothing(county: Pack, order: list[str]) -> None:
    texts = [
        PackText(text.id, {path: text.files[path] for path in rank(text.files, order)})
        for text in rank(texts_of(edited({})), order)
    ]
    assert shown(assemble(texts, BASE, [COUNTY])) == shown(county)


def rank(things: Any, order: list[str]) -> list[Any]:
    """The things in an order that the drawn one gives."""
    return [each for _, each in sorted(zip(order, things, strict=False), key=lambda pair: pair[0])]


AMENDMENTS = (
    "- {limit: least_free_length, value: 9 in, clause: {id: 1, known: memory}, reason: Longer.}",
    "- {rule: box-has-room, weight: danger, clause: {id: 2, known: memory}, reason: Hot.}",
    "- {table: conductor_volume, add: [[6 AWG, 5 in3]], clause: {id: 3, known: memory}, reason: x}",
    "- {table: conductor_volume, remove: [[12 AWG]], clause: {id: 4, known: memory}, reason: x}",
    "- {rule: box-has-room, say: Too small., clause: {id: 5, known: memory}, reason: Shorter.}",
)


def effective(pack: Pack) -> object:
    """What rules and values come to, without the places they came from."""
    data = json.loads(shown(pack))
    rows = {name: sorted(map(str, each.table.rows)) for name, each in pack.tables.items()}
    limits = {name: (each.value, each.written) for name, each in pack.limits.items()}
    return rows, limits, [[*rule[:10], *rule[11:]] for rule in data["rules"]]


@FEW
@given(order=st.permutations(AMENDMENTS))
def test_amendments_of_different_things_commute(order: list[str]) -> None:
    one = assemble(
        texts_of(with_guild("amends:\n" + "".join(f"  {a}\n" for a in order))), BASE, [GUILD]
    )
    other = assemble(
        texts_of(with_guild("amends:\n" + "".join(f"  {a}\n" for a in AMENDMENTS))), BASE, [GUILD]
    )
    assert effective(one) == effective(other)


def test_layers_without_order_commute() -> None:
    layer = f"amends:\n  {AMENDMENTS[1]}\n"
    texts = texts_of(with_guild(layer))
    one = assemble(texts, BASE, [COUNTY, GUILD])
    other = assemble(texts, BASE, [GUILD, COUNTY])
    assert shown(one) == shown(other)


def test_a_pack_is_the_same_after_the_cache(county: Pack) -> None:
    assert shown(pack_from_data(json.loads(json.dumps(pack_to_data(county))))) == shown(county)


def refusals_of(do: Callable[[], object]) -> tuple[Refusal, ...]:
    """What is refused on the way; nothing where it is done. Any other error is a failure."""
    try:
        do()
    except Refused as refused:
        return refused.refusals
    return ()


@given(text=st.text(max_size=60) | st.text(alphabet="ab:-[]{}'\"|>&*!%#@,? \n\t", max_size=40))
@settings(max_examples=300, deadline=None)
def test_any_text_is_read_or_refused(text: str) -> None:
    refusals = refusals_of(lambda: read_places(text, "any.yaml").plain())
    assert all(each.place.line > 0 and each.place.column > 0 for each in refusals)
    assert all(each.render() for each in refusals)


JSON = st.recursive(
    st.none() | st.booleans() | st.integers(-9, 9) | st.text(alphabet="ab {}.", max_size=5),
    lambda below: (
        st.lists(below, max_size=2) | st.dictionaries(st.text(max_size=3), below, max_size=2)
    ),
    max_leaves=6,
)
FILES = edited({})[BASE]


def ways(value: object, way: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """The ways to every place of a document."""
    found = [way]
    items = (
        value.items()
        if isinstance(value, dict)
        else enumerate(value)
        if isinstance(value, list)
        else ()
    )
    for key, below in items:
        found.extend(ways(below, (*way, key)))
    return found


def put(document: Any, way: tuple[Any, ...], value: object) -> Any:
    if not way:
        return value
    copy = dict(document) if isinstance(document, dict) else list(document)
    copy[way[0]] = put(copy[way[0]], way[1:], value)
    return copy


DOCUMENTS = {name: read_places(text, name).plain() for name, text in FILES.items()}
PLACES = [(name, way) for name, document in DOCUMENTS.items() for way in ways(document)]


@settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(place=st.sampled_from(PLACES), value=JSON)
def test_anything_in_any_place_of_a_pack_is_read_or_refused(
    place: tuple[str, tuple[Any, ...]], value: object
) -> None:
    name, way = place
    broken = yaml.safe_dump(put(DOCUMENTS[name], way, value), sort_keys=False, width=10_000)
    files = {**FILES, name: broken}
    refusals = refusals_of(lambda: assemble(texts_of({BASE: files}), BASE))
    assert list(refusals) == sorted(refusals, key=lambda each: each.place)
