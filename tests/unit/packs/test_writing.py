"""Values and sentences as a pack shows them."""

import pytest

from linter.packs.assemble import assemble
from linter.packs.model import Pack
from linter.packs.writing import write_sentence, writer, writer_of
from linter.text import Place
from linter.units import AREA, LENGTH, TEMPERATURE, Unknown
from linter.vocabulary.model import Thing
from linter.vocabulary.shorthand import COUNT, TEXT, YES_NO, a, all_of, quantity, word
from tests.cases.small_packs import BASE, edited, texts_of

HERE = Place("studio.yaml", 1, 1)


@pytest.fixture(scope="module")
def pack() -> Pack:
    say = '"{wire_end} leaves {wire_end.free_length}; {least_free_length} is needed."'
    values = "{wire_end.free_length}, {bond}, {least_free_length}, {neutral}"
    to = f'"{{wire_end}} in {{wire_end.box}}: {values}"'
    return assemble(texts_of(edited({"edit": {"wire-ends.yaml": {"from": say, "to": to}}})), BASE)


def wire_end(length: object, written: str = "") -> Thing:
    box = Thing("box", "sink-left", HERE, {}, label="box sink-left")
    values = {"free_length": length, "box": box}
    texts = {"free_length": written} if written else {}
    return Thing("wire_end", "k1.black", HERE, values, label="black of k1", written=texts)


def test_a_sentence_has_the_values_as_the_job_wrote_them(pack: Pack) -> None:
    thing = wire_end(0.15, "150 mm")
    said = write_sentence(
        pack.rule("wire-end-long-enough").say, thing, pack.library, writer_of(pack)
    )
    assert said == "black of k1 in box sink-left: 150 mm, earthing conductor, 6 in, neutral"


def test_a_sentence_has_computed_values_in_the_units_of_the_pack(pack: Pack) -> None:
    say = pack.rule("wire-end-long-enough").say
    assert " 5 in, " in write_sentence(say, wire_end(0.127), pack.library, writer_of(pack))


def test_an_unknown_value_is_said_to_be_unknown(pack: Pack) -> None:
    say = pack.rule("wire-end-long-enough").say
    thing = wire_end(Unknown(["k1.black"]))
    assert " unknown, " in write_sentence(say, thing, pack.library, writer_of(pack))


def test_values_of_every_shape() -> None:
    write = writer({"bond": "earth wire"}, {"length": "mm", "wire": "mm2", "temperature": "C"})
    box = Thing("box", "b", HERE, {}, label="box b")
    assert write(0.15, quantity(LENGTH), None) == "150 mm"
    assert write(0.15, quantity(LENGTH), "6 in") == "6 in"
    assert write(2.5e-6, quantity(AREA), None) == "2.5 mm2"
    assert write(303.15, quantity(TEMPERATURE), "") == "30 C"
    assert write(3.0, COUNT, None) == "3"
    assert write(True, YES_NO, None) == "yes"
    assert write("bond", word("bond", "hot"), None) == "earth wire"
    assert write("white", TEXT, None) == "white"
    assert write(box, a("box"), None) == "box b"
    assert write((box, box), all_of("box"), None) == "box b and box b"
    assert write((), all_of("box"), None) == "none"
