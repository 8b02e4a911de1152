from linter.reports.layout import Line, Span, fold, line, plain


def test_no_line_is_wider_than_the_width() -> None:
    words = " ".join(["conductor"] * 40)
    for width in (40, 80):
        rows = plain([line(words, indent=4, hang=4)], width).splitlines()
        assert len(rows) > 1
        assert all(len(row) <= width for row in rows)
        assert rows[0].startswith("    c")
        assert all(row.startswith("        c") for row in rows[1:])


def test_what_is_whole_is_not_folded_and_keeps_its_spaces() -> None:
    whole = Line((Span("Do:    ", whole=True), Span("pull more cable")), indent=2)
    assert plain([whole]) == "  Do:    pull more cable\n"


def test_no_blank_stands_at_the_end_of_a_line() -> None:
    assert plain([line("bench "), Line()]) == "bench\n\n"


def test_control_and_direction_characters_of_a_job_are_inert() -> None:
    shown = plain([line("bench\x1b[2J \u202eleft\r\nDANGER")])
    assert shown == "bench\\x1b[2J \\u202eleft\\r\\nDANGER\n"


def test_no_blank_falls_over_the_edge() -> None:
    rows = list(fold([line("aaaaaaaaa bbbbbbbbb ccccccccc ddddddddd")], 20))
    assert ["".join(span.text for span in row) for row in rows] == [
        "aaaaaaaaa bbbbbbbbb",
        "ccccccccc ddddddddd",
    ]


def test_a_word_of_two_styles_is_not_torn() -> None:
    torn = Line((Span("a conductor", "box"), Span(", line 12")))
    assert plain([torn], 20) == "a conductor, line 12\n"
    rows = list(fold([Line((Span("a long conductor xxx", "box"), Span(", line 12")))], 20))
    assert "".join(span.text for span in rows[1]) == "xxx, line 12"
