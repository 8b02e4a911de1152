"""Laws of comparing packs: nothing differs from itself; the difference leads from one to other."""

from functools import cache
from itertools import permutations

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from linter.packs.assemble import assemble
from linter.packs.compare import compare
from linter.packs.laid_out import Entry, laid_out
from linter.packs.model import Pack
from tests.cases.shipped_packs import shipped_packs, with_layer
from tests.cases.small_packs import BASE, COUNTY, GUILD, edited, texts_of, with_guild

SHIPPED = [text.id for text in shipped_packs()]
Fields = dict[str, object]


@cache
def pack(name: str) -> Pack:
    """A shipped pack, put together once."""
    return with_layer(name)


def content(entries: tuple[Entry, ...]) -> dict[tuple[str, str], Fields]:
    return {
        each.key: {name: field.value for name, field in each.fields.items()} for each in entries
    }


def led_from(before: Pack, after: Pack) -> dict[tuple[str, str], Fields]:
    """The entries of the first pack once the difference of the two is applied to them."""
    found = compare(before, after)
    entries = content(laid_out(before))
    for gone in found.gone:
        del entries[gone.key]
    entries.update(content(found.added))
    for changed in found.changed:
        fields = entries[changed.before.key]
        for each in changed.differences:
            fields.pop(each.field, None)
            if each.after:
                fields[each.field] = changed.after.fields[each.field].value
    return entries


@pytest.mark.parametrize("name", SHIPPED)
def test_a_pack_does_not_differ_from_itself(name: str) -> None:
    assert compare(pack(name), with_layer(name)).is_empty


@pytest.mark.parametrize(("before", "after"), [*permutations(SHIPPED, 2)])
def test_the_difference_applied_to_one_pack_gives_the_other(before: str, after: str) -> None:
    one, other = pack(before), pack(after)
    assert led_from(one, other) == content(laid_out(other))


@settings(deadline=None)
@given(st.integers(1, 400), st.sampled_from(["in", "mm"]))
def test_an_amended_limit_is_the_one_difference(number: int, unit: str) -> None:
    base = assemble(texts_of(edited({})), BASE, [])
    value = f"{number} {unit}"
    assume(value != "6 in")  # an amendment that changes nothing is refused
    layer = (
        f"amends:\n  - limit: least_free_length\n    value: {value}\n"
        '    clause: {id: "9", known: memory}\n    reason: "So the guild has it."\n'
    )
    amended = assemble(texts_of(with_guild(layer)), BASE, [GUILD])
    found = compare(base, amended)
    differing = [
        (changed.after.name, each.field, each.before, each.after)
        for changed in found.changed
        for each in changed.differences
        if each.field != "clause"
    ]
    assert (found.added, found.gone) == ((), ())
    assert differing == [("least_free_length", "value", "6 in", value)]


def test_the_way_back_swaps_what_is_added_and_what_is_gone() -> None:
    texts = texts_of(edited({}))
    base, county = assemble(texts, BASE, []), assemble(texts, BASE, [COUNTY])
    there, back = compare(base, county), compare(county, base)
    assert {each.key for each in there.added} == {each.key for each in back.gone}
    assert {each.key for each in there.gone} == {each.key for each in back.added}
    assert len(there.changed) == len(back.changed) > 0
