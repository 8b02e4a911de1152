"""Values and sentences as a pack shows them: its units, its words, what the job wrote itself."""

from collections.abc import Mapping

from linter.language.checked import Checked
from linter.language.evaluate import evaluate
from linter.language.library import Library
from linter.language.tree import FactOf, Limit
from linter.language.writing import Writer
from linter.packs.model import Pack, Sentence
from linter.packs.values import unit_choice
from linter.text import join_words
from linter.units import NUMBER, Unknown, write_in
from linter.vocabulary.model import FactType, Shape, Thing


def writer_of(pack: Pack) -> Writer:
    """The writer that shows values as the pack wants them."""
    return writer(pack.words, pack.units)


def writer(words: Mapping[str, str], units: Mapping[str, str]) -> Writer:
    """A writer of values: quantities as the job wrote them or in `units`, words by `words`.

    >>> from linter.vocabulary.shorthand import YES_NO
    >>> writer({}, {})(True, YES_NO, None)
    'yes'
    """
    choice = unit_choice(units)

    def write(value: object, type_: FactType, written: str | None) -> str:
        if isinstance(value, Unknown):
            return "unknown"
        if isinstance(value, bool):
            return "yes" if value else "no"
        if isinstance(value, (int, float)):
            return written or write_in(float(value), type_.dimension or NUMBER, choice)
        if isinstance(value, Thing):
            return value.label
        if isinstance(value, tuple):
            parts = [write(each, FactType(Shape.TEXT), None) for each in value]
            return join_words(parts) if parts else "none"
        return words.get(str(value), str(value))

    return write


def write_sentence(sentence: Sentence, thing: Thing, library: Library, write: Writer) -> str:
    """The sentence with its values filled in for a thing."""
    return "".join(
        part if isinstance(part, str) else _filled(part, thing, library, write) for part in sentence
    )


def _filled(part: Checked, thing: Thing, library: Library, write: Writer) -> str:
    written = None
    if isinstance(part.node, Limit):
        written = library.written.get(part.node.name)
    elif isinstance(part.node, FactOf):
        holder = evaluate(Checked(part.subject, part.type, part.node.of), thing, library)
        if isinstance(holder, Thing):
            written = holder.written.get(part.node.fact)
    return write(evaluate(part, thing, library), part.type, written)
