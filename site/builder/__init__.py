"""Everything that knows mkdocs, Node or a browser: the only room outside the core that makes pages.

    python -m builder.build build/site      # Markdown and the core's answers -> a folder of plain HTML
    python -m builder.serve                 # the same, and a small server for it

`builder.extension` is the Markdown extension that puts the core's answers into a page, `builder.parts` what it
puts there, `builder.finish` the look over the finished folder. `builder.environment` makes the environment
beforehand and therefore uses the standard library only. Lies on the path as `site/` (PYTHONPATH=site).
"""
