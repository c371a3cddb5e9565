"""The settings' page of what is seen: theme, contrast, motion, language, and the wall's size."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QVBoxLayout, QWidget

from rackboard.core.errors import InputError
from rackboard.core.text import Figure, Text, text
from rackboard.services.bench import Bench
from rackboard.services.furnishing import Furnishing
from rackboard.services.snapshot import CONTRAST, LANGUAGE, MOTION, PITCH, THEME
from rackboard.store.changes import ChangeSet
from rackboard.ui.controls import Option
from rackboard.ui.dialog import Dialog, row
from rackboard.ui.language import LANGUAGES, say, translated
from rackboard.ui.sheet_fields import number_text
from rackboard.ui.shop_fields import read_length
from rackboard.ui.wall_size import (
    LEAST_ARCMIN,
    PREFERRED_ARCMIN,
    TOLERANCE,
    Viewing,
    plausible_pitch,
    sheet,
    viewing_of,
)


def options(
    dialog: Dialog, column: QVBoxLayout, entries: dict[str, str], chosen: str
) -> dict[str, Option]:
    """Add a line of options that exclude each other to a column; return them by value."""
    group = QButtonGroup(dialog)
    line = QHBoxLayout()
    line.setSpacing(28 if dialog.roles.large else 22)
    made = {}
    for value, words in entries.items():
        option = dialog.option(words)
        option.setChecked(value == chosen)
        group.addButton(option)
        line.addWidget(option)
        made[value] = option
    line.addStretch(1)
    column.addLayout(line)
    return made


def chosen_of(made: dict[str, Option]) -> str:
    """Return the value of the option that is chosen."""
    return next((value for value, option in made.items() if option.isChecked()), "")


def screen_pitch_mm(widget: QWidget) -> float | None:
    """Return the physical pixel pitch of the widget's screen [mm], if it can be believed."""
    screen = widget.screen()
    size, pixels = screen.physicalSize(), screen.geometry()
    return plausible_pitch(
        screen.physicalDotsPerInch(), (size.width(), size.height()),
        (pixels.width(), pixels.height()), screen.devicePixelRatio(),
    )  # fmt: skip


def wall_text(viewing: Viewing, width: int, height: int, ratio: float) -> Text:
    """Return what a screen of this size [logical px] shows from there."""
    at = sheet(width, height, viewing, ratio)
    if at.arcmin < PREFERRED_ARCMIN * (1 - TOLERANCE):
        said = text(
            "Settings",
            "At {distance} m the words would be {arcmin} arcmin: {tiles} tiles a page."
            " {preferred} are wanted, {least} the least that can be read.",
        )
    else:
        said = text("Settings", "At {distance} m: words of {arcmin} arcmin, {tiles} tiles a page.")
    return said.format(
        distance=Figure(f"{viewing.distance_m:g}"), arcmin=f"{at.arcmin:.0f}", tiles=at.cells,
        preferred=f"{PREFERRED_ARCMIN:.0f}", least=f"{LEAST_ARCMIN:.0f}",
    )  # fmt: skip


class ScreenSettings(QWidget):
    """How the board looks on this screen and from across the room.

    Parameters
    ----------
    settings : dict
        What is stored.
    dialog : Dialog
        The settings, for their hand.
    """

    def __init__(self, settings: dict[str, object], dialog: Dialog) -> None:
        super().__init__()
        self._dialog = dialog
        self._settings = settings
        self._pitch_mm = screen_pitch_mm(dialog)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 2, 8, 8)
        column.setSpacing(8)

        def head(words: str) -> None:
            if column.count():
                column.addSpacing(dialog.gap - 4)
            column.addWidget(dialog.heading(words))

        as_system = say("Settings", "as the system")
        head(say("Settings", "Theme"))
        self.themes = options(
            dialog, column,
            {"": as_system, "dark": say("Settings", "dark"), "light": say("Settings", "light")},
            str(settings.get(THEME) or ""),
        )  # fmt: skip
        head(say("Settings", "High contrast"))
        self.contrasts = options(
            dialog, column,
            {"": as_system, "on": say("Settings", "on"), "off": say("Settings", "off")},
            str(settings.get(CONTRAST) or ""),
        )  # fmt: skip
        head(say("Settings", "Motion"))
        self.still = dialog.tick(say("Settings", "Reduced: nothing flashes or fades"))
        self.still.setChecked(bool(settings.get(MOTION)))
        column.addWidget(self.still)
        head(say("Settings", "Language"))
        self.languages = options(
            dialog, column, {"": as_system, **LANGUAGES}, str(settings.get(LANGUAGE) or "")
        )
        head(say("Settings", "Wall view (F11)"))
        self._lay_out_wall(column)
        column.addStretch(1)
        for field in (self.distance, self.pitch):
            field.textChanged.connect(self._show_wall)
        self._show_wall()

    def _lay_out_wall(self, column: QVBoxLayout) -> None:
        dialog = self._dialog
        wide = 110 if dialog.roles.large else 90
        caption = 170 if dialog.roles.large else 140
        viewing = viewing_of(self._settings)
        self.distance = dialog.field(say("Settings", "Viewing distance, metres"), wide)
        self.distance.setText(_shown(viewing.distance_m))
        proposed = self._pitch_mm
        empty = "" if proposed is None else _shown(proposed)
        self.pitch = dialog.field(
            say("Settings", "Pixel pitch, millimetres"), wide, placeholder=empty
        )
        stored = self._settings.get(PITCH)
        if stored is not None or proposed is None:
            self.pitch.setText(_shown(viewing.pitch_mm))
        if proposed is None:
            known = say("Settings", "mm; this screen doesn't say: see its data sheet")
        else:
            known = say("Settings", "mm; left empty: {pitch}, as this screen says")
            known = known.format(pitch=translated(Figure(_shown(proposed))))
        for words, field, unit in (
            (say("Settings", "Read from"), self.distance, say("Settings", "m away")),
            (say("Settings", "Pixel pitch"), self.pitch, known),
        ):
            label = dialog.label(words)
            label.setFixedWidth(caption)
            label.setBuddy(field)
            column.addLayout(row(label, field, 10, dialog.label(unit, tone="sub")))
        self.reach = dialog.label("", wrap=True)
        column.addWidget(self.reach)

    def read(self) -> tuple[float, float | None]:
        """Return distance [m] and pitch [mm]; None: as the screen says.

        Raises
        ------
        InputError
            If one of them is no number.
        """
        typed = self.pitch.text().strip()
        pitch = None
        if typed or self._pitch_mm is None:
            pitch = read_length(typed, "mm", text("Furnishing", "Pixel pitch"))
        where = text("Furnishing", "Viewing distance")
        return read_length(self.distance.text(), "m", where), pitch

    def viewing(self) -> Viewing:
        """Return what is typed; raises as `read`."""
        distance, pitch = self.read()
        return Viewing(distance, pitch or self._pitch_mm or Viewing().pitch_mm)

    def acts(self, bench: Bench, furnishing: Furnishing) -> list[Callable[[], ChangeSet]]:
        """Return the acts that store what was changed; raises as `read`."""
        made: list[Callable[[], ChangeSet]] = []
        settings = self._settings
        theme, contrast = chosen_of(self.themes), chosen_of(self.contrasts)
        language, still = chosen_of(self.languages), self.still.isChecked()
        distance, pitch = self.read()
        if theme != str(settings.get(THEME) or ""):
            made.append(lambda: bench.set_theme(theme))
        if contrast != str(settings.get(CONTRAST) or ""):
            made.append(lambda: furnishing.set_contrast(contrast))
        if still is not bool(settings.get(MOTION)):
            made.append(lambda: furnishing.set_reduced_motion(still))
        if language != str(settings.get(LANGUAGE) or ""):
            made.append(lambda: furnishing.set_language(language))
        before = viewing_of(settings)
        unset = pitch == before.pitch_mm and settings.get(PITCH) is None
        if distance != before.distance_m or (pitch != settings.get(PITCH) and not unset):
            kept = None if unset else pitch
            made.append(lambda: furnishing.set_viewing(distance, kept))
        return made

    def _show_wall(self) -> None:
        try:
            viewing = self.viewing()
            near_zero = min(viewing) <= 0
        except InputError:
            near_zero = True
        if near_zero:
            self.reach.setText("")
            return
        screen = self._dialog.screen()
        size = screen.geometry()
        said = wall_text(viewing, size.width(), size.height(), screen.devicePixelRatio())
        self.reach.setText(translated(said))


def _shown(value: float) -> str:
    return number_text(round(value, 4))
