"""Run by snapshot.mjs: imports every module of the core that a browser can use."""

import importlib
import random
import sys
import types
import zipfile

# What a package imports at once and the core never asks for: writers of picture files bring much of the standard library along.
UNUSED = ("segno.writers",)
ARCHIVE = next(path for path in sys.path if path.endswith(".zip"))
# The command line is for terminals.
LEFT_OUT = ("wedgework.__main__", "wedgework.faces.cli")
# What the standard library imports only when it is needed; from this memory nothing can be imported any more.
LATER = ("encodings.ascii", "encodings.latin_1", "linecache", "traceback")


def _version_only() -> types.ModuleType:
    """In the place of importlib.metadata, which brings the reading of mail and archives along for one number."""
    with zipfile.ZipFile(ARCHIVE) as archive:
        (name,) = [name for name in archive.namelist() if name.startswith("wedgework-") and name.endswith("METADATA")]
        lines = archive.read(name).decode().splitlines()
    number = next(line.removeprefix("Version: ") for line in lines if line.startswith("Version: "))
    module = types.ModuleType("importlib.metadata")
    module.__dict__.update(version=lambda _name: number, PackageNotFoundError=ModuleNotFoundError)
    return module


def _names() -> list[str]:
    with zipfile.ZipFile(ARCHIVE) as archive:
        files = [name for name in archive.namelist() if name.startswith("wedgework/") and name.endswith(".pyc")]
    names = (name.removesuffix(".pyc").removesuffix("/__init__").replace("/", ".") for name in files)
    return sorted(name for name in names if not name.startswith(LEFT_OUT))


sys.modules["importlib.metadata"] = _version_only()
sys.modules.update({name: types.ModuleType(name) for name in UNUSED})
for _name in (*LATER, *_names()):
    importlib.import_module(_name)
for _name in ("importlib.metadata", *UNUSED):
    del sys.modules[_name]
random.seed(0)  # chance is the same in every picture; the core uses none
# Nothing of this stays.
for _name in [name for name in globals() if not name.startswith("__")]:
    del globals()[_name]
