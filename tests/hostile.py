"""Damaged and hostile texts: files and links as a careless line or a bad neighbour would make them. The same ones on every run.

    for what, text in hostile_files(random.Random(1), whole, 500): ...
    for what, fragment in hostile_links(random.Random(1), whole, 500): ...

What a text is made of is measured out so that a reader that looks before it works is quick, and one that does not is not.
"""

from __future__ import annotations

import base64
import json
import random
import zlib
from collections.abc import Callable, Iterator, Sequence
from typing import Any

from schema_values import holders

__all__ = ["SCRIPTS", "bombs", "hostile_files", "hostile_links", "packed"]

SCRIPTS = ("<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "javascript:alert(1)", "'\"><svg onload=alert(1)>")
# What JSON has no word for, what it has and nobody reckons with, and characters that nobody types.
TOKENS = (
    *("NaN", "Infinity", "-Infinity", "1e999", "-1e-999", "1E400", "-0", "00", "0x10", "1_000", ".5", "5.", "+1"),
    *("9" * 400, "1" + "0" * 5000, "null", "true", "undefined", "{}", "[]", '""', '"\\ud800"', '"\\udc00\\ud800"', '"\\u0000"'),
    *('"\\u202e"', "\ud800", "\ufeff", "\x00", "//", "/*", "'", ",", ":", "}", "]", "\\", "\u2028", "\U000e0001"),
    *('{"__proto__":1}', '{"constructor":{}}'),
)
JUNK: tuple[Any, ...] = (
    *(None, True, -1, 0, 1.5, 10**30, -(10**30), 1e300, "", "x", "\u0000", "\u202eabc", "constructor", "__proto__"),
    *([], {}, [[]], [None] * 50, {"format": "wedgework-plan"}, {"": ""}, *SCRIPTS),
)
BASE64 = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"

Chance = random.Random


# --- the text itself ------------------------------------------------------------------------------------------------------


def _flipped(chance: Chance, text: str) -> str:
    data = bytearray(text.encode("utf-8", "surrogatepass"))
    for _ in range(chance.randint(1, 8)):
        data[chance.randrange(len(data))] ^= 1 << chance.randrange(8)
    return data.decode("utf-8", "surrogateescape")  # what is no UTF-8 any more becomes half characters


def _cut(chance: Chance, text: str) -> str:
    place = chance.randrange(len(text))
    return text[:place] if chance.random() < 0.7 else text[place:]


def _doubled(chance: Chance, text: str) -> str:
    first, last = sorted(chance.randrange(len(text)) for _ in range(2))
    return text[:last] + text[first:]


def _token(chance: Chance, text: str) -> str:
    place = chance.randrange(len(text))
    return text[:place] + chance.choice(TOKENS) + text[place + chance.randrange(3) :]


def _many(chance: Chance, text: str) -> str:
    """One piece of it so often that a slow reader shows."""
    first = chance.randrange(len(text))
    piece = text[first : first + chance.randint(1, 40)]
    return text[:first] + piece * (chance.choice((100, 5_000, 100_000)) // len(piece) + 1) + text[first:]


# --- what it says ---------------------------------------------------------------------------------------------------------


def _changed(chance: Chance, value: Any, put: Callable[[Any], Any]) -> str:
    """Something at one place of the value is what `put` makes of it."""
    whole = json.loads(json.dumps(value))
    holder = chance.choice([one for one in holders(whole) if one] or [whole])
    places = list(holder) if isinstance(holder, dict) else list(range(len(holder)))
    if places:
        place = chance.choice(places)
        holder[place] = put(holder[place])
    return json.dumps(whole)


def _wrong(chance: Chance, value: Any) -> str:
    return _changed(chance, value, lambda _: chance.choice(JUNK))


def _deep(chance: Chance, value: Any) -> str:
    """Nested so deep that a parser that calls itself would fall; written by hand, since ours would too."""
    depth = chance.choice((31, 33, 1_000, 20_000))
    opening, closing = chance.choice((("[", "]"), ('{"a":', "}")))
    mark = '"here-it-goes-down"'
    closed = closing * (depth if chance.random() < 0.5 else 0)
    return _changed(chance, value, lambda _: json.loads(mark)).replace(mark, f"{opening * depth}1{closed}")


def _giant(chance: Chance, value: Any) -> str:
    length = chance.choice((1_001, 20_001, 500_000))
    kinds: tuple[Any, ...] = ("x" * length, "\u00e9\U0001f9f6" * (length // 2), chance.choice(SCRIPTS) * (length // 25))
    lists: tuple[Any, ...] = ([0] * (length // 4), [{}] * (length // 10), {f"k{n}": n for n in range(length // 20)})
    return _changed(chance, value, lambda _: chance.choice(kinds + lists))


def _huge(chance: Chance, value: Any) -> str:
    digits = chance.choice((20, 400, 5_000, 200_000))
    number = chance.choice(("9" * digits, f"-{'9' * digits}", f"0.{'3' * digits}", f"1e{digits}", f"1e-{digits}"))
    mark = '"here-it-grows"'
    return _changed(chance, value, lambda _: json.loads(mark)).replace(mark, number)


def _twice(chance: Chance, value: Any) -> str:
    """A key that stands twice, once with something else."""
    text = json.dumps(value)
    opened = [place for place, letter in enumerate(text) if letter == "{"]
    place = chance.choice(opened) + 1 if opened else 0
    inside = text[place:]
    end = inside.find(":")
    key = inside[:end] if 0 < end < 60 else '"format"'
    return f"{text[:place]}{key}:{json.dumps(chance.choice(JUNK))},{inside}"


def _script(chance: Chance, value: Any) -> str:
    return _changed(chance, value, lambda old: chance.choice(SCRIPTS) if isinstance(old, str) else old)


TEXTS = (_flipped, _cut, _doubled, _token, _many)
VALUES = (_wrong, _wrong, _deep, _giant, _huge, _twice, _script)


def hostile_files(chance: Chance, whole: str, count: int) -> Iterator[tuple[str, str]]:
    """What was done, and the text; each from the file `whole`, hurt once to three times."""
    value = json.loads(whole)
    for number in range(count):
        ways = TEXTS + VALUES
        way = ways[number % len(ways)]
        if way in VALUES:
            text = way(chance, value)  # type: ignore[arg-type]
        else:
            text = whole
            for _ in range(chance.randint(1, 2)):
                text = way(chance, text) if text else text  # type: ignore[arg-type]
        yield way.__name__.lstrip("_"), text


# --- links ----------------------------------------------------------------------------------------------------------------


def packed(text: str | bytes, level: int = 9) -> str:
    """A fragment of a link with this inside, packed as links are, whatever it is."""
    packer = zlib.compressobj(level, zlib.DEFLATED, -15)
    data = packer.compress(text.encode("utf-8", "surrogatepass") if isinstance(text, str) else text) + packer.flush()
    return f"w1.{base64.urlsafe_b64encode(data).decode().rstrip('=')}"


def bombs() -> list[str]:
    """Small when packed: as long as the longest link, and some hundred times as much when unpacked; and things like them."""
    spaces = [" " * n for n in (32_768, 32_769, 3_000_000)]
    insides = [
        *spaces,
        '{"c":"gauge","i":{},"v":"0.1.0"}' + spaces[2],
        "[" * 3_000_000,
        '{"a":' * 600_000,
        '"' + "\\u0000" * 500_000,
        '{"c":"gauge","i":{"stitches":"' + "9" * 2_900_000 + '"},"v":"0.1.0"}',
        "{" + ",".join(f'"k{n}":1' for n in range(3_000)) + "}",
        "\ud800" * 1_000,
        b"\xff\xfe" * 9_000,
    ]
    made = [packed(inside) for inside in insides]
    stored = packed("x" * 2_000, 0)
    return [
        *made,
        stored,
        f"{made[3]}AAAA",
        made[3][:-4],
        "w1." + "A" * 4_093,
        "w1." + "A" * 1_000_000,
        "w9999.",
        "w1.",
        "w1",
        "",
    ]


HEAD = len("w1.")


def hostile_links(chance: Chance, whole: Sequence[str], count: int) -> Iterator[tuple[str, str]]:
    """Fragments: letters of a real one hurt, what is inside hurt and packed again, and bombs."""
    insides = [zlib.decompress(base64.urlsafe_b64decode(one[HEAD:] + "==="), -15).decode() for one in whole]
    files = [hostile_files(chance, inside, count) for inside in insides]
    ready = bombs()
    for number in range(count):
        which = number % len(whole)
        letters = list(whole[which])
        match number % 5:
            case 0:
                for _ in range(chance.randint(1, 3)):
                    letters[chance.randrange(len(letters))] = chance.choice(f"{BASE64}.#%=+/<>\"' \n\x00\u00fc\ud800")
                yield "letters", "".join(letters)
            case 1:
                del letters[chance.randrange(len(letters)) :]
                yield "cut", "".join(letters)
            case 2 if number % 25 == 2:
                yield "bomb", whole[which][:HEAD] + ready[number // 25 % len(ready)][HEAD:]
            case _:
                what, text = next(files[which])
                yield f"inside {what}", whole[which][:HEAD] + packed(text)[HEAD:]
