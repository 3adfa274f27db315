"""Listens to the guide read with what others wrote.

    guide_read.py SAYLINE FOLDER SCRIPT...

FOLDER is where the readers are installed once, from the Python package index; where that cannot be done the test is
skipped (77). The file is read by libsndfile (soundfile) and by Python's own wave module; pitch and loudness are measured
by Praat (parselmouth), as phoneticians do. RIFF and its INFO list: Multimedia Programming Interface and Data
Specifications 1.0 (1991), chapters 2 and 3.
"""

import importlib
import io
import json
import pathlib
import statistics
import struct
import subprocess
import sys
import tempfile
import wave

PACKAGES = ["praat-parselmouth==0.4.7", "soundfile==0.14.0", "numpy==2.2.6"]
RATE = 16000


def install(folder):
    if not (folder / "parselmouth").is_dir() and not list(folder.glob("parselmouth*")):
        command = [sys.executable, "-m", "pip", "install", "--quiet", "--target", str(folder), *PACKAGES]
        try:
            subprocess.run(command, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
        except (OSError, subprocess.CalledProcessError) as error:
            print("skipped: what listens cannot be installed:", getattr(error, "stderr", b"")[-300:])
            sys.exit(77)
    sys.path.insert(0, str(folder))


def run(*arguments, text=None):
    done = subprocess.run([PROGRAM, *arguments], input=text, capture_output=True)
    assert done.returncode == 0, (arguments, done.stderr.decode())
    return done.stdout


def sound_of(script):
    return run("export", "--to", "wav", "-", text=script.encode())


def json_of(script):
    return json.loads(run("export", "--to", "json", "-", text=script.encode()))


def samples_of(sound):
    with wave.open(io.BytesIO(sound)) as file:
        assert (file.getframerate(), file.getnchannels(), file.getsampwidth()) == (RATE, 1, 2)
        return numpy.frombuffer(file.readframes(file.getnframes()), dtype="<i2").astype(float)


# The chunks of a RIFF file, as its specification lays them out: name, size, bytes, an odd one padded.
def chunks(data):
    while data:
        name, size = struct.unpack("<4sI", data[:8])
        assert size <= len(data) - 8, f"{name} is longer than the file"
        yield name, data[8:8 + size]
        data = data[8 + size + size % 2:]


def is_a_wave_file(script):
    sound = sound_of(script)
    (name, riff), = chunks(sound)
    assert name == b"RIFF" and riff[:4] == b"WAVE" and len(riff) + 8 == len(sound)
    inside = dict(chunks(riff[4:]))
    assert list(inside) == [b"fmt ", b"LIST", b"data"], list(inside)
    assert struct.unpack("<HHIIHH", inside[b"fmt "]) == (1, 1, RATE, 2 * RATE, 2, 16)
    assert inside[b"LIST"][:4] == b"INFO"
    info = {name: text.rstrip(b"\0").decode() for name, text in chunks(inside[b"LIST"][4:])}
    assert "machine" in info[b"ICMT"] and info.get(b"INAM", "") == json_of(script)["title"], info
    theirs, rate = soundfile.read(io.BytesIO(sound), dtype="int16")
    assert rate == RATE and (theirs == samples_of(sound)).all()


def lasts_as_long_as_the_script(scripts):
    worst = 0
    for script in scripts:
        sound = run("export", "--to", "wav", script)
        seconds = json.loads(run("export", "--to", "json", script))["seconds"]
        worst = max(worst, abs(len(samples_of(sound)) / RATE - seconds))
    print(f"  {len(scripts)} scripts, at most {worst * 1000:.2f} ms off")
    assert worst < 0.006, worst  # json rounds to hundredths


# Each silence of the script, a pause or a gap, is one in the sound; between them something is heard.
def is_silent_where_the_script_is(script):
    samples, told = samples_of(sound_of(script)), json_of(script)
    spoken = numpy.zeros(len(samples), bool)
    for thought in told["thoughts"]:
        for part in thought["parts"]:
            if "word" in part:
                begin = thought["at"] + part["at"]
                spoken[round(begin * RATE):round((begin + part["seconds"]) * RATE)] = True
    # json's times are rounded: a hundredth at each edge is left out.
    margin = RATE // 100
    quiet = numpy.convolve(spoken, numpy.ones(2 * margin + 1), "same") < 0.5
    assert quiet.sum() > RATE, "there is no silence to look at"
    assert numpy.abs(samples[quiet]).max() == 0, "something is heard in a silence"
    for thought in told["thoughts"]:
        for part in thought["parts"]:
            if "word" in part and part["seconds"] > 0.05:
                begin = thought["at"] + part["at"]
                word = samples[round(begin * RATE):round((begin + part["seconds"]) * RATE)]
                assert numpy.abs(word).max() > 500, f"{part['word']} is not heard"


# Seconds of the longest silence.
def silence(samples):
    loud = numpy.flatnonzero(numpy.abs(samples) > 0)
    return float(numpy.diff(loud).max()) / RATE


def holds_marked_pauses():
    for mark, seconds in [("xx", 2.0), ("//", 0.7), ("(1.5)", 1.5), ("...", 0.6), ("[hold 2s]", 2.0)]:
        told = json_of(f"We count limpets {mark} on the rocks.\n")
        held = [part["seconds"] for part in told["thoughts"][0]["parts"] if "pause" in part or "direction" in part]
        heard = silence(samples_of(sound_of(f"We count limpets {mark} on the rocks.\n")))
        assert abs(sum(held) - seconds) < 0.01, (mark, held)
        assert abs(heard - seconds) < 0.02, (mark, heard)


class Heard:
    """A script as it sounds: pitch in Hz and loudness in dB of its words, by Praat."""

    def __init__(self, script):
        samples = samples_of(sound_of(script))
        sound = parselmouth.Sound(samples / 32768, RATE)
        self.pitch = sound.to_pitch(time_step=0.005, pitch_floor=50, pitch_ceiling=320)
        self.loudness = sound.to_intensity(minimum_pitch=80, time_step=0.005)
        self.words = [(part["word"], thought["at"] + part["at"], part["seconds"])
                      for thought in json_of(script)["thoughts"] for part in thought["parts"] if "word" in part]

    def pitches(self, word, begin=0.0, end=1.0):
        at, seconds = next((at, seconds) for text, at, seconds in self.words if text == word)
        times, hertz = self.pitch.xs(), self.pitch.selected_array["frequency"]
        inside = (times >= at + begin * seconds) & (times <= at + end * seconds) & (hertz > 0)
        assert inside.any(), f"no pitch is heard in {word}"
        return hertz[inside]

    def level(self, word):
        at, seconds = next((at, seconds) for text, at, seconds in self.words if text == word)
        times, decibel = self.loudness.xs(), self.loudness.values[0]
        return decibel[(times >= at) & (times <= at + seconds)].max()


SAMPLES = ["We only count {} once a year.", "The warden told me {} was ready.", "Every morning {} lies on the rock.",
           "You will find {} near the wall."]
WORDS = ["gravel", "the window", "the water", "Molly"]  # with a voice up to their end


# The median over several sentences of what a mark changes.
def changed(measure, mark):
    differences = []
    for sample, words in zip(SAMPLES, WORDS):
        last = words.split()[-1]
        plain, marked = Heard(sample.format(words) + "\n"), Heard(sample.format(mark.format(words)) + "\n")
        differences.append(measure(marked, last) - measure(plain, last))
    return statistics.median(differences)


def brings_out_what_is_stressed():
    def highest(heard, word):
        return heard.pitches(word).max()

    def level(heard, word):
        return heard.level(word)

    stress, heavy, soft = ((changed(highest, mark), changed(level, mark)) for mark in ("*{}*", "**{}**", "~{}~"))
    print(f"  stress {stress[0]:+.0f} Hz {stress[1]:+.1f} dB, heavy {heavy[0]:+.0f} Hz {heavy[1]:+.1f} dB,"
          f" soft {soft[0]:+.0f} Hz {soft[1]:+.1f} dB")
    # A stress that listeners hear is a matter of some semitones at 100 Hz and of a dB or more: common practice, no source.
    assert heavy[0] > stress[0] > 8 and stress[1] > 0.8 and heavy[1] > stress[1], (stress, heavy)
    assert soft[0] < 0 and soft[1] < -3, soft


def bends_the_tune():
    def rise(heard, word):
        return heard.pitches(word, 0.75).mean() - heard.pitches(word, 0, 0.5).mean()

    def middle(heard, word):
        return numpy.median(heard.pitches(word))

    up, down = changed(rise, "{}↗"), changed(rise, "{}↘")
    step_up, step_down = changed(middle, "↑{}"), changed(middle, "↓{}")
    print(f"  end up {up:+.0f} Hz, end down {down:+.0f} Hz, step up {step_up:+.0f} Hz, step down {step_down:+.0f} Hz")
    assert up > 8 and down < -8 and step_up > 5 and step_down < -5


def main():
    folder, *scripts = sys.argv[2:]
    install(pathlib.Path(folder))
    global numpy, parselmouth, soundfile
    numpy, parselmouth, soundfile = map(importlib.import_module, ("numpy", "parselmouth", "soundfile"))
    demo = pathlib.Path(scripts[0]).read_text(encoding="utf-8")
    is_a_wave_file(demo)
    is_a_wave_file("Just a word.\n")
    lasts_as_long_as_the_script(scripts)
    is_silent_where_the_script_is(demo)
    holds_marked_pauses()
    brings_out_what_is_stressed()
    bends_the_tune()


PROGRAM = sys.argv[1]
main()
