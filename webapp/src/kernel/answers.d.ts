// Made by webapp/tools/answer_types.py from kernel/evenkelvin/replies/answers.py and the FIELDS of
// kernel/evenkelvin/asks: change those.

export type Described = {
  x: number;
  y: number;
  u_prime: number;
  v_prime: number;
  cct_K: number | null;
  duv: number;
  mired: number | null;
  cc: number | null;
  cc_words: string;
  illuminance_lx?: number;
  illuminance_fc?: number;
  exposure_lx_s?: number;
  warnings: string[];
  assumed?: string[];
};

export type Fix = {
  reading: White;
  white: White;
  is_colour: boolean;
  meant: string;
  target: White | null;
  offset: FixOffset | null;
  verdict: "holds" | "near" | "out" | null;
  tolerance: Tolerance;
  dial: ToDial | null;
  packs: Pack[];
  dim: Dimming | null;
  advice: string | null;
  after: string | null;
  warnings: string[];
  assumed?: string[];
};

export type White = {
  x: number;
  y: number;
  u_prime: number;
  v_prime: number;
  cct_K: number | null;
  duv: number;
  mired: number | null;
};

export type FixOffset = {
  mired: number | null;
  duv: number;
  delta_uv: number;
  steps: number;
  words: string;
  cc: number | null;
};

export type Tolerance = {
  steps: number;
  radius_uv: number;
};

export type ToDial = {
  x: number;
  y: number;
  cct_K: number | null;
  duv: number;
  green: string | null;
};

export type Pack = {
  gels: string[];
  add: string[];
  take_off: string[];
  words: string;
  work: string;
  lands: Landed;
  delta_uv: number;
  steps: number;
  steps_spread: number[];
  verdict: "holds" | "near" | "out";
  odds: number;
  promise: "holds" | "should_hold" | "read_again" | "near" | "out";
  stops_lost: number;
  stops_spread: number[];
  pieces: number;
  warnings: string[];
};

export type Landed = {
  x: number;
  y: number;
  u_prime: number;
  v_prime: number;
  cct_K: number | null;
  duv: number;
  mired: number | null;
  cct_spread_K: (number | null)[];
  duv_spread: number[];
  region: Region;
};

export type Region = {
  mean: number[];
  edge: number[][];
};

export type Dimming = {
  percent_light: number;
  percent_volts: number;
  stops: number;
  lands: White;
  delta_uv: number;
  steps: number;
  verdict: "holds" | "near" | "out";
  before_gel: boolean;
  words: string;
};

export type Agree = {
  target: White;
  tolerance: Tolerance;
  lights: (AgreeLight | Unusable)[];
  odd_ones_out: number[];
  found: number[];
  twins: number[][];
  spread: Spread | null;
  unlike_pairs: UnlikePair[];
  work: Work;
  warnings: string[];
  camera?: string;
  disagree?: number[];
};

export type AgreeLight = {
  x: number;
  y: number;
  u_prime: number;
  v_prime: number;
  cct_K: number | null;
  duv: number;
  mired: number | null;
  name: string;
  problem: null;
  meant: string;
  target: White | null;
  offset: Offset | null;
  delta_uv: number | null;
  steps: number | null;
  verdict: "holds" | "near" | "out" | null;
  stops_to_hero: number | null;
  ssi_to_hero: number | null;
  pack: Pack | null;
  after: string | null;
  dim: Dimming | null;
  warnings: string[];
  camera?: Camera | null;
  observer_verdict?: "holds" | "near" | "out" | null;
};

export type Offset = {
  mired: number | null;
  duv: number;
  delta_uv: number;
  steps: number;
  words: string;
};

export type Camera = {
  steps: number;
  verdict: "holds" | "near" | "out";
  with_pack: Standing | null;
};

export type Standing = {
  steps: number;
  verdict: "holds" | "near" | "out";
};

export type Unusable = {
  name: string;
  problem: Problem;
};

export type Problem = {
  field: string;
  message: string;
  line?: number;
  choices?: string[];
};

export type Spread = {
  steps: number;
  mired: number[] | null;
  pair: number[];
};

export type UnlikePair = {
  pair: number[];
  steps: number;
  ssi: number;
  words: string;
};

export type Work = {
  pieces: number;
  stops_lost_max: number;
  words: string;
};

export type Kit = {
  gels: KitGel[];
  tolerances: Record<string, number>;
  lamps: Lamp[];
  note: string;
};

export type KitGel = {
  name: string;
  wavelengths_nm: number[];
  transmittance: number[];
  mired: number | null;
  duv: number | null;
  stops: number | null;
  reference_K: number;
  family: string;
  cut: string | null;
  cc: number | null;
  nominal: boolean;
};

export type Lamp = {
  kind: string;
  words: string;
};

export type Import = {
  format: string;
  spectra: FoundSpectrum[];
  cameras: FoundCamera[];
  readings?: FoundReading[];
  questions: FileQuestion[];
  problems: FileProblem[];
};

export type FoundSpectrum = {
  wavelengths_nm: number[];
  values: number[];
  name: string;
  quantity: "light" | "transmittance" | "reflectance";
  understood: Understood;
  stated: Stated;
  gel: LearnGel | null;
  white: Described | null;
  problem: Problem | null;
};

export type Understood = {
  unit: string;
  notes: string[];
};

export type Stated = {
  title?: string;
  illuminance_lx?: number;
  illuminance_fc?: number;
  exposure_lx_s?: number;
  date?: string;
  time?: string;
  zone?: string;
  place?: string;
  position?: StatedPosition;
  integration_s?: number;
};

export type StatedPosition = {
  latitude: number;
  longitude: number;
};

export type LearnGel = {
  gel: LearnedCurve;
  warnings: string[];
  nominal?: GelCurve;
};

export type LearnedCurve = {
  name: string;
  wavelengths_nm: number[];
  transmittance: number[];
  mired: number | null;
  duv: number | null;
  stops: number | null;
  reference_K: number;
  unknown: number[][];
  source: string;
};

export type GelCurve = {
  name: string;
  wavelengths_nm: number[];
  transmittance: number[];
  mired: number | null;
  duv: number | null;
  stops: number | null;
  reference_K: number;
};

export type FoundCamera = {
  name: string;
  wavelengths_nm: number[];
  red: number[];
  green: number[];
  blue: number[];
  problem: Problem | null;
};

export type FoundReading = {
  name: string;
  line: number | null;
  x?: number;
  y?: number;
  cct_K?: number;
  duv?: number;
  illuminance_lx?: number;
  illuminance_fc?: number;
  exposure_lx_s?: number;
  ra?: number;
  r9?: number;
  rf?: number;
  rg?: number;
  ssi?: number;
  stated?: Stated;
  white: Described | null;
  problem: Problem | null;
};

export type FileQuestion = {
  field: string;
  message: string;
  options: string[];
  taken: string;
};

export type FileProblem = {
  field: string;
  message: string;
  line?: number;
  choices?: string[];
  file: string;
};

export type Group = {
  setups: "one" | "title" | "time";
  ways: ("one" | "title" | "time")[];
  untitled: number;
  pauses: number;
  groups: GroupedSetup[];
};

export type GroupedSetup = {
  title: string;
  stretch: number | null;
  from: string | null;
  to: string | null;
  lights: GroupedLight[];
};

export type GroupedLight = {
  title: string;
  readings: number[];
};

export type Recognise = {
  door: "book" | "link" | "codes" | "light" | "none";
  what: string | null;
  message: string | null;
};

export type Write = {
  files: WrittenFile[];
};

export type WrittenFile = {
  name: string;
  media_type: string;
  text: string;
};

export type ImportGel = {
  format: string;
  gels: LearnGel[];
  questions: FileQuestion[];
  problems: FileProblem[];
};

export type Field = {
  unit: string;
  axes: Record<string, string>;
  tolerance: FieldTolerance;
  targets: FieldTarget[];
  locus: FieldLocus[];
  lights: (FieldLight | Unusable)[];
};

export type FieldTolerance = {
  steps: number;
  radius_uv: number;
  outline: number[][];
};

export type FieldTarget = {
  x: number;
  y: number;
  u_prime: number;
  v_prime: number;
  cct_K: number | null;
  duv: number;
  mired: number | null;
  across: number;
  up: number;
  outline: number[][];
  lights: number[];
  words: string;
};

export type FieldLocus = {
  across: number;
  up: number;
  mired: number;
  cct_K: number;
};

export type FieldLight = {
  name: string;
  problem: null;
  across: number;
  up: number;
  path: number[][];
  region: number[][];
  target: number | null;
};

export type Expose = {
  solved: string | null;
  iso: number;
  constant: number;
  illuminance_lx?: number;
  illuminance_fc?: number;
  exposure_lx_s?: number;
  bursts?: number;
  bursts_needed?: number;
  time_s?: number;
  time_words?: string;
  fps?: number;
  shutter_deg?: number;
  f_number: number;
  t_number: number;
  filter_stops: number;
  filter_factor: number;
  lens_stops: number;
  stop: Stop;
  over_stops: number;
  words: string;
  warnings: string[];
};

export type Stop = {
  thirds: string;
  tenths: string;
};

export type Levels = {
  lights: (LevelsLight | Unusable)[];
};

export type LevelsLight = {
  name: string;
  problem: null;
  now: Level;
  gelled: Level | null;
};

export type Level = {
  stop: string | null;
  stops_to_key: number | null;
  ratio_words: string | null;
};

export type Seen = {
  white: White;
  judge: "eye" | "camera";
  camera: string | null;
  adaptation: string | null;
  lights: (SeenLight | Unusable)[];
  warnings: string[];
};

export type SeenLight = {
  name: string;
  problem: null;
  meant: string;
  as_read: Look | null;
  with_pack: Look | null;
  as_meant: Look | null;
  warnings: string[];
};

export type Look = {
  white: ScreenColour;
  grey: ScreenColour;
  skin_light: ScreenColour;
  skin_dark: ScreenColour;
  red: ScreenColour;
  foliage: ScreenColour;
};

export type ScreenColour = {
  srgb: number[];
  p3: number[];
  clipped: boolean;
  guess: boolean;
  range: number[][] | null;
};

export type Cameras = {
  white: White;
  first: string;
  second: string;
  lights: (CamerasLight | Unusable)[];
  edge: CamerasEdge | null;
  warnings: string[];
};

export type CamerasLight = {
  name: string;
  problem: null;
  first: Shift | null;
  second: Shift | null;
  apart: SaidShift | null;
};

export type Shift = {
  steps: number;
  across: number;
  up: number;
};

export type SaidShift = {
  steps: number;
  across: number;
  up: number;
  words: string;
};

export type CamerasEdge = {
  steps: number;
  across: number;
  up: number;
  words: string;
  pair: number[];
};

export type Falloff = {
  distance_m: number;
  distance_ft: number;
  stops: number;
  illuminance_lx?: number;
  illuminance_fc?: number;
  words: string;
  warnings: string[];
};

export type Flicker = {
  light_hz: number;
  mains_hz?: number;
  safe_fps: number[];
  fps?: number;
  beat_hz?: number;
  safe_time_s: number[];
  safe_shutter_deg: number[];
  safe_time_words: string[];
  shutter_deg?: number;
  safe_fps_at_shutter?: number[];
  time_s?: number;
  safe_by?: string | null;
  safe?: boolean;
  pulses?: number;
  ripple?: Ripple;
  words: string;
  collision: string | null;
  warnings: string[];
};

export type Ripple = {
  percent: number | null;
  stops: number | null;
  model: string;
  modulation_percent: number;
};

export type Sun = {
  date: string;
  lat_deg: number;
  lon_deg: number;
  utc_offset_h: number;
  up: Span[];
  golden: Span[];
  blue: Span[];
  highest: Moment;
  curve: SunPoint[];
  estimate: SunEstimate;
  words: string;
  window?: SunWindow;
  windows?: NamedWindow[];
  warnings: string[];
  cautions: string[];
};

export type Span = {
  from: Moment | null;
  to: Moment | null;
  words: string;
};

export type Moment = {
  minute: number;
  time: string;
  altitude_deg: number;
  azimuth_deg: number;
};

export type SunPoint = {
  minute: number;
  time: string;
  altitude_deg: number;
  azimuth_deg: number;
  sun_K: number | null;
  shade_K: number | null;
  open_K: number | null;
};

export type SunEstimate = {
  sky: string;
  words: string;
};

export type SunWindow = {
  facing_deg: number;
  facing_words: string;
  horizon: HorizonPoint[];
  direct: Span[];
  sky_share: number;
  sky_words: string;
  words: string;
};

export type HorizonPoint = {
  azimuth_deg: number;
  altitude_deg: number;
};

export type NamedWindow = {
  name: string;
  window: SunWindow | null;
};

export type Hold = {
  time: string;
  target: White;
  tolerance: Tolerance;
  windows: HoldWindow[];
};

export type HoldWindow = {
  name: string;
  light: White | null;
  light_K: number[] | null;
  illuminance_lx: number | null;
  illuminance_fc: number | null;
  basis: "reading" | "between" | "estimate" | "unknown" | "none";
  basis_words: string;
  gels: string[];
  hung: Pack | null;
  nd: NeutralDensity | null;
  stretches: HoldStretch[];
  words: string;
  packs: HoldPack[];
  warnings: string[];
};

export type NeutralDensity = {
  stops: number;
  gels: string[];
  fetch: string[];
  takes_stops: number;
  left_stops: number;
  words: string;
};

export type HoldStretch = {
  from_minute: number;
  to_minute: number;
  from: string;
  to: string;
  verdict: "holds" | "near" | "out" | null;
  estimated: boolean;
};

export type HoldPack = {
  gels: string[];
  add: string[];
  take_off: string[];
  words: string;
  work: string;
  lands: Landed;
  delta_uv: number;
  steps: number;
  steps_spread: number[];
  verdict: "holds" | "near" | "out";
  odds: number;
  promise: "holds" | "should_hold" | "read_again" | "near" | "out";
  stops_lost: number;
  stops_spread: number[];
  pieces: number;
  warnings: string[];
  nd: NeutralDensity | null;
  stretches: HoldStretch[];
  hold_words: string;
};

export type Units = {
  illuminance_lx?: number;
  illuminance_fc?: number;
  against_lx?: number;
  against_fc?: number;
  distance_m?: number;
  distance_ft?: number;
  ratio?: number;
  stops?: number;
  words?: string;
};

export type Render = {
  light: NamedWhite;
  cri: Cri;
  tm30: Tm30;
  ssi: Ssi;
  tlci: Tlci;
  numbers: RenderNumber[];
  curves: Curves;
  flags: Flag[];
  words: string[];
  warnings: string[];
};

export type NamedWhite = {
  x: number;
  y: number;
  u_prime: number;
  v_prime: number;
  cct_K: number | null;
  duv: number;
  mired: number | null;
  name: string;
};

export type Cri = {
  observer: string;
  edition: string;
  edition_r15: string;
  ra: number | null;
  r: (number | null)[];
  r_names?: string[];
  r_words?: string[];
  pairs?: ((ScreenColour | null)[])[];
  cct_K?: number;
  distance_uv?: number;
  tolerance_uv?: number;
  doubtful?: boolean;
  reference?: string;
  unrated?: string;
};

export type Tm30 = {
  observer: string;
  edition: string;
  edition_rf: string;
  rf: number | null;
  rg: number | null;
  samples?: (number | null)[];
  bins?: (number | null)[];
  chroma_shift?: (number | null)[];
  hue_shift?: (number | null)[];
  pairs?: ((ScreenColour | null)[])[];
  graphic?: ColourVectors;
  cct_K?: number;
  reference?: string;
  unrated?: string;
};

export type ColourVectors = {
  circle: ((number | null)[])[];
  polygon: ((number | null)[])[];
  arrows: (((number | null)[])[])[];
  bin_edges_deg: number[];
};

export type Ssi = {
  name: string;
  value: number | null;
  unrounded: number | null;
  observer?: string;
  reference: string | null;
  edition?: string;
  unrated?: string;
  others: Similarity[];
};

export type Similarity = {
  name: string;
  value: number | null;
  unrounded: number | null;
  observer?: string;
  reference: string | null;
  edition?: string;
  unrated?: string;
};

export type Tlci = {
  observer: string;
  edition: string;
  qa: number | null;
  delta_e_a?: number;
  delta_e?: (number | null)[];
  patches?: string[];
  left_out?: string[];
  cct_K?: number;
  offset?: number;
  doubtful?: boolean;
  reference?: string;
  unrated?: string;
};

export type RenderNumber = {
  name: string;
  value: number;
  observer: string;
  reference: string;
  edition: string;
};

export type Curves = {
  wavelengths_nm: number[];
  light: (number | null)[];
  peaks: Peak[];
  reference: NamedCurve | null;
  against: NamedCurve[];
  scale: string;
  band: Band;
};

export type Peak = {
  wavelength_nm: number;
  value: number;
};

export type NamedCurve = {
  name: string;
  values: (number | null)[];
};

export type Band = {
  wavelengths_nm: number[];
  srgb: number[][];
  p3: number[][];
};

export type Flag = {
  weight: "serious" | "look" | "fine";
  words: string;
  because: string;
};

export type Compare = {
  first: NamedWhite;
  second: NamedWhite;
  delta_uv: number;
  steps: number;
  ssi: CompareSsi;
  patches: Patch[];
  eye: PatchesSeen | null;
  camera: PatchesSeen | null;
  grey_card: GreyCard | null;
  unrated?: string;
  curves: Curves;
  flags: Flag[];
  words: string[];
  warnings: string[];
};

export type CompareSsi = {
  name: string;
  value: number | null;
  unrounded: number | null;
  observer?: string;
  reference: string | null;
  edition?: string;
  unrated?: string;
  back: Similarity;
};

export type Patch = {
  name: string;
  eye: number;
  camera: number | null;
};

export type PatchesSeen = {
  skin: number | null;
  mean: number | null;
  worst: number | null;
  worst_patch: string | null;
  observer: string;
  edition: string;
};

export type GreyCard = {
  camera: number;
  eye: number;
  a_shift: number;
  b_shift: number;
  observer: string;
  edition: string;
};

export type BookCheck = {
  version: number;
  migrated_from: number | null;
  count: number;
  sha256: string;
  things: Record<string, number>;
  conflicts: Conflict[];
  warnings: string[];
  book?: Record<string, unknown>;
  text?: string;
  slices?: string[];
};

export type Conflict = {
  thing: string;
  of: string;
  name: string;
  heads: string[];
};

export type BookMerge = {
  version: number;
  migrated_from: number | null;
  count: number;
  sha256: string;
  things: Record<string, number>;
  conflicts: Conflict[];
  warnings: string[];
  book?: Record<string, unknown>;
  text?: string;
  slices?: string[];
  new: string[];
  changed: string[];
};

export type BookCsv = {
  text: string;
  columns: string[];
  style: string;
};

export type BookLink = {
  version: number;
  migrated_from: number | null;
  count: number;
  sha256: string;
  things: Record<string, number>;
  conflicts: Conflict[];
  warnings: string[];
  book?: Record<string, unknown>;
  text?: string;
  slices?: string[];
  link: string;
  title: string;
  size: LinkSize;
  takes: Record<string, LinkSize>;
};

export type LinkSize = {
  kB: number;
  codes: number;
};

export type OpenLink = {
  version: number;
  migrated_from: number | null;
  count: number;
  sha256: string;
  things: Record<string, number>;
  conflicts: Conflict[];
  warnings: string[];
  book?: Record<string, unknown>;
  text?: string;
  slices?: string[];
  title: string;
};

export type BookParts = {
  parts: string[];
  total: number;
  title: string;
};

export type JoinParts = {
  total: number;
  have: number[];
  missing: number[];
  words: string;
  link?: string;
  title?: string;
  version?: number;
  migrated_from?: number | null;
  count?: number;
  sha256?: string;
  things?: Record<string, number>;
  conflicts?: Conflict[];
  warnings?: string[];
  book?: Record<string, unknown>;
  text?: string;
  slices?: string[];
};

export type Since = {
  series: Series[];
  tolerance: Tolerance;
};

export type Series = {
  pack: string[];
  points: SincePoint[];
  greatest: number[];
};

export type SincePoint = {
  x: number | null;
  y: number | null;
  cct_K: number | null;
  duv: number | null;
  mired: number | null;
  illuminance_lx: number | null;
  illuminance_fc: number | null;
  exposure_lx_s: number | null;
  id: string;
  stage: unknown;
  dialled: unknown;
  dimmer: unknown;
  at: string;
  hours: number;
  drift: Drift;
  standing: SinceStanding | null;
};

export type Drift = {
  mired: number | null;
  duv: number | null;
  delta_uv: number | null;
  steps: number | null;
  verdict: "holds" | "near" | "out" | null;
  stops: number | null;
  words: string;
};

export type SinceStanding = {
  meant: string;
  target: White;
  offset: Offset;
  verdict: "holds" | "near" | "out";
};

export type Judge = {
  verdicts: ("holds" | "near" | "out" | null)[];
  steps: (number | null)[];
  cct_K: (number | null)[];
  duv: (number | null)[];
  found: number[];
  greys: (ScreenColour | null)[];
  tolerance: Tolerance;
};

export type Continuity = {
  name: string;
  target: Record<string, unknown> | null;
  words: string | null;
  lights: ContinuityLight[];
};

export type ContinuityLight = {
  x: number | null;
  y: number | null;
  cct_K: number | null;
  duv: number | null;
  mired: number | null;
  illuminance_lx: number | null;
  illuminance_fc: number | null;
  exposure_lx_s: number | null;
  light: string;
  name: string;
  lamp: unknown;
  stage: unknown;
  at: string;
  pack: string[];
  target: unknown;
};

export type Report = {
  thing: string;
  name: string;
  path: string[];
  note: unknown;
  place: unknown;
  mains_hz: unknown;
  setups: (ReportSetup | SetupOutline)[];
  windows: GlassToGel[];
  gels: GelHanging[];
  tell_apart: string[];
  cautions: string[];
  tolerance: Tolerance;
  book: BookState;
};

export type ReportSetup = {
  id: string;
  name: string;
  path: string[];
  note: unknown;
  hero: string | null;
  first: string | null;
  last: string | null;
  target: Record<string, unknown> | null;
  target_words: string;
  slips: Slip[];
  field: Record<string, unknown> | null;
  spectra: ReportSpectrum[];
};

export type Slip = {
  light: string;
  name: string;
  lamp: unknown;
  role: unknown;
  note: unknown;
  hero: boolean;
  readings: ReportReading[];
  hangs: string[];
  meant: string | null;
  target: White | null;
  offset: Offset | null;
  verdict: "holds" | "near" | "out" | null;
  stops_to_hero: number | null;
  ratio_words: string | null;
  grey: ScreenColour | null;
};

export type ReportReading = {
  x: number | null;
  y: number | null;
  cct_K: number | null;
  duv: number | null;
  mired: number | null;
  illuminance_lx: number | null;
  illuminance_fc: number | null;
  exposure_lx_s: number | null;
  id: string;
  stage: unknown;
  at: string;
  pack: string[];
  dialled: unknown;
  dimmer: unknown;
  place: unknown;
  position: unknown;
  photo: unknown;
  note: unknown;
  who: unknown;
  edited_twice: boolean;
  has_spectrum: boolean;
};

export type ReportSpectrum = {
  wavelengths_nm: number[];
  values: number[];
  name: string;
  at: string;
};

export type SetupOutline = {
  id: string;
  name: string;
  path: string[];
  readings: number;
};

export type GlassToGel = {
  id: string;
  location: string;
  gels: string[];
  lines: string[];
};

export type GelHanging = {
  name: string;
  pieces: number;
  lights: string[];
  measured: boolean;
};

export type BookState = {
  count: number;
  sha256: string;
};

export type Balance = {
  camera?: string;
  lights: BalanceLight[];
  front: BalancePlan[];
  plans: number;
  exact: boolean;
  fewest_out: number;
  words: string;
  tolerance: Tolerance;
  whites: number;
  warnings: string[];
};

export type BalanceLight = {
  name: string;
  problem: Problem | null;
};

export type BalancePlan = {
  white: White;
  out: number[];
  twins: number[][];
  pieces: number;
  cuts: number;
  hang: Fetch[];
  stops_lost: number;
  stops_lost_max: number;
  per_light: BalancePart[];
  exact: boolean;
  at_least_stops: number;
  words: string;
  camera_out?: number[];
};

export type Fetch = {
  gel: string;
  cuts: number;
  lights: string[];
};

export type BalancePart = {
  name: string;
  does: "leave" | "gel" | "dial";
  gels: string[];
  dial: White | null;
  pack: Pack | null;
  after: string | null;
  lands: BalanceLands;
  meant: string;
  target: White | null;
  steps: number | null;
  verdict: "holds" | "near" | "out" | null;
  promise: "holds" | "should_hold" | "read_again" | "near" | "out" | null;
  stops_lost: number;
  words: string;
  camera?: Standing | null;
};

export type BalanceLands = {
  x: number;
  y: number;
  u_prime: number;
  v_prime: number;
  cct_K: number | null;
  duv: number;
  mired: number | null;
  cct_spread_K?: (number | null)[];
  duv_spread?: number[];
  region?: Region;
};

export type Windows = {
  cuts?: Cut[];
  rolls?: CutRoll[];
  layers?: number;
  gels?: string[];
  alike?: boolean;
  needed?: Rolls[];
  seams?: number;
  waste?: Waste;
  left_out?: Cut[];
  bound?: Rolls | null;
  used_m?: number;
  words?: string;
  warnings?: string[];
  nd?: NeutralDensity;
  cautions: string[];
};

export type Cut = {
  window: number;
  name: string;
  gels: string[];
  width_m: number;
  length_m: number;
  count: number;
  words: string;
};

export type CutRoll = {
  gels: string[];
  width_m: number;
  length_m: number;
  used_m: number;
  left_m: number;
  lengths_m: number[];
  words: string;
  pieces: CutPiece[];
};

export type CutPiece = {
  window: number;
  name: string;
  strip: number;
  strips: number;
  at_across_m: number;
  at_along_m: number;
  across_m: number;
  along_m: number;
  words: string;
};

export type Rolls = {
  width_m: number;
  length_m: number;
  rolls: number;
  words: string;
};

export type Waste = {
  area_m2: number;
  percent: number;
};

export type Order = {
  gels: OrderGel[];
  words: string;
  warnings: string[];
};

export type OrderGel = {
  gel: string;
  pieces: OrderPiece[];
  unsized: number;
  ready: number;
  hung: number;
  have: OrderStock[];
  order: OrderStock[];
  cut_m2: number;
  spare_m2: number;
  seams: number;
  words: string;
};

export type OrderPiece = {
  width_m: number;
  height_m: number;
  count: number;
  where: string[];
  words: string;
};

export type OrderStock = {
  width_m: number;
  length_m: number;
  count: number;
  words: string;
};

export type Mix = {
  x: number;
  y: number;
  u_prime: number;
  v_prime: number;
  cct_K: number | null;
  duv: number;
  mired: number | null;
  cc: number | null;
  cc_words: string;
  illuminance_lx?: number;
  illuminance_fc?: number;
  exposure_lx_s?: number;
  warnings: string[];
  assumed?: string[];
  relative: boolean;
  shares: Share[];
  spectrum?: Curve;
  spectrum_unit?: string;
  beside?: Mixture;
  boundary?: Boundary;
  ribbon?: Ribbon;
};

export type Share = {
  name: string;
  lx: number | null;
  lx_s: number | null;
  part: number;
  x: number;
  y: number;
  cct_K: number | null;
};

export type Curve = {
  wavelengths_nm: number[];
  values: number[];
};

export type Mixture = {
  x: number;
  y: number;
  u_prime: number;
  v_prime: number;
  cct_K: number | null;
  duv: number;
  mired: number | null;
  cc: number | null;
  cc_words: string;
  illuminance_lx?: number;
  illuminance_fc?: number;
  exposure_lx_s?: number;
  warnings: string[];
  assumed?: string[];
  relative: boolean;
  shares: Share[];
  spectrum?: Curve;
  spectrum_unit?: string;
};

export type Boundary = {
  delta_uv: number;
  steps: number;
  stops: number | null;
  words: string;
};

export type Ribbon = {
  white: White;
  colours: RibbonColour[];
  worst: RibbonWorst | null;
};

export type RibbonColour = {
  at: number;
  stops: number;
  srgb: number[];
  p3: number[];
  clipped: boolean;
  x: number;
  y: number;
  cct_K: number | null;
  duv: number | null;
  steps: number;
};

export type RibbonWorst = {
  at: number;
  index: number;
  halfway: number;
  words: string;
};

export type Unmix = {
  shares_lx: (number | null)[];
  shares: UnmixShare[];
  residual: Residual;
  by: string;
  certain: boolean;
  missing: Missing | null;
  words: string[];
  warnings: string[];
};

export type UnmixShare = {
  name: string;
  part: number;
  lx: number | null;
  uncertainty_part: number;
  least_part: number;
  most_part: number;
};

export type Residual = {
  steps: number;
  part: number;
};

export type Missing = {
  lx: number | null;
  white: White | null;
  offset?: Offset;
  words: string;
};

export type FlashMix = {
  time_s: number;
  ratio_stops: number;
  ratio_words: string;
  flash_part: number;
  mix: Described;
  offset: Offset;
  verdict: "holds" | "near" | "out";
  tolerance: Tolerance;
  packs: FlashPack[];
  shutters: FlashShutter[];
  warnings: string[];
};

export type FlashPack = {
  gels: string[];
  add: string[];
  take_off: string[];
  words: string;
  work: string;
  lands: Landed;
  delta_uv: number;
  steps: number;
  steps_spread: number[];
  verdict: "holds" | "near" | "out";
  odds: number;
  promise: "holds" | "should_hold" | "read_again" | "near" | "out";
  stops_lost: number;
  stops_spread: number[];
  pieces: number;
  warnings: string[];
  ratio_stops: number;
  mix: White;
};

export type FlashShutter = {
  time_s: number;
  words: string;
  ratio_stops: number;
  mix: White;
};

export type Dial = {
  next: White;
  next_green: string | null;
  target: White;
  reachable: boolean;
  nearest: White;
  remains_steps: number;
  gel: Pack | null;
  steps: number | null;
  verdict: "holds" | "near" | "out" | null;
  best: number | null;
  tolerance: Tolerance;
  correction: Correction;
  words: string;
  warnings: string[];
};

export type Correction = {
  matrix: number[][];
  offset: number[];
};

export type Drive = {
  levels: number[];
  primaries: Primary[];
  lands: White;
  target: White;
  lux: number;
  steps: number;
  verdict: "holds" | "near" | "out";
  reachable: boolean;
  nearest: White;
  remains_steps: number;
  gel: Pack | null;
  ssi: number | null;
  ssi_reference: string | null;
  tolerance: Tolerance;
  warnings: string[];
};

export type Primary = {
  name: string;
  level: number;
  lx: number;
};

export type Dim = {
  x: number;
  y: number;
  u_prime: number;
  v_prime: number;
  cct_K: number | null;
  duv: number;
  mired: number | null;
  percent_light: number;
  percent_volts: number;
  stops: number;
  illuminance_lx: number | null;
  exposure_lx_s: number | null;
  delta_uv: number | null;
  steps: number | null;
  verdict: "holds" | "near" | "out" | null;
  unreached: string | null;
  words: string;
  tolerance: Tolerance;
  warnings: string[];
};

export type Even = {
  least_lx: number;
  mean_lx: number;
  greatest_lx: number;
  spread_stops: number;
  uniformity: number;
  least_to_greatest: number;
  holds: boolean;
  unit: string;
  aim_lx: number;
  within_stops: number;
  points: (EvenPoint | Unusable)[];
  worst: number;
  colour: WidestPair | null;
  map: SurfaceMap | null;
  words: string;
};

export type EvenPoint = {
  problem: null;
  stops: number;
  holds: boolean;
  words: string;
};

export type WidestPair = {
  steps: number;
  pair: number[];
};

export type SurfaceMap = {
  across: number[];
  up: number[];
  step_stops: number;
  lines: ContourLine[];
};

export type ContourLine = {
  stops: number;
  words: string;
  paths: number[][][];
};

export type Trim = {
  unit: string;
  within_stops: number;
  dimmers: TrimDimmer[];
  now: Evenness;
  then: Trimmed;
  least_spread_stops: number;
  cost_stops: number;
  ambient_part: number;
  moves: TrimMove[];
  words: string[];
  warnings: string[];
};

export type TrimDimmer = {
  name: string;
  percent: number;
  setting_percent: number | null;
  part: number;
  idle: boolean;
};

export type Evenness = {
  least_lx: number;
  mean_lx: number;
  greatest_lx: number;
  spread_stops: number;
  uniformity: number;
  least_to_greatest: number;
  holds: boolean;
};

export type Trimmed = {
  least_lx: number;
  mean_lx: number;
  greatest_lx: number;
  spread_stops: number;
  uniformity: number;
  least_to_greatest: number;
  holds: boolean;
  words: string;
  points: TrimPoint[];
};

export type TrimPoint = {
  lx: number;
  stops: number;
  holds: boolean;
  words: string;
};

export type TrimMove = {
  name: string;
  across: number;
  up: number;
  gain_stops: number;
  words: string;
};

export type Display = {
  ways: DisplayWay[];
  words: string | null;
  left_over: number[];
};

export type DisplayWay = {
  sure: "agrees" | "mended" | "nearly" | "unchecked" | "contradicts";
  words: string;
  reading: Record<string, string>;
  numbers: DisplayNumber[];
};

export type DisplayNumber = {
  field: string;
  text: string;
  read: string | null;
  word: number;
};

export type Answers = {
  describe: Described;
  fix: Fix;
  agree: Agree;
  kit: Kit;
  import: Import;
  group: Group;
  recognise: Recognise;
  write: Write;
  learn_gel: LearnGel;
  import_gel: ImportGel;
  field: Field;
  expose: Expose;
  levels: Levels;
  seen: Seen;
  cameras: Cameras;
  falloff: Falloff;
  flicker: Flicker;
  sun: Sun;
  hold: Hold;
  units: Units;
  render: Render;
  compare: Compare;
  book_check: BookCheck;
  book_merge: BookMerge;
  book_csv: BookCsv;
  book_link: BookLink;
  open_link: OpenLink;
  book_parts: BookParts;
  join_parts: JoinParts;
  since: Since;
  judge: Judge;
  continuity: Continuity;
  report: Report;
  balance: Balance;
  windows: Windows;
  order: Order;
  mix: Mix;
  unmix: Unmix;
  flash_mix: FlashMix;
  dial: Dial;
  drive: Drive;
  dim: Dim;
  even: Even;
  trim: Trim;
  display: Display;
};

type SpectrumFields = {
  wavelengths_nm?: Figure[] | null;
  values?: Figure[] | null;
};

type OwnGelFields = {
  name?: string | null;
  wavelengths_nm?: Figure[] | null;
  transmittance?: Figure[] | null;
  reference_K?: Figure | null;
  mired?: Figure | null;
  duv?: Figure | null;
  stops?: Figure | null;
  source?: string | null;
  unknown?: Figure[] | null;
};

type PlainReadingFields = {
  x?: Figure | null;
  y?: Figure | null;
  cct_K?: Figure | null;
  duv?: Figure | null;
  spectrum?: SpectrumFields | null;
  illuminance_lx?: Figure | null;
  illuminance_fc?: Figure | null;
  exposure_lx_s?: Figure | null;
  lamp?: string | null;
  name?: string | null;
  note?: string | null;
  pack?: string[] | null;
  own_gels?: OwnGelFields[] | null;
  role?: string | null;
  ra?: Figure | null;
  r9?: Figure | null;
  rf?: Figure | null;
  rg?: Figure | null;
  ssi?: Figure | null;
  cct_mired?: Figure | null;
  tint_cc?: Figure | null;
  tint_cuts?: Figure | string | null;
  tint_says?: string | null;
  flash_f_number?: Figure | string | null;
  flash_iso?: Figure | null;
  flash_constant?: Figure | null;
  flash_receptor?: string | null;
};

type BeforeFields = {
  reading?: PlainReadingFields | null;
  next?: PlainReadingFields | null;
};

type ReadingFields = {
  x?: Figure | null;
  y?: Figure | null;
  cct_K?: Figure | null;
  duv?: Figure | null;
  spectrum?: SpectrumFields | null;
  illuminance_lx?: Figure | null;
  illuminance_fc?: Figure | null;
  exposure_lx_s?: Figure | null;
  lamp?: string | null;
  name?: string | null;
  note?: string | null;
  pack?: string[] | null;
  own_gels?: OwnGelFields[] | null;
  role?: string | null;
  ra?: Figure | null;
  r9?: Figure | null;
  rf?: Figure | null;
  rg?: Figure | null;
  ssi?: Figure | null;
  cct_mired?: Figure | null;
  tint_cc?: Figure | null;
  tint_cuts?: Figure | string | null;
  tint_says?: string | null;
  flash_f_number?: Figure | string | null;
  flash_iso?: Figure | null;
  flash_constant?: Figure | null;
  flash_receptor?: string | null;
  before?: BeforeFields[] | null;
};

type WhiteFields = {
  cct_K?: Figure | null;
  duv?: Figure | null;
};

type MeantFields = {
  as?: string | null;
  warmer_mired?: Figure | null;
  cooler_mired?: Figure | null;
  as_through?: string[] | null;
  cct_K?: Figure | null;
  duv?: Figure | null;
  x?: Figure | null;
  y?: Figure | null;
  like?: Figure | ReadingFields | null;
};

type StepsFields = {
  steps?: Figure | null;
};

type OwnCameraFields = {
  name?: string | null;
  wavelengths_nm?: Figure[] | null;
  red?: Figure[] | null;
  green?: Figure[] | null;
  blue?: Figure[] | null;
};

type ChoicesFields = {
  delimiter?: string | null;
  decimal?: string | null;
  layout?: string | null;
  wavelength_unit?: string | null;
  quantity?: string | null;
  values?: string | null;
  step?: string | null;
  repeated?: string | null;
  counted?: string | null;
  columns?: string | null;
  date?: string | null;
  grouped?: string | null;
};

type CameraFields = {
  iso?: Figure | null;
  fps?: Figure | null;
  shutter_deg?: Figure | null;
  time_s?: Figure | string | null;
  filter_stops?: Figure | null;
  filter_factor?: Figure | null;
  lens_stops?: Figure | null;
  receptor?: string | null;
  constant?: Figure | null;
};

type HorizonPointFields = {
  azimuth_deg?: Figure | string | null;
  altitude_deg?: Figure | null;
};

type ReachFields = {
  from_K?: Figure | null;
  to_K?: Figure | null;
  duv_limit?: Figure | null;
  gamut?: ReadingFields[] | null;
};

type StockFields = {
  gel?: string | null;
  width_m?: Figure | null;
  width_ft?: Figure | string | null;
  length_m?: Figure | null;
  length_ft?: Figure | string | null;
  count?: Figure | null;
  name?: string | null;
};

type PointFields = {
  across?: Figure | null;
  up?: Figure | null;
  x?: Figure | null;
  y?: Figure | null;
  cct_K?: Figure | null;
  duv?: Figure | null;
  spectrum?: SpectrumFields | null;
  illuminance_lx?: Figure | null;
  illuminance_fc?: Figure | null;
  exposure_lx_s?: Figure | null;
  lamp?: string | null;
  name?: string | null;
  note?: string | null;
  pack?: string[] | null;
  own_gels?: OwnGelFields[] | null;
  role?: string | null;
  ra?: Figure | null;
  r9?: Figure | null;
  rf?: Figure | null;
  rg?: Figure | null;
  ssi?: Figure | null;
  cct_mired?: Figure | null;
  tint_cc?: Figure | null;
  tint_cuts?: Figure | string | null;
  tint_says?: string | null;
  flash_f_number?: Figure | string | null;
  flash_iso?: Figure | null;
  flash_constant?: Figure | null;
  flash_receptor?: string | null;
  before?: BeforeFields[] | null;
  luminance_cd_m2?: Figure | null;
};

export type Questions = {
  describe: {
    reading?: ReadingFields | null;
    own_gels?: OwnGelFields[] | null;
  };
  fix: {
    reading?: ReadingFields | null;
    target?: WhiteFields | ReadingFields | null;
    meant?: MeantFields | null;
    kit?: string[] | null;
    own_gels?: OwnGelFields[] | null;
    gel_scatter_percent?: Figure | null;
    depth?: Figure | null;
    tolerance?: string | Figure | StepsFields | null;
    most?: Figure | null;
  };
  agree: {
    lights?: ({ x?: Figure | null; y?: Figure | null; cct_K?: Figure | null; duv?: Figure | null; spectrum?: SpectrumFields | null; illuminance_lx?: Figure | null; illuminance_fc?: Figure | null; exposure_lx_s?: Figure | null; lamp?: string | null; name?: string | null; note?: string | null; pack?: string[] | null; own_gels?: OwnGelFields[] | null; role?: string | null; ra?: Figure | null; r9?: Figure | null; rf?: Figure | null; rg?: Figure | null; ssi?: Figure | null; cct_mired?: Figure | null; tint_cc?: Figure | null; tint_cuts?: Figure | string | null; tint_says?: string | null; flash_f_number?: Figure | string | null; flash_iso?: Figure | null; flash_constant?: Figure | null; flash_receptor?: string | null; before?: BeforeFields[] | null; meant?: MeantFields | null; })[] | null;
    target?: WhiteFields | ReadingFields | null;
    hero?: Figure | null;
    tolerance?: string | Figure | StepsFields | null;
    kit?: string[] | null;
    own_gels?: OwnGelFields[] | null;
    gel_scatter_percent?: Figure | null;
    depth?: Figure | null;
    judge?: string | null;
    camera?: OwnCameraFields | null;
  };
  kit: {
    own_gels?: OwnGelFields[] | null;
  };
  recognise: {
    bytes_base64?: string | null;
    text?: string | null;
  };
  import: {
    file_name?: string | null;
    bytes_base64?: string | null;
    text?: string | null;
    choices?: ChoicesFields | null;
  };
  group: {
    readings?: ({ title?: string | null; at?: string | null; })[] | null;
    setups?: string | null;
    untitled?: string | null;
  };
  write: {
    format?: string | null;
    spectrum?: { name?: string | null; wavelengths_nm?: Figure[] | null; values?: Figure[] | null; quantity?: string | null; understood?: { unit?: string | null; notes?: string[] | null; } | null; white?: unknown | null; gel?: unknown | null; problem?: unknown | null; stated?: unknown | null; } | null;
    spectra?: ({ name?: string | null; wavelengths_nm?: Figure[] | null; values?: Figure[] | null; quantity?: string | null; understood?: { unit?: string | null; notes?: string[] | null; } | null; white?: unknown | null; gel?: unknown | null; problem?: unknown | null; stated?: unknown | null; })[] | null;
    created?: string | null;
  };
  learn_gel: {
    bare?: ReadingFields | null;
    gelled?: ReadingFields | null;
    shift?: { mired?: Figure | null; duv?: Figure | null; stops?: Figure | null; reference_K?: Figure | null; } | null;
    name?: string | null;
    own_gels?: OwnGelFields[] | null;
  };
  import_gel: {
    file_name?: string | null;
    bytes_base64?: string | null;
    text?: string | null;
    choices?: ChoicesFields | null;
    name?: string | null;
  };
  field: {
    target?: WhiteFields | ReadingFields | null;
    lights?: ({ x?: Figure | null; y?: Figure | null; cct_K?: Figure | null; duv?: Figure | null; spectrum?: SpectrumFields | null; illuminance_lx?: Figure | null; illuminance_fc?: Figure | null; exposure_lx_s?: Figure | null; lamp?: string | null; name?: string | null; note?: string | null; pack?: string[] | null; own_gels?: OwnGelFields[] | null; role?: string | null; ra?: Figure | null; r9?: Figure | null; rf?: Figure | null; rg?: Figure | null; ssi?: Figure | null; cct_mired?: Figure | null; tint_cc?: Figure | null; tint_cuts?: Figure | string | null; tint_says?: string | null; flash_f_number?: Figure | string | null; flash_iso?: Figure | null; flash_constant?: Figure | null; flash_receptor?: string | null; before?: BeforeFields[] | null; meant?: MeantFields | null; })[] | null;
    packs?: (string[] | null)[] | null;
    tolerance?: string | Figure | StepsFields | null;
    own_gels?: OwnGelFields[] | null;
    gel_scatter_percent?: Figure | null;
  };
  expose: {
    known?: { illuminance_lx?: Figure | null; illuminance_fc?: Figure | null; exposure_lx_s?: Figure | null; flash_f_number?: Figure | string | null; flash_iso?: Figure | null; flash_constant?: Figure | null; flash_receptor?: string | null; bursts?: Figure | null; f_number?: Figure | string | null; t_number?: Figure | string | null; iso?: Figure | null; fps?: Figure | null; shutter_deg?: Figure | null; time_s?: Figure | string | null; filter_stops?: Figure | null; filter_factor?: Figure | null; lens_stops?: Figure | null; receptor?: string | null; constant?: Figure | null; } | null;
    solve?: string | null;
    say?: string | null;
  };
  levels: {
    lights?: ({ name?: string | null; illuminance_lx?: Figure | null; illuminance_fc?: Figure | null; exposure_lx_s?: Figure | null; flash_f_number?: Figure | string | null; flash_iso?: Figure | null; flash_constant?: Figure | null; flash_receptor?: string | null; loss_stops?: Figure | null; })[] | null;
    key?: Figure | null;
    camera?: CameraFields | null;
    say?: string | null;
  };
  falloff: {
    illuminance_lx?: Figure | null;
    illuminance_fc?: Figure | null;
    distance_m?: Figure | null;
    distance_ft?: Figure | string | null;
    at_m?: Figure | null;
    at_ft?: Figure | string | null;
    wanted_lx?: Figure | null;
    wanted_fc?: Figure | null;
    lose_stops?: Figure | null;
    source_m?: Figure | null;
    source_ft?: Figure | string | null;
    say?: string | null;
  };
  flicker: {
    fps?: Figure | null;
    shutter_deg?: Figure | null;
    time_s?: Figure | string | null;
    modulation_percent?: Figure | null;
    duty_percent?: Figure | null;
    place?: string | null;
    mains_hz?: Figure | null;
    light_hz?: Figure | null;
    measured?: ({ fps?: Figure | null; shutter_deg?: Figure | null; time_s?: Figure | string | null; flicker?: boolean | null; })[] | null;
  };
  sun: {
    lat_deg?: Figure | string | null;
    lon_deg?: Figure | string | null;
    date?: string | null;
    utc_offset_h?: Figure | string | null;
    facing_deg?: Figure | string | null;
    horizon_deg?: Figure | null;
    horizon?: HorizonPointFields[] | null;
    windows?: ({ name?: string | null; facing_deg?: Figure | string | null; horizon_deg?: Figure | null; horizon?: HorizonPointFields[] | null; })[] | null;
    sky?: string | null;
    step_min?: Figure | null;
  };
  hold: {
    windows?: ({ name?: string | null; facing_deg?: Figure | string | null; horizon_deg?: Figure | null; horizon?: HorizonPointFields[] | null; gels?: string[] | null; readings?: ({ x?: Figure | null; y?: Figure | null; cct_K?: Figure | null; duv?: Figure | null; spectrum?: SpectrumFields | null; illuminance_lx?: Figure | null; illuminance_fc?: Figure | null; exposure_lx_s?: Figure | null; lamp?: string | null; name?: string | null; note?: string | null; pack?: string[] | null; own_gels?: OwnGelFields[] | null; role?: string | null; ra?: Figure | null; r9?: Figure | null; rf?: Figure | null; rg?: Figure | null; ssi?: Figure | null; cct_mired?: Figure | null; tint_cc?: Figure | null; tint_cuts?: Figure | string | null; tint_says?: string | null; flash_f_number?: Figure | string | null; flash_iso?: Figure | null; flash_constant?: Figure | null; flash_receptor?: string | null; before?: BeforeFields[] | null; time?: string | null; })[] | null; })[] | null;
    time?: string | null;
    lat_deg?: Figure | string | null;
    lon_deg?: Figure | string | null;
    date?: string | null;
    utc_offset_h?: Figure | string | null;
    sky?: string | null;
    target?: WhiteFields | ReadingFields | null;
    tolerance?: string | Figure | StepsFields | null;
    kit?: string[] | null;
    own_gels?: OwnGelFields[] | null;
    gel_scatter_percent?: Figure | null;
    depth?: Figure | null;
    most?: Figure | null;
    wanted_lx?: Figure | null;
    wanted_fc?: Figure | null;
  };
  units: {
    illuminance_lx?: Figure | null;
    illuminance_fc?: Figure | null;
    against_lx?: Figure | null;
    against_fc?: Figure | null;
    distance_m?: Figure | null;
    distance_ft?: Figure | string | null;
  };
  seen: {
    lights?: ({ x?: Figure | null; y?: Figure | null; cct_K?: Figure | null; duv?: Figure | null; spectrum?: SpectrumFields | null; illuminance_lx?: Figure | null; illuminance_fc?: Figure | null; exposure_lx_s?: Figure | null; lamp?: string | null; name?: string | null; note?: string | null; pack?: string[] | null; own_gels?: OwnGelFields[] | null; role?: string | null; ra?: Figure | null; r9?: Figure | null; rf?: Figure | null; rg?: Figure | null; ssi?: Figure | null; cct_mired?: Figure | null; tint_cc?: Figure | null; tint_cuts?: Figure | string | null; tint_says?: string | null; flash_f_number?: Figure | string | null; flash_iso?: Figure | null; flash_constant?: Figure | null; flash_receptor?: string | null; before?: BeforeFields[] | null; meant?: MeantFields | null; } | { reading?: ReadingFields | null; pack?: string[] | null; meant?: MeantFields | null; })[] | null;
    white?: WhiteFields | ReadingFields | null;
    judge?: string | null;
    camera?: OwnCameraFields | null;
    own_gels?: OwnGelFields[] | null;
  };
  cameras: {
    lights?: ReadingFields[] | null;
    white?: WhiteFields | ReadingFields | null;
    first?: OwnCameraFields | null;
    second?: OwnCameraFields | null;
    own_gels?: OwnGelFields[] | null;
  };
  render: {
    reading?: ReadingFields | null;
    against?: ReadingFields | ReadingFields[] | null;
    own_gels?: OwnGelFields[] | null;
  };
  compare: {
    first?: ReadingFields | null;
    second?: ReadingFields | null;
    camera?: OwnCameraFields | null;
    tolerance?: string | Figure | StepsFields | null;
    own_gels?: OwnGelFields[] | null;
  };
  book_check: {
    book?: unknown | null;
    of?: string | null;
    without?: string[] | null;
    kits?: string[] | null;
    only?: string | null;
    give?: string | null;
  };
  book_merge: {
    books?: unknown[] | null;
    give?: string | null;
  };
  book_csv: {
    book?: unknown | null;
    of?: string | null;
    without?: string[] | null;
    kits?: string[] | null;
    only?: string | null;
    style?: string | null;
  };
  book_link: {
    book?: unknown | null;
    of?: string | null;
    without?: string[] | null;
    kits?: string[] | null;
    only?: string | null;
    size?: Figure | null;
  };
  open_link: {
    link?: string | null;
  };
  book_parts: {
    book?: unknown | null;
    of?: string | null;
    without?: string[] | null;
    kits?: string[] | null;
    only?: string | null;
    size?: Figure | null;
  };
  join_parts: {
    parts?: string[] | null;
  };
  since: {
    readings?: ({ x?: Figure | null; y?: Figure | null; cct_K?: Figure | null; duv?: Figure | null; spectrum?: SpectrumFields | null; illuminance_lx?: Figure | null; illuminance_fc?: Figure | null; exposure_lx_s?: Figure | null; lamp?: string | null; name?: string | null; note?: string | null; pack?: string[] | null; own_gels?: OwnGelFields[] | null; role?: string | null; ra?: Figure | null; r9?: Figure | null; rf?: Figure | null; rg?: Figure | null; ssi?: Figure | null; cct_mired?: Figure | null; tint_cc?: Figure | null; tint_cuts?: Figure | string | null; tint_says?: string | null; flash_f_number?: Figure | string | null; flash_iso?: Figure | null; flash_constant?: Figure | null; flash_receptor?: string | null; before?: BeforeFields[] | null; id?: string | null; at?: string | null; })[] | null;
    book?: unknown | null;
    lights?: string[] | null;
    tolerance?: string | Figure | StepsFields | null;
  };
  judge: {
    readings?: ({ x?: Figure | null; y?: Figure | null; cct_K?: Figure | null; duv?: Figure | null; spectrum?: SpectrumFields | null; illuminance_lx?: Figure | null; illuminance_fc?: Figure | null; exposure_lx_s?: Figure | null; lamp?: string | null; name?: string | null; note?: string | null; pack?: string[] | null; own_gels?: OwnGelFields[] | null; role?: string | null; ra?: Figure | null; r9?: Figure | null; rf?: Figure | null; rg?: Figure | null; ssi?: Figure | null; cct_mired?: Figure | null; tint_cc?: Figure | null; tint_cuts?: Figure | string | null; tint_says?: string | null; flash_f_number?: Figure | string | null; flash_iso?: Figure | null; flash_constant?: Figure | null; flash_receptor?: string | null; before?: BeforeFields[] | null; target?: WhiteFields | ReadingFields | null; meant?: MeantFields | null; })[] | null;
    tolerance?: string | Figure | StepsFields | null;
    own_gels?: OwnGelFields[] | null;
  };
  continuity: {
    book?: unknown | null;
    setup?: string | null;
  };
  report: {
    book?: unknown | null;
    of?: string | null;
    tolerance?: string | Figure | StepsFields | null;
    most?: Figure | null;
    tell_apart?: string[] | null;
  };
  balance: {
    lights?: ({ reading?: ReadingFields | null; may?: string[] | null; dial?: ReachFields | null; cuts?: Figure | null; name?: string | null; meant?: MeantFields | null; })[] | null;
    kit?: string[] | null;
    own_gels?: OwnGelFields[] | null;
    gel_scatter_percent?: Figure | null;
    stock?: Record<string, Figure | { sheets?: Figure | null; cuts_per_sheet?: Figure | null; }> | null;
    whites?: { from_K?: Figure | null; to_K?: Figure | null; step_K?: Figure | null; step_mired?: Figure | null; duv_limit?: Figure | null; duv_step?: Figure | null; } | null;
    tolerance?: string | Figure | StepsFields | null;
    depth?: Figure | null;
    most?: Figure | null;
    judge?: string | null;
    camera?: OwnCameraFields | null;
  };
  windows: {
    windows?: ({ name?: string | null; width_m?: Figure | null; width_ft?: Figure | string | null; height_m?: Figure | null; height_ft?: Figure | string | null; count?: Figure | null; panes_across?: Figure | null; panes_down?: Figure | null; gels?: string[] | null; })[] | null;
    rolls?: StockFields[] | null;
    overlap_m?: Figure | null;
    overlap_ft?: Figure | string | null;
    margin_m?: Figure | null;
    margin_ft?: Figure | string | null;
    direction?: string | null;
    gels?: string[] | null;
    nd?: { measured_lx?: Figure | null; measured_fc?: Figure | null; wanted_lx?: Figure | null; wanted_fc?: Figure | null; gel_stops?: Figure | null; stops?: Figure | null; kit?: string[] | null; } | null;
    length_unit?: string | null;
  };
  order: {
    hangs?: ({ gel?: string | null; gels?: string[] | null; width_m?: Figure | null; width_ft?: Figure | string | null; height_m?: Figure | null; height_ft?: Figure | string | null; count?: Figure | null; where?: string | null; panes_across?: Figure | null; panes_down?: Figure | null; on?: string | null; hung?: string[] | null; })[] | null;
    ready?: Record<string, Figure> | null;
    stock?: StockFields[] | null;
    rolls?: StockFields[] | null;
    spare_percent?: Figure | null;
    overlap_m?: Figure | null;
    overlap_ft?: Figure | string | null;
    length_unit?: string | null;
  };
  mix: {
    lights?: ({ reading?: ReadingFields | null; share_lx?: Figure | null; share_fc?: Figure | null; stops?: Figure | null; dimmer?: Figure | null; distance_m?: Figure | null; distance_ft?: Figure | string | null; measured_at_m?: Figure | null; measured_at_ft?: Figure | string | null; name?: string | null; })[] | null;
    beside?: ({ reading?: ReadingFields | null; share_lx?: Figure | null; share_fc?: Figure | null; stops?: Figure | null; dimmer?: Figure | null; distance_m?: Figure | null; distance_ft?: Figure | string | null; measured_at_m?: Figure | null; measured_at_ft?: Figure | string | null; name?: string | null; })[] | null;
    ribbon?: Figure | null;
    white?: WhiteFields | ReadingFields | null;
    own_gels?: OwnGelFields[] | null;
  };
  unmix: {
    lights?: ReadingFields[] | null;
    sum?: ReadingFields | null;
    own_gels?: OwnGelFields[] | null;
  };
  flash_mix: {
    flash?: ReadingFields | null;
    ambient?: ReadingFields | null;
    fps?: Figure | null;
    shutter_deg?: Figure | null;
    time_s?: Figure | string | null;
    tolerance?: string | Figure | StepsFields | null;
    kit?: string[] | null;
    own_gels?: OwnGelFields[] | null;
    gel_scatter_percent?: Figure | null;
    depth?: Figure | null;
    most?: Figure | null;
  };
  dial: {
    target?: WhiteFields | ReadingFields | null;
    meant?: MeantFields | null;
    history?: ({ dialled?: ReadingFields | null; measured?: ReadingFields | null; name?: string | null; note?: string | null; })[] | null;
    gamut?: ReadingFields[] | null;
    range?: ReachFields | null;
    correction?: { matrix?: (Figure[] | null)[] | null; offset?: Figure[] | null; } | null;
    tolerance?: string | Figure | StepsFields | null;
    lamp?: string | null;
    kit?: string[] | null;
    own_gels?: OwnGelFields[] | null;
    gel_scatter_percent?: Figure | null;
  };
  drive: {
    primaries?: ReadingFields[] | null;
    target?: WhiteFields | ReadingFields | null;
    meant?: MeantFields | null;
    prefer?: string | null;
    tolerance?: string | Figure | StepsFields | null;
    kit?: string[] | null;
    own_gels?: OwnGelFields[] | null;
    gel_scatter_percent?: Figure | null;
  };
  dim: {
    to?: ReadingFields | null;
    percent_light?: Figure | null;
    stops?: Figure | null;
    percent_volts?: Figure | null;
    reading?: ReadingFields | null;
    target?: WhiteFields | ReadingFields | null;
    pairs?: ({ percent_light?: Figure | null; percent_volts?: Figure | null; measured?: ReadingFields | null; })[] | null;
    tolerance?: string | Figure | StepsFields | null;
    own_gels?: OwnGelFields[] | null;
  };
  even: {
    points?: PointFields[] | null;
    aim?: string | { illuminance_lx?: Figure | null; illuminance_fc?: Figure | null; } | { point?: Figure | null; } | null;
    within_stops?: Figure | null;
    say?: string | null;
  };
  trim: {
    points?: PointFields[] | null;
    lamps?: ({ name?: string | null; points?: Figure[] | null; without?: Figure[] | null; dimmer_now?: Figure | null; })[] | null;
    unit?: string | null;
    settings?: string | null;
    aim?: string | { illuminance_lx?: Figure | null; illuminance_fc?: Figure | null; } | { point?: Figure | null; } | null;
    within_stops?: Figure | null;
    say?: string | null;
  };
  display: {
    words?: ({ text?: string | null; box?: Figure[] | null; confidence?: Figure | null; })[] | null;
  };
};

export type Ask = keyof Answers;

/** A number as it was typed, or reckoned. */
type Figure = number | string;

/** A question: which it is, and its fields. What is null or undefined counts as not given. */
export type Question<A extends Ask> = { ask: A } & Questions[A];

/** What a question is answered with where it cannot be answered as it stands. */
export type Refused<A extends Ask> = { problem: Problem } & {
  [field in Exclude<keyof Answers[A], "problem">]?: undefined;
};

/** An answer that is no refusal. */
export type Answered<A extends Ask> = Answers[A] & { problem?: undefined };

/** What the kernel sends back. */
export type Reply<A extends Ask> = Answered<A> | Refused<A>;
