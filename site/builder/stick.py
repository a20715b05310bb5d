"""The built pages in one file that can be carried on a stick, unpacked anywhere and served by any small server.

PYTHONPATH=site python -m builder.stick build/site build/wedgework.zip
"""

from __future__ import annotations

import sys
import zipfile
from pathlib import Path

__all__ = ["main", "pack"]

FOLDER = "wedgework"
# The earliest time that the format can say: the same pages give the same file.
SAME = (1980, 1, 1, 0, 0, 0)
STORED = {".gz", ".whl", ".zip", ".png"}  # compressed already


def pack(folder: Path, target: Path) -> None:
    """Every file below `folder` into the zip `target`, inside a folder of its own."""
    with zipfile.ZipFile(target, "w") as archive:
        for file in sorted(path for path in folder.rglob("*") if path.is_file()):
            info = zipfile.ZipInfo(f"{FOLDER}/{file.relative_to(folder).as_posix()}", SAME)
            info.compress_type = zipfile.ZIP_STORED if file.suffix in STORED else zipfile.ZIP_DEFLATED
            info.external_attr = 0o644 << 16
            archive.writestr(info, file.read_bytes())


def main(arguments: list[str]) -> int:
    folder, target = map(Path, arguments)
    pack(folder, target)
    print(f"{target}: {target.stat().st_size / 1_000_000:.1f} MB; unpack it and type: python3 -m http.server --bind 127.0.0.1")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
