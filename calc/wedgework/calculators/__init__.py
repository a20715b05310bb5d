"""The calculators, one file each: its inputs, its computation, its declaration.

    from wedgework.calculators.gauge import CALCULATOR
    from wedgework.declare import work_out

    work_out(CALCULATOR, {"stitches": "40", "width": "28.5 cm"}).result

`wedgework.catalogue` is the list of them all.
"""
