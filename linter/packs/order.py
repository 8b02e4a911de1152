"""Which packs are laid on which: the pack asked for, what it stands on, and the layers on it.

A layer comes after the pack it extends, and so after everything that stands below. Layers of which
neither stands on the other have no order; they are taken by name, and may not touch the same thing.
"""

from collections.abc import Mapping, Sequence

from linter.packs.texts import PackFiles
from linter.text import Place, Refusal, Refused, join_words, nearest


def in_order(
    packs: Mapping[str, PackFiles], wanted: str, layers: Sequence[str], there: Sequence[str]
) -> list[PackFiles]:
    """The packs to be laid on each other, the lowest first; raises `Refused`.

    `there` names all packs that could be asked for.
    """
    for name in (wanted, *layers):
        if name not in packs:
            raise Refused([_no_pack(there, name)])
    found = {pack.id: pack for pack in _chain(packs, wanted, there)}
    for name in dict.fromkeys(layers):
        below = _chain(packs, name, there)
        if wanted not in {pack.id for pack in below}:
            raise Refused([_not_on(packs[name], wanted)])
        found.update((pack.id, pack) for pack in below)
    return sorted(found.values(), key=lambda pack: (len(_chain(packs, pack.id)), pack.id))


def stands_on(packs: Mapping[str, PackFiles], upper: str, lower: str) -> bool:
    """Whether `upper` is `lower`, or a layer on it at any distance."""
    return any(pack.id == lower for pack in _chain(packs, upper))


def _chain(packs: Mapping[str, PackFiles], name: str, there: Sequence[str] = ()) -> list[PackFiles]:
    """The pack and all that it stands on, the lowest first; `there` are all names there are."""
    chain: list[PackFiles] = []
    above: PackFiles | None = None
    at: str | None = name
    while at is not None:
        if at not in packs:
            if above is None:
                break
            raise Refused([_no_base(above, at, there)])
        pack = packs[at]
        if pack in chain:
            raise Refused([_in_a_ring(pack, chain)])
        chain.append(pack)
        above, at = pack, pack.manifest.base
    chain.reverse()
    return chain


def _no_pack(there: Sequence[str], name: str) -> Refusal:
    return Refusal(
        Place(name, 1, 1),
        f'There is no pack "{name}"',
        f"one of: {', '.join(there)}",
        "write the name of a pack that is there",
        nearest(name, there),
    )


def _no_base(above: PackFiles, name: str, there: Sequence[str]) -> Refusal:
    others = [each for each in there if each != above.id]
    return Refusal(
        above.manifest_node.fields["extends"].place,
        f'The layer stands on "{name}", and there is no such pack',
        f"nothing, or one of: {', '.join(others)}",
        "write the name of a pack that is there, or nothing where yours stands by itself",
        nearest(name, others),
    )


def _in_a_ring(pack: PackFiles, chain: Sequence[PackFiles]) -> Refusal:
    ring = [each.id for each in chain[chain.index(pack) :]]
    return Refusal(
        pack.manifest_node.fields["extends"].place,
        f"Layers stand on each other in a ring: {join_words(ring)}",
        "a pack at the bottom that extends nothing",
        "take one of them out of the ring",
    )


def _not_on(layer: PackFiles, wanted: str) -> Refusal:
    return Refusal(
        layer.manifest_node.fields["extends"].place,
        f'"{layer.id}" is no layer on "{wanted}"',
        f'a layer on "{wanted}", or on a layer of it',
        f'leave "{layer.id}" out, or ask for the pack it stands on',
    )
