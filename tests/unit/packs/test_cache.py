"""The cache of checked packs: what is kept is what is made anew, and what is odd is not used."""

import hashlib
import json
import subprocess
import sys
from pathlib import Path

import pytest

from linter.packs.assemble import assemble
from linter.packs.cache import cached_pack
from linter.packs.data import pack_from_data, pack_to_data
from linter.packs.pack_text import PackText
from linter.packs.prove import prove
from tests.cases.small_packs import BASE, COUNTY, edited, texts_of

ROOT = Path(__file__).resolve().parents[3]


@pytest.fixture(scope="module")
def texts() -> list[PackText]:
    return texts_of(edited({}))


def kept_in(folder: Path) -> list[Path]:
    return sorted(folder.glob("*.json"))


def test_a_pack_goes_through_data_and_comes_back(texts: list[PackText]) -> None:
    pack = assemble(texts, BASE, [COUNTY])
    data = json.loads(json.dumps(pack_to_data(pack)))
    back = pack_from_data(data)
    assert json.dumps(pack_to_data(back)) == json.dumps(pack_to_data(pack))
    assert (back.layers, back.limits, back.tables) == (pack.layers, pack.limits, pack.tables)
    assert back.withdrawn == pack.withdrawn
    assert [rule.history for rule in back.rules] == [rule.history for rule in pack.rules]
    assert prove(back) == prove(pack)


def test_what_is_kept_is_what_was_made(texts: list[PackText], tmp_path: Path) -> None:
    made = cached_pack(texts, BASE, [COUNTY], tmp_path / "kept")
    kept = cached_pack(texts, BASE, [COUNTY], tmp_path / "kept")
    assert len(kept_in(tmp_path / "kept")) == 1
    assert made is not kept
    assert pack_to_data(made) == pack_to_data(kept)


def test_without_a_folder_nothing_is_kept(texts: list[PackText]) -> None:
    assert cached_pack(texts, BASE, [], None).id == BASE


def test_another_text_is_another_entry(texts: list[PackText], tmp_path: Path) -> None:
    cached_pack(texts, BASE, [], tmp_path)
    change = {"edit": {"wire-ends.yaml": {"from": "value: 6 in", "to": "value: 7 in"}}}
    other = cached_pack(texts_of(edited(change)), BASE, [], tmp_path)
    assert other.limits["least_free_length"].written == "7 in"
    assert len(kept_in(tmp_path)) == 2


@pytest.mark.parametrize(
    "spoilt", [b"", b"{}", b"no digest\n{}", b"\x00" * 40, b"\n", b"[1, 2"], ids=repr
)
def test_a_spoilt_entry_is_made_anew(texts: list[PackText], tmp_path: Path, spoilt: bytes) -> None:
    cached_pack(texts, BASE, [], tmp_path)
    [entry] = kept_in(tmp_path)
    whole = entry.read_bytes()
    entry.write_bytes(spoilt)
    assert cached_pack(texts, BASE, [], tmp_path).id == BASE
    assert entry.read_bytes() == whole


def test_one_changed_figure_is_noticed(texts: list[PackText], tmp_path: Path) -> None:
    cached_pack(texts, BASE, [], tmp_path)
    [entry] = kept_in(tmp_path)
    entry.write_bytes(entry.read_bytes().replace(b'"6 in"', b'"9 in"'))
    assert cached_pack(texts, BASE, [], tmp_path).limits["least_free_length"].written == "6 in"


def test_a_whole_entry_of_another_shape_is_made_anew(texts: list[PackText], tmp_path: Path) -> None:
    cached_pack(texts, BASE, [], tmp_path)
    [entry] = kept_in(tmp_path)
    for body in (b"[]", b'{"clauses": []}', b'{"clauses": [[1]]}', b"null"):
        entry.write_bytes(hashlib.sha256(body).hexdigest().encode() + b"\n" + body)
        assert cached_pack(texts, BASE, [], tmp_path).id == BASE


def test_a_folder_that_others_can_write_to_is_not_used(
    texts: list[PackText], tmp_path: Path
) -> None:
    folder = tmp_path / "open"
    folder.mkdir()
    folder.chmod(0o777)
    assert cached_pack(texts, BASE, [], folder).id == BASE
    assert not kept_in(folder)


def test_an_entry_that_others_can_write_to_is_not_used(
    texts: list[PackText], tmp_path: Path
) -> None:
    cached_pack(texts, BASE, [], tmp_path)
    [entry] = kept_in(tmp_path)
    entry.chmod(0o666)
    cached_pack(texts, BASE, [], tmp_path)
    [entry] = kept_in(tmp_path)
    assert entry.stat().st_mode & 0o777 == 0o600  # made anew and moved over it


def test_a_folder_that_is_a_link_is_not_used(texts: list[PackText], tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    (tmp_path / "link").symlink_to(tmp_path / "real")
    cached_pack(texts, BASE, [], tmp_path / "link")
    assert not kept_in(tmp_path / "real")


def test_a_folder_that_cannot_be_made_is_no_reason_to_stop(
    texts: list[PackText], tmp_path: Path
) -> None:
    (tmp_path / "file").write_text("in the way")
    assert cached_pack(texts, BASE, [], tmp_path / "file" / "kept").id == BASE


def test_only_a_few_entries_are_kept(texts: list[PackText], tmp_path: Path) -> None:
    for number in range(20):
        (tmp_path / f"{number}.json").write_text("old")
    cached_pack(texts, BASE, [], tmp_path)
    assert len(kept_in(tmp_path)) == 16


def test_a_kept_pack_needs_no_parser_and_no_models(tmp_path: Path) -> None:
    program = (
        "import sys, pathlib\n"
        "from linter.packs.cache import cached_pack\n"
        "from tests.cases.small_packs import BASE, edited, texts_of\n"
        f"cached_pack(texts_of(edited({{}})), BASE, [], pathlib.Path({str(tmp_path)!r}))\n"
        "print(sorted({'lark', 'jsonschema', 'pydantic', 'yaml'} & set(sys.modules)))\n"
    )
    runs = [
        subprocess.run(  # noqa: S603  our own Python, on the program above
            [sys.executable, "-c", program], cwd=ROOT, capture_output=True, text=True, check=True
        ).stdout.strip()
        for _ in range(2)
    ]
    assert runs == ["['jsonschema', 'lark', 'pydantic', 'yaml']", "[]"]
