"""What the tests of the command line share: small files, and what a command said."""

import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

PROGRAM = (sys.executable, "-c", "from subsearch.cli import run; run()")
SHED = """\
Order code,Maker,Part number,Kind,Polarity,Cap uF,Voltage,Tmin,Tmax,Life,Ripple mA,Ripple at,Style,Diameter,Length,\
Width,Height,Lead spacing,Safety class,Traceable,Condition,Stock,Price,Currency
1,Mill,Hollow 1,Elko,polar,47,25 V,-40 °C,105 °C,5000 h,300,120 Hz,radial,6.3,11,,,2.5,,yes,new,50,0.10,EUR
2,Mill,Hollow 2,Elko,polar,47,63 V,-40 °C,105 °C,2000 h,400,120 Hz,radial,8,12,,,3.5,,yes,new,50,0.20,EUR
3,Mill,Hollow 3,PET film,,0.1,100 V,-55 °C,100 °C,,,,box,,7.2,2.5,6.5,5,,yes,new,50,0.30,EUR
4,Mill,Hollow 4,Elko,polar,47,35 V,-40 °C,105 °C,5000 h,300,120 Hz,,,,,,,,yes,new,50,0.15,EUR
5,Mill,Hollow 5,Elko,bipolar,10,50 V,-40 °C,85 °C,2000 h,50,120 Hz,radial,8,12,,,3.5,,yes,new,50,12,GBP
6,Mill,Hollow 6,PP film,,0.1,275 V a.c.,-40 °C,110 °C,,,,box,,18,5,11,15,X2,yes,new,50,0.40,EUR
"""
RATES = "currency,worth,dated\nEUR,1,\nGBP,1.17,2026-10-12\n"


@dataclass(frozen=True)
class Said:
    """What a command ended with and what it printed."""

    status: int
    out: str
    err: str

    @property
    def words(self) -> str:
        """All it printed in one line, without the frames that a terminal's width breaks sentences with."""
        return " ".join((self.out + self.err).translate(dict.fromkeys(map(ord, "│╭╮╰╯─"), " ")).split())


Say = Callable[..., Said]


def said_by_process(*args: str, cwd: Path, **env: str) -> Said:
    """What a process of its own says."""
    done = subprocess.run(
        (*PROGRAM, *args),
        cwd=cwd,
        capture_output=True,
        encoding="utf-8",
        errors="replace",
        check=False,
        env=env or None,
    )
    return Said(done.returncode, done.stdout, done.stderr)


@dataclass(frozen=True)
class Demo:
    """The demo as it was run once: its folder, and what it said."""

    folder: Path
    said: Said


def write_repair(folder: Path, positions: str, common: str = 'name = "Radio"') -> Path:
    """A repair's folder."""
    folder.mkdir(exist_ok=True)
    (folder / "repair.toml").write_text(common, encoding="utf-8")
    (folder / "positions.csv").write_text(positions, encoding="utf-8")
    return folder
