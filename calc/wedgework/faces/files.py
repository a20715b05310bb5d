"""Reading and writing files for the command line: the only place that touches a disk.

A path of ``-`` is standard input or output. Files are written all or none: each text goes into a new file beside its
place first, and only when all are written do they take their places.
"""

from __future__ import annotations

import contextlib
import os
import stat
import sys
from collections.abc import Sequence

from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = ["STANDARD", "place_of", "put", "read_text", "write_all"]

STANDARD = "-"
MOST_BYTES = 64 * 1024 * 1024


def read_text(path: str) -> str:
    """The text of a file, UTF-8. Raises Refused with a sentence when it cannot be read."""
    try:
        if path == STANDARD:
            data = sys.stdin.buffer.read(MOST_BYTES + 1)
        else:
            with open(path, "rb") as file:
                data = file.read(MOST_BYTES + 1)
    except OSError as error:
        raise Refused([_told(path, error, "faces.not-read")]) from None
    except ValueError:  # a path with a zero byte in it
        raise Refused([_problem(path, "faces.not-found")]) from None
    if len(data) > MOST_BYTES:
        raise Refused([_problem(path, "faces.too-large", most=MOST_BYTES // (1024 * 1024))])
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as error:
        raise Refused([_problem(path, "faces.not-utf-8", byte=error.start + 1)]) from None


def write_all(texts: Sequence[tuple[str, str]]) -> None:
    """Write each (path, text), all or none; standard output last. Raises Refused with every path that cannot be written."""
    problems: list[Problem] = []
    waiting: list[tuple[str, str]] = []
    direct: list[tuple[str, str]] = []
    try:
        for number, (path, text) in enumerate(texts):
            if path == STANDARD or (os.path.exists(path) and not os.path.isfile(path) and not os.path.isdir(path)):
                direct.append((path, text))  # standard output, a device, a pipe: no place to wait beside
                continue
            try:
                waiting.append((_beside(os.path.realpath(path), text, number), os.path.realpath(path)))
            except (OSError, ValueError) as error:
                problems.append(_told(path, error, "faces.not-written"))
        if problems:
            raise Refused(problems)
        while waiting:
            os.replace(*waiting[0])
            del waiting[0]
    finally:
        for left, _ in waiting:
            with contextlib.suppress(OSError):
                os.unlink(left)
    for path, text in direct:
        if path == STANDARD:
            put(text)
        else:
            with open(path, "wb") as file:
                file.write(text.encode())


def place_of(path: str) -> str:
    """Where a path leads in the end, for comparing; ``-`` and what can be no path stay as they are."""
    if path == STANDARD or "\0" in path:
        return path
    return os.path.realpath(path)


def put(text: str) -> None:
    """To standard output, UTF-8 whatever the terminal is set to."""
    sys.stdout.flush()
    sys.stdout.buffer.write(text.encode())
    sys.stdout.flush()


def _beside(place: str, text: str, number: int) -> str:
    """Write `text` to a new file beside `place`, with the permissions that `place` has or would get."""
    if os.path.isdir(place):
        raise IsADirectoryError(place)
    folder, name = os.path.split(place)
    waiting = os.path.join(folder, f".{name[:100]}.{os.getpid()}.{number}.new")
    handle = os.open(waiting, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(text.encode())
        if os.path.exists(place):
            os.chmod(waiting, stat.S_IMODE(os.stat(place).st_mode))
    except BaseException:
        os.unlink(waiting)
        raise
    return waiting


def _told(path: str, error: OSError | ValueError, otherwise: str) -> Problem:
    """What stands in the way, in our words where it is one of the usual things."""
    known = {
        FileNotFoundError: "faces.not-found" if otherwise == "faces.not-read" else "faces.no-folder",
        IsADirectoryError: "faces.a-folder",
        NotADirectoryError: "faces.no-folder",
        PermissionError: "faces.not-allowed",
    }
    for kind, code in known.items():
        if isinstance(error, kind):
            return _problem(path, code)
    return _problem(path, otherwise, why=getattr(error, "strerror", None) or str(error))


def _problem(path: str, code: str, **values: object) -> Problem:
    shown = say("faces.standard-input") if path == STANDARD else path.encode("utf-8", "replace").decode()
    return Problem(shown, code, say(code, **values), say(f"{code}.way-out"))
