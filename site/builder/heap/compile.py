"""Run by snapshot.mjs: /stdlib.zip and /core.zip to /compiled.zip, which holds both as compiled modules."""

import ast
import importlib.util
import marshal
import zipfile
from types import CodeType

SAME = (1980, 1, 1, 0, 0, 0)
# Before the code of a module: the version of its form, and no word about the file that it came from.
HEAD = importlib.util.MAGIC_NUMBER + bytes(12)
# The standard library, and what the core imports beside it, goes without explanations (as under `python -OO`) and without the
# numbers of its lines.
WHOLE = ("pyodide/", "_pyodide/")
OURS = "wedgework/"


def without_lines(code: CodeType) -> CodeType:
    """A trace through it names the function, and no line."""
    inner = tuple(without_lines(one) if isinstance(one, CodeType) else one for one in code.co_consts)
    full, rest = divmod(len(code.co_code) // 2, 8)
    # CPython's table of places, InternalDocs/code_objects.md: kind 15 is "no place", for up to eight units of code.
    table = bytes([0x80 | 15 << 3 | 7] * full + ([0x80 | 15 << 3 | (rest - 1)] if rest else []))
    return code.replace(co_consts=inner, co_linetable=table)


def without_words(source: bytes) -> ast.Module:
    """The core keeps the numbers of its lines and its assertions, and goes without its explanations too.

    Those of a class become one sign, because a dataclass without any writes itself a longer one.
    """
    tree = ast.parse(source)
    for node in ast.walk(tree):
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef) and node.body:
            first = node.body[0]
            if isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant) and isinstance(first.value.value, str):
                first.value.value = "."
                if not isinstance(node, ast.ClassDef) and len(node.body) > 1:
                    del node.body[0]
    return tree


with zipfile.ZipFile("/compiled.zip", "w", zipfile.ZIP_STORED) as target:
    for archive in ("/stdlib.zip", "/core.zip"):
        with zipfile.ZipFile(archive) as source:
            for name in sorted(source.namelist()):
                if name.endswith(".py"):
                    whole = name.startswith(WHOLE)
                    ours = name.startswith(OURS)
                    read = without_words(source.read(name)) if ours else source.read(name)
                    code = compile(read, f"/lib/{name}", "exec", dont_inherit=True, optimize=0 if whole or ours else 2)
                    data = HEAD + marshal.dumps(code if whole or ours else without_lines(code))
                    target.writestr(zipfile.ZipInfo(f"{name}c", SAME), data)
                elif name.endswith("METADATA"):
                    target.writestr(zipfile.ZipInfo(name, SAME), source.read(name))
