"""The texts of a pack, and the name that stands for them."""

import hashlib
import json
from collections.abc import Iterable, Mapping
from typing import NamedTuple


class PackText(NamedTuple):
    """The files of one pack: their texts by path.

    `unread` are the paths of files and folders in its folder that look like more of it and are not
    read: files of YAML or JSON that do not end in .yaml, and folders that hold any.
    """

    id: str
    files: Mapping[str, str]
    unread: tuple[str, ...] = ()


def key_of(texts: Iterable[PackText], *more: str) -> str:
    """A name for the texts, in whatever order they come, and for what else the result hangs on.

    >>> one, other = PackText("a", {"a.yaml": "x"}), PackText("b", {"b.yaml": "y"})
    >>> key_of([one, other]) == key_of([other, one]), key_of([one]) == key_of([one], "0.2.0")
    (True, False)
    """
    sorted_texts = sorted(texts, key=lambda text: text.id)
    files = [(text.id, sorted(text.files.items()), sorted(text.unread)) for text in sorted_texts]
    whole = json.dumps([files, more], ensure_ascii=True)
    return hashlib.sha256(whole.encode("ascii")).hexdigest()
