"""The open alarms as lines of the board's list, and the joints whose alarm is taken."""

from __future__ import annotations

from typing import NamedTuple

from rackboard.core.alerts.kinds import Kind
from rackboard.core.alerts.machine import Phase
from rackboard.core.words import Word
from rackboard.services.alerts import Alerts
from rackboard.services.board import Board
from rackboard.ui.alerts_presenter import HOLD, AlarmCard, cards
from rackboard.ui.board_view import Happening, HappeningKind
from rackboard.ui.tile import Glyph
from rackboard.ui.wording import Times

GLYPHS = {
    Kind.DISTURBED: Glyph.ROD, Kind.TOO_HOT: Glyph.HOT, Kind.COLD: Glyph.COLD,
    Kind.NO_RECORD: Glyph.CLOCK, Kind.WITHDRAWN: Glyph.LOCK,
}  # fmt: skip


class AlarmLines(NamedTuple):
    """The open alarms for the board's list.

    Attributes
    ----------
    lines : tuple of Happening
        The most pressing first; of joints on HOLD the board has lines of its own.
    disturbed : dict
        The keys of the alarms of those joints, by joint.
    cards : dict
        The cards behind all of them, by key.
    """

    lines: tuple[Happening, ...]
    disturbed: dict[int, str]
    cards: dict[str, AlarmCard]


def alarm_lines(alerts: Alerts, board: Board, times: Times) -> AlarmLines:
    """Return the open alarms as lines."""
    found = cards(alerts.open, board)
    open_alerts = {alert.id: alert for alert in alerts.open}
    dues = {alert.id: alert.due_us for alert in alerts.open}
    lines = []
    disturbed: dict[int, str] = {}
    for card in found:
        if card.kind is Kind.DISTURBED:
            disturbed |= {open_alerts[n].subject_id: card.key for n in card.ids}
            continue
        warns = card.kind is Kind.WITHDRAWN  # the one signal word that a head may hurt somebody
        title = f"{card.signal}. {card.headline}" if warns else card.headline
        since = min(dues[n] for n in card.ids)
        word = Word.HOLD if card.tone == HOLD and card.speaking else None
        lines.append(
            Happening(
                card.key, HappeningKind.ALARM, times.clock(since), GLYPHS[card.kind], title,
                (card.body,), title, (card.body,), word, card.button, card.accessible,
            )
        )  # fmt: skip
    return AlarmLines(tuple(lines), disturbed, {card.key: card for card in found})


def taken_joints(alerts: Alerts) -> set[int]:
    """Return the joints on HOLD whose alarm somebody has taken."""
    taken: set[int] = set()
    for alert in alerts.open:
        if alert.phase != Phase.TAKEN.value:
            continue
        if alert.kind == Kind.DISTURBED:
            taken.add(alert.subject_id)
        elif alert.kind == Kind.TOO_HOT:
            joints = alert.data.get("joints")
            taken |= {int(n) for n in joints} if isinstance(joints, list) else set()
    return taken
