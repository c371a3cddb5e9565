"""The settings' page of temperature sources: where each zone is measured, and what comes."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from rackboard.core.bench import Zone
from rackboard.core.errors import RackboardError
from rackboard.core.feed import FeedKind, FeedSource
from rackboard.core.temperature import format_temperature
from rackboard.feeds.sysfs import Sensor, discover
from rackboard.services.feeding import Feeding
from rackboard.ui.dialog import Dialog
from rackboard.ui.feed_form import FeedForm, sample_text
from rackboard.ui.language import say, translated
from rackboard.ui.list_rows import Line, LineList
from rackboard.ui.place_fields import refusal
from rackboard.ui.session import Session
from rackboard.ui.theme import Theme
from rackboard.ui.wording import Times


class FeedPage(QWidget):
    """The zones with their sources; every act holds at once, and undo takes it back.

    Parameters
    ----------
    session : Session
        The open shop.
    feeding : Feeding
        Keeps the sources and asks them.
    dialog : Dialog
        Where the page lies, for its hand.
    sensors : callable, optional
        Returns the sensors that are there.
    theme : Theme, optional
        The scheme of the form; by default the application's.
    """

    def __init__(
        self,
        session: Session,
        feeding: Feeding,
        dialog: Dialog,
        *,
        sensors: Callable[[], list[Sensor]] = discover,
        theme: Theme | None = None,
    ) -> None:
        super().__init__()
        self._session, self._feeding, self._dialog = session, feeding, dialog
        self._sensors, self._theme = sensors, theme
        self.form: FeedForm | None = None
        large = dialog.roles.large
        self.zones = LineList(say("Feeds", "Temperature sources"), dialog.theme, dialog.roles)
        self.zones.setMinimumHeight(3 * (46 if large else 36) + 8)
        self.said = dialog.label("", wrap=True)
        self.message = dialog.label("", dialog.roles.fact_bold, wrap=True)
        self.setting = self._key(say("Feeds", "Set…"), self.set_source)
        self.removing = self._key(say("Feeds", "Remove"), self.remove_source)
        side = QVBoxLayout()
        side.setSpacing(8 if large else 6)
        side.addWidget(self.setting)
        side.addWidget(self.removing)
        side.addStretch(1)
        beside = QHBoxLayout()
        beside.setSpacing(16)
        beside.addWidget(self.zones, 1)
        beside.addLayout(side)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 2, 8, 8)
        column.setSpacing(8)
        column.addWidget(dialog.heading(say("Feeds", "Where each zone's temperature comes from")))
        column.addLayout(beside, 1)
        column.addWidget(self.said)
        column.addWidget(self.message)
        column.addWidget(
            dialog.label(
                say("Feeds", "A zone without a source is typed. What is done on this page holds"
                    " at once; Undo takes it back, but not what has been measured."),
                tone="sub", wrap=True,
            )
        )  # fmt: skip
        self.zones.doubleClicked.connect(self.set_source)
        self.zones.activated.connect(self.set_source)
        self.zones.selectionModel().currentChanged.connect(self._show_chosen)
        session.acted.connect(self.refresh)
        session.ticked.connect(self.refresh)
        self.refresh()

    def _key(self, label: str, act: Callable[[], None]) -> QPushButton:
        made = self._dialog.button(label)
        made.setMinimumHeight(44 if self._dialog.roles.large else 32)
        made.clicked.connect(act)
        return made

    # What is shown

    def refresh(self) -> None:
        """Show what is set, and what the sources say now."""
        zones = sorted(self._session.board.snapshot.zones.values(), key=lambda z: (z.sort, z.id))
        self._sources = {source.zone_id: source for source in self._feeding.sources()}
        self.zones.show_lines(tuple(Line(z.id, z.name, self._fact(z)) for z in zones))
        self._show_chosen()

    def _fact(self, zone: Zone) -> str:
        source = self._sources.get(zone.id)
        if source is None:
            return say("Feeds", "typed")
        name = source_text(source)
        if any(trouble.zone_id == zone.id for trouble in self._feeding.troubles):
            return say("Feeds", "{source}: in trouble").format(source=name)
        last = self._feeding.last(zone.id)
        if last is None:
            return name
        shown = translated(format_temperature(last.temperature_mc, self._session.unit))
        return f"{name}, {shown}"

    def _show_chosen(self) -> None:
        zone = self._zone()
        source = None if zone is None else self._sources.get(zone.id)
        self.setting.setEnabled(zone is not None)
        self.setting.setText(say("Feeds", "Set…") if source is None else say("Feeds", "Change…"))
        self.removing.setEnabled(source is not None)
        if zone is None or source is None:
            self.said.setText("")
            return
        times = Times(self._session.board.snapshot.hours, self._session.clock.now())
        lines = [source.path if source.kind is FeedKind.CSV else source_text(source)]
        last = self._feeding.last(zone.id)
        if last is not None:
            lines.append(sample_text(last, self._session, times))
        for trouble in self._feeding.troubles:
            if trouble.zone_id == zone.id:
                lines.append(
                    say("Feeds", "Since {time}: {what}.").format(
                        time=times.moment(trouble.since_us), what=translated(trouble.said)
                    )
                )
        self.said.setText("\n".join(lines))

    def _zone(self) -> Zone | None:
        line = self.zones.chosen()
        return None if line is None else self._session.board.snapshot.zones.get(line.key)

    # Acts

    def set_source(self) -> None:
        """Choose a source for the chosen zone, or change its own."""
        zone = self._zone()
        if zone is None or self.form is not None:
            return
        self.message.setText("")
        self.form = FeedForm(
            self._session, self._feeding, zone, self._dialog, sensors=self._sensors,
            theme=self._theme,
        )  # fmt: skip
        self.form.finished.connect(self._on_form_closed)
        self.form.open()

    def _on_form_closed(self) -> None:
        self.form = None
        self.zones.setFocus()

    def remove_source(self) -> None:
        """Let the chosen zone be typed again."""
        zone = self._zone()
        if zone is None:
            return
        self.message.setText("")
        self._feeding.by = self._session.bench.by
        try:
            self._session.take(self._feeding.remove_source(zone.id))
        except RackboardError as error:
            self.message.setText(refusal(error))

    def show_theme(self) -> None:
        """Take the dialog's scheme."""
        self.zones.show_theme(self._dialog.theme)


class FeedDialog(Dialog):
    """The page of sources on its own.

    Parameters
    ----------
    session, feeding, sensors, theme
        As of `FeedPage`.
    """

    def __init__(
        self,
        session: Session,
        feeding: Feeding,
        parent: QWidget | None = None,
        *,
        sensors: Callable[[], list[Sensor]] = discover,
        theme: Theme | None = None,
    ) -> None:
        super().__init__(parent, theme)
        content = self.frame(say("Feeds", "Temperature sources"))
        self.page = FeedPage(session, feeding, self, sensors=sensors, theme=theme)
        content.addWidget(self.page, 1)
        self.add_buttons("", say("Feeds", "Close"))
        self.fit(980 if self.roles.large else 780, 720 if self.roles.large else 560)
        self.page.zones.setFocus()

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        super().show_theme(theme)
        if hasattr(self, "page"):
            self.page.show_theme()


def source_text(source: FeedSource) -> str:
    """Return what a source is called: "file room.csv", "sensor 28-0a1b"."""
    if source.kind is FeedKind.CSV:
        return say("Feeds", "file {name}").format(name=Path(source.path).name)
    return say("Feeds", "sensor {name}").format(name=source.path)
