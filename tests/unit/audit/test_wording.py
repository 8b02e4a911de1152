import pytest

from linter.audit.questions import in_words
from linter.audit.wording import Wording
from tests.unit.audit.made import question

WORDS = {"bond": "equipment ground", "joint": "splice", "hot": "hot"}


@pytest.mark.parametrize(
    ("ours", "theirs"),
    [
        ("Look where the bonds are joined.", "Look where the equipment grounds are joined."),
        ("Bond size", "Equipment ground size"),
        ("bonded", "bonded"),
        ("a hot and a neutral", "a hot and a neutral"),
    ],
)
def test_whole_words_are_put_as_the_pack_has_them(ours: str, theirs: str) -> None:
    assert Wording(WORDS).of(ours) == theirs


def test_a_pack_without_words_changes_nothing() -> None:
    assert Wording({}).of("the bond") == "the bond"


def test_questions_are_asked_in_the_words_of_the_pack_and_names_stay() -> None:
    asked = question(label="bond size", ask="Look at the joint.", along=("bond screw",))
    (said,) = in_words([asked], Wording(WORDS))
    assert (said.label, said.ask) == ("equipment ground size", "Look at the splice.")
    assert said.along == ("equipment ground screw",)
    assert said.things == asked.things


def test_what_a_table_lacks_is_said_by_the_pack_itself() -> None:
    lacking = question(label="no row in bond size for 3 AWG", lacking="no row")
    (said,) = in_words([lacking], Wording(WORDS))
    assert said.label == "no row in bond size for 3 AWG"
