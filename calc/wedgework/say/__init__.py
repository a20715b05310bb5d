"""Every sentence that a person reads goes through here, by its key.

A sentence lives in one of the message modules beside this file (``english/``), under a key such as
``"plan.block-order"``; code that wants to say it writes

    >>> from wedgework.say import say, say_n
    >>> say("say.example", name="needle")
    'One needle.'
    >>> say_n("say.example-rows", 3)
    '3 rows'

English is always there. Another language is a catalogue in the compiled format of GNU gettext (``.mo``), by the same
keys, and read by the standard library. `speak` takes one and stays with it; what the catalogue does not have is said in
English. A key that is missing in English is a programmer's mistake and raises ``KeyError``.

English itself has words on either side of the sea. `reworded` puts them into what the messages say, before names and
numbers of a person are put in: her own words stay as she wrote them.
"""

from __future__ import annotations

import gettext
import io
from collections.abc import Callable, Iterator
from contextlib import contextmanager

from wedgework.say.english import MESSAGES

__all__ = ["ENGLISH", "has", "language", "reworded", "say", "say_n", "speak", "spoken"]

ENGLISH = "en"

_spoken: tuple[str, gettext.NullTranslations] = (ENGLISH, gettext.NullTranslations())
_words: Callable[[str], str] = str


def speak(language: str, catalogue: bytes | memoryview = b"") -> None:
    """From now on say everything in `language` (``de``), by a compiled catalogue. English needs none.

    Raises ValueError for a catalogue that cannot be read.
    """
    global _spoken
    if language == ENGLISH:
        _spoken = (ENGLISH, gettext.NullTranslations())
        return
    try:
        _spoken = (language, gettext.GNUTranslations(io.BytesIO(bytes(catalogue))))
    except (OSError, UnicodeDecodeError) as unreadable:
        raise ValueError(f"no catalogue of messages: {unreadable}") from unreadable


@contextmanager
def spoken(language: str, catalogue: bytes = b"") -> Iterator[None]:
    """The same for a while: the language before it comes back."""
    global _spoken
    before = _spoken
    speak(language, catalogue)
    try:
        yield
    finally:
        _spoken = before


@contextmanager
def reworded(words: Callable[[str], str]) -> Iterator[None]:
    """For a while every English message, still with its places in braces, goes through `words`."""
    global _words
    before, _words = _words, words
    try:
        yield
    finally:
        _words = before


def language() -> str:
    """The language that is spoken now, as in ``<html lang>``."""
    return _spoken[0]


def has(key: str) -> bool:
    """Whether there is a sentence under `key`."""
    return key in MESSAGES


def say(key: str, /, **values: object) -> str:
    """The sentence under `key`, with `values` put in. Raises KeyError for an unknown key."""
    english = MESSAGES[key]
    if not isinstance(english, str):
        raise KeyError(f"{key} has a singular and a plural: ask for it with say_n")
    found = _spoken[1].gettext(key)
    return (_words(english) if found == key else found).format(**values)


def say_n(key: str, n: int, /, **values: object) -> str:
    """The sentence under `key` in the number that fits `n`; `{n}` in it stands for the number."""
    english = MESSAGES[key]
    if isinstance(english, str):
        return say(key, n=n, **values)
    found = _spoken[1].ngettext(key, key, n)
    return (_words(english[n != 1]) if found == key else found).format(n=n, **values)
