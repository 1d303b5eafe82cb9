__version__: str

def run(
    arguments: list[str],
) -> tuple[int, str, str, list[tuple[str, tuple[str, int, int] | None, str | None]]]: ...
