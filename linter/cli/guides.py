"""What each command says of itself when asked with --help."""

_STATUSES = """\
Status: 0 nothing outstanding; 1 findings at or above the weight that counts; 3 no such finding, but
something of that weight cannot be told yet; 64 the command line is not understood; 65 input was
refused; 70 our own fault. Over several files the worst counts: 70, then 65, 1, 3, 0.
"""

MAIN_GUIDE = """\
precover audits the rough-in wiring of a small dwelling before the walls are closed.

    precover audit FILE...       what a person should look at, and what to measure next
    precover makeup JOB BOX      how one box is made up: joints, pigtails, terminals
    precover signoff JOB SAYING  what a person says of findings: agreed, put right, not a defect
    precover progress OLD NEW    what became of a job between two of its saved files
    precover trace JOB [NAME]    a circuit from the panel outward, with loads and faults if you wish
    precover fieldsheet JOB      what to measure and look at, as a form to take along
    precover bring-in JOB SHEET  what a field sheet brings back, written into the job file
    precover report JOB -o FILE  everything about a job as one page, for a phone and for paper
    precover loads JOB           what the service must carry, step by step, by the pack of the job
    precover packs list          the rule packs there are
    precover packs show RULE     one rule, with its clause and where each value comes from
    precover packs prove PACK    whether every rule of a pack does what its proofs say
    precover packs compare A B   what differs between two packs, and for saved jobs
    precover packs words KIND    what a rule may speak of, for those who write packs
    precover --version

"precover COMMAND --help" tells more of one command. It approves nothing: findings are for a person
to confirm with the adopted code, the authority having jurisdiction and a licensed electrician.
"""

GUIDES = {
    "audit": f"""\
precover audit FILE... [--form text|json|sarif] [--hold-on danger|violation|advice]
                       [--working brief|full] [--against FILE] [--packs FOLDER]

Audits job files by the rule pack each of them names. FILE is a job file, a folder (every job file
in it), or - for standard input.

    --form FORM         text for people (unless said); json for programs, under
                        findings.schema.json; sarif for code-review tools, as SARIF 2.1.0
    --hold-on WEIGHT    the least weight that counts for the status: danger, violation (unless
                        said) or advice
    --working WAY       the arithmetic as on paper (brief, unless said), or in the words of the
                        rules (full)
    --against FILE      the findings of an earlier audit of the same files, as --form json wrote
                        them: only what is new or changed since then counts for the status
    --packs FOLDER      a folder with rule packs of your own, or the folder of one, beside those
                        that come with precover; may be given several times. Unless given, a
                        folder called packs beside the job file is looked into

{_STATUSES}""",
    "makeup": """\
precover makeup JOB [BOX|all] [--packs FOLDER]

Shows how a box of a job file is made up: the cables that enter, with the space and leg of each hot,
the joints with the number and sizes of their conductors, the pigtails to cut, what goes to which
terminal, which tab to break off, what stays capped. By the pack of the job it tells how full the
box is. Without BOX it lists the boxes; all draws every one, room by room.
""",
    "signoff": """\
precover signoff JOB [agreed|put-right|not-a-defect] [--mark M] [--rule RULE] [--at PLACE]
                 [--what findings|open] [--by NAME] [--because WHY] [--on DAY] [--packs FOLDER]

Keeps what a person says of findings, in a file beside the job: of net-shed.yaml in
net-shed.sign-off.yaml. Without a saying it lists the findings, each with its mark. What was said of
a finding no longer holds once the facts it rests on, or its rule, have changed; audits say so.

    agreed              known, and to be done: it stays in every report and does not count for the
                        status as long as the job is at the stage at which it was said. A danger
                        counts all the same
    put-right           mended: it counts until the job file shows it
    not-a-defect        judged so, and --because says why: it does not count, and stays in every
                        report

    --mark M            the first letters and figures of a mark that the list shows
    --rule RULE         all findings of a rule
    --at PLACE          all findings at a room, box, cable, circuit, thing, or line of the job file
    --what WHAT         findings (unless said), or open: the checks that cannot be told
    --by NAME           who says so
    --because WHY       the reason
    --on DAY            the day on which it is said, as 2026-03-14; today, unless said

--mark, --rule and --at may be given several times; of different sorts, all must hold. Of several
things said of one finding, that of the latest day holds.
Status: 0 it is written; 64, 65, 70 as for precover audit.
""",
    "progress": """\
precover progress BEFORE AFTER [--packs FOLDER]

Compares two saved files of one job, such as those of two stages: what changed in the job, thing by
thing; what was put right; what is new, and what of it only this stage asks; what changed and is
still found; what is still found; and what of the rest could be told meanwhile. Each file is audited
by the pack it names, and with the sign-off beside it.
Status: 1 something is new, or has changed and is found; 0 nothing is; 64, 65, 70 as for precover
audit.
""",
    "trace": """\
precover trace JOB [CIRCUIT | BOX | OUTLET] [--load WHAT] [--fault WHAT] [--supply NAME]
                       [--form text|json]

Follows circuits from the panel outward as a person would with a tester: box by box, what is under
each joint and on each terminal, what reaches it, what protects each outlet and what each position
of its switches does. All circuits, or the one named; of a box or an outlet, the way there.

    --load WHAT         currents, voltages and drop with this on: everything the job states (unless
                        said), an appliance by name, or a load at an outlet, "1500 W at bench"; may
                        be given several times
    --fault WHAT        what would happen: "open neutral at X" (hot and bond too; X is a joint such
                        as bench/1, a box, a device), "loose neutral at X, 2 ohm", "apart at JOINT",
                        "X taken out", "breaker 3 on leg A", "X touching Y", "supply neutral lost";
                        may be given several times
    --supply NAME       the supply of the job that feeds the panel; the usual one, unless said
    --form text|json    for people (text, unless said) or for programs

Status: 0, or 64, 65, 70 as for precover audit.
""",
    "fieldsheet": """\
precover fieldsheet JOB -o FILE [--packs FOLDER]

Writes one HTML file for a phone: what is still to be measured, and what only an eye can tell, in
the order of a walk through the rooms. It needs no network. It keeps what is typed, tells what it
cannot read, and saves it all as a small file for precover bring-in. Printed, it is a sheet for a
pencil.

Status: 0, or 64, 65, 70 as for precover audit.
""",
    "bring-in": """\
precover bring-in JOB SHEET [-o FILE]

Writes what a field sheet saved into the job file, each value in its place, and shows what changed.
Comments, order and everything else in the file stay as they are. An answer is left, and told, where
the job has come to say something else since the sheet was made, or cannot hold it.

    -o FILE             the file to write, instead of the job file itself

Status: 0 all was brought in; 1 some answers were left; 64, 65, 70 as for precover audit.
""",
    "report": """\
precover report JOB -o FILE [--packs FOLDER]

Writes one HTML file that needs no network and no script: the findings by room with boxes to tick,
what to measure and look at next, a card with a drawing of each box, the circuits followed from the
panel, a directory for the panel's door, and what the job takes. It reads well on a phone, and
prints on A4 and letter paper with no card split.

    -o FILE             the file to write; - for standard output. One that is there is written over
                        only if it is an HTML file

Status: 0 written, whatever it says; or 64, 65, 70 as for precover audit.
""",
    "loads": """\
precover loads JOB [--form text|json] [--packs FOLDER]

Shows the calculations that the pack of a job lays out, such as the load of its service: line by
line what it is, the arithmetic, the clause, the running total, and the results side by side where
a pack has several ways. What cannot be reckoned yet says which facts are missing and how to learn
them.

    --form text|json    for people (text, unless said) or for programs

Status: 0 all lines are worked out; 3 something is missing; 64, 65, 70 as for precover audit.
""",
    "packs list": """\
precover packs list [--packs FOLDER]

Lists the rule packs: what each is called, what it builds on, how many rules it holds.
Unless --packs is given, a folder called packs in the folder you work in is looked into.
""",
    "packs show": """\
precover packs show RULE [--pack PACK] [--packs FOLDER]

Shows one rule as it is in force: what it needs, its clause and provenance, the limits and measures
it uses, and which pack or layer states each. Without --pack, by each pack that stands by itself. In
the place of RULE a clause, as a report prints it, lists its rules, and a PACK lists all of its own.
PACK is a name, or the folder of a pack of your own. Unless --packs is given, a folder called packs
in the folder you work in is looked into.
""",
    "packs prove": """\
precover packs prove PACK [--packs FOLDER]

Runs the proofs of every rule and measure of a pack, and says which do not come out as stated, and
what is missing: a case that holds, that breaks, that does not apply, that cannot be told; a case
exactly at each limit that a need compares with, and one that breaks because of it; and, of what the
pack itself states, a case for each row of a table, or totals of its columns, and a use for each
limit and table.
PACK is a name, or the folder of a pack of your own. Unless --packs is given, a folder called packs
in the folder you work in is looked into.
Status: 0 every proof came out; 1 some did not; 64, 65, 70 as for precover audit.
""",
    "packs compare": """\
precover packs compare A B [--job FILE] [--packs FOLDER]

Shows what differs on the way from pack A to pack B: what only one of them holds, and every value,
row, condition and clause that B states otherwise. Packs that share no layer are compared by
subject. A and B are names, or folders of packs of your own. Unless --packs is given, a folder
called packs in the folder you work in is looked into.

    --job FILE          which findings adopting B in the place of A would add, remove or change for
                        this job file (or each of a folder); may be given several times

Status: 0; 64, 65, 70 as for precover audit.
""",
    "packs words": """\
precover packs words [KIND[.FACT]] [--pack PACK] [--packs FOLDER]

Shows what a rule may speak of: the kinds of thing, the facts of one kind, or all of one fact: what
it is, an example, how it is learnt. With --pack, the limits, tables and measures of the pack, too,
and the rules that ask the fact.
PACK is a name, or the folder of a pack of your own. Unless --packs is given, a folder called packs
in the folder you work in is looked into.
""",
}
