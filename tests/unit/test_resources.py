"""The packs and schemas that ship are found beside the code that runs."""

from pathlib import Path

import linter
from linter.resources import rulesets_dir, schemas_dir


def test_packs_and_schemas_lie_inside_linter_or_beside_it() -> None:
    package = Path(linter.__file__).resolve().parent
    for folder in (rulesets_dir(), schemas_dir()):
        assert folder.is_dir()
        assert folder.parent in (package, package.parent)
    assert (rulesets_dir().name, schemas_dir().name) == ("rulesets", "schemas")
