"""The commands of precover: the only place that reads files, asks the machine, prints and exits.

Words of a command line come in; a report goes to standard output, remarks and refusals to standard
error, and a status out.
"""


def main() -> int:
    """Runs the command that the command line names, and gives the status to exit with."""
    import sys  # noqa: PLC0415  importing a name of this package must not load the commands

    from linter.cli.run import run  # noqa: PLC0415

    return run(sys.argv[1:])
