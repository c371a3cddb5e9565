"""The open alarms as lines of the board's list, and the joints whose alarm is taken."""

from __future__ import annotations

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


def alarm_happenings(
    alerts: Alerts, board: Board, times: Times
) -> tuple[list[Happening], dict[str, AlarmCard]]:
    """Return the lines of the open alarms, the most pressing first, and their cards by key."""
    found = cards(alerts.open, board)
    dues = {alert.id: alert.due_us for alert in alerts.open}
    lines = []
    for card in found:
        title = f"{card.signal}. {card.headline}" if card.signal else card.headline
        since = min(dues[n] for n in card.ids)
        word = Word.HOLD if card.tone == HOLD and card.speaking else None
        lines.append(
            Happening(
                card.key, HappeningKind.ALARM, times.clock(since), GLYPHS[card.kind], title,
                (card.body,), title, (card.body,), word, card.button, card.accessible,
            )
        )  # fmt: skip
    return lines, {card.key: card for card in found}


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
