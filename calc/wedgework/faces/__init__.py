"""Everything that a person or a browser touches, made from declarations alone.

    from wedgework.faces.page import calculator_html     # the form and the answer for its defaults, without a script
    from wedgework.faces.wire import answer              # one string in, one string out
    from wedgework.faces.cli import main                 # the command line

`form` writes the inputs, `result` the answer as HTML, `terminal` the answer as text, `answers` the answer as JSON.
Only `cli` reads and writes files.
"""
