from linter.audit.relied import fingerprint, relied_on
from linter.units import LENGTH, read_quantity
from linter.vocabulary.model import FactRef, FactType, Thing
from tests.unit.audit.made import thing


class Facts:
    """The facts of the things given."""

    def __init__(self, *things: Thing) -> None:
        self.things: dict[str, tuple[Thing, ...]] = {each.kind: (each,) for each in things}

    def thing(self, kind: str, ref: str) -> Thing:
        return next(each for each in self.things[kind] if each.ref == ref)


USED = [FactRef("wire_end", "k1", "free_length"), FactRef("wire_end", "k1", "box")]


def wire(length: str, line: int = 20) -> Thing:
    return thing(
        "wire_end", "k1", line,
        free_length=read_quantity(length, LENGTH).value, box=thing("box", "bench", line),
    )  # fmt: skip


def write(value: object, _: FactType, written: str | None) -> str:
    return written or str(value)


def mark(wire_end: Thing, rule: str = "wire-end-long-enough") -> str:
    return fingerprint(rule, wire_end, USED, Facts(wire_end))


def test_a_fingerprint_is_sixteen_hexadecimal_digits() -> None:
    assert len(mark(wire("4 in"))) == 16
    assert int(mark(wire("4 in")), 16) >= 0


def test_an_edit_elsewhere_that_moves_the_line_leaves_the_fingerprint() -> None:
    assert mark(wire("4 in", 20)) == mark(wire("4 in", 48))


def test_inches_or_millimetres_leave_the_fingerprint() -> None:
    assert mark(wire("4 in")) == mark(wire("101.6 mm"))


def test_another_value_another_rule_gives_another_fingerprint() -> None:
    assert len({mark(wire("4 in")), mark(wire("5 in")), mark(wire("4 in"), "another-rule")}) == 3


def test_what_only_leads_to_another_thing_is_not_told_as_a_fact() -> None:
    one = wire("4 in")
    assert [each.fact for each in relied_on(USED, Facts(one), write)] == ["free_length"]


def test_a_value_is_told_as_the_job_writes_it_and_whether_it_is_a_usual_one() -> None:
    made = wire("4 in")
    one = Thing(
        "wire_end", "k1", made.place, made.__dict__,
        written={"free_length": "4 in"}, usual=frozenset({"free_length"}),
    )  # fmt: skip
    (told,) = relied_on(USED, Facts(one), write)
    assert (told.value, told.usual) == ("4 in", True)
