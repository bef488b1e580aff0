"""Files as they are written: where a name leads, what stands there, and whole or not at all."""

from __future__ import annotations

import os
import stat
from pathlib import Path

from farmbook import stopping
from farmbook.errors import FileProblem, reason_of

__all__ = ["look_at", "target_of", "write_whole"]


def target_of(path: str | Path) -> Path:
    """The file that a name means, through symbolic links. Raises FileProblem where the name is that of a folder."""
    name = os.fspath(path)
    target = Path(os.path.realpath(name) if os.path.islink(name) else name)
    found = look_at(target)
    if found is not None and stat.S_ISDIR(found.st_mode):
        raise FileProblem(name, "is a folder, not a file", hint="give the name of a file in it")
    if name.endswith(("/", os.sep)):
        raise FileProblem(name, "is the name of a folder, not of a file", hint="leave out the slash at the end")
    return target


def look_at(target: Path) -> os.stat_result | None:
    """What stands at a place, None for nothing. Raises FileProblem where that cannot be seen."""
    try:
        return target.stat()
    except (FileNotFoundError, NotADirectoryError):
        return None
    except OSError as error:
        raise FileProblem(str(target), f"cannot be written: {reason_of(error)}") from None
    except ValueError:
        raise FileProblem(str(target), "cannot be written: no file can have such a name") from None


def write_whole(data: bytes, target: Path) -> None:
    """Write to a new name beside the target and rename, so that nothing is half-written and permissions stay as they were.

    Raises FileProblem where it cannot be written.
    """
    found = look_at(target)
    mode = 0o666 if found is None else stat.S_IMODE(found.st_mode)
    half = str(target.parent / f".farmbook-{os.urandom(8).hex()}.tmp")
    stopping.unfinished.add(half)
    try:
        with open(half, "xb", opener=lambda name, flags: os.open(name, flags, mode)) as file:
            file.write(data)
        if found is not None:
            os.chmod(half, mode)
        os.replace(half, target)
    except OSError as error:
        raise FileProblem(str(target), f"cannot be written: {reason_of(error)}") from None
    finally:
        Path(half).unlink(missing_ok=True)
        stopping.unfinished.discard(half)
