"""What an ordinary audit loads, held against a list: each name costs time at every start."""

import json
import subprocess
import sys
from pathlib import Path

from tests.golden.fresh import ROOT

LIST = Path(__file__).with_name("loaded.txt")
AUDIT = ["audit", "tests/golden/boathouse.yaml", "--packs", "tests/cases/packs"]

# Run in a fresh process: an audit, and then the names of all that is loaded.
SCRIPT = """
import sys
before = set(sys.modules)
from linter.cli.run import run
run(sys.argv[1:])
import json
print(json.dumps(sorted(set(sys.modules) - before)), file=sys.stderr)
"""

# Modules of ours that an audit by a kept pack, told as plain text, has no use for.
NOT_NEEDED = (
    "linter.language.parse",
    "linter.language.check",
    "linter.packs.assemble",
    "linter.packs.prove",
    "linter.packs.describe",
    "linter.audit.open_checks",
    "linter.signoff.said",
    "linter.signoff.rule_mark",
    "linter.reports.as_json",
    "linter.reports.as_sarif",
    "linter.reports.earlier",
    "linter.reports.news",
    "linter.reports.sign_offs",
    "linter.reports.box_card",
    "linter.reports.page.document",
    "linter.reports.drawing.box",
    "linter.reports.rule_page",
    "linter.cli.packs_show",
)


def _loaded(cache: Path) -> list[str]:
    environment = {"PYTHONPATH": str(ROOT), "XDG_CACHE_HOME": str(cache), "HOME": str(cache)}
    command = [sys.executable, "-c", SCRIPT, *AUDIT]
    for _ in range(2):  # the first fills the cache of packs
        done = subprocess.run(  # noqa: S603  our own program
            command, cwd=ROOT, env=environment, capture_output=True, check=True, text=True
        )
    names: list[str] = json.loads(done.stderr.splitlines()[-1])
    return names


def test_an_audit_loads_only_what_is_listed(tmp_path: Path) -> None:
    loaded = _loaded(tmp_path)
    listed = {
        line for line in LIST.read_text(encoding="utf-8").splitlines() if line[:1] not in ("", "#")
    }
    roots = {name.partition(".")[0] for name in loaded}
    assert not {name for name in roots - {"linter"} if not name.startswith("_")} - listed
    assert not set(NOT_NEEDED) & set(loaded)
