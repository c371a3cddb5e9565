"""Make the board's three sounds: python assets/sounds/make_sounds.py.

Struck bars, by additive synthesis: a few partials that die away. They differ in rhythm and
direction, not in pitch alone, so that they are told apart in a noisy shop and by ears that
hear little above 3 kHz: the alarm beats six times on two notes, the prompt knocks twice on
one, good news climbs three notes. All is a decision of this project.
"""

from __future__ import annotations

import math
import wave
from array import array
from pathlib import Path

FOLDER = Path(__file__).resolve().parents[2] / "rackboard" / "ui" / "sounds"
RATE = 16_000
LOUDEST = 0.8
ATTACK_S = 0.004
PARTIALS = ((1.0, 1.0, 1.0), (2.76, 0.35, 2.2), (5.4, 0.12, 4.0))
"""Of a struck bar: ratio to the first, strength, how many times as fast it dies away."""

Note = tuple[float, float, float, float]
"""When [s], how high [Hz], how strong, after how long it has fallen to 1/e [s]."""

SOUNDS: dict[str, tuple[float, tuple[Note, ...]]] = {
    "alarm": (
        0.86,
        tuple(
            (0.13 * beat, 988.0 if beat % 2 == 0 else 740.0, 1.0, 0.07) for beat in range(6)
        ),
    ),
    "prompt": (0.36, ((0.0, 587.0, 0.8, 0.06), (0.15, 587.0, 0.8, 0.08))),
    "good news": (
        0.60,
        ((0.0, 523.25, 0.6, 0.09), (0.12, 659.25, 0.6, 0.09), (0.24, 783.99, 0.7, 0.13)),
    ),
}


def samples(length_s: float, notes: tuple[Note, ...]) -> array[int]:
    """Return a sound as 16 bit samples."""
    count = round(length_s * RATE)
    mixed = [0.0] * count
    for start_s, height_hz, strength, fall_s in notes:
        for at in range(round(start_s * RATE), count):
            time_s = at / RATE - start_s
            attack = min(time_s / ATTACK_S, 1.0)
            for ratio, share, faster in PARTIALS:
                frequency = height_hz * ratio
                if frequency < RATE / 2:
                    decay = math.exp(-time_s * faster / fall_s)
                    wave_now = math.sin(2 * math.pi * frequency * time_s)
                    mixed[at] += strength * share * attack * decay * wave_now
    tail = round(0.02 * RATE)
    for back in range(tail):  # no click at the end
        mixed[count - 1 - back] *= back / tail
    top = max(abs(value) for value in mixed)
    return array("h", (round(value / top * LOUDEST * 32767) for value in mixed))


def main() -> None:
    FOLDER.mkdir(parents=True, exist_ok=True)
    for name, (length_s, notes) in SOUNDS.items():
        data = samples(length_s, notes)
        with wave.open(str(FOLDER / f"{name.replace(' ', '-')}.wav"), "wb") as file:
            file.setnchannels(1)
            file.setsampwidth(2)
            file.setframerate(RATE)
            file.writeframes(data.tobytes())


if __name__ == "__main__":
    main()
