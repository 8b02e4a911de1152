"""The sign-off file beside a job file: found, read, and held against an examined job."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from linter.cli.files import SIGN_OFF_SUFFIX, STANDARD_INPUT, read_text
from linter.signoff.standing import NOTHING_SAID, SignedOff, signed_off

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.audit.audit import Examined
    from linter.audit.open_checks import OpenCheck
    from linter.job.jobs import Job
    from linter.signoff.said import SignOffs


def sign_off_file(job_file: str) -> str:
    """The name of the sign-off file of a job file, whether it is there or not.

    >>> sign_off_file("jobs/net-shed.yaml")
    'jobs/net-shed.sign-off.yaml'
    """
    return Path(job_file).with_suffix(SIGN_OFF_SUFFIX).as_posix()


def sign_offs_of(job_file: str, job: Job, shown: str = "") -> SignOffs | None:
    """What was said of a job so far; None where nothing was. Raises `Refused`.

    `shown` is how the job file is named where that is not by its own name.
    """
    file = sign_off_file(job_file)
    if job_file == STANDARD_INPUT or not Path(file).exists():
        return None
    from linter.signoff.reading import read_sign_offs  # noqa: PLC0415  only where there is one

    return read_sign_offs(read_text(file), sign_off_file(shown or job_file), job.name)


def signed_of(
    job_file: str,
    job: Job,
    said: SignOffs | None,
    examined: Examined,
    checks: Sequence[OpenCheck],
) -> SignedOff:
    """What became of all that was said of a job, of its findings and of its open checks."""
    if said is None:
        return NOTHING_SAID
    return signed_off(sign_off_file(job_file), said, examined, checks, job.stage)
