"""The sun against published positions and astral's own hours; daylight against ASTM G173."""

from datetime import date, datetime, timedelta, timezone

import numpy as np
import pytest
from astral import Observer, SunDirection
from astral import sun as referee
from astral.julian import julianday_to_juliancentury
from colour.plotting.datasets.astm_g_173 import (
    SD_ASTMG173_DIRECT_CIRCUMSOLAR,
    SD_ASTMG173_GLOBAL_TILT,
)

from evenkelvin.colorimetry.observer import GRID
from evenkelvin.desk import answer
from evenkelvin.scouting import sky, sun

PLACES = [
    (51.5, -0.1, 0.0, date(2026, 11, 25)),
    (40.4, -3.7, 1.0, date(2026, 6, 21)),
    (-33.9, 151.2, 11.0, date(2026, 12, 21)),
    (35.7, 139.7, 9.0, date(2026, 3, 20)),
    (19.1, 72.9, 5.5, date(2026, 9, 1)),
]


def test_meeus_example_25_a():
    # Meeus, Astronomical Algorithms (1998), example 25.a: 1992-10-13 0h TD, JDE 2448908.5,
    # apparent longitude 199.9090° (199°54′32″), declination −7.7851° (−7°47′06″).
    century = julianday_to_juliancentury(2448908.5)
    assert referee.sun_apparent_long(century) % 360 == pytest.approx(199.9090, abs=2e-4)
    assert referee.sun_declination(century) == pytest.approx(-7.7851, abs=2e-4)


def test_nrel_position_through_our_own_door():
    """Reda and Andreas (2008)."""
    # Reda and Andreas, NREL/TP-560-34302 (2008), table A5.1: 2003-10-17 12:30:30 at UTC−7,
    # 39.742476° N, 105.1786° W (1830.14 m): zenith 50.11162°, azimuth 194.34024°.
    place = sun.Place(39.742476, -105.1786, -7.0)
    where = sun.position(place, date(2003, 10, 17), 12 * 60 + 30.5)
    assert 90 - where.altitude_deg == pytest.approx(50.11162, abs=0.005)
    assert where.azimuth_deg == pytest.approx(194.34024, abs=0.005)
    reply = answer(
        {
            "ask": "sun",
            "lat_deg": "39.742476",
            "lon_deg": "-105.1786",
            "date": "2003-10-17",
            "utc_offset_h": -7,
            "step_min": 30,
        }
    )
    at_half_past = reply["curve"][25]
    assert at_half_past["time"] == "12:30"
    assert at_half_past["altitude_deg"] == pytest.approx(90 - 50.11162, abs=0.05)


def minutes(moment: datetime, day: date, zone: timezone) -> float:
    midnight = datetime(day.year, day.month, day.day, tzinfo=zone)
    return (moment - midnight) / timedelta(minutes=1)


@pytest.mark.parametrize(("lat", "lon", "offset", "day"), PLACES)
def test_hours_of_the_day_against_astral(lat, lon, offset, day):
    zone = timezone(timedelta(hours=offset))
    observer = Observer(lat, lon, 0.0)
    ours = answer(
        {
            "ask": "sun",
            "lat_deg": lat,
            "lon_deg": lon,
            "date": day.isoformat(),
            "utc_offset_h": offset,
        }
    )

    def hours(function, direction):
        # Far from Greenwich astral answers for a neighbouring day: ask for all three.
        found = [
            function(observer, day + timedelta(days=n), direction, tzinfo=zone) for n in (-1, 0, 1)
        ]
        return next(
            (minutes(start, day, zone), minutes(end, day, zone))
            for start, end in found
            if start.date() == day
        )

    # astral's sunrise is up to 14 s off its own elevation; its golden hour ends at 6° refracted.
    rise = minutes(referee.sunrise(observer, day, tzinfo=zone), day, zone)
    fall = minutes(referee.sunset(observer, day, tzinfo=zone), day, zone)
    assert ours["up"][0]["from"]["minute"] == pytest.approx(rise, abs=0.5)
    assert ours["up"][0]["to"]["minute"] == pytest.approx(fall, abs=0.5)
    noon = minutes(referee.noon(observer, day, tzinfo=zone), day, zone)
    assert ours["highest"]["minute"] == pytest.approx(noon, abs=1.5)
    for index, direction in enumerate((SunDirection.RISING, SunDirection.SETTING)):
        for name, function in (("golden", referee.golden_hour), ("blue", referee.blue_hour)):
            start, end = hours(function, direction)
            span = ours[name][index]
            assert span["from"]["minute"] == pytest.approx(start, abs=1.5)
            assert span["to"]["minute"] == pytest.approx(end, abs=1.5)


def test_equinox_sun_enters_an_east_window_at_sunrise_and_leaves_at_noon():
    """By definition of the equinox."""
    # Geometry: on the equator at the equinox the sun rises due east and culminates overhead.
    reply = answer(
        {
            "ask": "sun",
            "lat_deg": 0.5,
            "lon_deg": 0,
            "date": "2026-03-20",
            "utc_offset_h": 0,
            "facing_deg": 90,
        }
    )
    direct = reply["window"]["direct"]
    assert len(direct) == 1
    assert direct[0]["from"]["minute"] == pytest.approx(reply["up"][0]["from"]["minute"])
    assert direct[0]["to"]["minute"] == pytest.approx(reply["highest"]["minute"], abs=1.5)


@pytest.mark.parametrize(
    ("spectrum", "tilt_deg"),
    [(SD_ASTMG173_DIRECT_CIRCUMSOLAR, None), (SD_ASTMG173_GLOBAL_TILT, 37.0)],
)
def test_the_daylight_estimate_against_astm_g173(spectrum, tilt_deg):
    # ASTM G173-03 (as colour-science carries it): air mass 1.5, aerosol optical depth 0.084 at
    # 500 nm, ozone 0.344 atm·cm; direct normal, and global on a plane tilted 37° to the sun.
    published = sky.cct(np.interp(GRID, spectrum.wavelengths, spectrum.values)[np.newaxis])
    altitude, turbidity = 41.81, 0.084 * 0.5**1.3
    assert sky.air_mass(altitude) == pytest.approx(1.5, abs=0.01)
    light = sky.daylight(altitude, turbidity)
    if tilt_deg is None:
        ours = light.sun
    else:
        tilt = np.radians(tilt_deg)
        facing = np.cos(np.radians(90 - altitude) - tilt)
        ours = light.sun * facing + light.shade * (1 + np.cos(tilt)) / 2
    assert 1e6 / sky.cct(ours[np.newaxis]) == pytest.approx(1e6 / published, abs=7.0)


def test_air_mass_of_kasten_and_young():
    # Kasten and Young (1989), table II: 1.0 at the zenith, 5.5841 at 10°, 10.3164 at 5°
    # (from memory).
    for altitude, mass in ((90, 1.0), (10, 5.5841), (5, 10.3164)):
        assert sky.air_mass(altitude) == pytest.approx(mass, rel=4e-3)
