"""All kinds of thing, by name: the single declaration of what rules may speak of."""

from linter.vocabulary.kinds.boxes import BOX_KINDS
from linter.vocabulary.kinds.building import BUILDING_KINDS
from linter.vocabulary.kinds.cables import CABLE_KINDS
from linter.vocabulary.kinds.circuits import CIRCUIT_KINDS
from linter.vocabulary.kinds.devices import DEVICE_KINDS
from linter.vocabulary.kinds.dwelling import DWELLING_KINDS
from linter.vocabulary.kinds.fixtures import FIXTURE_KINDS
from linter.vocabulary.kinds.raceways import RACEWAY_KINDS
from linter.vocabulary.kinds.runs import RUN_KINDS
from linter.vocabulary.kinds.service import SERVICE_KINDS
from linter.vocabulary.kinds.wires import WIRE_KINDS
from linter.vocabulary.model import Kind

KINDS: dict[str, Kind] = {
    kind.name: kind
    for group in (
        DWELLING_KINDS,
        SERVICE_KINDS,
        RUN_KINDS,
        BUILDING_KINDS,
        CIRCUIT_KINDS,
        BOX_KINDS,
        DEVICE_KINDS,
        FIXTURE_KINDS,
        CABLE_KINDS,
        WIRE_KINDS,
        RACEWAY_KINDS,
    )
    for kind in group
}
