"""Words where they cannot stand, and what is said of each; the first row that fits is said."""

from __future__ import annotations

import re
from typing import NamedTuple

_COMPARING = frozenset({"AT", "MORE", "LESS", "IS"})


class Slip(NamedTuple):
    """A common slip: what is said of it, and how it is known.

    It fits when the text before and after the slip match, and all of `may` but none of `may_not`
    could stand there.
    """

    found: str
    expected: str
    mend: str
    before: str = ""
    after: str = ""
    may: frozenset[str] = frozenset()
    may_not: frozenset[str] = frozenset()

    def fits(self, before: str, after: str, allowed: set[str]) -> bool:
        """Whether this is the slip that was made."""
        if not self.may <= allowed or self.may_not & allowed:
            return False
        if self.before and not re.search(self.before + r"\Z", before):
            return False
        return not self.after or re.match(self.after, after) is not None


def _may(*words: str) -> frozenset[str]:
    return frozenset(words)


_NO_UNIT = "at|more|less|is|and|or|not|if|then|else|elif|for|where|has|rounded|to|of|equals"
_CLOSES = r"\Z|\)|,"
WORDS: tuple[Slip, ...] = (
    Slip(
        "nothing is written here",
        "a condition or a value",
        "write the expression",
        before=r"\A",
        after=r"\Z",
    ),
    Slip(
        '"{said}" looks like a unit',
        "the name of a limit; numbers of a code stand in limits and tables",
        "state the quantity as a limit, with its clause, and write its name",
        before=r"\d",
        after=rf"(?!(?:{_NO_UNIT})\b)[A-Za-z]+",
        may_not=_may("NAME"),
    ),
    Slip(
        '"and" and "or" stand side by side',
        "conditions joined by one of the two",
        "put parentheses around what belongs together",
        after=r"or\b",
        may=_may("AND"),
        may_not=_may("OR"),
    ),
    Slip(
        '"or" and "and" stand side by side',
        "conditions joined by one of the two",
        "put parentheses around what belongs together",
        after=r"and\b",
        may=_may("OR"),
        may_not=_may("AND"),
    ),
    Slip(
        'the "if" has no "else"',
        '"else" and the value that holds otherwise',
        'add "else" and that value',
        after=_CLOSES,
        may=_may("ELSE"),
    ),
    Slip(
        'the "if" has no "then"',
        '"then" and the value that holds if so',
        'put "then" before that value',
        after=rf"else\b|{_CLOSES}",
        may=_may("THEN"),
    ),
    Slip(
        '"elif" is not of this language',
        '"else if"',
        'write "else if"',
        after=r"(elif|elsif|elseif)\b",
    ),
    Slip(
        "what is asked of each is not said",
        '"has" and a condition',
        'add "has" and what each of them must have',
        after=rf"and\b|or\b|then\b|{_CLOSES}",
        may=_may("HAS"),
    ),
    Slip(
        '"{said}" does not lead from the things to what is asked of them',
        '"has", or "where" before it',
        'write "has" before the condition',
        after=r"is\b|are\b|have\b|must\b|satisf\w+|with\b",
        may=_may("HAS", "WHERE"),
    ),
    Slip(
        'one value by itself is not a choice of "larger" or "smaller"',
        "two values or more",
        "add the other value, or leave the choice out",
        before=r"\b(larger|smaller)\s+of\s*\([^(),]*",
        after=r"\)",
        may=_may("COMMA"),
        may_not=_may("CLOSE"),
    ),
    Slip(
        "nothing is said for the case that there is none",
        '", or V if none"',
        'add ", or" with a value and "if none"',
        after=rf"{_CLOSES}",
        may=_may("COMMA"),
        may_not=_may("CLOSE"),
    ),
    Slip(
        "nothing is said for the case that there is none",
        '", or V if none"',
        'add ", or" with a value and "if none"',
        after=r"(at|more|less|is|rounded|and|or)\b|[+\-*/]",
        may=_may("COMMA"),
        may_not=_may("CLOSE"),
    ),
    Slip(
        '"if none" does not follow',
        '"if none"',
        'add "if none" after the value',
        may=_may("IF"),
        may_not=_may("NAME"),
    ),
    Slip(
        '"{said}" follows the things without "has" before it',
        '"has" or "where"',
        'write "has" before what is asked of each, "where" before what picks them',
        after=r"[A-Za-z(]",
        may=_may("HAS", "WHERE"),
    ),
    Slip(
        'this "where" reaches too far',
        "the count or sum with its condition in parentheses",
        'put parentheses around all of it, from "count" or "sum" to the end of its condition',
        after=r"where\b",
    ),
    Slip(
        'this "if" stands in the midst of a value',
        "the whole choice in parentheses",
        'put parentheses around it, from "if" to the end of what follows "else"',
        after=r"if\b",
    ),
    Slip(
        "two comparisons stand side by side",
        'one comparison, or two joined with "and"',
        'write both in full and join them with "and"',
        after=r"(at|more|less|is)\b",
        may=_may("AND"),
        may_not=_COMPARING,
    ),
    Slip(
        '"is" is one word too many',
        "the comparison by itself",
        'leave out "is"',
        before=r"\bis",
        after=r"(at|more|less)\b",
    ),
    Slip(
        '"{said}" is not of this language',
        '"more than"',
        'write "more than"',
        before=r"\w\)?",
        after=r"(larger|greater|bigger|higher|longer)\s+than\b|(exceeds|over|above)\b",
    ),
    Slip(
        '"{said}" is not of this language',
        '"less than"',
        'write "less than"',
        before=r"\w\)?",
        after=r"(smaller|fewer|lower|shorter)\s+than\b|(under|below)\b",
    ),
    Slip(
        '"{said}" is not of this language',
        '"is"',
        'write "is"',
        after=r"(equals?|are|was)\b",
        may=_may("IS"),
    ),
    Slip(
        '"{said}" is not of this language',
        '"is one of"',
        'write "is one of"',
        after=r"in\b",
        may=_may("IS"),
    ),
    Slip(
        '"not" cannot stand between two values',
        '"is not", or "not" in front of the condition',
        'write "is not" for what differs, "less than" or "more than" for sizes',
        after=r"not\b",
        may=_may("IS"),
    ),
    Slip(
        'a yes/no fact is not compared with "no"',
        "the fact by itself",
        'write "not" and the fact',
        before=r"\bis",
        after=r"no\b",
    ),
    Slip(
        '"least" or "most" does not follow "at"',
        '"at least" or "at most"',
        "write one of the two",
        before=r"\bat",
        may=_may("LEAST", "MOST"),
    ),
    Slip(
        "a sign stands in front of nothing",
        "a value on both sides of a sign",
        'write a subtraction in full, as in "a - b"',
        after=r"[-+]",
        may=_may("NAME"),
    ),
    Slip(
        "powers are not of this language",
        "+, -, * or /",
        "multiply as often as needed",
        before=r"\*",
        after=r"\*",
    ),
    Slip(
        '"{said}" follows a name',
        '"every", "some" or "no" in front of that name',
        'write "every"',
        before=r"\b(each|all|for)",
        after=r"[A-Za-z]",
    ),
    Slip(
        '"{said}" follows a name',
        '"every", "some" or "no" in front of that name',
        'write "some"',
        before=r"\b(any|exists)",
        after=r"[A-Za-z]",
    ),
    Slip(
        '"{said}" cannot stand here',
        '"every", "some" or "no"',
        'write "every e of … has …"',
        after=r"(for|all|each)\b",
        may=_may("EVERY"),
    ),
    Slip(
        'the table is not named after "look up"',
        '"look up" and the name of a table',
        'write "look up" in two words',
        before=r"\blookup",
        after=r"[A-Za-z]",
    ),
    Slip(
        "larger of and smaller of take the place of max and min",
        '"larger of (V, V)"',
        'write "larger of" or "smaller of"',
        before=r"\b(max|min|maximum|minimum)",
        after=r"\(",
    ),
    Slip(
        '"of" does not follow',
        '"of"',
        'write it as in "sum of V for e of S"',
        before=r"\b(sum|count|largest|smallest|larger|smaller)",
        may=_may("OF"),
    ),
    Slip(
        "a name does not take parentheses",
        "a sign or a comparison between the two",
        'reach a fact of a thing with a dot, a table with "look up … at (…)"',
        before=r"[A-Za-z_]\w*",
        after=r"\(",
        may_not=_may("OPEN"),
    ),
    Slip(
        "words of the language are written small",
        "small letters",
        "write it in small letters",
        after=r"(AND|OR|NOT|IS|IF|THEN|ELSE|AT|MORE|LESS|WHERE|HAS|OF)\b",
        may_not=_may("NAME"),
    ),
    Slip(
        '"{said}" follows a condition without "has" before it',
        '"has", or more of what picks the things',
        'write "has" before what is asked of each',
        after=r"(?!where\b)[A-Za-z]",
        may=_may("HAS", "AND"),
    ),
    Slip(
        "a parenthesis is not closed",
        'a ")"',
        'add ")" where it ends',
        after=r"\Z",
        may=_may("CLOSE"),
        may_not=_may("NAME"),
    ),
    Slip(
        'a ")" closes nothing',
        "as many of one as of the other",
        'leave out this ")"',
        after=r"\)",
        may_not=_may("CLOSE", "NAME"),
    ),
    Slip(
        'something is missing before "{said}"',
        "a condition or a value",
        "write what is missing",
        after=r"[),]|and\b|or\b|then\b|else\b|for\b",
        may=_may("NAME"),
    ),
    Slip(
        "something is missing at the end",
        "a condition or a value",
        "write what is missing",
        after=r"\Z",
        may=_may("NAME", "OPEN"),
    ),
)
