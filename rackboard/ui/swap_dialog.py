"""The dialog that swaps two clubs: carried, noted in each other's slot, or called wrongly."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from rackboard.core.errors import InputError
from rackboard.core.standing import Standing
from rackboard.store.changes import ChangeSet
from rackboard.ui.act_dialog import ActDialog
from rackboard.ui.keys import Key
from rackboard.ui.language import say
from rackboard.ui.session import Session
from rackboard.ui.wording import Times

CARRIED, NOTCH, NAME = "carried", "notch", "name"
"""The answers: both change places now; they have lain so; they are called wrongly."""


class SwapDialog(ActDialog):
    """With which club, and what was wrong: one key for each answer.

    Parameters
    ----------
    session : Session
        The open shop.
    standing : Standing
        Of one of the clubs.
    other_id : int, optional
        The other club, where it is known (it lies where this one was dropped).
    """

    def __init__(
        self,
        session: Session,
        standing: Standing,
        parent: QWidget | None = None,
        other_id: int | None = None,
    ) -> None:
        super().__init__(session, parent)
        self._standing = standing
        content = self.frame(
            say("Swap", "Swap {where} {club} with…").format(
                where=session.board.snapshot.where(standing.club.id), club=standing.club.name
            ).replace("  ", " "),
            say("Swap", "Job {number}. One act for both clubs; what was noted stays on the record.")
            .format(number=standing.job.number),
        )  # fmt: skip
        self.other = self.choice(say("Swap", "The other club"))
        for candidate in self._candidates():
            self.other.addItem(self._named(candidate), candidate.club.id)
        if other_id is not None:
            self.other.setCurrentIndex(max(self.other.findData(other_id), 0))
        content.addWidget(self.other)
        self.keys: dict[str, Key] = {}
        column = QVBoxLayout()
        column.setSpacing(1)
        for answer in (NAME, NOTCH, CARRIED):
            key = Key("", self.theme, self.roles)
            key.setProperty("answer", answer)
            key.clicked.connect(self._on_answer)
            column.addWidget(key)
            self.keys[answer] = key
        content.addLayout(column)
        self.add_message(content)
        self.add_buttons("", say("Swap", "Cancel"))
        self.other.currentIndexChanged.connect(self._show_answers)
        self._show_answers()
        (self.other if other_id is None else self.keys[CARRIED]).setFocus()
        self.fit(760 if self.roles.large else 640, 640 if self.roles.large else 560)

    def _candidates(self) -> list[Standing]:
        """Return the other clubs at work, the likeliest first: same name, then the neighbours."""
        mine = self._standing
        others: dict[int, Standing] = {}
        for standing in self.session.board.standings:
            if standing.stay is not None and standing.club.id != mine.club.id:
                others.setdefault(standing.club.id, standing)

        def far(standing: Standing) -> tuple[bool, bool, int, int]:
            here, there = mine.stay, standing.stay
            assert there is not None
            near = here is not None and here.place_id == there.place_id
            apart = abs((there.slot or 0) - ((here.slot if here else 0) or 0))
            return standing.club.name != mine.club.name, not near, apart, standing.club.id

        return sorted(others.values(), key=far)

    def _named(self, standing: Standing) -> str:
        return say("Swap", "{where} {club}, job {number}").format(
            where=self.session.board.snapshot.where(standing.club.id),
            club=standing.club.name, number=standing.job.number,
        )  # fmt: skip

    @property
    def other_id(self) -> int | None:
        """The club that is chosen."""
        data = self.other.currentData()
        return None if data is None else int(data)

    def _show_answers(self) -> None:
        other = self.other_id
        since = ""
        snapshot = self.session.board.snapshot
        stays = [snapshot.stays.get(club) for club in (self._standing.club.id, other or 0)]
        if all(stays):
            times = Times(snapshot.hours, self.session.clock.now())
            since = times.moment(max(stay.from_us for stay in stays if stay is not None))
        texts = {
            NAME: say("Swap", "Wrong name: job and club change,\nclocks and slots stay"),
            NOTCH: say("Swap", "Wrong slot since {time}: club and clock\nlay in the other one")
            .format(time=since),
            CARRIED: say("Swap", "Carried just now: both change places,\nclocks go with them"),
        }  # fmt: skip
        for answer, key in self.keys.items():
            key.setText(texts[answer])
            key.setAccessibleName(texts[answer].replace("\n", " "))
            placed = self._standing.stay is not None or answer == NAME
            key.setEnabled(other is not None and placed)
            key.update()

    def _on_answer(self) -> None:
        sender = self.sender()
        assert sender is not None
        answer = str(sender.property("answer"))
        self.act(lambda: self._swap(answer), self.other)

    def _swap(self, answer: str) -> ChangeSet:
        bench, mine, other = self.session.bench, self._standing.club.id, self.other_id
        if other is None:
            raise InputError(
                say("Swap", "another club"), say("Swap", "nothing"), say("Swap", "swap")
            )
        if answer == NAME:
            return bench.correct_names(mine, other)
        if answer == NOTCH:
            return bench.correct_notches(mine, other)
        return bench.change_places(mine, other)
