//! The Python module: one call that runs a command and keeps what it prints; does not know physics. What Python users see is in
//! `python/axlebow/`.

use pyo3::prelude::*;

/// A run: exit code, what it printed, its messages, and for each thing that is wrong a message, its place and a hint.
type Ran = (u8, String, String, Vec<(String, Option<(String, usize, usize)>, Option<String>)>);

/// Runs a command of axlebow by its arguments; other threads of Python go on meanwhile.
#[pyfunction]
fn run(py: Python<'_>, arguments: Vec<String>) -> Ran {
    let run = py.detach(|| axlebow_cli::run(arguments));
    let faults = run.faults.into_iter().map(|fault| (fault.message, fault.place, fault.hint));
    (run.code, run.out, run.err, faults.collect())
}

#[pymodule]
fn _axlebow(module: &Bound<'_, PyModule>) -> PyResult<()> {
    module.add("__version__", env!("CARGO_PKG_VERSION"))?;
    module.add_function(wrap_pyfunction!(run, module)?)
}
