"""Sign-off files that are read, refused with their place, and written to."""

import pytest

from linter.signoff.reading import read_sign_offs
from linter.signoff.said import Item, Saying
from linter.signoff.writing import with_act
from linter.text import Refused
from tests.unit.signoff.made import FERROW

ITEM = Item(
    "box-has-room", "box", "bench", "3f2a90c1d4e5b607", "90aa12bc44de01f2", "advice", "Full."
)
TEXT = with_act("", "Net shed", FERROW, [ITEM])
CASES = [
    ("precover_sign_off: 1", "precover_sign_off: 2", 2, "1"),
    ('job: "Net shed"', 'job: "Net loft"', 3, 'is of the job "Net loft"'),
    ('says: "not a defect"', 'says: "passed over"', 5, "one of: agreed, put right, not a defect"),
    ('on: "2026-03-14"', 'on: "2026-02-30"', 7, '"2026-02-30" is not a day'),
    ('on: "2026-03-14"', 'on: "14 March"', 7, "the day on which it was said"),
    ('by: "M. Ferrow"', 'buy: "M. Ferrow"', 5, "by"),
    ('    because: "Looked at with the lamp."\n', "", 5, '"because" is missing here'),
    ('mark: "3f2a90c1d4e5b607"', 'mark: "3f2a"', 13, "the fingerprint of the finding"),
    ('thing: "box bench"', 'thing: "bench"', 12, "the kind of thing and its name"),
    ("of:\n", "of: []\n#", 10, "Too little stands here"),
]


@pytest.mark.parametrize(("old", "new", "line", "words"), CASES)
def test_a_broken_sign_off_is_refused_where_it_is_broken(
    old: str, new: str, line: int, words: str
) -> None:
    assert old in TEXT
    text = TEXT.replace(old, new)
    if "of: []" in new:
        text = text[: text.index("of: []") + 6] + "\n"
    with pytest.raises(Refused) as refused:
        read_sign_offs(text, "net-shed.sign-off.yaml", "Net shed")
    assert f"net-shed.sign-off.yaml:{line}:" in str(refused.value)
    assert words in str(refused.value)


def test_what_is_written_is_read() -> None:
    (entry,) = read_sign_offs(TEXT, "a.yaml", "Net shed").entries
    assert (entry.item, entry.saying) == (ITEM, FERROW)


def test_more_is_added_at_the_end_and_all_before_stays() -> None:
    remarked = TEXT.replace("signed:\n", "signed:   # by all of us\n") + "  # last line\n"
    more = with_act(remarked, "Net shed", Saying("put right", "O. Tarn", "2026-03-20"), [ITEM])
    assert more.startswith(remarked)
    said = read_sign_offs(more, "a.yaml", "Net shed")
    assert [each.saying.says for each in said.entries] == ["not a defect", "put right"]


@pytest.mark.parametrize(
    "text",
    [
        'precover_sign_off: 1\njob: "Net shed"\nsigned: []\n',
        '{"precover_sign_off": 1, "job": "Net shed", "signed": []}\n',
        "precover_sign_off: 1\nsigned: []   # none yet\njob: Net shed\n",
        TEXT.replace("\n", "\r\n"),
        TEXT.rstrip("\n"),
        TEXT.replace('job: "Net shed"\n', "") + 'job: "Net shed"\n',
    ],
)
def test_files_written_by_hand_are_added_to(text: str) -> None:
    before = read_sign_offs(text, "a.yaml", "Net shed").entries
    more = with_act(text, "Net shed", FERROW, [ITEM, ITEM])
    assert len(read_sign_offs(more, "a.yaml", "Net shed").entries) == len(before) + 2


def test_what_a_person_writes_is_kept_as_it_is() -> None:
    words = 'No: "fine" # \u202e\x1b[2J\U0001f600\n- x: {y}'
    text = with_act("", "Net shed", FERROW._replace(because=words), [ITEM])
    assert text.isascii() or "\u202e" not in text
    (entry,) = read_sign_offs(text, "a.yaml", "Net shed").entries
    assert entry.saying.because == words
