"""Takes one forced record from a scope of the family 'ten-field-preamble' with PyVISA.

    capture.py RESOURCE FOLDER

Writes each channel's codes as they came to FOLDER/channel-1.codes and channel-2.codes, and what
the scope said of them to FOLDER/channel-1.preamble and channel-2.preamble. It knows nothing of the
program under test: what it agrees with was said on the wire.
"""

import pathlib
import sys
import time

import pyvisa

SAMPLES = 20_000
CHUNK = 7_000  # does not divide the record: the last chunk is shorter
POLL_SECONDS = 0.02
PATIENCE_SECONDS = 20


def main():
    resource, folder = sys.argv[1], pathlib.Path(sys.argv[2])
    manager = pyvisa.ResourceManager("@py")
    scope = manager.open_resource(resource)
    scope.timeout = 5_000
    scope.read_termination = "\n" if resource.endswith("SOCKET") else None
    scope.write_termination = "\n"
    try:
        fields = scope.query("*IDN?").strip().split(",")
        assert len(fields) == 4, fields
        set_up(scope)
        capture(scope)
        for channel in (1, 2):
            read_channel(scope, channel, folder)
        assert scope.query(":SYST:ERR?").strip() == '0,"No error"'
        if resource.endswith("INSTR"):
            assert scope.read_stb() & 0x04 == 0, "the error queue is empty"
            scope.clear()
            assert scope.query("*ESR?").strip().isdigit()
    finally:
        scope.close()
        manager.close()


def set_up(scope):
    scope.write("*CLS")
    scope.write(":STOP")
    for channel in (1, 2):
        for command in ("DISP ON", "COUP DC", "PROB 100", "SCAL 150", "OFFS 0"):
            scope.write(f":CHAN{channel}:{command}")
    scope.write(":TIM:SCAL 0.02")
    scope.write(":TIM:OFFS 0")
    scope.write(f":ACQ:MDEP {SAMPLES}")
    scope.write(":TRIG:MODE EDGE")
    scope.write(":TRIG:EDGE:SLOP POS")
    scope.write(":TRIG:EDGE:SOUR CHAN1")
    scope.write(":TRIG:EDGE:LEV 550")


def capture(scope):
    scope.write(":SING")
    scope.write(":TFOR")
    give_up = time.monotonic() + PATIENCE_SECONDS
    while scope.query(":TRIG:STAT?").strip() != "STOP":
        assert time.monotonic() < give_up, "the record never was complete"
        time.sleep(POLL_SECONDS)


def read_channel(scope, channel, folder):
    scope.write(f":WAV:SOUR CHAN{channel}")
    scope.write(":WAV:MODE RAW")
    for command in ("FORM WORD", "BYT LSBF", "UNS 1"):
        scope.write(f":WAV:{command}")
    preamble = scope.query(":WAV:PRE?").strip()
    codes = bytearray()
    for first in range(1, SAMPLES + 1, CHUNK):
        scope.write(f":WAV:STAR {first}")
        scope.write(f":WAV:STOP {min(first + CHUNK - 1, SAMPLES)}")
        codes += scope.query_binary_values(
            ":WAV:DATA?", datatype="B", container=bytes, expect_termination=True
        )
    assert len(codes) == 2 * SAMPLES, len(codes)
    (folder / f"channel-{channel}.preamble").write_text(preamble)
    (folder / f"channel-{channel}.codes").write_bytes(codes)


if __name__ == "__main__":
    main()
