"""What stands behind the ``#`` of an address: a letter for its kind, the version of the kind, and JSON packed small.

    packed({"a": 1}, "w")          # 'w1.q1ZKVLIyrAUA'
    unpacked("w1.q1ZKVLIyrAUA", "w")    # {"a": 1}

Raw deflate of canonical JSON in base64url without padding. It is a stranger's text: it is measured before it is unpacked, and
unpacked before it is read.
"""

from __future__ import annotations

import base64
import re
import zlib
from typing import Any, NoReturn

from wedgework.formats import canonical
from wedgework.formats.text import parse
from wedgework.problems import Problem, Refused
from wedgework.say import say
from wedgework.version import VERSION

__all__ = ["MOST_BYTES", "MOST_CHARACTERS", "is_version", "packed", "refuse", "unpacked"]

MOST_CHARACTERS = 4_096
"""Of a fragment; some programs that pass addresses on cut them not far above."""
MOST_BYTES = 32_768
"""Of the JSON inside: a few kilobytes can be packed so that they unpack to gigabytes."""

_FRAGMENT = re.compile(r"([a-z])([0-9]{1,4})\.([A-Za-z0-9_-]*)")
_VERSION = re.compile(r"[0-9]{1,4}(\.[0-9]{1,4}){1,3}[0-9a-z.+-]{0,20}")


def packed(value: dict[str, Any], kind: str, too_much: str = "much") -> str:
    """The fragment of the first version. Raises Refused, with the code ``faces.link-`` and `too_much`, when it grows too long."""
    try:
        data = canonical(value).encode()
    except UnicodeEncodeError:  # half a character, as a program may pass it on
        refuse("broken")
    packer = zlib.compressobj(9, zlib.DEFLATED, -15)
    inside = packer.compress(data) + packer.flush()
    fragment = f"{kind}1." + base64.urlsafe_b64encode(inside).decode().rstrip("=")
    if len(fragment) > MOST_CHARACTERS or len(data) > MOST_BYTES:
        refuse(too_much, most=MOST_CHARACTERS)
    return fragment


def unpacked(fragment: str, kind: str) -> Any:
    """The JSON inside, whatever it is; numbers exact. Raises Refused with one sentence for anything that is no whole fragment."""
    if len(fragment) > MOST_CHARACTERS:
        refuse("long", most=MOST_CHARACTERS)
    match = _FRAGMENT.fullmatch(fragment)
    if match is None or match[1] != kind:
        refuse("broken")
    if match[2] != "1":
        refuse("newer" if int(match[2]) > 1 else "broken", version=VERSION)
    try:
        return parse(_inflated(match[3]), MOST_BYTES)
    except Refused:
        refuse("broken")


def is_version(value: object) -> bool:
    """Whether it is the text of a version of Wedgework."""
    return isinstance(value, str) and _VERSION.fullmatch(value) is not None


def _inflated(inside: str) -> str:
    try:
        data = base64.b64decode(inside + "=" * (-len(inside) % 4), altchars="-_", validate=True)
        unpacker = zlib.decompressobj(-15)
        whole = unpacker.decompress(data, MOST_BYTES + 1)
        if len(whole) > MOST_BYTES or not unpacker.eof or unpacker.unused_data or unpacker.unconsumed_tail:
            refuse("broken")
        return whole.decode()
    except (zlib.error, UnicodeDecodeError, ValueError) as error:
        if isinstance(error, Refused):
            raise
        refuse("broken")


def refuse(what: str, **values: object) -> NoReturn:
    """The one sentence ``faces.link-`` and `what`."""
    code = f"faces.link-{what}"
    raise Refused([Problem("", code, say(code, **values), say(f"{code}.way-out", **values))])
