"""The one version number, as the wheel was built with it; it stands in pyproject.toml and nowhere else."""

from __future__ import annotations

from importlib.metadata import PackageNotFoundError, version

__all__ = ["VERSION"]


def _version() -> str:
    try:
        return version("wedgework")
    except PackageNotFoundError:  # run from a folder that nobody installed
        return "0.0.0"


VERSION = _version()
