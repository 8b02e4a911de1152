"""The packs that ship, as texts and assembled."""

from functools import cache

from linter.packs.assemble import assemble
from linter.packs.model import Pack
from linter.packs.pack_text import PackText
from linter.resources import rulesets_dir


@cache
def shipped_packs() -> tuple[PackText, ...]:
    """The texts of all packs under rulesets/, with paths as messages show them."""
    return tuple(
        PackText(
            folder.name,
            {
                path.relative_to(rulesets_dir().parent).as_posix(): path.read_text("utf-8")
                for path in sorted(folder.glob("*.yaml"))
            },
        )
        for folder in sorted(rulesets_dir().iterdir())
        if folder.is_dir()
    )


@cache
def with_layer(name: str) -> Pack:
    """The pack of that name, laid on what it stands on."""
    return assemble(shipped_packs(), base_of(name), [name])


def base_of(name: str) -> str:
    """The pack at the bottom of what a pack stands on, or the pack itself."""
    files = next(text.files for text in shipped_packs() if text.id == name)
    manifest = next(words for path, words in files.items() if path.endswith("/pack.yaml"))
    line = next(line for line in manifest.splitlines() if line.startswith("extends:"))
    below = line.removeprefix("extends:").strip()
    return name if below == "nothing" else base_of(below)
