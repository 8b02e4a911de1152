"""A job file, YAML or JSON, read into the models of a job, or refused with all its mistakes.

In comes the text of a file, out goes a `Job` whose every value knows its place. jsonschema judges
the text against the published schema first; then usual values are merged in, the models are made,
and what refers to something is held against what there is.

>>> from linter.jobfile.reading import read_job
>>> text = "{precover: 1, job: {name: Boathouse}, supplies: {shore: {voltage: 120 V}}}"
>>> job = read_job(text, "boathouse.yaml")
>>> str(job.usual_supply.place_of("voltage"))
'boathouse.yaml:1:67'
"""

from linter.jobfile.reading import read_job

__all__ = ["read_job"]
