"""What the fields of a request are called in a sentence to people, and a number that would fit.

A field that people never fill in by themselves, such as a list that the app puts together, keeps
its own name.
"""

from __future__ import annotations

from collections.abc import Sequence

from evenkelvin.said import Figure, Said, Value

#: With their articles.
_NAMES: dict[str, Said] = {
    "across": Said("the place across"),
    "altitude_deg": Said("the height in degrees"),
    "ambient": Said("the ambient light"),
    "at_ft": Said("the distance in feet"),
    "at_m": Said("the distance in metres"),
    "azimuth_deg": Said("the direction"),
    "bare": Said("the bare reading"),
    "bursts": Said("the number of flashes"),
    "cct_K": Said("the CCT"),
    "cct_mired": Said("the CCT in mired"),
    "constant": Said("the exposure constant"),
    "count": Said("the count"),
    "cuts": Said("the number of cuts"),
    "cuts_per_sheet": Said("the cuts from a sheet"),
    "date": Said("the date"),
    "depth": Said("the most gels on a light"),
    "dimmer": Said("the dimmer"),
    "dimmer_now": Said("the dimmer as read"),
    "distance_ft": Said("the distance in feet"),
    "distance_m": Said("the distance in metres"),
    "duty_percent": Said("the part of a pulse that is light"),
    "duv": Said("the Duv"),
    "duv_limit": Said("the largest tint in Duv"),
    "duv_step": Said("the step of the tint in Duv"),
    "exposure_lx_s": Said("the light in lx·s"),
    "f_number": Said("the f-number"),
    "facing_deg": Said("the direction that the window faces"),
    "filter_factor": Said("the filter factor"),
    "filter_stops": Said("the filter in stops"),
    "first": Said("the first light"),
    "flash": Said("the flash"),
    "flash_constant": Said("the exposure constant"),
    "flash_f_number": Said("the f-number of the flash"),
    "flash_iso": Said("the ISO of the flash meter"),
    "fps": Said("the frame rate"),
    "from_K": Said("the lowest CCT"),
    "gel": Said("the gel"),
    "gel_stops": Said("the loss of the gel in stops"),
    "gelled": Said("the reading with the gel"),
    "height_ft": Said("the height in feet"),
    "height_m": Said("the height in metres"),
    "hero": Said("the number of the reference light"),
    "horizon_deg": Said("the height of the horizon in degrees"),
    "illuminance_fc": Said("the light in foot-candles"),
    "illuminance_lx": Said("the light in lux"),
    "iso": Said("the ISO"),
    "key": Said("the number of the key light"),
    "lamp": Said("the lamp type"),
    "lat_deg": Said("the latitude"),
    "length_ft": Said("the length in feet"),
    "length_m": Said("the length in metres"),
    "lens_stops": Said("the loss of the lens in stops"),
    "light_hz": Said("the pulses of light a second"),
    "lon_deg": Said("the longitude"),
    "lose_stops": Said("the stops to lose"),
    "loss_stops": Said("the loss in stops"),
    "mains_hz": Said("the mains frequency"),
    "luminance_cd_m2": Said("the luminance"),
    "measured_at_ft": Said("the distance of the reading in feet"),
    "measured_at_m": Said("the distance of the reading in metres"),
    "measured_fc": Said("the light measured, in foot-candles"),
    "measured_lx": Said("the light measured, in lux"),
    "measured": Said("the reading at this setting"),
    "dialled": Said("the x y that was dialled"),
    "mired": Said("the shift in mired"),
    "modulation_percent": Said("the modulation"),
    "most": Said("the most answers"),
    "name": Said("the name"),
    "note": Said("the note"),
    "offset": Said("the offset"),
    "overlap_ft": Said("the overlap in feet"),
    "overlap_m": Said("the overlap in metres"),
    "panes_across": Said("the panes across"),
    "panes_down": Said("the panes down"),
    "reading": Said("the reading"),
    "reference_K": Said("the CCT that the shift is meant for"),
    "second": Said("the second light"),
    "setup": Said("the setup"),
    "share_fc": Said("the share in foot-candles"),
    "share_lx": Said("the share in lux"),
    "sheets": Said("the number of sheets"),
    "shutter_deg": Said("the shutter angle"),
    "source_ft": Said("the width of the source in feet"),
    "source_m": Said("the width of the source in metres"),
    "spare_percent": Said("the spare in percent"),
    "spectrum": Said("the spectrum"),
    "step_K": Said("the step in K"),
    "step_min": Said("the step in minutes"),
    "step_mired": Said("the step in mired"),
    "steps": Said("the tolerance in colour steps"),
    "stock": Said("the stock"),
    "stops": Said("the stops"),
    "share": Said("the share"),
    "sum": Said("the sum"),
    "t_number": Said("the T-number"),
    "target": Said("the white to match"),
    "text": Said("the text"),
    "time": Said("the time of the day"),
    "time_s": Said("the shutter time"),
    "tint_cc": Said("green or magenta in CC"),
    "tint_cuts": Said("green or magenta in cuts"),
    "to_K": Said("the highest CCT"),
    "tolerance": Said("the tolerance"),
    "trim_ft": Said("the trim in feet"),
    "trim_m": Said("the trim in metres"),
    "utc_offset_h": Said("the hours from UTC"),
    "values": Said("the values"),
    "wanted_fc": Said("the light wanted, in foot-candles"),
    "wanted_lx": Said("the light wanted, in lux"),
    "wavelengths_nm": Said("the wavelengths"),
    "width_ft": Said("the width in feet"),
    "width_m": Said("the width in metres"),
    "up": Said("the place upward"),
    "within_stops": Said("how far off it may be, in stops"),
}

#: Numbers that fit a field, by its name or by the end of its name; invented.
_EXAMPLES = {
    "x": "0.4201", "y": "0.3942", "duv": "0.0021", "duv_limit": "0.005", "duv_step": "0.001",
    "tolerance": "4", "steps": "4", "fps": "24", "iso": "800", "time_s": "1/50", "f_number": "2.8",
    "t_number": "2.8", "lat_deg": "53.5", "lon_deg": "9.9", "utc_offset_h": "1", "mired": "34",
    "step_min": "15", "_K": "3200", "_lx": "640", "_fc": "60", "_lx_s": "12", "_m": "2.5",
    "_ft": "8", "_deg": "180", "_hz": "50", "_percent": "20", "_stops": "0.7", "stops": "0.7",
    "_mired": "5", "dimmer": "60", "cct_mired": "178", "tint_cc": "5", "tint_cuts": "1/4",
}  # fmt: skip


#: Ends of the names of fields whose numbers usually run to thousands.
_IN_THOUSANDS = ("_lx", "_lx_s", "_fc", "_K", "iso", "_hz")


def runs_to_thousands(name: str) -> bool:
    """Tell whether a number with a thousands separator is usual in a field."""
    return name.endswith(_IN_THOUSANDS)


def field_name(name: str) -> Value:
    """Return what a field is called in a sentence."""
    return _NAMES.get(name, name)


def only_one_of(fields: Sequence[str]) -> Said:
    """Return what to say where two fields of one meaning were given."""
    return Said(
        "Give {one} or {other}, not both.",
        one=field_name(fields[0]),
        other=field_name(fields[1]),
    )


def example(name: str) -> Figure:
    """Return a number that could stand in a field, as it is typed."""
    ends = [name[place:] for place in range(len(name)) if name[place] == "_"]
    return Figure(next((_EXAMPLES[end] for end in (name, *ends) if end in _EXAMPLES), "12.5"))
