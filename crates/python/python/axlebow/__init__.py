"""How far a heavy-truck axle bows, what that does at the tire face, what each remedy buys and risks.

Every function runs a command of the `axlebow` program in this process and gives its document: a dict whose keys end in
their units (``camber_change_rad``), in which lists of numbers are NumPy arrays. Models are paths or dicts with the keys of a
model file. Keyword options are those of the command line with ``_`` for ``-``; ``set={"tube.wall": "12 mm"}`` changes keys.

>>> import axlebow
>>> axle = axlebow.flex("models/trailer-152-thin-dual.toml", case="rated-load")  # doctest: +SKIP
>>> axle.answer  # doctest: +SKIP
"""

from __future__ import annotations

import json
import os
import tempfile
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple, Optional, Union

import numpy as np

from . import _axlebow

__version__: str = _axlebow.__version__
__all__ = [
    "AxlebowError", "Document", "Fault", "InputError", "NoSolutionError", "beam", "causes", "command", "cups", "explain", "fit",
    "flex", "growth", "life", "modes", "rating", "remedies", "response", "ride", "schema", "section", "strength", "study",
    "study_table", "textbook", "tire",
]  # fmt: skip

#: A file's path, or a dict with the keys of such a file.
Source = Union[str, "os.PathLike[str]", Mapping[str, Any]]


class Fault(NamedTuple):
    """Something wrong with the input."""

    message: str
    #: File, line and character, both from 1.
    place: Optional[tuple[str, int, int]]
    #: What is accepted instead, or was likely meant.
    hint: Optional[str]


class AxlebowError(Exception):
    """A run without an answer. ``faults`` has each thing that is wrong."""

    def __init__(self, text: str, faults: Sequence[Fault]):
        super().__init__(text)
        self.faults = tuple(faults)

    @property
    def place(self) -> Optional[tuple[str, int, int]]:
        """File, line and character of the first fault."""
        return self.faults[0].place if self.faults else None

    @property
    def hint(self) -> Optional[str]:
        """What is accepted instead of what the first fault is about."""
        return self.faults[0].hint if self.faults else None


class InputError(AxlebowError):
    """Something that was given is wrong."""


class NoSolutionError(AxlebowError):
    """The model has no solution."""


class Document(dict):
    """A result. Keys end in their units; lists of numbers are arrays, with NaN for null."""

    #: The document as the program prints it.
    text: str
    #: Whether every check of the command holds.
    holds: bool

    @property
    def answer(self) -> str:
        """The answer in one to three sentences."""
        return " ".join(self["answer"])


def command(*arguments: str) -> str:
    """What `axlebow` prints for these arguments, such as ``command("flex", "drive.toml")``."""
    return _run([str(argument) for argument in arguments])[1]


def flex(model: Source, **options: Any) -> Document:
    """Camber, toe, bow, splits and stresses of an axle standing still in its load cases."""
    return _document("flex", [model], options)


def modes(model: Source, **options: Any) -> Document:
    """Natural frequencies, damping and what moves in them."""
    return _document("modes", [model], options)


def section(model: Source, **options: Any) -> Document:
    """Sections along the axle with what is welded to them."""
    return _document("section", [model], options)


def strength(model: Source, **options: Any) -> Document:
    """Every check of strength, the worst first; ``holds`` is False where one fails."""
    return _document("strength", [model], options)


def life(model: Source, **options: Any) -> Document:
    """Years to a crack at each detail and of the wheel bearings; ``duty`` names a duty file."""
    return _document("life", [model], options)


def rating(model: Source, **options: Any) -> Document:
    """The axle load at which the first check binds, over wheel offset."""
    return _document("rating", [model], options)


def causes(model: Source, **options: Any) -> Document:
    """How much of the camber each part of the axle makes."""
    return _document("causes", [model], options)


def remedies(model: Source, **options: Any) -> Document:
    """What each remedy buys, needs and risks on this axle, ranked."""
    return _document("remedies", [model], options)


def explain(sheet: Source, **options: Any) -> Document:
    """What wore a tire, from a case sheet."""
    return _document("explain", [sheet], options)


def growth(*models: Source, **options: Any) -> Document:
    """How fast cups grow over speed and count, of one or several axles."""
    return _document("growth", models, options)


def cups(model: Optional[Source] = None, **options: Any) -> Document:
    """The frequency of counted cups and what on the axle has it."""
    return _document("cups", [] if model is None else [model], options)


def tire(*models: Source, **options: Any) -> Document:
    """Load, scuff and wear of each rib, of one or several axles."""
    return _document("tire", models, options)


def ride(model: Source, **options: Any) -> Document:
    """The axle in time over a road; ``over`` names a road file."""
    return _document("ride", [model], options)


def response(model: Source, **options: Any) -> Document:
    """Camber, load and stress by frequency, and over random roads."""
    return _document("response", [model], options)


def fit(model: Source, **options: Any) -> Document:
    """A model fitted to readings or removals."""
    return _document("fit", [model], options)


def beam(file: Source, **options: Any) -> Document:
    """A beam of one's own: deflection, forces, modes, convergence."""
    return _document("beam", [file], options)


def textbook(**options: Any) -> Document:
    """Every textbook case with reference value, source and error."""
    return _document("textbook", [], options)


def study(file: Source, **options: Any) -> Document:
    """A study: sweeps, variants side by side, searches, uncertainty, paybacks."""
    return _document("study", [file], options)


def study_table(file: Source, **options: Any) -> Any:
    """The designs of a study as an Arrow table (needs pyarrow), one row for each, columns named with their units."""
    import pyarrow.parquet as parquet

    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder) / "designs.parquet"
        study(file, parquet=place, **options)
        return parquet.read_table(place)


def schema(name: str) -> dict[str, Any]:
    """The JSON Schema of a document or of a file: names, units and meanings."""
    return json.loads(command("schema", name))


def _document(name: str, sources: Sequence[Source], options: Mapping[str, Any]) -> Document:
    with tempfile.TemporaryDirectory() as folder:
        files = [_file(source, Path(folder) / f"input-{number}.toml") for number, source in enumerate(sources)]
        code, text = _run([name, *files, *_words(options), "--json"])
    document = Document(_arrays(json.loads(text)))
    document.text, document.holds = text, code == 0
    return document


def _run(arguments: list[str]) -> tuple[int, str]:
    code, out, err, faults = _axlebow.run(arguments)
    # Where a check fails there is an answer all the same.
    if code in (0, 1) and out:
        return code, out
    kind = NoSolutionError if code == 3 else InputError
    raise kind(err.strip(), [Fault(*fault) for fault in faults])


def _file(source: Source, place: Path) -> str:
    if not isinstance(source, Mapping):
        return os.fspath(source)
    place.write_text(_toml(source), encoding="utf-8")
    return os.fspath(place)


def _words(options: Mapping[str, Any]) -> list[str]:
    words: list[str] = []
    for name, value in options.items():
        flag = "--" + name.rstrip("_").replace("_", "-")
        if value is True:
            words.append(flag)
        elif isinstance(value, Mapping):
            words += [word for key, one in value.items() for word in (flag, f"{key}={_plain(one)}")]
        elif isinstance(value, (list, tuple)):
            words += [word for one in value for word in (flag, _plain(one))]
        elif value is not None and value is not False:
            words += [flag, _plain(value)]
    return words


def _plain(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    return os.fspath(value) if isinstance(value, os.PathLike) else str(value)


def _toml(table: Mapping[str, Any]) -> str:
    return "".join(f"{_value(str(key))} = {_value(value)}\n" for key, value in table.items())


def _value(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, (int, float, np.number)):
        return repr(value.item() if isinstance(value, np.number) else value)
    if isinstance(value, Mapping):
        return "{ " + ", ".join(f"{_value(str(key))} = {_value(one)}" for key, one in value.items()) + " }"
    if isinstance(value, (list, tuple, np.ndarray)):
        return "[" + ", ".join(_value(one) for one in value) + "]"
    # A string of JSON is one of TOML.
    return json.dumps(str(value), ensure_ascii=False).replace("\x7f", "\\u007f")


def _arrays(value: Any) -> Any:
    """The same with arrays for lists of numbers."""
    if isinstance(value, dict):
        return {key: _arrays(one) for key, one in value.items()}
    if not isinstance(value, list):
        return value
    items = [_arrays(one) for one in value]
    if items and all(_is_number(one) for one in items) and any(one is not None for one in items):
        return np.array([np.nan if one is None else one for one in items])
    shapes = {one.shape if isinstance(one, np.ndarray) else None for one in items}
    if items and None not in shapes and len(shapes) == 1:
        return np.array(items)
    return items


def _is_number(value: Any) -> bool:
    return value is None or (isinstance(value, (int, float)) and not isinstance(value, bool))
