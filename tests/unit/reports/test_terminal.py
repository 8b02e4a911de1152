import re

from linter.audit.findings import Basis, Look, Reference, Unlooked, WalkItem
from linter.language.work import WorkLine
from linter.reports.layout import plain
from linter.reports.outcomes import Audited, TurnedAway
from linter.reports.sayings import CAUTION, CLOSING
from linter.reports.terminal import coloured, report
from linter.text import Place, Refusal
from tests.unit.audit.made import FILE, REFERENCE, audit_of, finding, question, stop


def text_of(*findings: object, **other: object) -> str:
    return plain(report([Audited(FILE, audit_of(*findings, **other))]))  # type: ignore[arg-type]


def squeezed(text: str) -> str:
    return re.sub(r"\s+", " ", text)


def test_a_report_begins_with_the_caution_and_ends_with_who_decides() -> None:
    said = squeezed(text_of(finding()))
    assert said.startswith(f"CAUTION {CAUTION}")
    assert said.rstrip().endswith(CLOSING)


def test_a_finding_says_all_that_a_person_needs() -> None:
    said = squeezed(text_of(finding(caution="Work with the power off.")))
    for words in (
        "VIOLATION The black of k1 in bench leaves 4 in; 6 in is needed.",
        "at boathouse.yaml:31:5, circuit slip",
        "free length 4 in; least free length 6 in: short by 2 in",
        "Do: Pull more cable into the box while the wall is open.",
        "Caution: Work with the power off.",
        'Rule: wire-end-long-enough: 4-2 of Example code first, read in "Handout 7" (2019).',
    ):
        assert words in said


def test_the_full_working_has_the_words_of_the_rule() -> None:
    said = squeezed(plain(report([Audited(FILE, audit_of(finding()))], full=True)))
    words = "wire_end.free_length at least least_free_length 4 in at least 6 in: not met"
    assert words in said
    assert "short by" not in said


def test_steps_of_nothing_and_yes_or_no_are_not_told() -> None:
    steps = (
        WorkLine("clamps", "box.clamps * allowance", "0 × 2 in3", "0 in3"),  # noqa: RUF001
        WorkLine("", "box.is_bonded", "no", "not met"),
    )
    said = text_of(finding(working=steps))
    assert "clamps" not in said
    assert "not met" not in said


def test_siblings_at_one_place_are_one_entry_that_names_all() -> None:
    white = finding(
        ref="k1.white@bench",
        label="the white of k1 in bench",
        sentence="The white of k1 in bench leaves 4 in; 6 in is needed.",
    )
    said = text_of(finding(), white)
    assert said.count("VIOLATION") == 1
    assert "Also: the white of k1 in bench." in said
    assert "1 place, 2 findings: 0 dangers, 2 violations" in said


def test_what_lies_in_no_box_stands_together_by_its_circuit_wherever_it_lies() -> None:
    k1, k2, k3 = (
        finding(
            label=f"cable k{number}",
            sentence=f"Cable k{number} is too thin.",
            place=Place(FILE, 30 + number, 3),
            stop=stop("loft", "", 30 + number, (number, 2, 0))._replace(
                heading=f"cable k{number}", circuit=circuit
            ),
        )
        for number, circuit in ((1, "slip"), (2, "slip"), (3, "loft"))
    )
    said = text_of(k1, k2, k3)
    assert said.count("VIOLATION") == 2
    assert "Also: cable k2 (line 32)." in said


def test_where_nothing_was_audited_nothing_is_counted() -> None:
    refusal = Refusal(Place("loft.yaml", 1, 1), "there is no such file", "", "check the name")
    said = plain(report([TurnedAway("loft.yaml", (refusal,))]))
    assert said.startswith("NOT AUDITED: 1 file")
    assert "dangers" not in said


def test_doubt_and_usual_values_are_said() -> None:
    doubtful = REFERENCE._replace(known="memory", source="", doubt="the letter of the clause")
    usual = tuple(each._replace(usual=True) for each in finding().relies_on)
    said = squeezed(text_of(finding(reference=doubtful, relies_on=usual)))
    assert "Example code first, from memory." in said
    assert "Doubt: the letter of the clause" in said
    assert "rests on the usual value of free length" in said


def test_a_value_of_another_document_or_less_well_known_is_said_with_its_clause() -> None:
    county = Reference("9-2", "County code", "2022", "memory", "", "not read", "county")
    basis = Basis("limit", "least_free_length", "8 in", county)
    said = squeezed(text_of(finding(rests_on=(basis,))))
    assert "Values: least free length 8 in: 9-2 of County code 2022, from memory." in said
    assert "Values:" not in text_of(finding())


def test_a_doubt_about_a_limit_is_said_where_it_is_compared_with() -> None:
    doubtful = REFERENCE._replace(known="memory", doubt="How it is measured is judged locally.")
    limit = Basis("limit", "least_free_length", "6 in", doubtful)
    table = Basis("table", "boxes", "", doubtful)
    said = squeezed(text_of(finding(rests_on=(limit,))))
    assert "Doubt: least free length: How it is measured is judged locally." in said
    assert "How it is measured" not in text_of(finding(rests_on=(table,)))


def test_what_no_rule_looks_at_is_said_with_its_first_line() -> None:
    places = (Place(FILE, 4, 9), Place(FILE, 8, 9))
    unlooked = (Unlooked("box", "depth", places[:1]), Unlooked("", "walls", places))
    audit = audit_of(finding())._replace(unlooked=unlooked)
    said = squeezed(plain(report([Audited(FILE, audit)])))
    assert (
        "no rule of this pack looks at it: depth of box (line 4), walls (2, from line 4)." in said
    )
    assert "no rule of this pack" not in text_of(finding())


def test_rooms_and_boxes_are_headings_each_said_once() -> None:
    loft = finding(stop=stop("loft", "top", 15, (1, 1, 1)))
    said = text_of(finding(), finding(rule="another-rule", do="Look again."), loft)
    headings = [
        row
        for row in said.splitlines()
        if row in ("SLIP", "  bench, line 12", "LOFT", "  top, line 15")
    ]
    assert headings == ["SLIP", "  bench, line 12", "LOFT", "  top, line 15"]


def test_what_one_rule_says_at_one_box_is_mended_together() -> None:
    said = text_of(finding(), finding(ref="k1.white@bench", sentence="The white leaves 4 in."))
    assert said.count("VIOLATION") == 2
    assert said.count("Do:") == 1


def test_what_was_told_of_a_rule_is_not_repeated_at_the_next_box() -> None:
    doubtful = REFERENCE._replace(doubt="the letter of the clause")
    loft = stop("loft", "top", 15, (1, 1, 1))
    said = squeezed(text_of(finding(reference=doubtful), finding(reference=doubtful, stop=loft)))
    assert said.count("the letter of the clause") == 1
    assert said.count("Do: Pull more cable") == 2
    assert "Rule: wire-end-long-enough: 4-2, as told above." in said


def test_what_cannot_be_told_says_where_how_and_what_each_answer_settles() -> None:
    said = squeezed(text_of(open_questions=(question(),)))
    for words in (
        "free length at 2 boxes: settles 2 checks",
        "Measure the conductor from the end of its sheath.",
        "slip: bench (line 12)",
        "loft: top (line 15)",
        "6 in or more: nothing to report; less than 6 in: violation (2 checks)",
        "2 checks cannot be told yet.",
    ):
        assert words in said


def test_what_settles_checks_only_together_is_asked_together() -> None:
    needs_more = question().answers[0]._replace(when=(), needs_more=True)
    alike = {"settles": 0, "helps": 2, "answers": (needs_more,)}
    radius = question(label="bend radius", along=("width",), ask="Measure the bend.", **alike)
    width = question(label="width", along=("bend radius",), ask="Measure the sheath.", **alike)
    said = squeezed(text_of(open_questions=(radius, width)))
    assert "bend radius and width at 2 boxes: together settle 2 checks" in said
    assert "bend radius: Measure the bend. width: Measure the sheath." in said
    assert said.count("wire-end-long-enough") == 1


def test_questions_stand_by_visit_and_what_is_asked_everywhere_points_to_usual() -> None:
    along = question().things[0]
    along = along._replace(stop=along.stop._replace(box="", order=(0, 2, 0)))
    cable = question(kind="cable", label="fished", things=(along,), everywhere=True)
    said = text_of(open_questions=(question(), cable, question(label="clamped")))
    headings = [row for row in said.splitlines() if row.startswith(" ") and row.isupper()]
    assert headings == [" AT THE BOXES", " ALONG THE CABLES"]
    assert said.index("clamped") < said.index("ALONG THE CABLES")
    assert 'stated once, under "usual"' in said


def test_an_answer_that_tells_nothing_yet_has_no_line() -> None:
    needs_more = question().answers[0]._replace(rule="another-rule", when=(), needs_more=True)
    said = text_of(open_questions=(question(answers=(*question().answers, needs_more)),))
    assert "another-rule" not in said


def test_findings_are_counted_by_weight() -> None:
    twice = (finding(weight="danger"), finding(weight="danger"))
    said = squeezed(text_of(finding(), *twice))
    assert (
        "2 places, 3 findings: 2 dangers, 1 violation and 0 pieces of advice, from 40 checks."
        in said
    )


def test_files_that_were_turned_away_are_counted_but_not_told_here() -> None:
    refusal = Refusal(Place("loft.yaml", 1, 1), "there is no such file", "", "check the name")
    said = plain(report([Audited(FILE, audit_of()), TurnedAway("loft.yaml", (refusal,))]))
    assert "1 file was not audited" in said
    assert "no such file" not in said


def test_every_line_fits_eighty_columns() -> None:
    said = text_of(finding(), open_questions=(question(),))
    assert max(map(len, said.splitlines())) <= 80


def test_colours_are_those_of_the_signal_words_and_change_no_word() -> None:
    lines = list(
        report([Audited(FILE, audit_of(finding(weight="danger"), finding(weight="advice")))])
    )
    rows = list(coloured(lines, 80))
    assert "".join(row.plain.rstrip() + "\n" for row in rows) == plain(lines)
    styles = {str(span.style) for row in rows for span in row.spans}
    assert {
        "bold #ffffff on #c8102e",
        "bold #ffffff on #005eb8",
        "bold #000000 on #ffd100",
    } <= styles


def look(box: str, state: str, **other: str) -> Look:
    at = stop("slip", box, 12, (0, 1, 0))
    return Look(box, box, at, Place(FILE, 12, 3), state, **other)


def walk_item(*looks: Look, name: str = "boxes-are-whole", caution: str = "") -> WalkItem:
    return WalkItem(
        name, "violation", "boxes", "No box is broken.", caution, REFERENCE, "box", True, looks
    )


def walked(*items: WalkItem) -> str:
    audit = audit_of()._replace(walk_through=items)
    return squeezed(plain(report([Audited(FILE, audit)])))


def test_what_nobody_looked_at_is_listed_by_place_and_counted() -> None:
    open_ = [look(name, "to be looked at") for name in ("bench", "loft")]
    said = walked(walk_item(*open_, caution="Switch off first."))
    assert "TO LOOK AT 1 item at 2 places; 0 looked at." in said
    assert "AT THE BOXES ___ boxes-are-whole (all 2 boxes): No box is broken." in said
    assert "Caution: Switch off first." in said
    assert "1 item of the walk-through: still to be looked at, at 2 places." in said


def test_what_was_looked_at_has_name_and_day_and_is_not_asked_again() -> None:
    done = look("bench", "as it should be", by="M. Ferrow", on="2026-03-14")
    said = walked(walk_item(done))
    assert "LOOKED AT boxes-are-whole: as it should be, M. Ferrow, 2026-03-14" in said
    assert "___" not in said
    assert "still to be looked at" not in said


def test_what_is_left_of_an_item_is_named() -> None:
    done = look("bench", "as it should be", by="M. Ferrow", on="2026-03-14")
    left = look("loft", "to be looked at", lacking="what came of it is not stated")
    said = walked(walk_item(done, left))
    assert "___ boxes-are-whole (loft): No box is broken." in said
    assert "Recorded, but what came of it is not stated." in said


def test_what_was_covered_unseen_is_said() -> None:
    said = walked(walk_item(look("bench", "out of sight")))
    assert "Can no longer be seen at 1 place, by the stage of the job." in said
    assert "1 item of the walk-through: covered before anyone is said to have looked" in said
