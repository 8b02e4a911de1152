"""Where the rule packs and schemas that ship with precover lie, and what makes a folder a pack.

They lie inside `linter` in a wheel, and beside it in a checkout or an editable install.
"""

from pathlib import Path

MANIFEST = "pack.yaml"
"""The file of a pack's folder that says what the pack is."""

PLACE_FILE = ".place.yaml"
"""What the name of a file ends in that says which pack holds at a place, from which day."""

_HERE = Path(__file__).resolve().parent


def rulesets_dir() -> Path:
    """The folder that holds one folder for each rule pack."""
    return _shipped("rulesets")


def schemas_dir() -> Path:
    """The folder that holds the published JSON schemas.

    >>> schemas_dir().name
    'schemas'
    """
    return _shipped("schemas")


def style_sheet() -> str:
    """The style sheet of the report, which stands inside every one of them."""
    return (_HERE / "reports" / "page" / "style.css").read_text(encoding="utf-8")


def _shipped(name: str) -> Path:
    inside = _HERE / name
    return inside if inside.is_dir() else _HERE.parent / name
