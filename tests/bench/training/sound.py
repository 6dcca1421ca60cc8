"""What happens to speech in training, for many clips at once: rooms, noise, telephones, far microphones."""

import math

import numpy as np
import torch
from torch import Tensor

from assistant.adapters.recognisers.features import HOP, WINDOW, mel_filters
from tests.bench.training.store import RATE_HZ

WINDOW_S = 6.0
LENGTH = round(WINDOW_S * RATE_HZ)
_VOCAL_TRACTS = (0.86, 0.92, 0.96, 1.0, 1.04, 1.09, 1.16)
"""Factors by which a speaker's resonances lie lower or higher: as many speakers more (Jaitly and Hinton 2013)."""
_LEVEL = 0.1
"""As `assistant.adapters.recognisers.front` brings speech to it."""

NOISY, BELOW_DB = 0.65, (2.0, 25.0)
"""The part of the clips that has noise, and by how much it is softer than the speech, from and to."""
_CLEANED = 0.2
"""Part of the clips that a filter against noise has gone over."""


class Surroundings:
    """Noise, rooms and microphones, drawn anew for every clip.

    Args:
        noises: recorded noise and other people's talk, samples one after the other.
        talk: other people's talk alone.
        device: where it is worked out.
        seed: of what is drawn.
        noisy: the part of the clips that has noise.
        below_db: how far the noise lies below the speech, least and most.
    """

    def __init__(
        self,
        noises: Tensor,
        talk: Tensor,
        device: torch.device,
        seed: int,
        noisy: float = NOISY,
        below_db: tuple[float, float] = BELOW_DB,
    ) -> None:
        self._noisy, self._below_db = noisy, below_db
        self._noises, self._talk, self._device = noises.to(device), talk.to(device), device
        self._chance = torch.Generator(device=device).manual_seed(seed)
        self._filters = torch.from_numpy(np.stack([_warped(mel_filters(), by) for by in _VOCAL_TRACTS])).to(device)
        self._hann = torch.hann_window(WINDOW, device=device)

    def around(self, speech: Tensor, ends: Tensor) -> Tensor:
        """The speech as a microphone in some room picks it up.

        Args:
            speech: clips, `LENGTH` samples; after `ends` there is nothing.
            ends: where each clip ends, samples.
        """
        count = len(speech)
        inside = torch.arange(LENGTH, device=self._device) < ends[:, None]
        sound = self._in_rooms(speech) * inside
        level = _level(sound, inside)
        noise = self._noise(count) * inside
        below_db = self._uniform(count, *self._below_db)
        wanted = level * 10 ** (-below_db / 20) * (self._uniform(count, 0, 1) < self._noisy)
        sound = sound + noise * (wanted / (_level(noise, inside) + 1e-6))[:, None]
        sound = self._through_microphones(sound) * inside
        sound = torch.where((self._uniform(count, 0, 1) < _CLEANED)[:, None], self._cleaned(sound) * inside, sound)
        # A learner's level is brought to a usual one, more or less.
        gain = _LEVEL * 10 ** (self._uniform(count, -4, 3) / 20) / (_level(sound, inside) + 1e-6)
        sound = sound * gain[:, None]
        clip = torch.where(
            self._uniform(count, 0, 1) < 0.06, self._uniform(count, 0.08, 0.3), torch.ones(count, device=self._device)
        )
        return torch.maximum(torch.minimum(sound, clip[:, None]), -clip[:, None])

    def noise_alone(self, count: int) -> Tensor:
        """Rooms in which nobody speaks to the assistant."""
        noise = self._noise(count, talk=0.15)
        return noise * (_LEVEL / (noise.square().mean(dim=1).sqrt() + 1e-6))[:, None]

    def picture(self, sound: Tensor, *, masked: bool) -> Tensor:
        """Log-mel energies, as `assistant.adapters.recognisers.features` works them out."""
        spectrum = torch.stft(sound, WINDOW, HOP, window=self._hann, return_complex=True, pad_mode="reflect")
        power = spectrum[..., :-1].abs().square()
        which = self._uniform(len(sound), 0, len(_VOCAL_TRACTS)).long() if masked else [_VOCAL_TRACTS.index(1.0)]
        energies = torch.log10((self._filters[which] @ power).clamp(min=1e-10))
        energies = torch.maximum(energies, energies.amax(dim=(1, 2), keepdim=True) - 8.0)
        energies = (energies + 4.0) / 4.0
        if masked:
            bands = torch.arange(energies.shape[1], device=self._device)
            start = self._uniform(len(energies), 0, 76)
            width = self._uniform(len(energies), -12, 9)
            hidden = (bands >= start[:, None]) & (bands < (start + width)[:, None])
            energies = energies.masked_fill(hidden[:, :, None], -0.5)
        return energies

    def _noise(self, count: int, talk: float = 0.4) -> Tensor:
        """Coloured noise, recorded rooms, and babble, a kind for each clip."""
        spectrum = torch.fft.rfft(torch.randn(count, LENGTH, generator=self._chance, device=self._device))
        frequencies = torch.arange(1, spectrum.shape[1] + 1, device=self._device)
        coloured = torch.fft.irfft(spectrum * frequencies ** (-self._uniform(count, 0, 1.0))[:, None], LENGTH)
        recorded = self._cut(self._noises, count)
        babble = sum((self._cut(self._talk, count) for _ in range(5)), self._cut(self._talk, count))
        one = self._cut(self._talk, count)
        kind = self._uniform(count, 0, 1)[:, None]
        parts = [
            one / one.square().mean(dim=1, keepdim=True).sqrt().clamp(min=1e-6)
            for one in (coloured, recorded, babble, one)
        ]
        rest = 1 - talk
        chosen = torch.where(kind < rest / 2, parts[0], torch.where(kind < rest, parts[1], parts[2]))
        return torch.where(kind > 1 - 0.1 * talk, parts[3] * 0.5, chosen)

    def _cut(self, source: Tensor, count: int) -> Tensor:
        starts = torch.randint(0, len(source) - LENGTH, (count, 1), generator=self._chance, device=self._device)
        return source[starts + torch.arange(LENGTH, device=self._device)].float()

    def _in_rooms(self, speech: Tensor) -> Tensor:
        """Some of the clips with an echo that dies away within 0.1 to 0.7 s."""
        count, length = len(speech), RATE_HZ // 2
        times = torch.arange(length, device=self._device) / RATE_HZ
        decay = 10 ** (-3 * times / self._uniform(count, 0.1, 0.7)[:, None])
        room = torch.randn(count, length, generator=self._chance, device=self._device) * decay
        room[:, : RATE_HZ // 500] = 0
        strength = self._uniform(count, 0.1, 0.9) * (self._uniform(count, 0, 1) < 0.35)
        room = room * (strength / room.square().sum(dim=1).sqrt())[:, None]
        room[:, 0] = 1
        size = LENGTH + length
        return torch.fft.irfft(torch.fft.rfft(speech, size) * torch.fft.rfft(room, size), size)[:, :LENGTH]

    def _through_microphones(self, sound: Tensor) -> Tensor:
        """Uneven frequency responses; some as a telephone, some dull."""
        count = len(sound)
        spectrum = torch.fft.rfft(sound)
        hertz = torch.linspace(0, RATE_HZ / 2, spectrum.shape[1], device=self._device)
        octaves = torch.log2(hertz.clamp(min=60) / 60)
        steps = torch.randn(count, 9, generator=self._chance, device=self._device) * self._uniform(count, 0, 4)[:, None]
        place = octaves.clamp(max=7.99)
        lower = place.floor().long()
        response_db = steps[:, lower] * (1 - (place - lower)) + steps[:, lower + 1] * (place - lower)
        response = 10 ** (response_db / 20)
        chance = self._uniform(count, 0, 1)[:, None]
        telephone = (hertz > 300) & (hertz < 3_400)
        dull = hertz < self._uniform(count, 2_800, 7_000)[:, None]
        narrow = hertz < self._uniform(count, 3_300, 4_000)[:, None]
        changed = torch.where(chance < 0.4, response * narrow, torch.where(chance < 0.5, response * dull, response))
        response = torch.where(chance < 0.1, response * telephone, changed)
        return torch.fft.irfft(spectrum * response, LENGTH)

    def _cleaned(self, sound: Tensor) -> Tensor:
        """As a computer or telephone passes it on that takes away what it holds for noise: soft hisses too."""
        count = len(sound)
        spectrum = torch.stft(sound, WINDOW, HOP, window=self._hann, return_complex=True, pad_mode="reflect")
        level_db = 20 * torch.log10(spectrum.abs().clamp(min=1e-6))
        loudest = level_db.amax(dim=(1, 2), keepdim=True)
        usual = torch.quantile(level_db[:, ::4], 0.3, dim=2, keepdim=True).mean(dim=1, keepdim=True)
        least = torch.maximum(usual + self._each(count, 3, 14), loudest - self._each(count, 34, 60))
        kept = torch.nn.functional.avg_pool2d((level_db > least).float()[:, None], (5, 3), 1, (2, 1))[:, 0]
        lost_db = self._each(count, 8, 40)
        gain = 10 ** (-(1 - (2 * kept).clamp(max=1)) * lost_db / 20)
        return torch.istft(spectrum * gain, WINDOW, HOP, window=self._hann, length=sound.shape[1])

    def _each(self, count: int, low: float, high: float) -> Tensor:
        return self._uniform(count, low, high)[:, None, None]

    def _uniform(self, count: int, low: float, high: float) -> Tensor:
        return low + (high - low) * torch.rand(count, generator=self._chance, device=self._device)


def _level(sound: Tensor, inside: Tensor) -> Tensor:
    return (sound.square().sum(dim=1) / inside.sum(dim=1).clamp(min=1)).sqrt()


def _warped(filters: np.ndarray, factor: float) -> np.ndarray:
    """Mel filters that find a sound's resonances at another height; each keeps its weight.

    Args:
        filters: bands, frequencies.
        factor: of the frequencies.
    """
    places = np.arange(filters.shape[1])
    moved = np.stack([np.interp(places * factor, places, row, right=0.0) * factor for row in filters])
    return moved.astype(filters.dtype)


def quicker(sound: np.ndarray, factor: float) -> np.ndarray:
    """Faster and higher, or slower and deeper, as another speaker: played at another rate."""
    length = max(1, math.floor(len(sound) / factor))
    return np.interp(np.arange(length) * factor, np.arange(len(sound)), sound).astype(np.float32)
