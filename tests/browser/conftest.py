"""The fixtures of this suite stand beside the other shared parts, so that tests can import its small helpers too."""

from visiting import host, visitor  # noqa: F401 - fixtures
