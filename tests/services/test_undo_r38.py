"""R38: Ctrl+Z restores the undoable tables exactly, fifty deep, over acts of all kinds."""

from __future__ import annotations

from random import Random

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from helpers.random_acts import ACTS
from helpers.shop import Shop, make_shop
from helpers.store import contents
from rackboard.core.bench import JointKind
from rackboard.core.errors import InputError
from rackboard.services.undo import DEPTH, History
from rackboard.store.changes import UNDOABLE


def furnished() -> Shop:
    shop = make_shop("Mon 09:00")
    shop.bench.act_as("KT")
    shop.type(21)
    shop.glue(["6 iron", "7 iron"])
    shop.clock.advance(minutes=5)
    shop.glue(["Driver"], kind=JointKind.HOLLOW_HEAD, box=True)
    shop.lay_out(2)
    shop.history = History(shop.store, shop.clock)
    return shop


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.data())
def test_r38_ctrl_z_restores_the_undoable_tables_exactly_fifty_deep(data: st.DataObject) -> None:
    shop = furnished()
    clerks = ("KT", "MB")

    def draw(below: int) -> int:
        return data.draw(st.integers(0, below - 1))

    images = [contents(shop.store)]
    plan = data.draw(st.lists(st.sampled_from(ACTS), min_size=20, max_size=60))
    for act in plan:
        shop.clock.advance(minutes=1 + draw(90))
        shop.bench.act_as(clerks[draw(2)])
        depth = len(shop.history._done)
        try:
            changes = act(shop, draw)
        except InputError:
            changes = None  # it can't be done here; nothing may have changed
        if changes is not None:
            shop.do(changes)
        if len(shop.history._done) > depth or (changes is not None and changes.undoable):
            images.append(contents(shop.store))
        else:
            assert contents(shop.store) == images[-1], act.__name__
    assume(len(images) > 5)
    back = images[::-1][: DEPTH + 1]
    for image in back[1:]:
        shop.clock.advance(minutes=1)
        shop.undo()
        assert contents(shop.store) == image
    assert shop.history.undo() is None
    for image in back[-2::-1]:
        changes = shop.history.redo()
        assert changes is not None
        shop.spread(changes)
        assert contents(shop.store) == image
    assert shop.history.redo() is None


def test_r38_more_than_fifty_acts_of_every_kind() -> None:
    """Every act in turn, so that none is left out by chance."""
    shop = furnished()
    images = [contents(shop.store)]
    done: set[str] = set()
    turn, chance = 0, Random(38)
    while len(images) < 3 * DEPTH:
        act = ACTS[turn % len(ACTS)]
        turn += 1
        shop.clock.advance(minutes=7)
        try:
            changes = act(shop, chance.randrange)
        except InputError:
            continue
        if changes is not None and changes.undoable:
            shop.do(changes)
            done.add(act.__name__)
            images.append(contents(shop.store))
    assert done == {act.__name__ for act in ACTS} - {"re_aim"}  # which writes journals alone
    for image in images[::-1][1 : DEPTH + 1]:
        shop.undo()
        assert contents(shop.store) == image
    assert shop.history.undo() is None
    for image in images[-DEPTH:]:
        changes = shop.history.redo()
        assert changes is not None
        shop.spread(changes)
        assert contents(shop.store) == image


def test_r38_every_table_that_people_fill_is_undoable() -> None:
    shop = furnished()
    tables = {
        row[0]
        for row in shop.store._database.rows("SELECT name FROM sqlite_schema WHERE type = 'table'")
    }
    journals = {"event", "former", "alert", "telling", "permission_grant"}
    assert tables - UNDOABLE == journals | {"sqlite_sequence"}
