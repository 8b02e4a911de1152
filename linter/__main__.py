"""`python -m linter` is the same as the command `precover`."""

from linter.cli import main

if __name__ == "__main__":
    raise SystemExit(main())
