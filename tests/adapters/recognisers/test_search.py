"""The step's sentences as an automaton over tokens, the decoder, and the search that joins them."""

import io

import ctranslate2
import numpy as np
import pytest
import tokenizers

from assistant import spoken
from assistant.adapters.recognisers import bundled
from assistant.adapters.recognisers.decoder import Decoder
from assistant.adapters.recognisers.features import log_mel
from assistant.adapters.recognisers.forms import Form
from assistant.adapters.recognisers.search import log_probabilities, search
from assistant.adapters.recognisers.sentences import START, Sentences
from assistant.errors import ModelError
from assistant.spoken.expect import AnyExpected, ConfirmExpected, NameExpected, NumberExpected
from assistant.spoken.meaning import NoMatch
from tests.speakers import spoken as speak

pytestmark = pytest.mark.sound

RATE = NumberExpected("mL/h")
NAMES = NameExpected(("sodium chloride 0.9 %", "glucose 5 %"))
END = 50_256


@pytest.fixture(scope="module")
def tokeniser():
    return tokenizers.Tokenizer.from_file(str(bundled.bundled_folder() / "tokenizer.json"))


@pytest.fixture(scope="module")
def sentences(tokeniser):
    return Sentences(tokeniser, END, spoken.ENGLISH)


def allows(sentences, tokeniser, text, expect, form):
    """Whether the automaton lets a text be written, token by token, up to its end."""
    places = START
    for token in [*tokeniser.encode(text, add_special_tokens=False).ids, END]:
        if token not in sentences.allowed(places, expect, form):
            return False
        if token != END:
            places = sentences.advance(places, token, expect, form)
    return True


@pytest.mark.parametrize(
    ("text", "expect", "in_figures", "in_words"),
    [
        (" 125", RATE, True, False),
        (" 125 mL/h.", RATE, True, False),
        (" 125 milliliters per hour.", RATE, True, False),
        (" 83.3", RATE, True, False),
        (" 1,000", RATE, True, False),
        (" 83 point 3", RATE, True, False),
        (" 8 3.3", RATE, True, False),
        (" 1 6 6.7 mL/h", RATE, True, False),
        (" 18 3.3", RATE, False, False),
        (" one hundred and twenty five", RATE, True, True),
        (" One hundred and twenty-five millilitres per hour.", RATE, True, True),
        (" one, two, five.", RATE, True, True),
        (" It's fifty", RATE, True, True),
        (" fifteen mils an hour", RATE, True, True),
        (" What is my order?", RATE, True, True),
        (" No.", RATE, True, True),
        (" Yes.", ConfirmExpected(), False, True),
        (" Okay.", ConfirmExpected(), False, True),
        (" OK.", ConfirmExpected(), False, True),
        (" 500 mg", NumberExpected("mg"), True, False),
        (" 5 mcg/kg/min", NumberExpected("mcg/kg/min"), True, False),
        (" 5mg", NumberExpected("mg"), True, False),
        (" That's right.", ConfirmExpected(), False, True),
        (" 125", ConfirmExpected(), False, False),
        (" Glucose 5%.", NAMES, True, True),
        (" glucose five percent", NAMES, True, True),
        (" sodium chloride 0.9%", NAMES, True, True),
        (" glucose 6%", NAMES, False, False),
        (" 125 125", RATE, False, False),
        (" hundred", RATE, False, False),
        (" one hundred and", RATE, False, False),
        (" the bus", RATE, False, False),
        (" Yes the bus", ConfirmExpected(), False, False),
        ("", RATE, False, False),
    ],
)
def test_what_may_be_written(sentences, tokeniser, text, expect, in_figures, in_words):
    """Sentences of the step may be written in their form, and nothing else, nor half of one."""
    if isinstance(expect, ConfirmExpected) and in_words:
        in_figures = True  # without numbers, both forms are the same
    assert allows(sentences, tokeniser, text, expect, Form.DIGITS) is in_figures
    assert allows(sentences, tokeniser, text, expect, Form.WORDS) is in_words


@pytest.mark.parametrize("expect", [RATE, NumberExpected("min"), ConfirmExpected(), AnyExpected()])
def test_whatever_can_be_understood_can_be_written(sentences, tokeniser, expect):
    """Every sentence that the language can make is within reach of the search."""
    for words, _ in spoken.sample_sentences(expect, seed=7, count=60):
        written = " ".join(word[0].upper() + word[1:] if word[:2] in ("i", "i'") else word for word in words.split())
        assert allows(sentences, tokeniser, f" {written}", expect, Form.WORDS), words


def test_decoder_is_the_library_s_own(whisper):
    """Token by token the decoder gives the probabilities that CTranslate2 gives at full precision."""
    folder = bundled.bundled_folder()
    exact = ctranslate2.models.Whisper(str(folder), device="cpu", compute_type="float32", intra_threads=1)
    with (folder / "model.bin").open("rb") as model:
        decoder = Decoder(model)
    samples = np.frombuffer(speak("one hundred and twenty five millilitres per hour"), "<i2") / np.float32(32_768)
    sound = exact.encode(ctranslate2.StorageView.from_array(log_mel(samples, 12.0)[None]))
    text = whisper._model.tokens(" 125 milliliters per hour")[:-1]
    expected = np.log(exact.align(sound, [50_257], [text], 10)[0].text_token_probs)
    listening = decoder.listen(np.asarray(sound)[0])
    scores, cache = listening.start([50_257, 50_362])
    found = []
    for token in text:
        # The library leaves everything from the end token on out of this sum.
        found.append(scores[0][token] - np.log(np.exp(scores[0][:END]).sum()))
        # Two equal rows must stay equal.
        scores, cache = listening.step([token, token], [0, 0], cache)
        assert np.allclose(scores[0], scores[1], atol=1e-4)
    assert np.abs(np.array(found) - expected).max() < 0.02


@pytest.mark.parametrize("content", [b"", b"RIFF" * 100, bytes(100), (6).to_bytes(4, "little") + b"\xff" * 50])
def test_other_files_are_no_decoder(content):
    """What is no model file is refused with a sentence."""
    with pytest.raises(ModelError):
        Decoder(io.BytesIO(content))


def test_search_writes_sentences_only(whisper, tokeniser, sentences):
    """Whatever was said, each sentence found can be understood or told why not, with a true probability."""
    for words in ("ninety minutes", "the bus leaves at ten fifteen"):
        samples = np.frombuffer(speak(words), "<i2") / np.float32(32_768)
        listening = whisper._decoder.listen(np.asarray(whisper._model.encode(samples, 12.0))[0])
        expect = NumberExpected("min")
        found = search(listening, [50_257, 50_362], sentences, expect, tuple(Form))
        for form, written in found.items():
            assert written
            assert sum(np.exp(one.score) for one in written) <= 1.001
            assert list(written) == sorted(written, key=lambda one: -one.score)
            best = tokeniser.decode(list(written[0].tokens))
            assert allows(sentences, tokeniser, best, expect, form)
        if words == "ninety minutes":
            best = tokeniser.decode(list(found[Form.DIGITS][0].tokens))
            assert not isinstance(spoken.interpret(best, expect, heard=True), NoMatch)


def test_the_probability_of_a_wording_is_that_of_the_search(tokeniser, sentences, whisper):
    """Token by token, one wording by itself is as likely as the search says."""
    samples = np.frombuffer(speak("one twenty five"), "<i2") / np.float32(32_768)
    listening = whisper._decoder.listen(np.asarray(whisper._model.encode(samples, 12.0))[0])
    prompt = [50_257, 50_362]
    best = search(listening, prompt, sentences, RATE, (Form.WORDS,))[Form.WORDS][0]
    others = [[*best.tokens, END], [*best.tokens[:1], END], [*best.tokens[::-1], END]]
    together = log_probabilities(listening, prompt, others)
    assert together[0] == pytest.approx(best.score, abs=1e-3)
    # Side by side as one by one; and what is given up has no less than in the end.
    assert together == pytest.approx([log_probabilities(listening, prompt, [one])[0] for one in others], abs=1e-3)
    bounds = log_probabilities(listening, prompt, others, least=best.score - 1)
    assert bounds[0] == pytest.approx(best.score, abs=1e-3)
    assert all(bound >= whole - 1e-3 for bound, whole in zip(bounds, together, strict=True))
