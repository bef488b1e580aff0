"""Scenario files that nobody in his right mind writes, made from good ones by a seeded chance."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from random import Random
from typing import Final

__all__ = ["KINDS", "MAIN", "Hostile", "hostile"]

ROOT: Final = Path(__file__).resolve().parents[2]
MAIN: Final = "farm.toml"
TOKEN: Final = re.compile(r'"[^"\n]*"|[\w.%-]+|\s+|.', re.DOTALL)
VALUE: Final = re.compile(r"(?<== )(?:\{[^}\n]*\}|\[[^]\n]*\]|\"[^\"\n]*\"|[\w.+-]+)")
NUMBER: Final = re.compile(r"(?<![\w.\"])[0-9]+(?:\.[0-9]+)?(?![\w.])")
TEXT: Final = re.compile(r'(?<=")[^"\n]+(?=")')
HEADING: Final = re.compile(r"^\[.*\]$", re.MULTILINE)
KEY: Final = re.compile(r"^[\w-]+(?= =)", re.MULTILINE)

VALUES: Final = (
    *("true", "false", "2026-03-01", "2026-13-01", "12:30:00", "25:61:00", "1979-05-27T07:32:00Z", "[]", "{}", "''"),
    *("[1, 2, 3]", "[[1], ['a']]", "{value = 1}", "{value = {value = 1}}", "{basis = 'guess'}", "{value = [1]}"),
    *(
        "{value = 1, basis = 3}",
        "{value = 1, note = true}",
        "[{a = 1}]",
        '"true"',
        '"=1+1"',
        '"#REF!"',
        "0x1F",
        "0b101",
    ),
    *("'''\na\nb'''", '""', "nan", "inf", "-inf", "0,11", ".5", "05", "5 lb", "5%", "1_000", "+3", "1.", "e5", "USD 4"),
)
NUMBERS: Final = (
    *("0", "-0.0", "-1", "1", "100", "1e-300", "1e300", "1e308", "-1e308", "1e400", "-1e400", "5e-324", "1e-999"),
    *("1e999999999", "1e-999999999", "1e99999999999999999999", "1e-99999999999999999999", "0e99999999999999999999"),
    *("0.1e-5", "123456789012345678901234567890", "1e15", "1e16", "0.30000000000000004", "99999999", "1000000"),
)
QUANTITIES: Final = (
    *(
        "5 lb",
        "5 lb/",
        "lb 5",
        "5 lb/lb/lb/lb/lb/lb/lb/lb/lb",
        "1,200 lb",
        "1.200,5 kg",
        "0,11",
        "100 %",
        "1000 %",
        "-5 %",
    ),
    *("5 %%", "5 % %", "1e5000 lb", "1e-5000 lb", "5 USD/EUR", "5 \u20ac", "5 \u00b0F", "5 \u00b0", "5 m2", "5 m99999"),
    *(
        "5 sq sq ft",
        "5 lb*lb",
        "5 ton",
        "\u22125 lb",
        "\u0665 lb",
        "5\u00a0lb",
        "5\u200blb",
        "5 \u212a",
        "0x5 lb",
        "inf lb",
    ),
    *("nan %", "5 lb per bag per bag per week", "5 " + "x" * 180, "5 " + "/".join(["lb"] * 50), "1_0_0 lb", "1__0 lb"),
)
CHARACTERS: Final = (
    *("\u0130", "\u0131", "\u017f", "\ufb01", "\u03c2", "\u00df", "\u1e9e", "e\u0301", "\u212a", "\uff21", "\u2460"),
    *("\u200b", "\u200d", "\u200e", "\u202e", "\u2066", "\u2028", "\u2029", "\ufeff", "\ufffd", "\ufffe", "\U0010ffff"),
    *("\u0000", "\u0007", "\u001b[31m", "\u007f", "\u0085", "\u009b", "\t", "\\uD800", "\\U00110000", "\\x41", "\\"),
    *("\U0001f344", "\u0e33", "\u0344", "\u1160", "\u3164", "\u00ad", "\u061c", "\u180e", "\U000e0041", "a" * 201),
    *(
        "'",
        "=",
        "=1+1",
        "@SUM(1)",
        "+1",
        "-1",
        "{}",
        "%s",
        "{0}",
        "%n",
        "..",
        "/",
        "\\\\",
        "$",
        "`",
        "<b>",
        "&amp;",
        "_x0041_",
    ),
)


@dataclass(frozen=True)
class Hostile:
    """Files of one folder, by name; MAIN is the one that is given to farmbook. `kind` says how they were made."""

    kind: str
    files: dict[str, bytes]


@cache
def good_files() -> tuple[str, ...]:
    """The demo farms and the starters."""
    paths = [*sorted((ROOT / "scenarios").glob("*.toml")), *sorted((ROOT / "templates_src").glob("starter_*.txt"))]
    return tuple(path.read_text(encoding="utf-8") for path in paths)


def hostile(seed: int, number: int) -> Hostile:
    """The files of this number in the run of this seed: always the same."""
    chance = Random(f"{seed}:{number}")
    kind = list(KINDS)[number % len(KINDS)]
    found = KINDS[kind](chance, chance.choice(good_files()))
    files = found if isinstance(found, dict) else {MAIN: found if isinstance(found, bytes) else coded(found)}
    return Hostile(kind, files)


def coded(text: str) -> bytes:
    return text.encode("utf-8", "surrogatepass")


def replaced(chance: Random, text: str, pattern: re.Pattern[str], by: Callable[[str], str], most: int = 3) -> str:
    """The text with some of what the pattern finds, chosen by chance, put otherwise."""
    found = list(pattern.finditer(text))
    chosen = chance.sample(found, min(len(found), chance.randint(1, most)))
    for match in sorted(chosen, key=re.Match.start, reverse=True):
        text = text[: match.start()] + by(match[0]) + text[match.end() :]
    return text


def some_bytes(chance: Random, text: str) -> bytes:
    """Bytes flipped, put in, taken out, or the end cut off."""
    content = bytearray(text.encode())
    for _ in range(chance.randint(1, 8)):
        place = chance.randrange(len(content))
        way = chance.randrange(4)
        if way == 0:
            content[place] ^= 1 << chance.randrange(8)
        elif way == 1:
            content[place:place] = chance.randbytes(chance.randint(1, 4))
        elif way == 2:
            del content[place : place + chance.randint(1, 40)]
        else:
            content[place] = chance.choice(b"\0\n\r\"'[]{}=#,\\")
    return bytes(content[: chance.randrange(1, len(content))] if chance.random() < 0.1 else content)


def encodings(chance: Random, text: str) -> bytes:
    """Text saved in another encoding, with other line ends, or with a mark in front."""
    text = text.replace("a", chance.choice("a\u00e4\u20ac"), chance.randint(0, 5))
    ways: list[Callable[[], bytes]] = [
        *(lambda name=name: text.encode(name, "replace") for name in ("utf-16", "utf-16-le", "utf-32", "cp1252", "utf-7")),
        lambda: b"\xef\xbb\xbf" * chance.randint(1, 3) + text.encode(),
        lambda: text.replace("\n", chance.choice(["\r", "\r\n", "\n\r", "\x0b", "\u2028"])).encode(),
        lambda: b"\x1f\x8b\x08" + text.encode(),
        lambda: b"PK\x03\x04" + text.encode(),
    ]  # fmt: skip
    return chance.choice(ways)()


def tokens(chance: Random, text: str) -> str:
    """Tokens swapped, doubled, dropped, or taken from another place."""
    parts = TOKEN.findall(text)
    for _ in range(chance.randint(1, 6)):
        here, there = chance.randrange(len(parts)), chance.randrange(len(parts))
        parts[here], parts[there] = chance.choice(
            [(parts[there], parts[here]), (parts[here] * 2, parts[there]), ("", parts[there]), (parts[there],) * 2]
        )
    return "".join(parts)


def types(chance: Random, text: str) -> str:
    """Values of a kind that does not belong there."""
    return replaced(chance, text, VALUE, lambda _: chance.choice(VALUES))


def sizes(chance: Random, text: str) -> str:
    """Numbers past all sense."""
    return replaced(chance, text, NUMBER, lambda _: chance.choice(NUMBERS), most=6)


def quantities(chance: Random, text: str) -> str:
    """Numbers with units past all sense."""
    return replaced(chance, text, VALUE, lambda _: f'"{chance.choice(QUANTITIES)}"')


def digits(chance: Random, text: str) -> str:
    """Numbers of thousands of digits."""
    count = chance.choice([300, 399, 401, 4000, 4300, 4301, 5000, 40_000, 400_000])
    run = chance.choice("1239") * count
    forms = (
        run,
        f"-{run}",
        f"0.{run}",
        f"{run}.5",
        f"1e{run}",
        f"1e-{run}",
        f"0x{run}",
        f'"{run} lb"',
        f'"1e{run} lb"',
    )
    return replaced(chance, text, VALUE, lambda _: chance.choice(forms), most=2)


def depths(chance: Random, text: str) -> str:
    """Lists, tables and keys within each other."""
    deep = chance.choice([5, 7, 20, 500, 20_000])
    nested = (
        f"x = {'[' * deep}1{']' * deep}\n",
        f"x = {'[' * deep}\n",
        f"x = {'{a=' * deep}1{'}' * deep}\n",
        f"{'.'.join(['a'] * deep)} = 1\n",
        f"[{'.'.join(['a'] * deep)}]\nx = 1\n",
        f'["{"." * deep}"]\nx = 1\n',
        "".join(f"[{'.'.join(['farm'] * count)}]\n" for count in range(1, min(deep, 300))),
    )
    return text + "\n" + chance.choice(nested) if chance.random() < 0.5 else chance.choice(nested) + text


def keys(chance: Random, text: str) -> str:
    """Keys and headings misspelt, swapped, doubled, quoted oddly, or of another table."""
    words: list[str] = KEY.findall(text) + [heading.strip("[]") for heading in HEADING.findall(text)]

    def other(word: str) -> str:
        place = chance.randrange(len(word) + 1)
        return chance.choice(
            [
                word[:place] + word[place + 1 :] or "x",
                word + chance.choice("x_-. "),
                chance.choice(words),
                f'"{chance.choice(CHARACTERS)}"',
                word.upper(),
                "basis", "name", "value", "__proto__", "x" * 300, "''", f"{word}.value",
            ]
        )  # fmt: skip

    def heading(found: str) -> str:
        return chance.choice([f"[{found}]", f"[{other(found.strip('[]'))}]", found + "\n" + found, "[[farm]]", "[]"])

    return replaced(chance, replaced(chance, text, KEY, other), HEADING, heading, most=2)


def letters(chance: Random, text: str) -> str:
    """Odd characters in names and texts."""

    def odd(word: str) -> str:
        place = chance.randrange(len(word) + 1)
        return word[:place] + chance.choice(CHARACTERS) * chance.choice([1, 1, 1, 30]) + word[place:]

    return replaced(chance, text, TEXT, odd, most=5)


def names(chance: Random, text: str) -> str:
    """Rows whose names are alike, odd, or those of others."""
    pool = (
        "House mix",
        "HOUSE MIX",
        "hou\u017fe mix",
        "lean",
        "Lean",
        "LEAN",
        "\u0130\u0130",
        "ii",
        "\ufb01r",
        "fir",
        "=A1",
        "*",
        "?",
    )
    pattern = re.compile(r'(?<=name = ")[^"\n]*(?=")|(?<=chosen_recipe = ")[^"\n]*(?=")')
    return replaced(chance, text, pattern, lambda _: chance.choice(pool), most=6)


def volumes(chance: Random, text: str) -> str:
    """Much of something: rows, tables, keys, remarks, commas."""
    many = chance.choice([10, 300, 3000, 20_000])
    return text + chance.choice(
        [
            "\n" + "".join(f"[recipe.r{row}]\n" for row in range(many)),
            "\n" + "".join(f"[junk_{row}]\nx = 1\n" for row in range(many)),
            "\n[farm]\n" + "".join(f"k{row} = {row}\n" for row in range(many)),
            "\n" + "#" * (many * 50),
            f'\nx = "{"y" * many * 40}"\n',
            f"\nx = [{'1,' * many}1]\n",
            f"\n{'k' * many} = 1\n",
            f"\nx = {' ' * many}\n",
        ]
    )


def chains(chance: Random, text: str) -> dict[str, bytes]:
    """Files that extend each other: in a row, in a circle, themselves, folders, devices, what is not there."""
    length = chance.choice([1, 2, 3, 8, 9, 12])
    after = [f"f{step}.toml" for step in range(1, length)]
    ends = [
        MAIN,
        ".",
        "..",
        "missing.toml",
        "/dev/null",
        "/dev/zero",
        "",
        " ",
        "a\\u0000b",
        "x" * 5000,
        "f1.toml",
        "~",
        "\\\\",
    ]
    following = [*after, chance.choice(ends) if chance.random() < 0.6 else ""]
    remark, rows = "#" * 900_000, "".join(f"[junk_{row}]\nx = {row}\n" for row in range(38_000))
    filler = chance.choice(["", "", "", remark, rows])
    files = {}
    for name, extended in zip([MAIN, *after], following, strict=True):
        body = text if chance.random() < 0.5 or not extended else 'units = "us"\n'
        files[name] = coded((f'extends = "{extended}"\n' if extended else "") + mixed(chance, body) + "\n" + filler)
    return files


def mixed(chance: Random, text: str) -> str:
    """One more fault, or none."""
    ways: list[Callable[[Random, str], str]] = [types, sizes, quantities, keys, letters, names]
    return text if chance.random() < 0.2 else chance.choice(ways)(chance, text)


def several(chance: Random, text: str) -> str:
    """Faults of several kinds in one file."""
    for _ in range(chance.randint(2, 6)):
        text = mixed(chance, text)
    return text


KINDS: Final[dict[str, Callable[[Random, str], str | bytes | dict[str, bytes]]]] = {
    way.__name__: way
    for way in (
        *(some_bytes, encodings, tokens, types, sizes, quantities, digits),
        *(depths, keys, letters, names, volumes, chains, several),
    )
}
"""Ways of making hostile files; the numbers of a run take them in turn."""
