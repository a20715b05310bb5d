"""The command line. Exit status: 0 done, 1 the plan is not good (`check`) or an output broke off, 2 wrong input.

Wrong input is told whole, every problem on a line of its own, and nothing is written: all outputs are made first
and only then laid down.
"""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Mapping, Sequence

from wedgework.draw.front import front_svg
from wedgework.draw.purl import purl_svg
from wedgework.faces.answers import json_text
from wedgework.faces.calc_command import calc
from wedgework.faces.files import STANDARD, place_of, put, read_text, write_all
from wedgework.faces.layouts import layouts_object
from wedgework.faces.terminal import found_text, layouts_text, overview_text, practice_text, problems_text, wrongs
from wedgework.formats import read_design, read_plan, read_state, write_design, write_plan
from wedgework.formats.plan import Plan
from wedgework.plan import plan_piece, replan
from wedgework.practice import practice
from wedgework.problems import Problem, Refused
from wedgework.replay import Replay, replay_plan
from wedgework.say import say
from wedgework.version import VERSION
from wedgework.words.instructions import instructions
from wedgework.yarn.balls import with_new_balls

__all__ = ["main"]

DONE, NOT_GOOD, WRONG_INPUT = 0, 1, 2


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command. `argv` without the program's name; None takes the line that was typed."""
    try:
        return _run(list(sys.argv[1:] if argv is None else argv))
    except SystemExit as end:  # the parser's own way out: help, version, a word it does not know
        return end.code if isinstance(end.code, int) else WRONG_INPUT
    except Refused as refused:
        sys.stderr.write(_told(problems_text(refused.problems)))
        return WRONG_INPUT
    except OSError as error:
        # Whoever read our output has closed it, or its place is full. What waits must not be tried again at exit.
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
        os.close(nowhere)
        words = say("faces.closed") if isinstance(error, BrokenPipeError) else say("faces.not-written", why=error.strerror)
        sys.stderr.write(_told(words + "\n"))
        return NOT_GOOD
    except KeyboardInterrupt:
        sys.stderr.write("\n")
        return 130


def _run(words: list[str]) -> int:
    if words[:1] == ["calc"]:
        return calc(words[1:])
    asked = _parser().parse_args(words)
    if asked.command == "plan":
        return plan(asked.design, asked.json, asked.svg, asked.machine_svg)
    if asked.command == "check":
        return check(asked.plan)
    if asked.command == "replan":
        return carry_on(asked.design, asked.state, asked.json)
    if asked.command == "practice":
        return practice_of(asked.design, asked.json, asked.svg)
    if asked.command == "layouts":
        put(json_text(layouts_object(), indent=2) + "\n" if asked.json else layouts_text())
        return DONE
    put(_parser().format_help())
    return WRONG_INPUT


def plan(design: str, json: str | None, svg: str | None, machine_svg: str | None) -> int:
    """Plan a design; what was asked for is written, and the words go to standard output unless an output does."""
    wanted = [("--json", json), ("--svg", svg), ("--machine-svg", machine_svg)]
    _refuse_clashes({"faces.the-design": design}, [(option, path) for option, path in wanted if path is not None])
    made = plan_piece(read_design(read_text(design)))
    made, judged = with_new_balls(made, replay_plan(made))
    texts: list[tuple[str, str]] = []
    if json is not None:
        texts.append((json, write_plan(made)))
    if svg is not None:
        texts.append((svg, front_svg(made, judged) + "\n"))
    if machine_svg is not None:
        texts.append((machine_svg, purl_svg(made, judged) + "\n"))
    if all(path != STANDARD for path, _ in texts):
        texts.append((STANDARD, _words(made, judged)))
    write_all(texts)
    if judged.problems:
        sys.stderr.write(_told(say("faces.found-wrong") + "\n" + problems_text(judged.problems)))
        return NOT_GOOD
    return DONE


def _words(made: Plan, judged: Replay) -> str:
    return overview_text(made, judged) + "\n" + instructions(made, judged).as_text()


def carry_on(design: str, state: str, json: str | None) -> int:
    """Plan the rest of a piece from the real bed. What stays visible is told among the warnings; that is no failure."""
    _refuse_clashes({"faces.the-design": design, "faces.the-state": state}, [("--json", json)] if json is not None else [])
    if design == state == STANDARD:
        sentence = say("faces.one-input")
        raise Refused([Problem("-", "faces.one-input", sentence, say("faces.one-input.way-out"))])
    made = replan(read_design(read_text(design)), read_state(read_text(state)))
    judged = replay_plan(made)
    texts = [] if json is None else [(json, write_plan(made))]
    if json != STANDARD:
        stays = tuple(judged.problems)
        told = say("faces.stays") + "\n" + problems_text(stays) + "\n" if stays else ""
        texts.append((STANDARD, told + _words(made, judged)))
    write_all(texts)
    return DONE


def practice_of(design: str, json: str | None, svg: str | None) -> int:
    """The practice piece of a design: its file, its picture, and in words what comes up in it."""
    wanted = [(option, path) for option, path in (("--json", json), ("--svg", svg)) if path is not None]
    _refuse_clashes({"faces.the-design": design}, wanted)
    found = practice(read_design(read_text(design)))
    made = plan_piece(found.design)
    judged = replay_plan(made)
    texts: list[tuple[str, str]] = []
    if json is not None:
        texts.append((json, write_design(found.design)))
    if svg is not None:
        texts.append((svg, front_svg(made, judged) + "\n"))
    if all(path != STANDARD for path, _ in texts):
        texts.append((STANDARD, practice_text(found) + "\n" + _words(made, judged)))
    write_all(texts)
    return DONE


def check(path: str) -> int:
    """Replay a plan, whoever wrote it, and say what the model bed found."""
    made = read_plan(read_text(path))
    judged = replay_plan(made)
    put(found_text(made, judged))
    return NOT_GOOD if wrongs(judged) else DONE


def _refuse_clashes(inputs: Mapping[str, str], outputs: Sequence[tuple[str, str]]) -> None:
    """No two outputs in one place, and none over what is read; `inputs` are paths by the key of what they are called."""
    problems = []
    places = {place_of(path): say(key) for key, path in inputs.items() if path != STANDARD}
    for option, path in outputs:
        place = place_of(path)
        if place in places:
            sentence = say("faces.same-place", path=path, other=places[place])
            problems.append(Problem(option, "faces.same-place", sentence, say("faces.same-place.way-out")))
        places.setdefault(place, option)
    if problems:
        raise Refused(problems)


def _told(text: str) -> str:
    """Text that the error stream takes whatever it is set to."""
    encoding = getattr(sys.stderr, "encoding", None) or "utf-8"
    return text.encode(encoding, "backslashreplace").decode(encoding)


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser("wedgework", description=say("faces.about"), allow_abbrev=False)
    parser.add_argument("--version", action="version", version=f"wedgework {VERSION}")
    commands = parser.add_subparsers(dest="command", metavar=say("faces.command"))

    def command(name: str, about: str) -> argparse.ArgumentParser:
        return commands.add_parser(name, help=about, description=about, allow_abbrev=False)

    planning = command("plan", say("faces.about-plan"))
    planning.add_argument("design", help=say("faces.about-design"))
    planning.add_argument("--json", metavar="FILE", help=say("faces.about-json"))
    planning.add_argument("--svg", metavar="FILE", help=say("faces.about-svg"))
    planning.add_argument("--machine-svg", metavar="FILE", help=say("faces.about-machine-svg"))
    carrying_on = command("replan", say("faces.about-replan"))
    carrying_on.add_argument("design", help=say("faces.about-design"))
    carrying_on.add_argument("state", help=say("faces.about-state"))
    carrying_on.add_argument("--json", metavar="FILE", help=say("faces.about-json"))
    practising = command("practice", say("faces.about-practice"))
    practising.add_argument("design", help=say("faces.about-design"))
    practising.add_argument("--json", metavar="FILE", help=say("faces.about-practice-json"))
    practising.add_argument("--svg", metavar="FILE", help=say("faces.about-svg"))
    checking = command("check", say("faces.about-check"))
    checking.add_argument("plan", help=say("faces.about-plan-file"))
    command("calc", say("faces.about-calc"))
    listing = command("layouts", say("faces.about-layouts"))
    listing.add_argument("--json", action="store_true", help=say("faces.about-layouts-json"))
    return parser


if __name__ == "__main__":
    sys.exit(main())
