"""Other languages than English: files of messages as translators know them, compiled for the core, the scripts and the pages.

    site/languages/de/*.po       German, a file for each module of calc/wedgework/say/english/; the context is the key
    site/languages/de/class.json the example of a class
    site/languages/de/terms.tsv  the words of the trade that the messages keep to, each with its source
    site/languages/de/pages/     pages in that language; a calculator without one gets the plain page of `_calculator.md`

    PYTHONPATH=site python -m builder.languages de      new keys into the files; what changed in English is marked fuzzy

The format is that of GNU gettext and Babel reads and writes it, with the plurals of each language. A fuzzy or empty
message is said in English, and tests/site/test_languages.py names it.
"""

from __future__ import annotations

import importlib
import io
import pkgutil
import sys
from collections.abc import Iterator, Mapping
from datetime import UTC, datetime
from functools import cache
from pathlib import Path

from babel import Locale
from babel.messages.catalog import Catalog, Message
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po, write_po

import wedgework.say.english
from wedgework.say.english import MESSAGES

__all__ = ["FOLDER", "LANGUAGES", "NOT_TRANSLATED", "catalogue", "main", "messages", "name_of", "sentences", "update"]

FOLDER = Path(__file__).resolve().parents[1] / "languages"
LANGUAGES = ("de",)
# What stands in the formats themselves, which are English for every reader.
NOT_TRANSLATED = ("formats.about.",)
# A time in the files would make two builds differ.
NO_TIME = datetime(2000, 1, 1, tzinfo=UTC)
WIDTH = 130

Forms = str | tuple[str, ...]


def name_of(language: str) -> str:
    """What the language calls itself: Deutsch."""
    return str(Locale.parse(language).get_language_name(language)).capitalize()


def modules() -> Iterator[tuple[str, Mapping[str, Forms]]]:
    """Each module of English messages with what is to be translated of it."""
    for found in pkgutil.iter_modules(wedgework.say.english.__path__):
        english = importlib.import_module(f"wedgework.say.english.{found.name}").MESSAGES
        wanted = {key: forms for key, forms in english.items() if not key.startswith(NOT_TRANSLATED)}
        if wanted:
            yield found.name, wanted


def _read(language: str, module: str) -> Catalog:
    file = FOLDER / language / f"{module}.po"
    if not file.is_file():
        return _empty(language)
    with file.open("rb") as opened:
        return read_po(opened, locale=language)


def _empty(language: str) -> Catalog:
    return Catalog(
        locale=language,
        project="Wedgework",
        header_comment=f"# The messages of Wedgework in {name_of(language)}; the context of each is its key.",
        version="messages",
        copyright_holder="the Wedgework contributors",
        msgid_bugs_address="none",
        last_translator="the Wedgework contributors",
        language_team="none",
        creation_date=NO_TIME,
        revision_date=NO_TIME,
        charset="utf-8",
        fuzzy=False,
    )


@cache
def messages(language: str) -> Mapping[str, Forms]:
    """Every sentence that is translated, by its key: one form, or as many as the language has numbers. Read once: a build asks
    for the catalogue at several places."""
    found: dict[str, Forms] = {}
    for module, english in modules():
        for message in _read(language, module):
            if not message.context or message.fuzzy or message.context not in english:
                continue
            if same_english(message, english[message.context]) and complete(message):
                found[message.context] = _forms(message)
    return found


def same_english(message: Message, forms: Forms) -> bool:
    """Whether it was translated from today's English."""
    return message.id == forms if isinstance(forms, str) else tuple(message.id) == forms


def complete(message: Message) -> bool:
    """Whether a translator has written all of it."""
    forms = _forms(message)
    return bool(forms) and all(forms)


def _forms(message: Message) -> Forms:
    return message.string if isinstance(message.string, str) else tuple(message.string or ())


def catalogue(language: str) -> bytes:
    """The compiled catalogue that `wedgework.say.speak` takes, by keys alone; the same bytes each time."""
    made = _empty(language)
    for key, forms in sorted(messages(language).items()):
        made.add(key if isinstance(forms, str) else (key, key), forms)
    written = io.BytesIO()
    write_mo(written, made)
    return written.getvalue()


def sentences(language: str, rooms: tuple[str, ...]) -> dict[str, Forms]:
    """What the scripts say, by key; English where a sentence is missing."""
    said = {**MESSAGES, **messages(language)} if language in LANGUAGES else MESSAGES
    return {key: words for key, words in sorted(said.items()) if key.startswith(rooms)}


def update(language: str) -> list[str]:
    """Bring the files of a language to today's English. Returns the keys that wait for a translator."""
    waiting = []
    (FOLDER / language).mkdir(parents=True, exist_ok=True)
    for module, english in modules():
        former = {message.context: message for message in _read(language, module) if message.context}
        made = _empty(language)
        for key, forms in english.items():
            old = former.get(key)
            # A sentence that became a plural, or the other way round, begins anew.
            usable = old is not None and isinstance(old.id, str) == isinstance(forms, str) and complete(old)
            fresh = old is not None and usable and same_english(old, forms) and not old.fuzzy
            flags = {"fuzzy"} if usable and not fresh else set()
            made.add(forms, old.string if old is not None and usable else None, context=key, flags=flags)
            if not fresh:
                waiting.append(key)
        with (FOLDER / language / f"{module}.po").open("wb") as opened:
            write_po(opened, made, width=WIDTH, include_previous=False)
    return waiting


def main(arguments: list[str]) -> int:
    for language in arguments or LANGUAGES:
        waiting = update(language)
        print(f"{name_of(language)}: {len(waiting)} messages wait for a translator", *waiting, sep="\n  ")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
