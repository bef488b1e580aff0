"""The command line: arguments, printing, exit codes. Nothing is worked out here."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from farmbook import __version__
from farmbook.errors import FarmbookError

if TYPE_CHECKING:
    from farmbook.results import Computed

__all__ = ["main"]

# Everything heavier than argument parsing is imported inside the commands, so that `farmbook --help` starts at once.


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit code: 0 done, 1 a problem in the user's files, 2 wrong usage, 3 a fault in farmbook."""
    options = _parser().parse_args(arguments)
    try:
        code: int = options.run(options)
    except FarmbookError as error:
        print(f"error: {error}", file=sys.stderr)
        if error.hint:
            print(f"\nhint: {error.hint}", file=sys.stderr)
        return error.exit_code
    except BrokenPipeError:
        sys.stderr.close()
        return 1
    return code


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="farmbook", description="Live workbooks for the economics of an oyster-mushroom farm."
    )
    parser.add_argument("--version", action="version", version=f"farmbook {__version__}")
    commands = parser.add_subparsers(title="commands", required=True, metavar="COMMAND")
    build = commands.add_parser("build", help="write the workbook of a scenario")
    build.add_argument("scenario", metavar="SCENARIO", help="a scenario file (.toml)")
    build.add_argument("--out", metavar="BOOK.xlsx", required=True, help="where to write the workbook")
    build.add_argument("--replace", action="store_true", help="overwrite an existing file even if it has been edited")
    build.set_defaults(run=_build)
    check = commands.add_parser("check", help="check a scenario file and the farm it describes")
    check.add_argument("scenario", metavar="SCENARIO")
    check.set_defaults(run=_check)
    show = commands.add_parser("show", help="print the results of a scenario")
    show.add_argument("scenario", metavar="SCENARIO")
    show.add_argument("--all", action="store_true", help="every line by name, with --json or --csv")
    form = show.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help="as JSON")
    form.add_argument("--csv", action="store_true", help="as CSV")
    show.set_defaults(run=_show)
    explain = commands.add_parser(
        "explain", help="print how a line is worked out and what feeds it, down to the inputs"
    )
    explain.add_argument("scenario", metavar="SCENARIO")
    explain.add_argument("line", metavar="LINE", help="a line's name, such as cabinet.cost_per_run")
    explain.set_defaults(run=_explain)
    new = commands.add_parser("new", help="write a short scenario file to start from")
    new.add_argument("file", metavar="FILE", help="the scenario file to write (.toml)")
    new.add_argument("--units", choices=("us", "metric"), default="us", help="which units it is written in")
    new.set_defaults(run=_new)
    schema = commands.add_parser("schema", help="print the JSON Schema of scenario files")
    schema.set_defaults(run=_schema)
    return parser


def _computed(path: str) -> Computed:
    from farmbook.results import compute, load_scenario  # for start-up speed

    return compute(load_scenario(path))


def _report(computed: Computed) -> int:
    """Say on standard error what is unusual, what fires and what fails; returns how many errors there are."""
    from farmbook.scenario.report import check_report  # for start-up speed

    errors, alerts = check_report(computed.model, computed.values)
    for title, problems in (
        ("outside the usual range", computed.scenario.warnings),
        ("alerts", alerts),
        ("the book does not add up", errors),
    ):
        if problems:
            print(f"{title}:", file=sys.stderr)
            print("\n".join(str(problem) for problem in problems), file=sys.stderr)
    return len(errors)


def _build(options: argparse.Namespace) -> int:
    from farmbook.output import build_bytes, save  # for start-up speed

    computed = _computed(options.scenario)
    if _report(computed):
        print("\nnothing was written: put these right first", file=sys.stderr)
        return 1
    data = build_bytes(computed)
    save(data, Path(options.out), replace=options.replace)
    print(f"wrote {options.out} ({len(data) / 1024:.0f} KB)", file=sys.stderr)
    return 0


def _check(options: argparse.Namespace) -> int:
    computed = _computed(options.scenario)
    failed = _report(computed)
    if not failed:
        print(f"{options.scenario}: the book adds up", file=sys.stderr)
    return 1 if failed else 0


def _show(options: argparse.Namespace) -> int:
    from farmbook.show import as_csv, as_json, headline_text  # for start-up speed

    computed = _computed(options.scenario)
    _report(computed)
    if options.json or options.csv:
        print(as_json(computed) if options.json else as_csv(computed), end="")
    elif options.all:
        print(as_csv(computed), end="")
    else:
        print(headline_text(computed))
    return 0


def _explain(options: argparse.Namespace) -> int:
    from farmbook.explain import explanation  # for start-up speed

    print(explanation(_computed(options.scenario), options.line))
    return 0


def _new(options: argparse.Namespace) -> int:
    from farmbook.errors import FileProblem  # for start-up speed
    from farmbook.layout.template import template_folder  # for start-up speed
    from farmbook.output import write_whole  # for start-up speed

    path = Path(options.file)
    if path.exists():
        raise FileProblem(str(path), "exists already, so it was left as it is", hint="give another name")
    write_whole((template_folder() / f"starter_{options.units}.txt").read_bytes(), path)
    print(f"wrote {path}: put your own numbers in, then `farmbook build {path} --out BOOK.xlsx`", file=sys.stderr)
    return 0


def _schema(options: argparse.Namespace) -> int:
    import json  # for start-up speed

    from farmbook.model.farm import SECTIONS  # for start-up speed
    from farmbook.scenario.schema import json_schema  # for start-up speed

    print(json.dumps(json_schema(SECTIONS), indent=2, ensure_ascii=False))
    return 0
