"""The text of a job file, read into a job or refused."""

from __future__ import annotations

from linter.job.jobs import Job
from linter.jobfile.judging import judge
from linter.jobfile.known import known_names
from linter.jobfile.references import wrong_references
from linter.jobfile.things import job_fields
from linter.text import Place, Refusal, Refused
from linter.text.yaml_places import read_places

LONGEST = 20_000_000  # characters; a job of 10,000 boxes has a tenth of that


def read_job(text: str, name: str) -> Job:
    """The job that the text of the file `name` states.

    Raises `Refused` with everything that is wrong with it: what is no YAML or JSON, what the schema
    does not allow, what cannot be read as a quantity, what refers to something that is not there.
    """
    if len(text) > LONGEST:
        raise Refused([_too_long(name)])
    root = read_places(text, name)
    refusals, usable = judge(root)
    if usable is not None:
        job = Job.model_validate({"name": "", **job_fields(usable)})
        refusals += wrong_references(job, known_names(root, usable, job))
        if not refusals:
            return job
    raise Refused(refusals)


def _too_long(name: str) -> Refusal:
    return Refusal(
        Place(name, 1, 1),
        f"The file has more than {LONGEST} characters",
        "the job file of one dwelling",
        "split the job into dwellings, each in a file of its own",
    )
