"""The jobs whose reports are drawn: the last of each example, one with a plan, and a heavy one.

The others of an example have the same boxes, and drawing takes seconds; tests/properties holds the
drawings of all of them to the same rules.
"""

from tests.golden.fresh import ROOT

HEAVY = ROOT / "tests/browser/heavy.yaml"
PLANNED = ROOT / "examples/pottery-studio/put-right.yaml"
_LAST = {job.parent: job for job in sorted((ROOT / "examples").glob("*/*.yaml"))}
MISTAKEN = ROOT / "examples/pottery-studio/with-mistakes.yaml"
JOBS = [*(job for job in _LAST.values() if job != PLANNED), PLANNED, HEAVY]
