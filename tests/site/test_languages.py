"""German beside English: complete, with the same figures in it, in the words of the trade, and by the rules for numbers."""

from __future__ import annotations

import io
import json
import re
import string
from fractions import Fraction

import pytest
from babel.messages.catalog import Catalog
from babel.messages.mofile import write_mo
from babel.numbers import format_decimal

from builder import languages
from builder.pieces import PIECES, piece_text, words_of_pieces
from wedgework.catalogue import CALCULATORS
from wedgework.declare import work_out
from wedgework.faces.form import fields_html
from wedgework.faces.result import result_html
from wedgework.say import language, say, say_n, speak, spoken
from wedgework.say.english import MESSAGES
from wedgework.units import decimal_text, in_language, short_decimal, signed_text

GERMAN = languages.catalogue("de")
TOLD = languages.messages("de")


def forms(message: str | tuple[str, ...]) -> tuple[str, ...]:
    return (message,) if isinstance(message, str) else message


def places(sentence: str) -> list[str]:
    return sorted(name for _, name, _, _ in string.Formatter().parse(sentence) if name is not None)


def test_every_sentence_is_there() -> None:
    wanted = {key for key in MESSAGES if not key.startswith(languages.NOT_TRANSLATED)}
    assert sorted(wanted - TOLD.keys()) == [], "bring them in with: PYTHONPATH=calc:site python -m builder.languages"


def test_the_files_have_nothing_that_english_has_not() -> None:
    for module, english in languages.modules():
        keys = [message.context for message in languages._read("de", module) if message.context]
        assert keys == list(english), module


@pytest.mark.parametrize("room", sorted({key.split(".")[0] for key in TOLD}))
def test_the_same_figures_stand_in_both(room: str) -> None:
    for key in (key for key in TOLD if key.split(".")[0] == room):
        english, german = forms(MESSAGES[key]), forms(TOLD[key])
        assert len(english) == len(german), key
        # In the singular the number itself may be left out or said.
        assert places(english[-1]) == places(german[-1]), key
        assert set(places(german[0])) <= {*places(english[0]), *places(english[-1])}, key


# Trade terms, as site/languages/de/terms.tsv has them with their sources: where the left one stands, a right one does.
TERMS = (
    ("carriage", "Schlitten"),
    ("row counter", "Reihenzähler"),
    ("needle bed", "Nadelbett"),
    ("waste yarn", "Hilfsgarn"),
    ("ravel cord", "Trennf[aä]den"),
    ("hold lever", "Haltehebel"),
    ("short rows?", "verkürzte[nr]? Reihe"),
    ("selvedges?", "[Rr]and|R[aä]nder"),
    ("bind off", "abkett|abgekett|abzukett"),
    ("cast on", "[Aa]nschl[aä]g|anzuschlagen|angeschlagen"),
)


@pytest.mark.parametrize(("term", "german"), TERMS, ids=[term for term, _ in TERMS])
def test_words_of_the_trade(term: str, german: str) -> None:
    with_term = [key for key, words in TOLD.items() if re.search(rf"\b{term}\b", " ".join(forms(MESSAGES[key])), re.IGNORECASE)]
    assert with_term
    strange = [key for key in with_term if not re.search(german, " ".join(forms(TOLD[key])), re.IGNORECASE)]
    assert len(strange) <= len(with_term) // 10, strange


def test_the_demo_pieces_have_no_word_that_is_not_translated() -> None:
    words = words_of_pieces("de")
    for file in sorted(PIECES.glob("*.json")):
        english = json.loads(file.read_text(encoding="utf-8"))
        with spoken("de", GERMAN):
            german = json.loads(piece_text(file.stem))
        assert german["title"] == words[english["title"]]
        assert german["notes"] == words[english["notes"]]
        assert [yarn["name"] for yarn in german["yarns"]] == [words[yarn["name"]] for yarn in english["yarns"]]
        for key in ("title", "notes", "yarns"):
            del english[key], german[key]
        assert german == english, "the piece is the same"


def test_the_terms_have_sources() -> None:
    head, *rows = (languages.FOLDER / "de" / "terms.tsv").read_text(encoding="utf-8").splitlines()
    assert head == "English\tDeutsch\tQuelle"
    assert len(rows) >= 50
    assert all(len([cell for cell in row.split("\t") if cell]) == 3 for row in rows)


@pytest.mark.parametrize(
    "value", [Fraction(1, 2), Fraction(-6, 5), Fraction(1234567, 1000), Fraction(0), Fraction(40), Fraction(199, 100)]
)
def test_numbers_are_written_as_the_common_locale_data_say(value: Fraction) -> None:
    """Against Babel, which reads the Unicode Common Locale Data Repository."""
    with spoken("de", GERMAN):
        assert decimal_text(value, 2) == format_decimal(float(value), "0.00", locale="de")
        assert short_decimal(value, 2) == format_decimal(float(value), "0.##", locale="de")
        assert signed_text(value, 1).replace("\u2212", "-") == format_decimal(float(value), "+0.0;-0.0", locale="de").replace(
            "+0,0", "0,0"
        )


def test_what_is_typed_has_the_mark_too_but_where_it_could_be_read_otherwise() -> None:
    with spoken("de", GERMAN):
        assert in_language("28.5 cm; 29 cm") == "28,5 cm; 29 cm"
        assert in_language("1.125") == "1.125"
    assert in_language("28.5 cm") == "28.5 cm"


def test_plurals() -> None:
    with spoken("de", GERMAN):
        assert language() == "de"
        assert [say_n("common.rows", n) for n in (0, 1, 2)] == ["0 Reihen", "1 Reihe", "2 Reihen"]
    assert language() == "en"
    assert say_n("common.rows", 2) == "2 rows"


def test_a_broken_catalogue_is_refused_and_changes_nothing() -> None:
    with pytest.raises(ValueError, match="catalogue"):
        speak("de", b"no catalogue at all")
    assert language() == "en"
    assert say_n("common.rows", 2) == "2 rows"


def test_what_a_catalogue_does_not_have_is_said_in_english() -> None:
    written = io.BytesIO()
    write_mo(written, Catalog(locale="de"))
    with spoken("de", written.getvalue()):
        assert say("units.both", metric="1 cm", inches="3/8 in") == "1 cm (3/8 in)"


def test_two_compilations_are_the_same() -> None:
    assert languages.catalogue("de") == GERMAN


def marked() -> bytes:
    """A language in which every sentence is in brackets, so that what nobody says can be seen."""

    def mark(sentence: str) -> str:
        parts = string.Formatter().parse(sentence)
        braces = str.maketrans({"{": "{{", "}": "}}"})
        return "".join(
            (f"\u27e6{text.translate(braces)}\u27e7" if text else "") + (f"{{{name}}}" if name is not None else "")
            for text, name, _, _ in parts
        )

    made = Catalog(locale="de")
    for key, words in MESSAGES.items():
        # A number is read again by the program.
        both = forms(words) if key == "units.decimal-mark" else tuple(mark(one) for one in forms(words))
        made.add(key if len(both) == 1 else (key, key), both[0] if len(both) == 1 else both)
    written = io.BytesIO()
    write_mo(written, made)
    return written.getvalue()


MARKED = marked()
# Not in any message: symbols of units, needles, and what demo pieces are called (a person's own words, in every language).
SYMBOLS = {"cm", "mm", "in", "yd", "tex", "dtex", "den", "Nm", "Ne", "NeL", "NeK", "NeW"}


def unsaid(html: str, own: set[str]) -> set[str]:
    text = re.sub(r"<(code|style)\b.*?</\1>", " ", html, flags=re.DOTALL)
    text = re.sub(r"<[^>]*>", " ", text)
    text = re.sub(r"\u27e6[^\u27e7]*\u27e7", " ", text)
    return {word for word in re.findall(r"[A-Za-z]{2,}", text) if word not in SYMBOLS and word not in own}


@pytest.mark.parametrize("slug", [calculator.slug for calculator in CALCULATORS])
def test_no_word_of_a_calculator_is_outside_the_messages(slug: str) -> None:
    (found,) = [one for one in CALCULATORS if one.slug == slug]
    own = {
        word
        for field in found.fields
        for word in re.findall(r"[A-Za-z]+", field.default if field.kind in ("text", "lines") else "")
    }
    own |= {word for field in found.fields for word in re.findall(r"[A-Za-z]+", " ".join(field.choices))}
    with spoken("de", MARKED):
        html = fields_html(found, found.defaults) + result_html(work_out(found, {}))
    assert unsaid(html, own) == set()


def test_a_default_is_the_same_wherever_it_stands() -> None:
    """In English what is declared; in German the same value, and what is typed there is read."""
    for calculator in CALCULATORS:
        for field in calculator.fields:
            assert field.typed_default == field.default, f"{calculator.slug}.{field.name}"
            with spoken("de", GERMAN):
                typed = field.typed_default
                if field.kind not in ("text", "lines"):
                    assert field.read(typed) == field.read(field.default), f"{calculator.slug}.{field.name}"


@pytest.mark.parametrize("slug", [calculator.slug for calculator in CALCULATORS])
def test_a_calculator_works_out_the_same_figures_in_german(slug: str) -> None:
    """What is decided may not hang on the language: values for programs that are numbers are the same."""
    (found,) = [one for one in CALCULATORS if one.slug == slug]
    english = work_out(found, {})
    with spoken("de", GERMAN):
        german = work_out(found, {})
    assert english.result is not None
    assert german.result is not None, german.problems
    numbers = [
        {name: value for name, value in one.result.values.items() if isinstance(value, (int, Fraction))}
        for one in (english, german)
    ]
    assert numbers[0] == numbers[1]
    assert len(english.result.view) == len(german.result.view)
