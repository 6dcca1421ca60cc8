"""Trains the recogniser further: minutes on an accelerator, an hour on two cores, a few steps on any machine.

    python -m tests.bench.training.train DATA MODEL OUT                      minutes on an accelerator
    python -m tests.bench.training.train DATA MODEL OUT --steps 20 --batch 4  whether it learns at all
    python -m tests.bench.training.train DATA MODEL OUT --steps 100000 --seconds 3700 --batch 32 --rate 8e-5 --half
                                                        an hour on a processor with bfloat16, from a trained model

DATA is the folder of `speech` and `people`, MODEL the folder of the model that it begins with, OUT takes the weights,
which `convert` makes a model of. Speakers of the part "report" are never heard; those of the part "tuning" only with
--parts training tuning.
"""

import argparse
import json
import math
import time
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from pathlib import Path
from random import Random

import numpy as np
import tokenizers
import torch
import torch.nn.functional as nn
from torch import Tensor
from torch.utils.data import DataLoader, IterableDataset

from tests.bench.training.network import FROZEN, Weights, decode, encode, logits
from tests.bench.training.sound import BELOW_DB, LENGTH, NOISY, RATE_HZ, Surroundings, quicker
from tests.bench.training.store import Clip, Store
from tests.bench.training.weights import mean, read_model, restored, table

PROMPT = ("<|startoftranscript|>", "<|notimestamps|>")
END = "<|endoftext|>"
MOST_TOKENS = 28
_IGNORED = -100
_DIGITS = ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "oh", "point")
SHARES = {
    "number": 0.11,
    "digits": 0.05,
    "read back": 0.01,
    "command": 0.06,
    "alone": 0.06,
    "statement": 0.15,
    "name": 0.02,
    "choice": 0.09,
    "other": 0.12,
    "order": 0.03,
    "person, digit": 0.07,
    "person, number": 0.13,
    "person, command": 0.06,
    "person, other": 0.05,
    "string, people": 0.14,
    "string, synthetic": 0.05,
    "silence": 0.01,
}
"""How often what is of which kind is heard, beside the others; "statement" is every kind that is not named here."""

_OF_SEVERAL = 0.3
"""Part of the strings of people's digits that several people say."""


class Sayings(IterableDataset[tuple[np.ndarray, int, list[int]]]):
    """Clips in an order that chance chooses, without end; single digits also joined to strings.

    Args:
        store: the clips.
        tokeniser: the model's.
        parts: whose speakers are heard.
        seed: of what is drawn.
    """

    def __init__(self, store: Store, tokeniser: tokenizers.Tokenizer, parts: tuple[str, ...], seed: int) -> None:
        self._store, self._tokeniser, self._seed = store, tokeniser, seed
        self._by_kind: dict[str, list[int]] = defaultdict(list)
        self._singles: dict[str, dict[str, list[int]]] = {"people": defaultdict(list), "synthetic": defaultdict(list)}
        for place, clip in enumerate(store.clips):
            if clip.part not in parts:
                continue
            self._by_kind[clip.kind if clip.kind in SHARES else "statement"].append(place)
            if clip.words in _DIGITS:
                who = "people" if clip.speaker.startswith("person") else "synthetic"
                self._singles[who][clip.speaker].append(place)
        joined = {f"string, {who}" for who, found in self._singles.items() if found}
        self._kinds = [kind for kind in SHARES if self._by_kind.get(kind) or kind in joined]
        self.counts = {kind: len(found) for kind, found in self._by_kind.items()}

    def __iter__(self) -> Iterator[tuple[np.ndarray, int, list[int]]]:
        """Sound of `LENGTH` samples, where it ends, and the tokens."""
        worker = torch.utils.data.get_worker_info()
        chance = Random(f"{self._seed}/{worker.id if worker else 0}")  # noqa: S311 - no secret
        while True:
            (kind,) = chance.choices(self._kinds, [SHARES[one] for one in self._kinds])
            places = (
                self._string(kind.split(", ")[1], chance)
                if kind.startswith("string")
                else [chance.choice(self._by_kind[kind])]
            )
            made = self._made(places, chance)
            if made is not None:
                yield made

    def _string(self, who: str, chance: Random) -> list[int]:
        by_speaker = self._singles[who]
        speakers = sorted(by_speaker)
        length = chance.choice((1, 2, 2, 3, 3, 3, 4, 4, 5))
        if who == "people" and chance.random() < _OF_SEVERAL:
            # So few digits there are of many people that strings of several speakers help more than they harm.
            return [chance.choice(by_speaker[chance.choice(speakers)]) for _ in range(length)]
        speaker = max(chance.sample(speakers, min(3, len(speakers))), key=lambda one: len(by_speaker[one]))
        return [chance.choice(by_speaker[speaker]) for _ in range(length)]

    def _made(self, places: list[int], chance: Random) -> tuple[np.ndarray, int, list[int]] | None:
        words = " ".join(self._store.clips[place].words for place in places)
        tokens = self._tokeniser.encode(f" {words}" if words else "", add_special_tokens=False).ids
        factor = math.exp(chance.gauss(0, 0.12))
        speech = np.zeros(LENGTH, dtype=np.float32)
        place = round(chance.uniform(0.05, 0.6) * RATE_HZ)
        for number, index in enumerate(places):
            whole = self._store.sounds[index].astype(np.float32) / 32_768
            sound = quicker(_cut(whole, chance) if self._store.clips[index].words in _DIGITS else whole, factor)
            place += round(chance.uniform(0.0, 0.35) * RATE_HZ) if number else 0
            if place + len(sound) > LENGTH:
                return None
            speech[place : place + len(sound)] += sound
            place += len(sound)
        end = min(LENGTH, place + round(chance.uniform(0.1, 0.6) * RATE_HZ))
        return (speech, end, tokens) if len(tokens) < MOST_TOKENS else None


def _cut(sound: np.ndarray, chance: Random) -> np.ndarray:
    """Sometimes without the first or last hundredths of a second, as a gate that opens late leaves it."""
    first = round(chance.uniform(0.01, 0.1) * RATE_HZ) if chance.random() < 0.35 else 0
    last = round(chance.uniform(0.01, 0.08) * RATE_HZ) if chance.random() < 0.2 else 0
    return sound[first : len(sound) - last] if len(sound) > 3 * (first + last) else sound


def _batched(rows: list[tuple[np.ndarray, int, list[int]]]) -> tuple[Tensor, Tensor, list[list[int]]]:
    sound = torch.from_numpy(np.stack([(row[0] * 32_767).clip(-32_767, 32_767).astype(np.int16) for row in rows]))
    return sound, torch.tensor([row[1] for row in rows]), [row[2] for row in rows]


class Lesson:
    """Everything that one training needs.

    Args:
        store: the clips.
        model: the folder of the model that it begins with.
        parts: whose speakers are heard.
        seed: of all that is drawn.
        device: where it is worked out.
        half: numbers of 16 bits where that is precise enough; on an accelerator always.
        noise: what part of the clips has some, and how far it lies below the speech in decibels, least and most.
        begun: what trainings of that model wrote; this one goes on from their mean.
    """

    def __init__(
        self,
        store: Store,
        model: Path,
        parts: tuple[str, ...],
        seed: int,
        device: torch.device,
        *,
        half: bool = False,
        noise: tuple[float, float, float] = (NOISY, *BELOW_DB),
        begun: Sequence[Path] = (),
    ) -> None:
        torch.manual_seed(seed)
        self.tokeniser = tokenizers.Tokenizer.from_str(table(model, "tokenizer.json"))
        vocabulary = self.tokeniser.get_vocab()
        self._prompt, self._end = [vocabulary[mark] for mark in PROMPT], vocabulary[END]
        self.device, self.seed = device, seed
        self._half = half or device.type == "cuda"
        weights = read_model(model / "model.bin")
        if begun:
            weights = restored(mean(list(begun)), weights, 1.0)
        self.weights: Weights = {
            name: torch.from_numpy(value).float().to(device).requires_grad_(not name.endswith(FROZEN))
            for name, value in weights.items()
        }
        self.sayings = Sayings(store, self.tokeniser, parts, seed)
        heard = [(c, s) for c, s in zip(store.clips, store.sounds, strict=True) if c.part in parts]
        noises = [sound for clip, sound in heard if clip.kind == "silence"]
        talk = [sound for clip, sound in heard if clip.kind in ("order", "other")]
        noisy, *below_db = noise
        self.surroundings = Surroundings(_in_a_row(noises), _in_a_row(talk), device, seed, noisy, tuple(below_db))

    def run(self, steps: int, batch: int, rate: float, workers: int, seconds: float) -> Iterator[float]:
        """Learn; the loss of each step. It ends early, and as it should, where `seconds` are over."""
        trained = [weight for weight in self.weights.values() if weight.requires_grad]
        optimiser = torch.optim.AdamW(trained, lr=rate, betas=(0.9, 0.98), weight_decay=0.01)
        loader = DataLoader(self.sayings, batch, num_workers=workers, collate_fn=_batched, pin_memory=workers > 0)
        began = time.monotonic()
        for step, (sound, ends, written) in enumerate(loader):
            done = max(step / steps, (time.monotonic() - began) / seconds)
            if done >= 1:
                return
            for group in optimiser.param_groups:
                group["lr"] = rate * min(1.0, (step + 1) / 100) * 0.5 * (1 + math.cos(math.pi * done))
            loss = self._loss(sound, ends, written)
            optimiser.zero_grad(set_to_none=True)
            loss.backward()
            torch.nn.utils.clip_grad_norm_(trained, 1.0)
            optimiser.step()
            yield float(loss.detach())

    def _loss(self, sound: Tensor, ends: Tensor, written: list[list[int]]) -> Tensor:
        with torch.no_grad():
            speech = sound.to(self.device, non_blocking=True).float() / 32_768
            around = self.surroundings.around(speech, ends.to(self.device))
            empty = torch.tensor([not tokens for tokens in written], device=self.device)
            around = torch.where(empty[:, None], self.surroundings.noise_alone(len(written)), around)
            picture = self.surroundings.picture(around, masked=True)
        tokens, wanted = self._targets(written)
        kept = wanted != _IGNORED
        with torch.autocast(self.device.type, torch.bfloat16, enabled=self._half):
            scores = logits(self.weights, decode(self.weights, tokens, encode(self.weights, picture))[kept])
        return nn.cross_entropy(scores.float(), wanted[kept])

    def _targets(self, written: list[list[int]]) -> tuple[Tensor, Tensor]:
        longest = max(map(len, written)) + len(self._prompt)
        tokens = torch.full((len(written), longest), self._end)
        wanted = torch.full((len(written), longest), _IGNORED)
        before = len(self._prompt) - 1
        for row, ids in enumerate(written):
            line = [*self._prompt, *ids]
            tokens[row, : len(line)] = torch.tensor(line)
            wanted[row, before : before + len(ids) + 1] = torch.tensor([*ids, self._end])
        return tokens.to(self.device), wanted.to(self.device)

    @torch.no_grad()
    def writes(self, sounds: list[np.ndarray]) -> list[str]:
        """What the model writes freely of some clips, one word after the other the likeliest."""
        speech = torch.zeros(len(sounds), LENGTH)
        for row, sound in enumerate(sounds):
            place = round(0.3 * RATE_HZ)
            speech[row, place : place + len(sound)] = torch.from_numpy(
                sound[: LENGTH - place].astype(np.float32) / 32_768
            )
        heard = encode(self.weights, self.surroundings.picture(speech.to(self.device), masked=False))
        tokens = torch.tensor([self._prompt] * len(sounds), device=self.device)
        for _ in range(MOST_TOKENS):
            following = logits(self.weights, decode(self.weights, tokens, heard)[:, -1]).argmax(dim=-1)
            tokens = torch.cat([tokens, following[:, None]], dim=1)
            if bool((tokens[:, len(self._prompt) :] == self._end).any(dim=1).all()):
                break
        found = []
        for row in tokens[:, len(self._prompt) :].tolist():
            ids = row[: row.index(self._end)] if self._end in row else row
            found.append(self.tokeniser.decode(ids).strip())
        return found


def _in_a_row(sounds: list[np.ndarray]) -> Tensor:
    least = np.zeros(LENGTH + 1, dtype=np.int16)
    return torch.from_numpy(np.concatenate([*sounds, least]))


def share_right(lesson: Lesson, clips: list[tuple[Clip, np.ndarray]]) -> dict[str, tuple[int, int]]:
    """Of each kind how many clips are written as they were said, and how many there are."""
    right: Counter[str] = Counter()
    count: Counter[str] = Counter()
    for start in range(0, len(clips), 200):
        part = clips[start : start + 200]
        for (clip, _), text in zip(part, lesson.writes([sound for _, sound in part]), strict=True):
            count[clip.kind] += 1
            right[clip.kind] += text == clip.words
    return {kind: (right[kind], count[kind]) for kind in sorted(count)}


def main() -> None:
    """Train, say how well it hears the speakers of other parts, and write the weights."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("data", type=Path)
    parser.add_argument("model", type=Path)
    parser.add_argument("out", type=Path)
    parser.add_argument("--parts", nargs="+", default=["training"], choices=("training", "tuning"))
    parser.add_argument("--steps", type=int, default=3_000)
    parser.add_argument("--seconds", type=float, default=3_600.0, help="it ends by then in any case")
    parser.add_argument("--batch", type=int, default=256)
    parser.add_argument("--rate", type=float, default=1.5e-4)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument(
        "--begin", type=Path, nargs="+", default=[], help="go on from the mean of what earlier trainings of MODEL wrote"
    )
    parser.add_argument("--workers", type=int, default=0)
    parser.add_argument("--half", action="store_true", help="16 bits: twice as fast on a processor that has bfloat16")
    parser.add_argument(
        "--noise",
        nargs=3,
        type=float,
        metavar=("PART", "LEAST", "MOST"),
        default=(NOISY, *BELOW_DB),
        help="the part of the clips that has noise, and how many dB it lies below the speech",
    )
    args = parser.parse_args()
    device = torch.device("cuda" if torch.cuda.is_available() else "cpu")
    stores = [Store.read(path) for path in sorted(args.data.glob("*.npz"))]
    store = Store()
    store.clips = [clip for one in stores for clip in one.clips]
    store.sounds = [sound for one in stores for sound in one.sounds]
    lesson = Lesson(
        *(store, args.model, tuple(args.parts), args.seed, device),
        half=args.half,
        noise=tuple(args.noise),
        begun=args.begin,
    )
    print(json.dumps(lesson.sayings.counts), flush=True)  # noqa: T201
    others = [
        (clip, sound)
        for clip, sound in zip(store.clips, store.sounds, strict=True)
        if clip.part not in args.parts and clip.part != "report" and clip.words and len(sound) < LENGTH * 0.9
    ]
    began, losses = time.monotonic(), []
    for step, loss in enumerate(lesson.run(args.steps, args.batch, args.rate, args.workers, args.seconds), 1):
        losses.append(loss)
        if step % 100 == 0 or step == 10:
            print(f"{step} steps, {time.monotonic() - began:.0f} s, loss {np.mean(losses[-100:]):.4f}", flush=True)  # noqa: T201
    print(json.dumps(share_right(lesson, others)), flush=True)  # noqa: T201
    args.out.mkdir(parents=True, exist_ok=True)
    trained = {name: weight.detach().cpu().numpy() for name, weight in lesson.weights.items() if weight.requires_grad}
    np.savez(args.out / "trained.npz", **{name: value.astype(np.float32) for name, value in trained.items()})


if __name__ == "__main__":
    main()
