"""What each question is answered with, as types: the promise that the app is built on.

Every ask's answer is a group of :data:`ANSWERS`, or ``{"problem": …}`` where the question cannot
be answered as it stands. ``webapp/tools/answer_types.py`` makes the app's types from here, and the
tests hold every answer to them. Plain data of people's own, such as a book, is ``Plain``.
"""

from __future__ import annotations

from typing import Literal, NotRequired, TypedDict

Verdict = Literal["holds", "near", "out"]
Promise = Literal["holds", "should_hold", "read_again", "near", "out"]
#: Data of people's own, checked elsewhere.
Plain = dict[str, object]

# ------------------------------------------------------------------ what several answers hold


class Problem(TypedDict):
    field: str
    message: str
    line: NotRequired[int]
    choices: NotRequired[list[str]]


class Unusable(TypedDict):
    """One light of many that cannot be used; the field of the problem is named within it."""

    name: str
    problem: Problem


class Point(TypedDict):
    x: float
    y: float


class White(Point):
    u_prime: float
    v_prime: float
    cct_K: float | None
    duv: float
    mired: float | None


class NamedWhite(White):
    name: str


class Region(TypedDict):
    """The 90 % region in u′ v′: its middle, and its edge as a polygon."""

    mean: list[float]
    edge: list[list[float]]


class Landed(White):
    cct_spread_K: list[float | None]
    duv_spread: list[float]
    region: Region


class Tolerance(TypedDict):
    steps: float
    radius_uv: float


class Offset(TypedDict):
    mired: float | None
    duv: float
    delta_uv: float
    steps: float
    words: str


class Pack(TypedDict):
    """Gels for a light, what is to be done for them, and where the light then lands."""

    gels: list[str]
    add: list[str]
    take_off: list[str]
    words: str
    work: str
    lands: Landed
    delta_uv: float
    steps: float
    steps_spread: list[float]
    verdict: Verdict
    odds: float
    promise: Promise
    stops_lost: float
    stops_spread: list[float]
    pieces: int
    warnings: list[str]


class DimmerSetting(TypedDict):
    percent_light: float
    percent_volts: float
    stops: float


class Dimming(DimmerSetting):
    lands: White
    delta_uv: float
    steps: float
    verdict: Verdict
    before_gel: bool
    words: str


class Curve(TypedDict):
    wavelengths_nm: list[float]
    values: list[float]


class NamedCurve(TypedDict):
    name: str
    values: list[float | None]


class GelCurve(TypedDict):
    name: str
    wavelengths_nm: list[float]
    transmittance: list[float]
    mired: float | None
    duv: float | None
    stops: float | None
    reference_K: float


class LearnedCurve(GelCurve):
    unknown: list[list[float]]
    source: str


class LearnGel(TypedDict):
    gel: LearnedCurve
    warnings: list[str]
    nominal: NotRequired[GelCurve]


class Described(White):
    cc: float | None
    cc_words: str
    illuminance_lx: NotRequired[float]
    illuminance_fc: NotRequired[float]
    exposure_lx_s: NotRequired[float]
    warnings: list[str]
    assumed: NotRequired[list[str]]


class State(TypedDict):
    """A logged reading in numbers, null where it says nothing."""

    x: float | None
    y: float | None
    cct_K: float | None
    duv: float | None
    mired: float | None
    illuminance_lx: float | None
    illuminance_fc: float | None
    exposure_lx_s: float | None


class Flag(TypedDict):
    weight: Literal["serious", "look", "fine"]
    words: str
    because: str


# ------------------------------------------------------------------------- one light, one set


class Fix(TypedDict):
    reading: White
    white: White
    is_colour: bool
    meant: str
    target: White | None
    offset: FixOffset | None
    verdict: Verdict | None
    tolerance: Tolerance
    dial: ToDial | None
    packs: list[Pack]
    dim: Dimming | None
    advice: str | None
    after: str | None
    warnings: list[str]
    assumed: NotRequired[list[str]]


class ToDial(Point):
    cct_K: float | None
    duv: float
    green: str | None


class FixOffset(Offset):
    cc: float | None


class Camera(TypedDict):
    steps: float
    verdict: Verdict
    with_pack: Standing | None


class Standing(TypedDict):
    steps: float
    verdict: Verdict


class AgreeLight(White):
    name: str
    problem: None
    meant: str
    target: White | None
    offset: Offset | None
    delta_uv: float | None
    steps: float | None
    verdict: Verdict | None
    stops_to_hero: float | None
    ssi_to_hero: int | None
    pack: Pack | None
    after: str | None
    dim: Dimming | None
    warnings: list[str]
    camera: NotRequired[Camera | None]
    observer_verdict: NotRequired[Verdict | None]


class UnlikePair(TypedDict):
    pair: list[int]
    steps: float
    ssi: int
    words: str


class Spread(TypedDict):
    steps: float
    mired: list[float] | None
    pair: list[int]


class Work(TypedDict):
    pieces: int
    stops_lost_max: float
    words: str


class Agree(TypedDict):
    target: White
    tolerance: Tolerance
    lights: list[AgreeLight | Unusable]
    odd_ones_out: list[int]
    found: list[int]
    twins: list[list[int]]
    spread: Spread | None
    unlike_pairs: list[UnlikePair]
    work: Work
    warnings: list[str]
    camera: NotRequired[str]
    disagree: NotRequired[list[int]]


class BalanceLight(TypedDict):
    name: str
    problem: Problem | None


class Fetch(TypedDict):
    gel: str
    cuts: int
    lights: list[str]


class BalancePart(TypedDict):
    name: str
    does: Literal["leave", "gel", "dial"]
    gels: list[str]
    dial: White | None
    pack: Pack | None
    after: str | None
    lands: BalanceLands
    meant: str
    target: White | None
    steps: float | None
    verdict: Verdict | None
    promise: Promise | None
    stops_lost: float
    words: str
    camera: NotRequired[Standing | None]


class BalanceLands(White):
    cct_spread_K: NotRequired[list[float | None]]
    duv_spread: NotRequired[list[float]]
    region: NotRequired[Region]


class BalancePlan(TypedDict):
    white: White
    out: list[int]
    twins: list[list[int]]
    pieces: int
    cuts: int
    hang: list[Fetch]
    stops_lost: float
    stops_lost_max: float
    per_light: list[BalancePart]
    exact: bool
    at_least_stops: float
    words: str
    camera_out: NotRequired[list[int]]


class Balance(TypedDict):
    camera: NotRequired[str]
    lights: list[BalanceLight]
    front: list[BalancePlan]
    plans: int
    exact: bool
    fewest_out: int
    words: str
    tolerance: Tolerance
    whites: int
    warnings: list[str]


class FieldTolerance(Tolerance):
    outline: list[list[float]]


class FieldTarget(White):
    across: float
    up: float
    outline: list[list[float]]
    lights: list[int]
    words: str


class FieldLocus(TypedDict):
    across: float
    up: float
    mired: float
    cct_K: float


class FieldLight(TypedDict):
    name: str
    problem: None
    across: float
    up: float
    path: list[list[float]]
    region: list[list[float]]
    target: int | None


class Field(TypedDict):
    unit: str
    axes: dict[str, str]
    tolerance: FieldTolerance
    targets: list[FieldTarget]
    locus: list[FieldLocus]
    lights: list[FieldLight | Unusable]


class Judge(TypedDict):
    verdicts: list[Verdict | None]
    steps: list[float | None]
    cct_K: list[float | None]
    duv: list[float | None]
    found: list[int]
    greys: list[ScreenColour | None]
    tolerance: Tolerance


# -------------------------------------------------------------------------- mixing and dialling


class Share(TypedDict):
    name: str
    lx: float | None
    lx_s: float | None
    part: float
    x: float
    y: float
    cct_K: float | None


class Mixture(Described):
    relative: bool
    shares: list[Share]
    spectrum: NotRequired[Curve]
    spectrum_unit: NotRequired[str]


class Boundary(TypedDict):
    delta_uv: float
    steps: float
    stops: float | None
    words: str


class RibbonColour(TypedDict):
    at: float
    stops: float
    srgb: list[int]
    p3: list[int]
    clipped: bool
    x: float
    y: float
    cct_K: float | None
    duv: float | None
    steps: float


class RibbonWorst(TypedDict):
    at: float
    index: int
    halfway: float
    words: str


class Ribbon(TypedDict):
    white: White
    colours: list[RibbonColour]
    worst: RibbonWorst | None


class Mix(Mixture):
    beside: NotRequired[Mixture]
    boundary: NotRequired[Boundary]
    ribbon: NotRequired[Ribbon]


class ScreenColour(TypedDict):
    srgb: list[int]
    p3: list[int]
    clipped: bool
    guess: bool
    range: list[list[int]] | None


class Look(TypedDict):
    """Cards and surfaces in one light, as a screen shows them."""

    white: ScreenColour
    grey: ScreenColour
    skin_light: ScreenColour
    skin_dark: ScreenColour
    red: ScreenColour
    foliage: ScreenColour


class SeenLight(TypedDict):
    name: str
    problem: None
    meant: str
    as_read: Look | None
    with_pack: Look | None
    as_meant: Look | None
    warnings: list[str]


class Shift(TypedDict):
    """How far a grey card is off white on a camera's display, in steps."""

    steps: float
    across: float
    up: float


class SaidShift(Shift):
    words: str


class CamerasLight(TypedDict):
    name: str
    problem: None
    first: Shift | None
    second: Shift | None
    apart: SaidShift | None


class CamerasEdge(SaidShift):
    pair: list[int]


class Cameras(TypedDict):
    white: White
    first: str
    second: str
    lights: list[CamerasLight | Unusable]
    edge: CamerasEdge | None
    warnings: list[str]


class Seen(TypedDict):
    white: White
    judge: Literal["eye", "camera"]
    camera: str | None
    adaptation: str | None
    lights: list[SeenLight | Unusable]
    warnings: list[str]


class UnmixShare(TypedDict):
    name: str
    part: float
    lx: float | None
    uncertainty_part: float
    least_part: float
    most_part: float


class Residual(TypedDict):
    steps: float
    part: float


class Missing(TypedDict):
    lx: float | None
    white: White | None
    offset: NotRequired[Offset]
    words: str


class Unmix(TypedDict):
    shares_lx: list[float | None]
    shares: list[UnmixShare]
    residual: Residual
    by: str
    certain: bool
    missing: Missing | None
    words: list[str]
    warnings: list[str]


class FlashPack(Pack):
    ratio_stops: float
    mix: White


class FlashShutter(TypedDict):
    time_s: float
    words: str
    ratio_stops: float
    mix: White


class FlashMix(TypedDict):
    time_s: float
    ratio_stops: float
    ratio_words: str
    flash_part: float
    mix: Described
    offset: Offset
    verdict: Verdict
    tolerance: Tolerance
    packs: list[FlashPack]
    shutters: list[FlashShutter]
    warnings: list[str]


class Correction(TypedDict):
    matrix: list[list[float]]
    offset: list[float]


class Dial(TypedDict):
    next: White
    next_green: str | None
    target: White
    reachable: bool
    nearest: White
    remains_steps: float
    gel: Pack | None
    steps: float | None
    verdict: Verdict | None
    best: int | None
    tolerance: Tolerance
    correction: Correction
    words: str
    warnings: list[str]


class Primary(TypedDict):
    name: str
    level: float
    lx: float


class Drive(TypedDict):
    levels: list[float]
    primaries: list[Primary]
    lands: White
    target: White
    lux: float
    steps: float
    verdict: Verdict
    reachable: bool
    nearest: White
    remains_steps: float
    gel: Pack | None
    ssi: int | None
    ssi_reference: str | None
    tolerance: Tolerance
    warnings: list[str]


class Dim(White, DimmerSetting):
    illuminance_lx: float | None
    exposure_lx_s: float | None
    delta_uv: float | None
    steps: float | None
    verdict: Verdict | None
    unreached: str | None
    words: str
    tolerance: Tolerance
    warnings: list[str]


# ------------------------------------------------------------------------- exposure and flicker


class Stop(TypedDict):
    thirds: str
    tenths: str


class Expose(TypedDict):
    solved: str | None
    iso: float
    constant: float
    illuminance_lx: NotRequired[float]
    illuminance_fc: NotRequired[float]
    exposure_lx_s: NotRequired[float]
    bursts: NotRequired[int]
    bursts_needed: NotRequired[int]
    time_s: NotRequired[float]
    time_words: NotRequired[str]
    fps: NotRequired[float]
    shutter_deg: NotRequired[float]
    f_number: float
    t_number: float
    filter_stops: float
    filter_factor: float
    lens_stops: float
    stop: Stop
    over_stops: float
    words: str
    warnings: list[str]


class Level(TypedDict):
    stop: str | None
    stops_to_key: float | None
    ratio_words: str | None


class LevelsLight(TypedDict):
    name: str
    problem: None
    now: Level
    gelled: Level | None


class Levels(TypedDict):
    lights: list[LevelsLight | Unusable]


class Evenness(TypedDict):
    least_lx: float
    mean_lx: float
    greatest_lx: float
    spread_stops: float
    uniformity: float
    least_to_greatest: float
    holds: bool


class EvenPoint(TypedDict):
    problem: None
    stops: float
    holds: bool
    words: str


class ContourLine(TypedDict):
    stops: float
    words: str
    paths: list[list[list[float]]]


class SurfaceMap(TypedDict):
    across: list[float]
    up: list[float]
    step_stops: float
    lines: list[ContourLine]


class WidestPair(TypedDict):
    steps: float
    pair: list[int]


class Even(Evenness):
    unit: str
    aim_lx: float
    within_stops: float
    points: list[EvenPoint | Unusable]
    worst: int
    colour: WidestPair | None
    map: SurfaceMap | None
    words: str


class TrimDimmer(TypedDict):
    name: str
    percent: float
    setting_percent: float | None
    part: float
    idle: bool


class TrimPoint(TypedDict):
    lx: float
    stops: float
    holds: bool
    words: str


class Trimmed(Evenness):
    words: str
    points: list[TrimPoint]


class TrimMove(TypedDict):
    name: str
    across: float
    up: float
    gain_stops: float
    words: str


class Trim(TypedDict):
    unit: str
    within_stops: float
    dimmers: list[TrimDimmer]
    now: Evenness
    then: Trimmed
    least_spread_stops: float
    cost_stops: float
    ambient_part: float
    moves: list[TrimMove]
    words: list[str]
    warnings: list[str]


class Falloff(TypedDict):
    distance_m: float
    distance_ft: float
    stops: float
    illuminance_lx: NotRequired[float]
    illuminance_fc: NotRequired[float]
    words: str
    warnings: list[str]


class Ripple(TypedDict):
    percent: float | None
    stops: float | None
    model: str
    modulation_percent: float


class Flicker(TypedDict):
    light_hz: float
    mains_hz: NotRequired[float]
    safe_fps: list[float]
    fps: NotRequired[float]
    beat_hz: NotRequired[float]
    safe_time_s: list[float]
    safe_shutter_deg: list[float]
    safe_time_words: list[str]
    shutter_deg: NotRequired[float]
    safe_fps_at_shutter: NotRequired[list[float]]
    time_s: NotRequired[float]
    safe_by: NotRequired[str | None]
    safe: NotRequired[bool]
    pulses: NotRequired[float]
    ripple: NotRequired[Ripple]
    words: str
    collision: str | None
    warnings: list[str]


class Units(TypedDict):
    illuminance_lx: NotRequired[float]
    illuminance_fc: NotRequired[float]
    against_lx: NotRequired[float]
    against_fc: NotRequired[float]
    distance_m: NotRequired[float]
    distance_ft: NotRequired[float]
    ratio: NotRequired[float]
    stops: NotRequired[float]
    words: NotRequired[str]


# ------------------------------------------------------------------------------ colour rendering


class Similarity(TypedDict):
    """An SSI; null and ``unrated`` where it cannot be told."""

    name: str
    value: int | None
    unrounded: float | None
    observer: NotRequired[str]
    reference: str | None
    edition: NotRequired[str]
    unrated: NotRequired[str]


class Peak(TypedDict):
    wavelength_nm: float
    value: float


class Band(TypedDict):
    """Colours of wavelengths, for the two kinds of screen."""

    wavelengths_nm: list[float]
    srgb: list[list[int]]
    p3: list[list[int]]


class Curves(TypedDict):
    wavelengths_nm: list[float]
    light: list[float | None]
    peaks: list[Peak]
    reference: NamedCurve | None
    against: list[NamedCurve]
    scale: str
    band: Band


class Cri(TypedDict):
    observer: str
    edition: str
    edition_r15: str
    ra: float | None
    r: list[float | None]
    r_names: NotRequired[list[str]]
    r_words: NotRequired[list[str]]
    pairs: NotRequired[list[list[ScreenColour | None]]]
    cct_K: NotRequired[float]
    distance_uv: NotRequired[float]
    tolerance_uv: NotRequired[float]
    doubtful: NotRequired[bool]
    reference: NotRequired[str]
    unrated: NotRequired[str]


class ColourVectors(TypedDict):
    circle: list[list[float | None]]
    polygon: list[list[float | None]]
    arrows: list[list[list[float | None]]]
    bin_edges_deg: list[float]


class Tm30(TypedDict):
    observer: str
    edition: str
    edition_rf: str
    rf: float | None
    rg: float | None
    samples: NotRequired[list[float | None]]
    bins: NotRequired[list[float | None]]
    chroma_shift: NotRequired[list[float | None]]
    hue_shift: NotRequired[list[float | None]]
    pairs: NotRequired[list[list[ScreenColour | None]]]
    graphic: NotRequired[ColourVectors]
    cct_K: NotRequired[float]
    reference: NotRequired[str]
    unrated: NotRequired[str]


class Tlci(TypedDict):
    observer: str
    edition: str
    qa: float | None
    delta_e_a: NotRequired[float]
    delta_e: NotRequired[list[float | None]]
    patches: NotRequired[list[str]]
    left_out: NotRequired[list[str]]
    cct_K: NotRequired[float]
    offset: NotRequired[float]
    doubtful: NotRequired[bool]
    reference: NotRequired[str]
    unrated: NotRequired[str]


class Ssi(Similarity):
    others: list[Similarity]


class RenderNumber(TypedDict):
    name: str
    value: float
    observer: str
    reference: str
    edition: str


class Render(TypedDict):
    light: NamedWhite
    cri: Cri
    tm30: Tm30
    ssi: Ssi
    tlci: Tlci
    numbers: list[RenderNumber]
    curves: Curves
    flags: list[Flag]
    words: list[str]
    warnings: list[str]


class CompareSsi(Similarity):
    back: Similarity


class Patch(TypedDict):
    name: str
    eye: float
    camera: float | None


class PatchesSeen(TypedDict):
    skin: float | None
    mean: float | None
    worst: float | None
    worst_patch: str | None
    observer: str
    edition: str


class GreyCard(TypedDict):
    camera: float
    eye: float
    a_shift: float
    b_shift: float
    observer: str
    edition: str


class Compare(TypedDict):
    first: NamedWhite
    second: NamedWhite
    delta_uv: float
    steps: float
    ssi: CompareSsi
    patches: list[Patch]
    eye: PatchesSeen | None
    camera: PatchesSeen | None
    grey_card: GreyCard | None
    unrated: NotRequired[str]
    curves: Curves
    flags: list[Flag]
    words: list[str]
    warnings: list[str]


# ------------------------------------------------------------------------------------ gel, files


class KitGel(GelCurve):
    family: str
    cut: str | None
    cc: float | None
    nominal: bool


class Lamp(TypedDict):
    kind: str
    words: str


class Kit(TypedDict):
    gels: list[KitGel]
    tolerances: dict[str, float]
    lamps: list[Lamp]
    note: str


class FileProblem(Problem):
    file: str


class FileQuestion(TypedDict):
    field: str
    message: str
    options: list[str]
    taken: str


class Understood(TypedDict):
    unit: str
    notes: list[str]


class StatedPosition(TypedDict):
    latitude: float
    longitude: float


class Stated(TypedDict):
    title: NotRequired[str]
    illuminance_lx: NotRequired[float]
    illuminance_fc: NotRequired[float]
    exposure_lx_s: NotRequired[float]
    date: NotRequired[str]
    time: NotRequired[str]
    zone: NotRequired[str]
    place: NotRequired[str]
    position: NotRequired[StatedPosition]
    integration_s: NotRequired[float]


class FoundSpectrum(Curve):
    name: str
    quantity: Literal["light", "transmittance", "reflectance"]
    understood: Understood
    stated: Stated
    gel: LearnGel | None
    white: Described | None
    problem: Problem | None


class FoundReading(TypedDict):
    name: str
    line: int | None
    x: NotRequired[float]
    y: NotRequired[float]
    cct_K: NotRequired[float]
    duv: NotRequired[float]
    illuminance_lx: NotRequired[float]
    illuminance_fc: NotRequired[float]
    exposure_lx_s: NotRequired[float]
    ra: NotRequired[float]
    r9: NotRequired[float]
    rf: NotRequired[float]
    rg: NotRequired[float]
    ssi: NotRequired[float]
    stated: NotRequired[Stated]
    white: Described | None
    problem: Problem | None


class FoundCamera(TypedDict):
    name: str
    wavelengths_nm: list[float]
    red: list[float]
    green: list[float]
    blue: list[float]
    problem: Problem | None


class Import(TypedDict):
    format: str
    spectra: list[FoundSpectrum]
    cameras: list[FoundCamera]
    readings: NotRequired[list[FoundReading]]
    questions: list[FileQuestion]
    problems: list[FileProblem]


class GroupedLight(TypedDict):
    title: str
    readings: list[int]


GroupedSetup = TypedDict(
    "GroupedSetup",
    {
        "title": str, "stretch": int | None, "from": str | None, "to": str | None,
        "lights": list[GroupedLight],
    },
)  # fmt: skip


class Group(TypedDict):
    setups: Literal["one", "title", "time"]
    ways: list[Literal["one", "title", "time"]]
    untitled: int
    pauses: int
    groups: list[GroupedSetup]


class ImportGel(TypedDict):
    format: str
    gels: list[LearnGel]
    questions: list[FileQuestion]
    problems: list[FileProblem]


class Recognise(TypedDict):
    door: Literal["book", "link", "codes", "light", "none"]
    what: str | None
    message: str | None


class WrittenFile(TypedDict):
    name: str
    media_type: str
    text: str


class Write(TypedDict):
    files: list[WrittenFile]


# --------------------------------------------------------------------------- sun, windows, order


class Moment(TypedDict):
    minute: float
    time: str
    altitude_deg: float
    azimuth_deg: float


# “from” is a word of Python.
Span = TypedDict("Span", {"from": Moment | None, "to": Moment | None, "words": str})


class SunPoint(Moment):
    sun_K: float | None
    shade_K: float | None
    open_K: float | None


class SunEstimate(TypedDict):
    sky: str
    words: str


class HorizonPoint(TypedDict):
    azimuth_deg: float
    altitude_deg: float


class SunWindow(TypedDict):
    facing_deg: float
    facing_words: str
    horizon: list[HorizonPoint]
    direct: list[Span]
    sky_share: float
    sky_words: str
    words: str


class NamedWindow(TypedDict):
    name: str
    window: SunWindow | None


class Sun(TypedDict):
    date: str
    lat_deg: float
    lon_deg: float
    utc_offset_h: float
    up: list[Span]
    golden: list[Span]
    blue: list[Span]
    highest: Moment
    curve: list[SunPoint]
    estimate: SunEstimate
    words: str
    window: NotRequired[SunWindow]
    windows: NotRequired[list[NamedWindow]]
    warnings: list[str]
    cautions: list[str]


# “from” is a word of Python.
HoldStretch = TypedDict(
    "HoldStretch",
    {
        "from_minute": int, "to_minute": int, "from": str, "to": str, "verdict": Verdict | None,
        "estimated": bool,
    },
)  # fmt: skip


class HoldPack(Pack):
    nd: NeutralDensity | None
    stretches: list[HoldStretch]
    hold_words: str


class HoldWindow(TypedDict):
    """One window at a time of the day, and what hangs there through the day."""

    name: str
    light: White | None
    light_K: list[float] | None
    illuminance_lx: float | None
    illuminance_fc: float | None
    basis: Literal["reading", "between", "estimate", "unknown", "none"]
    basis_words: str
    gels: list[str]
    hung: Pack | None
    nd: NeutralDensity | None
    stretches: list[HoldStretch]
    words: str
    packs: list[HoldPack]
    warnings: list[str]


class Hold(TypedDict):
    time: str
    target: White
    tolerance: Tolerance
    windows: list[HoldWindow]


class Cut(TypedDict):
    window: int
    name: str
    gels: list[str]
    width_m: float
    length_m: float
    count: int
    words: str


class CutPiece(TypedDict):
    window: int
    name: str
    strip: int
    strips: int
    at_across_m: float
    at_along_m: float
    across_m: float
    along_m: float
    words: str


class CutRoll(TypedDict):
    gels: list[str]
    width_m: float
    length_m: float
    used_m: float
    left_m: float
    lengths_m: list[float]
    words: str
    pieces: list[CutPiece]


class Rolls(TypedDict):
    width_m: float
    length_m: float
    rolls: int
    words: str


class Waste(TypedDict):
    area_m2: float
    percent: float


class NeutralDensity(TypedDict):
    stops: float
    gels: list[str]
    fetch: list[str]
    takes_stops: float
    left_stops: float
    words: str


class Windows(TypedDict):
    cuts: NotRequired[list[Cut]]
    rolls: NotRequired[list[CutRoll]]
    layers: NotRequired[int]
    gels: NotRequired[list[str]]
    alike: NotRequired[bool]
    needed: NotRequired[list[Rolls]]
    seams: NotRequired[int]
    waste: NotRequired[Waste]
    left_out: NotRequired[list[Cut]]
    bound: NotRequired[Rolls | None]
    used_m: NotRequired[float]
    words: NotRequired[str]
    warnings: NotRequired[list[str]]
    nd: NotRequired[NeutralDensity]
    cautions: list[str]


class OrderPiece(TypedDict):
    width_m: float
    height_m: float
    count: int
    where: list[str]
    words: str


class OrderStock(TypedDict):
    width_m: float
    length_m: float
    count: int
    words: str


class OrderGel(TypedDict):
    gel: str
    pieces: list[OrderPiece]
    unsized: int
    ready: int
    hung: int
    have: list[OrderStock]
    order: list[OrderStock]
    cut_m2: float
    spare_m2: float
    seams: int
    words: str


class Order(TypedDict):
    gels: list[OrderGel]
    words: str
    warnings: list[str]


# -------------------------------------------------------------------------------------- the book


class Conflict(TypedDict):
    thing: str
    of: str
    name: str
    heads: list[str]


class BookCheck(TypedDict):
    version: int
    migrated_from: int | None
    count: int
    sha256: str
    things: dict[str, int]
    conflicts: list[Conflict]
    warnings: list[str]
    book: NotRequired[Plain]
    text: NotRequired[str]
    slices: NotRequired[list[str]]


class BookMerge(BookCheck):
    new: list[str]
    changed: list[str]


class BookCsv(TypedDict):
    text: str
    columns: list[str]
    style: str


class LinkSize(TypedDict):
    kB: float
    codes: float


class BookLink(BookCheck):
    link: str
    title: str
    size: LinkSize
    takes: dict[str, LinkSize]


class OpenLink(BookCheck):
    title: str


class BookParts(TypedDict):
    parts: list[str]
    total: int
    title: str


class JoinParts(TypedDict):
    total: int
    have: list[int]
    missing: list[int]
    words: str
    link: NotRequired[str]
    title: NotRequired[str]
    version: NotRequired[int]
    migrated_from: NotRequired[int | None]
    count: NotRequired[int]
    sha256: NotRequired[str]
    things: NotRequired[dict[str, int]]
    conflicts: NotRequired[list[Conflict]]
    warnings: NotRequired[list[str]]
    book: NotRequired[Plain]
    text: NotRequired[str]
    slices: NotRequired[list[str]]


class Drift(TypedDict):
    mired: float | None
    duv: float | None
    delta_uv: float | None
    steps: float | None
    verdict: Verdict | None
    stops: float | None
    words: str


class SinceStanding(TypedDict):
    meant: str
    target: White
    offset: Offset
    verdict: Verdict


class SincePoint(State):
    id: str
    stage: object
    dialled: object
    dimmer: object
    at: str
    hours: float
    drift: Drift
    standing: SinceStanding | None


class Series(TypedDict):
    pack: list[str]
    points: list[SincePoint]
    greatest: list[int]


class Since(TypedDict):
    series: list[Series]
    tolerance: Tolerance


class ContinuityLight(State):
    light: str
    name: str
    lamp: object
    stage: object
    at: str
    pack: list[str]
    target: object


class Continuity(TypedDict):
    name: str
    target: Plain | None
    words: str | None
    lights: list[ContinuityLight]


class ReportReading(State):
    id: str
    stage: object
    at: str
    pack: list[str]
    dialled: object
    dimmer: object
    place: object
    position: object
    photo: object
    note: object
    who: object
    edited_twice: bool
    has_spectrum: bool


class Slip(TypedDict):
    light: str
    name: str
    lamp: object
    role: object
    note: object
    hero: bool
    readings: list[ReportReading]
    hangs: list[str]
    meant: str | None
    target: White | None
    offset: Offset | None
    verdict: Verdict | None
    stops_to_hero: float | None
    ratio_words: str | None
    grey: ScreenColour | None


class ReportSpectrum(Curve):
    name: str
    at: str


class SetupOutline(TypedDict):
    """A setup of a long book, to be asked for by its id."""

    id: str
    name: str
    path: list[str]
    readings: int


class ReportSetup(TypedDict):
    id: str
    name: str
    path: list[str]
    note: object
    hero: str | None
    first: str | None
    last: str | None
    target: Plain | None
    target_words: str
    slips: list[Slip]
    field: Plain | None
    spectra: list[ReportSpectrum]


class GlassToGel(TypedDict):
    id: str
    location: str
    gels: list[str]
    lines: list[str]


class GelHanging(TypedDict):
    name: str
    pieces: int
    lights: list[str]
    measured: bool


class BookState(TypedDict):
    count: int
    sha256: str


class Report(TypedDict):
    thing: str
    name: str
    path: list[str]
    note: object
    place: object
    mains_hz: object
    setups: list[ReportSetup | SetupOutline]
    windows: list[GlassToGel]
    gels: list[GelHanging]
    tell_apart: list[str]
    cautions: list[str]
    tolerance: Tolerance
    book: BookState


class DisplayNumber(TypedDict):
    field: str
    text: str
    read: str | None
    word: int


class DisplayWay(TypedDict):
    """One way of taking what a display shows."""

    sure: Literal["agrees", "mended", "nearly", "unchecked", "contradicts"]
    words: str
    reading: dict[str, str]
    numbers: list[DisplayNumber]


class Display(TypedDict):
    ways: list[DisplayWay]
    words: str | None
    left_over: list[int]


#: The answer to each question, by its name.
ANSWERS: dict[str, object] = {
    "describe": Described,
    "fix": Fix,
    "agree": Agree,
    "kit": Kit,
    "import": Import,
    "group": Group,
    "recognise": Recognise,
    "write": Write,
    "learn_gel": LearnGel,
    "import_gel": ImportGel,
    "field": Field,
    "expose": Expose,
    "levels": Levels,
    "seen": Seen,
    "cameras": Cameras,
    "falloff": Falloff,
    "flicker": Flicker,
    "sun": Sun,
    "hold": Hold,
    "units": Units,
    "render": Render,
    "compare": Compare,
    "book_check": BookCheck,
    "book_merge": BookMerge,
    "book_csv": BookCsv,
    "book_link": BookLink,
    "open_link": OpenLink,
    "book_parts": BookParts,
    "join_parts": JoinParts,
    "since": Since,
    "judge": Judge,
    "continuity": Continuity,
    "report": Report,
    "balance": Balance,
    "windows": Windows,
    "order": Order,
    "mix": Mix,
    "unmix": Unmix,
    "flash_mix": FlashMix,
    "dial": Dial,
    "drive": Drive,
    "dim": Dim,
    "even": Even,
    "trim": Trim,
    "display": Display,
}
