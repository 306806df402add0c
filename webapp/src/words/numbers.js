/**
 * How numbers look. Formatting only: every number here was computed by the kernel.
 */
import { stamp } from "../clock.js";
import { language, t } from "./index.js";

/**
 * Numbers as the language of the app writes them, whichever it is by then.
 * @param {Intl.NumberFormatOptions} options
 */
const localNumbers = (options) => {
  /** @type {Map<string, Intl.NumberFormat>} */
  const made = new Map();
  return {
    /** @param {number} value */
    format(value) {
      const now = language();
      const format = made.get(now) ?? new Intl.NumberFormat(now, options);
      made.set(now, format);
      return format.format(value);
    },
  };
};

/** @param {number} digits */
const fixed = (digits) =>
  localNumbers({
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
    useGrouping: false,
  });

const whole = fixed(0);
const tenth = fixed(1);
const hundredth = fixed(2);
const four = fixed(4);
const signed = localNumbers({
  minimumFractionDigits: 4,
  maximumFractionDigits: 4,
  signDisplay: "exceptZero",
});
const signedTenth = localNumbers({
  minimumFractionDigits: 1,
  maximumFractionDigits: 1,
  signDisplay: "exceptZero",
});
const geographic = localNumbers({ maximumFractionDigits: 5 });
const grouped = localNumbers({});
const signedWhole = localNumbers({
  maximumFractionDigits: 0,
  signDisplay: "exceptZero",
  useGrouping: false,
});
const tens = localNumbers({
  roundingIncrement: 10,
  maximumFractionDigits: 0,
  useGrouping: false,
});

/** A true minus sign lines up with the plus. @param {string} text */
const minus = (text) => text.replace("-", "−");

/** @param {number | null | undefined} value CCT in kelvin, shown to 10 K. */
export const kelvin = (value) => (value == null ? "–" : `${tens.format(value)} K`);

/** @param {readonly number[] | null | undefined} range */
export const kelvinRange = (range) =>
  range ? `${tens.format(range[0])}–${tens.format(range[1])} K` : "";

/** @param {number | null | undefined} value light lost, in stops. */
export const stops = (value) =>
  value == null
    ? "–"
    : t(Math.abs(value - 1) < 0.05 ? "unit.stop" : "unit.stops", { n: minus(tenth.format(value)) });

const significant = localNumbers({
  maximumSignificantDigits: 3,
  useGrouping: false,
});

/** @param {number | null | undefined} value an illuminance or an exposure, without its unit. */
export const level = (value) => (value == null ? "–" : significant.format(value));

/** @param {number | null | undefined} value */
export const duv = (value) => (value == null ? "–" : minus(signed.format(value)));

/** @param {number | null | undefined} value */
export const mired = (value) => (value == null ? "–" : `${minus(signedWhole.format(value))} mired`);

/** What may be typed, as a number of this language. @param {string} text with a decimal point, or a part such as 1/4 */
export const asTyped = (text) => (Number.isNaN(Number(text)) ? text : upTo3.format(Number(text)));

/** @param {number | null | undefined} value a chromaticity coordinate. */
export const coordinate = (value) => (value == null ? "–" : four.format(value));

/** @param {number | null | undefined} value a distance in steps of CIE TN 001. */
export const steps = (value) =>
  value == null ? "–" : t("unit.steps", { n: (value < 9.95 ? tenth : whole).format(value) });

/** @param {number} value a wavelength, to a tenth where it is not whole. */
export const nanometres = (value) =>
  `${(Math.abs(value - Math.round(value)) < 0.05 ? whole : tenth).format(value)} nm`;

/** @param {number} value a difference in stops with its sign, where the unit is understood. */
export const signedStops = (value) => minus(signedTenth.format(value));

/** @param {number | null | undefined} value in CC: + green, − magenta. */
export const cc = (value) => (value == null ? "–" : minus(signedTenth.format(value)));

/** @param {number | null | undefined} value an index such as Ra, R9 or SSI. */
export const index = (value) => (value == null ? "–" : minus(whole.format(value)));

/** @param {number | null | undefined} value with its sign, in per cent. */
export const signedPercent = (value) =>
  value == null ? "–" : `${minus(signedWhole.format(value))} %`;

/** @param {number | null | undefined} value a ratio or a colour difference. */
export const toTenth = (value) => (value == null ? "–" : minus(tenth.format(value)));

/** @param {number | null | undefined} value a spectrum's relative height. */
export const height = (value) => (value == null ? "–" : hundredth.format(value));

const upTo3 = localNumbers({ maximumFractionDigits: 3, useGrouping: false });
const upTo2 = localNumbers({ maximumFractionDigits: 2, useGrouping: false });

/** @param {number} value an angle in the sky. */
export const degrees = (value) => `${minus(whole.format(value))}°`;

/** @param {number} value an area in m². */
export const area = (value) => `${upTo2.format(value)} m²`;

/** @param {number} value frames or pulses a second. */
export const frameRate = (value) => upTo3.format(value);

/** @param {number} value a shutter angle. */
export const shutterAngle = (value) => `${upTo2.format(value)}°`;

/** @param {number | null | undefined} value a share from 0 to 1. */
export const percent = (value) => (value == null ? "–" : `${whole.format(value * 100)} %`);

/** @param {number} bytes */
export const size = (bytes) =>
  bytes < 1e9 ? `${tenth.format(bytes / 1e6)} MB` : `${tenth.format(bytes / 1e9)} GB`;

/*
 * Times are shown as the clock on the wall had them where they were kept, wherever they are read.
 */
/**
 * A format is made when it is first used: the first one costs a phone some tens of milliseconds.
 * @param {Intl.DateTimeFormatOptions} options
 */
const localTimes = (options) => {
  /** @type {Intl.DateTimeFormat | undefined} */
  let made;
  return {
    /** @param {Date} date */
    format(date) {
      made ??= new Intl.DateTimeFormat(undefined, { ...options, timeZone: "UTC" });
      return made.format(date);
    },
  };
};

const clock = localTimes({ hour: "2-digit", minute: "2-digit" });
const shortDay = localTimes({ day: "numeric", month: "short" });
const day = localTimes({ weekday: "short", day: "numeric", month: "short", year: "numeric" });

/** The clock's face at an entry's time stamp, as if it hung in UTC. @param {string} at */
const wall = (at) => new Date(`${at.slice(0, 19)}Z`);

/** @param {string} at an entry's time stamp. */
export const timeOfDay = (at) => clock.format(wall(at));

/** The time, with the day unless it is today. @param {string} at */
export const whenRead = (at) =>
  at.slice(0, 10) === stamp().slice(0, 10)
    ? timeOfDay(at)
    : `${shortDay.format(wall(at))}, ${timeOfDay(at)}`;

/** @param {string} at */
export const dayOf = (at) => day.format(wall(at));

/** Day, time and zone. @param {string} at */
export const dateTime = (at) => {
  const offset = /[+-]\d\d:\d\d$/.exec(at)?.[0] ?? "";
  return `${dayOf(at)}, ${timeOfDay(at)} ${minus(`UTC${offset === "+00:00" ? "" : offset}`)}`;
};

/** @param {number | null | undefined} value a change or a ratio of light, in stops, with its sign. */
export const stopsChange = (value) =>
  value == null ? "–" : t("unit.stops", { n: signedStops(value) });

/**
 * @param {{illuminance_lx?: number | null, illuminance_fc?: number | null}} answer
 * @param {"lx" | "fc"} unit
 */
export function illuminance(answer, unit) {
  const value = answer[`illuminance_${unit}`];
  return value == null ? "–" : `${(value < 100 ? tenth : whole).format(value)} ${unit}`;
}

/** @param {{latitude?: number, longitude?: number, accuracy_m?: number}} position of a book, which may lack any of it */
export const positionWords = ({ latitude, longitude, accuracy_m }) => {
  if (latitude === undefined || longitude === undefined) return "–";
  const where = `${minus(geographic.format(latitude))}, ${minus(geographic.format(longitude))}`;
  return accuracy_m === undefined ? where : `${where} (±${whole.format(accuracy_m)} m)`;
};

/** @param {number} value how many of something. */
export const count = (value) => grouped.format(value);
