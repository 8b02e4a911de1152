"""The manifest of a pack as a model: the one place of the package where text becomes one."""

from typing import Literal

from pydantic import BaseModel, ConfigDict, Field

from linter.text.yaml_places import Node


class _Stated(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)


class Published(_Stated):
    """A published text that clauses name as their source."""

    title: str
    kind: str
    year: str = ""
    by: str = ""
    about: str = ""


class InForce(_Stated):
    """From when until when the document holds."""

    from_: str = Field(alias="from")
    until: str


class ChangeNote(_Stated):
    """What a version of the pack brought, and whom it affects."""

    version: str
    what: str
    affects: str
    direction: Literal["tighter", "looser", "wording"]
    edition: str = ""
    rules: tuple[str, ...] = ()


class Manifest(_Stated):
    """What the pack is, what it is a layer on, and how its results are shown."""

    pack: str
    title: str
    jurisdiction: str
    document: str
    edition: str
    extends: str
    version: str
    in_force: InForce | None = Field(default=None, alias="in force")
    inherited: Literal["confirmed", "not confirmed"] = "confirmed"
    words: dict[str, str] = {}
    titles: dict[str, dict[str, str]] = {}
    units: dict[str, str] = {}
    sources: dict[str, Published] = {}
    changes: tuple[ChangeNote, ...] = ()
    note: str = ""

    @property
    def inherits_confirmed(self) -> bool:
        """Whether what it takes over from the edition below is known to hold in its own."""
        return self.inherited == "confirmed"

    @property
    def base(self) -> str | None:
        """The pack it is a layer on; None where it stands by itself."""
        return None if self.extends == "nothing" else self.extends


def read_manifest(node: Node) -> Manifest:
    """The model of a manifest that the schema has judged."""
    return Manifest.model_validate(_as_text(node))


def _as_text(node: Node) -> object:
    """The node's lists and maps, with every word and number in them as it is written."""
    if isinstance(node.value, list):
        return [_as_text(each) for each in node.items]
    if isinstance(node.value, dict):
        return {key: _as_text(each) for key, each in node.fields.items()}
    return node.text
