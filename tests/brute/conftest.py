"""The demo's truth as the oracle reads it."""

import pytest
from demo_maker import truth

from brute.merged import Claims, merged_offers, merged_parts, with_offers
from brute.needs import Asked, draw
from brute.oracle import Oracle, Told

SEED = 1974


@pytest.fixture(scope="package")
def offers() -> list[Claims]:
    """The offers of the four lists."""
    return merged_offers(truth(seed=SEED).rows)


@pytest.fixture(scope="package")
def parts(offers: list[Claims]) -> list[Claims]:
    """The parts of the four lists, with what their offers say."""
    return with_offers(merged_parts(truth(seed=SEED).rows), offers)


@pytest.fixture(scope="package")
def oracle(parts: list[Claims]) -> Oracle:
    """Who answers on those parts."""
    return Oracle(parts)


@pytest.fixture(scope="package")
def needs(parts: list[Claims]) -> list[Asked]:
    """Three hundred requirements."""
    return draw(parts, SEED)


@pytest.fixture(scope="package")
def told(oracle: Oracle, needs: list[Asked]) -> list[Told]:
    """What the oracle answers to each of them."""
    return [oracle.told(need) for need in needs]
