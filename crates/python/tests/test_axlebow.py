"""The module gives what the program prints: numbers, names, messages."""

import importlib.util
import json
import subprocess
import unittest
from pathlib import Path

import axlebow
import numpy as np

ROOT = Path(__file__).parents[3]
THIN = ROOT / "models/trailer-152-thin-dual.toml"


class Documents(unittest.TestCase):
    def test_bytes_are_those_of_the_program(self):
        program = ROOT / "target/debug/axlebow"
        for arguments in [["flex", THIN], ["modes", THIN], ["section", THIN], ["textbook"]]:
            words = [str(word) for word in [*arguments, "--json"]]
            printed = subprocess.run([program, *words], capture_output=True, text=True, check=True).stdout
            self.assertEqual(axlebow.command(*words), printed)

    def test_a_changed_key_is_that_of_the_command_line(self):
        by_set = axlebow.flex(THIN, case="rated-load", set={"tube.wall": "12 mm"})
        words = ["flex", str(THIN), "--case", "rated-load", "--set", "tube.wall=12 mm", "--json"]
        self.assertEqual(by_set.text, axlebow.command(*words))
        self.assertTrue(by_set.answer.endswith("."))
        self.assertLess(by_set["cases"][0]["wheels"]["left"]["camber_change_rad"], 0.0)

    def test_lists_of_numbers_are_arrays(self):
        grown = axlebow.growth(THIN, steps=3, counts="1..2", speeds="80..100 km/h")
        run = grown["axles"][0]["growth"]
        speeds = run["speeds_m_per_s"]
        self.assertIsInstance(speeds, np.ndarray)
        np.testing.assert_allclose(speeds[[0, -1]], np.array([80.0, 100.0]) / 3.6)

    def test_a_failed_check_has_a_document_all_the_same(self):
        weak = axlebow.strength(THIN, case="rated-load", set={"tube.wall": "4 mm"})
        self.assertFalse(weak.holds)

    def test_a_model_may_be_a_dict(self):
        tomllib = __import__("tomllib") if __import__("sys").version_info >= (3, 11) else self.skipTest("no tomllib")
        model = tomllib.loads(THIN.read_text())
        own, read = axlebow.flex(model), axlebow.flex(THIN)
        self.assertEqual(json.loads(own.text)["cases"], json.loads(read.text)["cases"])

    def test_a_study_is_a_table(self):
        try:
            import pyarrow  # noqa: F401
        except ImportError:
            self.skipTest("no pyarrow")
        table = axlebow.study_table(ROOT / "studies/wall-sweep.toml", coarse=2)
        self.assertGreater(table.num_rows, 1)


class Faults(unittest.TestCase):
    def test_what_is_wrong_has_place_and_hint(self):
        with self.assertRaises(axlebow.InputError) as caught:
            axlebow.flex({"name": "x", "kind": "trailer-tub"})
        faults = caught.exception.faults
        kind = next(fault for fault in faults if "trailer-tub" in fault.message)
        self.assertEqual(kind.place[1], 2)
        self.assertIn("trailer-tube", kind.hint)

    def test_a_missing_file_an_unknown_option_and_a_mechanism_are_told_apart(self):
        with self.assertRaisesRegex(axlebow.InputError, "nowhere"):
            axlebow.flex("nowhere.toml")
        with self.assertRaisesRegex(axlebow.InputError, "no-such-option"):
            axlebow.flex(THIN, no_such_option=True)


class Studies(unittest.TestCase):
    def test_the_figure_of_the_moving_force_is_that_of_its_series(self):
        place = importlib.util.spec_from_file_location("moving_force", ROOT / "studies/python/moving_force.py")
        figure = importlib.util.module_from_spec(place)
        place.loader.exec_module(figure)
        for ratio in [0.25, 0.617, 1.0]:
            self.assertAlmostEqual(figure.computed(ratio, 0.0), figure.series(ratio), delta=1e-4)
        for ratio, printed in figure.PRINTED.items():
            self.assertAlmostEqual(figure.computed(ratio, 0.0), printed, delta=1e-3)
        self.assertLess(figure.computed(0.617, 0.05), figure.computed(0.617, 0.0))


if __name__ == "__main__":
    unittest.main()
