//! The `axlebow` program.

fn main() -> std::process::ExitCode {
    axlebow_cli::main()
}
