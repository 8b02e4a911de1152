"""Jobs of the boathouse with a sign-off, for the tests of this folder."""

from collections.abc import Sequence
from pathlib import Path

from linter.audit.audit import Examined, examined
from linter.audit.open_checks import OpenCheck, open_checks
from linter.cli.shelf import Shelf
from linter.jobfile import read_job
from linter.signoff.choosing import Candidate, candidates
from linter.signoff.reading import read_sign_offs
from linter.signoff.said import Saying
from linter.signoff.sayings import NOT_A_DEFECT
from linter.signoff.standing import SignedOff, signed_off
from linter.signoff.writing import with_act
from tests.unit.cli.running import BOATHOUSE, PACKS

FILE, SIGNED = "boathouse.yaml", "boathouse.sign-off.yaml"
FERROW = Saying(NOT_A_DEFECT, "M. Ferrow", "2026-03-14", "Looked at with the lamp.", "made up")


def looked_at(text: str = BOATHOUSE, packs: str = PACKS) -> tuple[Examined, tuple[OpenCheck, ...]]:
    """A job held against its pack, and its open checks."""
    job = read_job(text, FILE)
    found = examined(job, Shelf([packs]).pack_of(job))
    return found, open_checks(found)


def signable(text: str = BOATHOUSE) -> tuple[Candidate, ...]:
    """All of a job of which something can be said."""
    return candidates(*looked_at(text), None)


def said_of(meant: Sequence[Candidate], saying: Saying = FERROW, before: str = "") -> str:
    """A sign-off file in which something is said of these."""
    name = read_job(BOATHOUSE, FILE).name
    return with_act(before, name, saying, [each.item for each in meant])


def held(sign_off: str, text: str = BOATHOUSE, packs: str = PACKS) -> SignedOff:
    """What became of a sign-off file beside a job."""
    job = read_job(text, FILE)
    found, checks = looked_at(text, packs)
    return signed_off(SIGNED, read_sign_offs(sign_off, SIGNED, job.name), found, checks, job.stage)


def outstanding(signed: SignedOff, text: str = BOATHOUSE, packs: str = PACKS) -> set[str]:
    """The rules of the findings that count."""
    found, _ = looked_at(text, packs)
    standings = {each: signed.of(each) for each in found.audit.findings}
    return {
        each.rule for each, standing in standings.items() if standing is None or standing.counts
    }


def packs_with(folder: Path, old: str, new: str) -> str:
    """The invented packs, with one text of them changed, in a folder of their own."""
    for source in Path(PACKS).rglob("*.yaml"):
        copy = folder / source.relative_to(PACKS)
        copy.parent.mkdir(parents=True, exist_ok=True)
        text = source.read_text(encoding="utf-8")
        copy.write_text(text.replace(old, new), encoding="utf-8")
    return str(folder)
