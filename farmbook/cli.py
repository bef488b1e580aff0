"""The command line: arguments, printing, exit codes. Nothing is worked out here."""

from __future__ import annotations

import sys

from farmbook import stopping
from farmbook.version import __version__

TYPE_CHECKING = False  # what `typing` has, without loading it
if TYPE_CHECKING:
    import argparse
    from collections.abc import Sequence
    from pathlib import Path
    from typing import TextIO

    from farmbook.results import Computed

__all__ = ["main"]

# Everything else is imported inside the functions: `farmbook --help` starts at once, and an interrupt is met from the first.


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; without arguments those of the program.

    Returns the exit code: 0 done, 1 a problem in the user's files, 2 wrong usage, 3 a fault in farmbook. A program that is
    interrupted ends with 130, one that is told to end with 143.
    """
    if arguments is None:
        stopping.end_in_one_line()
        _hurry()
    import contextlib  # for start-up speed

    from farmbook.errors import FarmbookError, OutputProblem  # for start-up speed

    try:
        options = _options(arguments)
        code: int = options.run(options)
    except FarmbookError as error:
        hint = f"\n\nhint: {error.hint}" if error.hint else ""
        with contextlib.suppress(OutputProblem):  # there is no place left to say it
            _complain(f"error: {error}{hint}")
        return error.exit_code
    return code


def _hurry() -> None:
    """One command and the program ends: memory need not be tidied before or at the end, and small arrays need no threads."""
    import atexit  # for start-up speed
    import gc  # for start-up speed
    import os  # for start-up speed

    gc.disable()
    atexit.register(gc.freeze)  # Python tidies once more when it ends, whatever was disabled
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")


def _options(arguments: Sequence[str] | None) -> argparse.Namespace:
    """The arguments, parsed. What the parser prints goes our way: by itself it loses in silence what cannot be printed."""
    import contextlib  # for start-up speed
    import io  # for start-up speed

    help_text, complaint = io.StringIO(), io.StringIO()
    try:
        with contextlib.redirect_stdout(help_text), contextlib.redirect_stderr(complaint):
            return _parser().parse_args(arguments)
    except SystemExit:
        for text, stream in ((complaint, sys.stderr), (help_text, sys.stdout)):
            if text.getvalue():
                _print(text.getvalue(), stream)
        raise


def _say(text: str) -> None:
    """Print a result. Raises OutputProblem where it cannot be printed whole."""
    _print(text, sys.stdout)


def _complain(text: str) -> None:
    """Print a message beside the results."""
    _print(f"{text}\n", sys.stderr)


def _print(text: str, stream: TextIO | None) -> None:
    from farmbook.errors import OutputProblem, reason_of, visible  # for start-up speed

    if stream is None:
        raise OutputProblem("it is closed")
    try:
        stream.write(visible(text, keep="\n"))
        stream.flush()
    except UnicodeEncodeError as error:
        letter = f"U+{ord(error.object[error.start]):04X}"
        raise OutputProblem(
            f"its encoding, {error.encoding}, has no letter {letter}",
            hint="set PYTHONIOENCODING=utf-8 and run it again",
        ) from None
    except OSError as error:
        _give_up(stream)
        raise OutputProblem(reason_of(error)) from None


def _give_up(stream: TextIO) -> None:
    """Let nothing more be written: what is left in memory would be tried, and complained of, once more at the end."""
    import os  # for start-up speed

    os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def _parser() -> argparse.ArgumentParser:
    import argparse  # for start-up speed

    parser = argparse.ArgumentParser(
        prog="farmbook", description="Live workbooks for the economics of an oyster-mushroom farm."
    )
    parser.add_argument("--version", action="version", version=f"farmbook {__version__}")
    commands = parser.add_subparsers(title="commands", required=True, metavar="COMMAND")
    build = commands.add_parser("build", help="write the workbook of a scenario")
    build.add_argument("scenario", metavar="SCENARIO", help="a scenario file (.toml)")
    build.add_argument("--out", metavar="BOOK.xlsx", required=True, help="where to write the workbook")
    build.add_argument(
        "--replace", action="store_true", help="overwrite an existing workbook even if it has been edited"
    )
    _anyway(build, "write the workbook")
    build.set_defaults(run=_build)
    check = commands.add_parser("check", help="check a scenario file and the farm it describes")
    check.add_argument("scenario", metavar="SCENARIO")
    check.set_defaults(run=_check)
    show = commands.add_parser("show", help="print the results of a scenario")
    show.add_argument("scenario", metavar="SCENARIO")
    show.add_argument("--names", action="store_true", help="with the name of each line in the workbook")
    show.add_argument("--all", action="store_true", help="every line by name, with --json or --csv")
    _anyway(show, "print the results")
    form = show.add_mutually_exclusive_group()
    form.add_argument("sheet", metavar="SHEET", nargs="?", help="one sheet, by its name or a part of it, such as crop")
    form.add_argument("--json", action="store_true", help="as JSON")
    form.add_argument("--csv", action="store_true", help="as CSV")
    show.set_defaults(run=_show)
    _matters_parser(commands.add_parser("matters", help="print what to measure next: what moves a year's profit most"))
    _explain_parser(
        commands.add_parser("explain", help="print how a line is worked out and what feeds it, down to the inputs")
    )
    _read_back_parser(commands.add_parser("read", help="write the scenario of a workbook that was edited"))
    _print_parser(commands.add_parser("print", help="print a workbook as it was edited, through LibreOffice"))
    new = commands.add_parser("new", help="write a short scenario file to start from")
    new.add_argument("file", metavar="FILE", help="the scenario file to write (.toml)")
    new.add_argument("--units", choices=("us", "metric"), default="us", help="which units it is written in")
    new.add_argument(
        "--ask", action="store_true", help="ask for the figures that matter most, then write the file and its workbook"
    )
    new.set_defaults(run=_new)
    schema = commands.add_parser("schema", help="print the JSON Schema of scenario files")
    schema.set_defaults(run=_schema)
    return parser


def _matters_parser(matters: argparse.ArgumentParser) -> None:
    matters.add_argument("scenario", metavar="SCENARIO")
    form = matters.add_mutually_exclusive_group()
    form.add_argument("--all", action="store_true", help="every figure that moves the profit, not the first twenty")
    form.add_argument("--json", action="store_true", help="every figure as JSON")
    _anyway(matters, "print the table")
    matters.set_defaults(run=_matters)


def _explain_parser(explain: argparse.ArgumentParser) -> None:
    explain.add_argument("scenario", metavar="SCENARIO")
    explain.add_argument(
        "line",
        metavar="WHAT",
        help='a label or a part of one, such as "cost of a load", or a name as cabinet.cost_per_run',
    )
    explain.add_argument(
        "--depth", type=_levels, metavar="N", help="how many levels of what feeds it are told (3 unless given)"
    )
    _anyway(explain, "explain the line")
    explain.set_defaults(run=_explain)


def _read_back_parser(read: argparse.ArgumentParser) -> None:
    read.add_argument("book", metavar="BOOK.xlsx", help="a workbook that farmbook built, as you edited it")
    read.add_argument("--out", metavar="FILE.toml", required=True, help="where to write the scenario")
    read.add_argument(
        "--into", metavar="SCENARIO.toml", help="keep remarks and order of this scenario, change the rest"
    )
    read.add_argument("--replace", action="store_true", help="overwrite an existing scenario file")
    read.set_defaults(run=_read)


def _print_parser(printing: argparse.ArgumentParser) -> None:
    printing.add_argument("book", metavar="BOOK.xlsx", help="a workbook that farmbook built, as you edited it")
    printing.add_argument(
        "sheets",
        nargs="?",
        choices=("front", "lender", "all"),
        default="front",
        help="the sheets before the inputs (front, unless you say otherwise), what a lender is handed, or all of them",
    )
    printing.add_argument(
        "--out", metavar="FILE.pdf", help="where to write the printed book; left out, beside it under its own name"
    )
    printing.add_argument("--replace", action="store_true", help="overwrite an existing PDF file")
    printing.set_defaults(run=_print_book)


def _levels(text: str) -> int:
    """A whole number of levels, from 1 up; of no more digits than anyone types."""
    import argparse  # for start-up speed

    if not (text.isascii() and text.isdigit() and len(text) <= 9 and int(text)):
        raise argparse.ArgumentTypeError("give a whole number of levels, 1 or more")
    return int(text)


def _anyway(command: argparse.ArgumentParser, what: str) -> None:
    command.add_argument(
        "--anyway", action="store_true", help=f"{what} even if checks of the farm fail, to look; the exit code stays 1"
    )


def _computed(path: str) -> tuple[Computed, int]:
    """The results of a scenario, and how many of its checks fail: what is unusual, fires or fails is said on standard error."""
    from farmbook.results import compute, load_scenario  # for start-up speed
    from farmbook.scenario.report import check_report  # for start-up speed

    computed = compute(load_scenario(path))
    errors, alerts = check_report(computed.model, computed.values)
    for title, problems in (
        ("the book does not add up", errors),
        ("alerts", alerts),
        ("unusual", computed.scenario.warnings),
    ):
        if problems:
            _complain("\n".join([f"{title}:", *map(str, problems)]))
    return computed, len(errors)


def _refused(options: argparse.Namespace, failed: int, what: str) -> bool:
    """Whether it ends here, since checks of the farm fail and nobody insists on looking; says so."""
    if failed and not options.anyway:
        _complain(f"\nnothing was {what}: put these right first, or give --anyway to look at it all the same")
    return bool(failed) and not options.anyway


def _build(options: argparse.Namespace) -> int:
    from farmbook.errors import visible  # for start-up speed
    from farmbook.output import build_bytes, free_target, save, workbook_target  # for start-up speed

    workbook_target(options.out)
    computed, failed = _computed(options.scenario)
    if _refused(options, failed, "written"):
        return 1
    free_target(options.out, replace=options.replace)  # refused before the longest part of the work
    data = build_bytes(computed)
    save(data, options.out, replace=options.replace)
    _complain(f"wrote {visible(options.out)} ({len(data) / 1024:.0f} KB)")
    return 1 if failed else 0


def _check(options: argparse.Namespace) -> int:
    from farmbook.errors import visible  # for start-up speed

    _, failed = _computed(options.scenario)
    if not failed:
        _complain(f"{visible(options.scenario)}: the book adds up")
    return 1 if failed else 0


def _show(options: argparse.Namespace) -> int:
    from farmbook.sheet_text import sheet_text  # for start-up speed
    from farmbook.show import as_csv, as_json, headline_text  # for start-up speed

    computed, failed = _computed(options.scenario)
    if _refused(options, failed, "printed"):
        return 1
    if options.sheet is not None:
        _say(f"{sheet_text(computed, options.sheet, names=options.names)}\n")
    elif options.json:
        _say(as_json(computed))
    elif options.csv or options.all:
        _say(as_csv(computed))
    else:
        _say(f"{headline_text(computed, names=options.names)}\n")
    return 1 if failed else 0


def _matters(options: argparse.Namespace) -> int:
    from farmbook.matters_text import FIRST, matters_json, matters_text  # for start-up speed

    computed, failed = _computed(options.scenario)
    if _refused(options, failed, "printed"):
        return 1
    told = matters_json(computed) if options.json else matters_text(computed, None if options.all else FIRST)
    _say(f"{told}\n")
    return 1 if failed else 0


def _explain(options: argparse.Namespace) -> int:
    from farmbook.explain import DEPTH, explanation  # for start-up speed

    computed, failed = _computed(options.scenario)
    if _refused(options, failed, "explained"):
        return 1
    depth = DEPTH if options.depth is None else options.depth
    _say(f"{explanation(computed, options.line, depth)}\n")
    return 1 if failed else 0


def _read(options: argparse.Namespace) -> int:
    from farmbook.errors import visible  # for start-up speed
    from farmbook.read_back import read_back, save_scenario  # for start-up speed

    found = read_back(options.book, options.out, options.into)
    save_scenario(found.text, options.out, replace=options.replace)
    if found.remarks:
        _complain("\n".join(["how the workbook was read:", *map(str, found.remarks)]))
    _complain(f"wrote {visible(options.out)}")
    return 0


def _print_book(options: argparse.Namespace) -> int:
    from farmbook.errors import visible  # for start-up speed
    from farmbook.printing import beside, printed, save_print  # for start-up speed

    out = options.out or beside(options.book, options.sheets)
    data = printed(options.book, options.sheets)
    save_print(data, out, replace=options.replace)
    _complain(f"wrote {visible(str(out))} ({len(data) / 1024:.0f} KB)")
    return 0


def _new(options: argparse.Namespace) -> int:
    from farmbook.errors import visible  # for start-up speed
    from farmbook.layout.template import starter  # for start-up speed
    from farmbook.writing import write_whole  # for start-up speed

    path = _unwritten(options.file)
    if options.ask:
        return _new_by_asking(options, path)
    write_whole(starter(options.units).encode(), path)
    name = visible(options.file)
    _complain(f"wrote {name}: put your own numbers in, then `farmbook build {name} --out BOOK.xlsx`")
    return 0


def _unwritten(name: str) -> Path:
    """The file that is to be written. Raises FileProblem where there is one already."""
    from farmbook.errors import FileProblem  # for start-up speed
    from farmbook.writing import look_at, target_of  # for start-up speed

    path = target_of(name)
    if look_at(path) is not None:
        raise FileProblem(name, "exists already, so it was left as it is", hint="give another name")
    return path


def _new_by_asking(options: argparse.Namespace, path: Path) -> int:
    """Ask, write the scenario file and its workbook, and say what the first sheet says."""
    from farmbook.asking import asked  # for start-up speed
    from farmbook.errors import FileProblem  # for start-up speed
    from farmbook.output import build_bytes, save  # for start-up speed
    from farmbook.show import headline_text  # for start-up speed
    from farmbook.writing import write_whole  # for start-up speed

    if path.suffix.lower() == ".xlsx":
        raise FileProblem(options.file, "is no name for a scenario file", hint="give one that ends in .toml")
    book = _unwritten(str(path.with_suffix(".xlsx")))
    _complain("A blank answer keeps what stands in brackets. A number may carry its own unit, such as 2.3 kg or 7 %.")
    write_whole(asked(options.units, _answer, _complain).encode(), path)
    computed, failed = _computed(str(path))
    _say(f"\n{headline_text(computed)}\n")
    _complain(f"wrote {path.name}: what you answered, and what the book assumed")
    if not failed:
        save(build_bytes(computed), book)
        _complain(f"wrote {book.name}")
    return 1 if failed else 0


def _answer(prompt: str) -> str | None:
    """What is typed after a prompt; None where nothing comes any more."""
    _print(prompt, sys.stderr)
    line = sys.stdin.readline() if sys.stdin is not None else ""
    return line or None


def _schema(options: argparse.Namespace) -> int:
    import json  # for start-up speed

    from farmbook.model.farm import SECTIONS  # for start-up speed
    from farmbook.scenario.schema import json_schema  # for start-up speed

    _say(json.dumps(json_schema(SECTIONS), indent=2, ensure_ascii=False) + "\n")
    return 0
