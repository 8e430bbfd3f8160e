"""What the contracts of the import linter cannot say of the files."""

import re
from graphlib import TopologicalSorter
from pathlib import Path

import grimp

import tapmodel

# A module loaded by its name is needed as much as one that is imported.
_BY_NAME = re.compile(r"import_module\(\s*\"(tapmodel[\w.]*)\"")


def test_no_file_needs_one_that_needs_it() -> None:
    graph = grimp.build_graph("tapmodel", cache_dir=None)
    needs = {file: set(graph.find_modules_directly_imported_by(file)) for file in graph.modules}
    home = Path(tapmodel.__file__).parent
    for path in home.rglob("*.py"):
        parts = path.relative_to(home.parent).with_suffix("").parts
        name = ".".join(parts[:-1] if parts[-1] == "__init__" else parts)
        needs[name] |= set(_BY_NAME.findall(path.read_text(encoding="utf-8")))
    # It raises an error that names the files where they go round.
    order = list(TopologicalSorter(needs).static_order())
    assert order.index("tapmodel.errors") < order.index("tapmodel.geometry.trace.skin")
    assert set(order) == set(graph.modules)
