"""Every sentence that a person reads goes through here, by its key.

A sentence lives in one of the message modules beside this file (``english/``), under a key such as
``"plan.block-order"``; code that wants to say it writes

    >>> from wedgework.say import say, say_n
    >>> say("say.example", name="needle")
    'One needle.'
    >>> say_n("say.example-rows", 3)
    '3 rows'

The lookup is the standard library's gettext interface, so that a second language is a second set of
messages and not a rewrite. A key that is missing is a programmer's mistake and raises ``KeyError``.
"""

from __future__ import annotations

import gettext
from collections.abc import Mapping

from wedgework.say.english import MESSAGES

__all__ = ["has", "say", "say_n"]

Forms = str | tuple[str, str]


class _Messages(gettext.NullTranslations):
    """A gettext catalogue kept in memory: key -> sentence, or (singular, plural)."""

    def __init__(self, messages: Mapping[str, Forms]) -> None:
        super().__init__()
        self._messages = messages

    def gettext(self, message: str) -> str:
        forms = self._messages[message]
        if not isinstance(forms, str):
            raise KeyError(f"{message} has a singular and a plural: ask for it with say_n")
        return forms

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        forms = self._messages[msgid1]
        if isinstance(forms, str):
            return forms
        return forms[0] if n == 1 else forms[1]


_ENGLISH = _Messages(MESSAGES)


def has(key: str) -> bool:
    """Whether there is a sentence under `key`."""
    return key in MESSAGES


def say(key: str, /, **values: object) -> str:
    """The sentence under `key`, with `values` put in. Raises KeyError for an unknown key."""
    return _ENGLISH.gettext(key).format(**values)


def say_n(key: str, n: int, /, **values: object) -> str:
    """The sentence under `key` in the number that fits `n`; `{n}` in it stands for the number."""
    return _ENGLISH.ngettext(key, key, n).format(n=n, **values)
