"""Write ../pipe_fluids.toml: pipe sizes as the open-source library `fluids` stores them.

    pip install fluids==1.3.1
    python tests/reference/pipe/regenerate.py

The library keeps rounded millimetres: outside diameters to 0.1 mm, walls to 0.01 mm, so half of that
is the largest difference that a right inch table can show.
"""

import pathlib

import fluids
from fluids.piping import nearest_pipe

SIZES = {"1.4": 0.25, "3.8": 0.375, "1.2": 0.5, "3.4": 0.75, "1": 1, "1-1.4": 1.25}
ROW = """
[[row]]
id = "pipe-{size}-{schedule}"
source = "fluids-1-3-1"
place = "fluids.piping.nearest_pipe(NPS={nps}, schedule='{schedule}')"
flag = "read"
origin = "published"
input = {{ sleeve = "nps-{size}-{schedule}" }}
expect = {{ outer_mm = {outer}, wall_mm = {wall} }}
half_unit = {{ outer_mm = 0.05, wall_mm = 0.005 }}
"""


def main():
    if fluids.__version__ != "1.3.1":
        raise SystemExit(f"fluids 1.3.1 is wanted, not {fluids.__version__}")
    text = "# Written by pipe/regenerate.py from fluids 1.3.1; not by hand.\n"
    for size, nps in SIZES.items():
        for schedule in ("40", "80"):
            found, _, outer, wall = nearest_pipe(NPS=nps, schedule=schedule)
            if found != nps:
                raise SystemExit(f"asked for NPS {nps}, got {found}")
            text += ROW.format(
                size=size,
                nps=nps,
                schedule=schedule,
                outer=round(outer * 1e3, 6),
                wall=round(wall * 1e3, 6),
            )
    target = pathlib.Path(__file__).parent.parent / "pipe_fluids.toml"
    target.write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
