"""Reads a drawing's DXF file back by an independent library and compares its dimensions with the model's.

Needs Python 3 with `ezdxf`. Run from the top of the project, after a build:

    python3 -m venv /tmp/env && /tmp/env/bin/pip install ezdxf
    /tmp/env/bin/python scripts/read_back_drawing.py target/debug/axlebow models/trailer-152-thin-dual-angle.toml

Prints what it found; exit code 1 where the file has faults, a figure differs from the length of its dimension line at full
size, or a length of the model is on no figure.
"""

import json
import subprocess
import sys
import tempfile
import tomllib
from pathlib import Path

import ezdxf


def length_mm(text: str) -> float:
    """A length such as `152.4 mm`, `1.68 m` or `6 in`, mm."""
    number, unit = text.split()[:2]
    return float(number) * {"mm": 1.0, "m": 1000.0, "in": 25.4}[unit]


def model_lengths(path: Path) -> dict[str, float]:
    """Lengths of a tube axle and its first stiffener that the drawing must show, mm."""
    model = tomllib.loads(path.read_text())
    seat, steps = model["seat"][0], model["spindle"]["step"]
    found = {f"spindle step {number + 1}": length_mm(step["length"]) for number, step in enumerate(steps)}
    found["seat width"] = length_mm(seat["width"])
    found["center of seat"] = length_mm(seat["at"])
    if "tube" in model:
        tube = length_mm(model["tube"]["length"])
        found["tube"] = tube
        found["whole"] = tube + 2 * sum(length_mm(step["length"]) for step in steps)
    for stiffener in model.get("stiffener", [])[:1]:
        for key in ["length", "end_length", "stitch_length"]:
            if key in stiffener:
                found[f"stiffener {key}"] = length_mm(stiffener[key])
    return found


def dimensions(document, scale: float) -> list[tuple[str, float]]:
    """Figures of the elevation with the length of the line right before each, mm at full size."""
    pairs, line = [], None
    for entity in document.modelspace():
        if entity.dxf.layer != "DIMENSION":
            continue
        if entity.dxftype() == "LINE":
            line = entity
        elif entity.dxftype() == "TEXT" and line is not None:
            pairs.append((entity.plain_text(), abs(line.dxf.end.x - line.dxf.start.x)))
    return pairs


def compare(program: str, model: Path, options: list[str]) -> list[str]:
    """Faults of the drawing of a model; empty where there are none."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "drawing.dxf"
        command = [program, "drawing", str(model), "-o", str(file), "--units", "si", "--json", *options]
        document = json.loads(subprocess.run(command, check=True, capture_output=True).stdout)
        read = ezdxf.readfile(file)
    auditor = read.audit()
    faults = [str(error) for error in [*auditor.errors, *auditor.fixes]]
    found = dimensions(read, document["scale"])
    sections = document["scale"] / document["section_scale"]
    shown = []
    for text, length in found:
        own = float(text.removeprefix("Ø"))
        # Sections, of round tubes and of housings, are drawn larger than the elevation by the ratio of their scales.
        ratios = [sections] if text.startswith("Ø") else [1.0, sections]
        if all(abs(length / ratio - own) > 0.051 for ratio in ratios):
            faults.append(f"figure {text} stands over a line of {length:.3f} mm")
        shown.append(own)
    for name, length in model_lengths(model).items():
        if not any(abs(own - length) <= 0.051 for own in shown):
            faults.append(f"{name}, {length} mm, is on no figure")
    layers = sorted({entity.dxf.layer for entity in read.modelspace()})
    print(f"{model.name} {' '.join(options)}: {len(read.modelspace())} entities on {', '.join(layers)}; {len(found)} figures")
    return faults


def main() -> int:
    program, models = sys.argv[1], [Path(own) for own in sys.argv[2:]]
    sheets = [["--sheet", paper, "--symbols", symbols] for paper in ["a4", "a3", "letter"] for symbols in ["iso", "aws"]]
    faults = [fault for model in models for sheet in sheets for fault in compare(program, model, sheet)]
    print("\n".join(faults) or "no faults")
    return 1 if faults else 0


if __name__ == "__main__":
    raise SystemExit(main())
