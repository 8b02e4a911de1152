"""The places at hand, and which pack holds at the place of a job for the day of its permit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.cli.files import read_text
from linter.cli.pack_folders import PackFolder, places_in
from linter.resources import PLACE_FILE
from linter.text import Refusal, Refused, nearest

if TYPE_CHECKING:
    from pathlib import Path

    from linter.job.jobs import Job
    from linter.packs.localities import Locality, Span


class Places:
    """The files of places by name, each read when it is asked for."""

    def __init__(self, folder: Path, shown: str) -> None:
        self._first = (folder, shown)
        self._files: dict[str, PackFolder] | None = None
        self._more: dict[str, PackFolder] = {}

    def put(self, folder: Path, shown: str) -> tuple[str, str] | None:
        """Puts the places of one more folder there; what is found where a name is taken."""
        for name, each in places_in(folder, shown).items():
            other = self.files.get(name)
            if other is not None and other.path.resolve() != each.path.resolve():
                said = f'Two places are called "{name}": {other.shown} and {each.shown}'
                return said, "rename or leave out one of the two"
            self._more[name] = each
        return None

    @property
    def files(self) -> dict[str, PackFolder]:
        """The files by name; who names no place never looks for those that ship."""
        if self._files is None:
            self._files = places_in(*self._first)
        return {**self._files, **self._more}

    def named(self, name: str) -> Locality:
        """The place of that name; raises `Refused` with what is wrong in its file."""
        from linter.packs.localities import read_locality  # noqa: PLC0415  few jobs name a place

        file = self.files[name]
        return read_locality(read_text(str(file.path)), file.shown, name)

    def span_of(self, job: Job) -> Span:
        """The span of the place of a job that its permit falls into; raises `Refused`."""
        name = job.locality or ""
        if job.pack is not None:
            raise Refused([_both(job)])
        if name not in self.files:
            raise Refused([self._no_place(job, name)])
        if job.permit_date is None:
            raise Refused([_no_day(job)])
        locality = self.named(name)
        span = locality.at(job.permit_date)
        if span is None:
            raise Refused([_not_then(job, job.permit_date, locality)])
        return span

    def _no_place(self, job: Job, name: str) -> Refusal:
        known = sorted(self.files)
        return Refusal(
            job.place_of("locality"),
            f'"{name}" is not a place at hand',
            f"one of: {', '.join(known)}" if known else "a place",
            f"write the name of a place, name a pack instead, or put a file NAME{PLACE_FILE} "
            "among your packs",
            nearest(name, known),
        )


def _both(job: Job) -> Refusal:
    return Refusal(
        job.place_of("locality"),
        "the job names a pack and a place",
        "a pack; or a place, where the day of the permit tells the pack",
        "keep one of the two",
        also=(job.place_of("pack"), "the pack is named"),
    )


def _no_day(job: Job) -> Refusal:
    return Refusal(
        job.place_of("locality"),
        "the job names a place, and not the day of its permit",
        "permit_date, which tells the pack that holds there",
        "write permit_date under job, or name a pack instead of the place",
    )


def _not_then(job: Job, day: str, locality: Locality) -> Refusal:
    spans = [
        f"{each.first} until {each.last}" if each.last else f"{each.first} on"
        for each in locality.spans
    ]
    return Refusal(
        job.place_of("permit_date"),
        f"of {locality.title} nothing is stated for a permit of {day}",
        f"a day from {', or from '.join(spans)}",
        "mend the day, complete the file of the place, or name a pack instead of the place",
    )
