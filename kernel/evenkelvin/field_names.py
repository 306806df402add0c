"""What the fields of a request are called in a sentence to people, and a number that would fit.

A field that people never fill in by themselves, such as a list that the app puts together, keeps
its own name.
"""

from __future__ import annotations

from evenkelvin.said import Figure, Said, Value

#: A name as it begins a sentence.
_NAMES: dict[str, Said] = {
    "ambient": Said("The ambient light"),
    "at_ft": Said("The distance in feet"),
    "at_m": Said("The distance in metres"),
    "bare": Said("The bare reading"),
    "bursts": Said("The number of flashes"),
    "cct_K": Said("The CCT"),
    "constant": Said("The exposure constant"),
    "count": Said("The count"),
    "cuts": Said("The number of cuts"),
    "cuts_per_sheet": Said("The cuts from a sheet"),
    "date": Said("The date"),
    "depth": Said("The most gels on a light"),
    "dimmer": Said("The dimmer"),
    "distance_ft": Said("The distance in feet"),
    "distance_m": Said("The distance in metres"),
    "duty_percent": Said("The part of a pulse that is light"),
    "duv": Said("The Duv"),
    "duv_limit": Said("The largest tint in Duv"),
    "duv_step": Said("The step of the tint in Duv"),
    "exposure_lx_s": Said("The light in lx·s"),
    "f_number": Said("The f-number"),
    "facing_deg": Said("The direction that the window faces"),
    "filter_factor": Said("The filter factor"),
    "filter_stops": Said("The filter in stops"),
    "first": Said("The first light"),
    "flash": Said("The flash"),
    "fps": Said("The frame rate"),
    "from_K": Said("The lowest CCT"),
    "gel": Said("The gel"),
    "gel_stops": Said("The loss of the gel in stops"),
    "gelled": Said("The reading with the gel"),
    "height_ft": Said("The height in feet"),
    "height_m": Said("The height in metres"),
    "hero": Said("The number of the reference light"),
    "horizon_deg": Said("The height of the horizon in degrees"),
    "illuminance_fc": Said("The light in foot-candles"),
    "illuminance_lx": Said("The light in lux"),
    "iso": Said("The ISO"),
    "key": Said("The number of the key light"),
    "lamp": Said("The kind of lamp"),
    "lat_deg": Said("The latitude"),
    "length_ft": Said("The length in feet"),
    "length_m": Said("The length in metres"),
    "lens_stops": Said("The loss of the lens in stops"),
    "light_hz": Said("The pulses of light a second"),
    "lon_deg": Said("The longitude"),
    "lose_stops": Said("The stops to lose"),
    "loss_stops": Said("The loss in stops"),
    "mains_hz": Said("The mains frequency"),
    "measured_at_ft": Said("The distance of the reading in feet"),
    "measured_at_m": Said("The distance of the reading in metres"),
    "measured_fc": Said("The light measured, in foot-candles"),
    "measured_lx": Said("The light measured, in lux"),
    "mired": Said("The shift in mired"),
    "modulation_percent": Said("The modulation"),
    "most": Said("The most answers"),
    "name": Said("The name"),
    "note": Said("The note"),
    "offset": Said("The offset"),
    "overlap_ft": Said("The overlap in feet"),
    "overlap_m": Said("The overlap in metres"),
    "panes_across": Said("The panes across"),
    "panes_down": Said("The panes down"),
    "reading": Said("The reading"),
    "reference_K": Said("The CCT that the shift is meant for"),
    "second": Said("The second light"),
    "setup": Said("The setup"),
    "share_fc": Said("The share in foot-candles"),
    "share_lx": Said("The share in lux"),
    "sheets": Said("The number of sheets"),
    "shutter_deg": Said("The shutter angle"),
    "source_ft": Said("The width of the source in feet"),
    "source_m": Said("The width of the source in metres"),
    "spare_percent": Said("The spare in percent"),
    "spectrum": Said("The spectrum"),
    "step_K": Said("The step in K"),
    "step_min": Said("The step in minutes"),
    "step_mired": Said("The step in mired"),
    "steps": Said("The tolerance in steps"),
    "stock": Said("The stock"),
    "stops": Said("The stops"),
    "sum": Said("The sum"),
    "t_number": Said("The T-number"),
    "target": Said("The white to match"),
    "text": Said("The text"),
    "time_s": Said("The shutter time"),
    "to_K": Said("The highest CCT"),
    "tolerance": Said("The tolerance"),
    "trim_ft": Said("The trim in feet"),
    "trim_m": Said("The trim in metres"),
    "utc_offset_h": Said("The hours from UTC"),
    "values": Said("The values"),
    "wanted_fc": Said("The light wanted, in foot-candles"),
    "wanted_lx": Said("The light wanted, in lux"),
    "wavelengths_nm": Said("The wavelengths"),
    "width_ft": Said("The width in feet"),
    "width_m": Said("The width in metres"),
}

#: Numbers that fit a field, by its name or by the end of its name; invented.
_EXAMPLES = {
    "x": "0.4201", "y": "0.3942", "duv": "0.0021", "duv_limit": "0.005", "duv_step": "0.001",
    "tolerance": "4", "steps": "4", "fps": "24", "iso": "800", "time_s": "1/50", "f_number": "2.8",
    "t_number": "2.8", "lat_deg": "53.5", "lon_deg": "9.9", "utc_offset_h": "1", "mired": "34",
    "step_min": "15", "_K": "3200", "_lx": "640", "_fc": "60", "_lx_s": "12", "_m": "2.5",
    "_ft": "8", "_deg": "180", "_hz": "50", "_percent": "20", "_stops": "0.7", "stops": "0.7",
    "_mired": "5", "dimmer": "60",
}  # fmt: skip


def field_name(name: str) -> Value:
    """Return what a field is called at the beginning of a sentence."""
    return _NAMES.get(name, name)


def example(name: str) -> Figure:
    """Return a number that could stand in a field, as it is typed."""
    ends = [name[place:] for place in range(len(name)) if name[place] == "_"]
    return Figure(next((_EXAMPLES[end] for end in (name, *ends) if end in _EXAMPLES), "12.5"))
