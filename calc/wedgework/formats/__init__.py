"""The three open formats."""
