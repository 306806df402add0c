/** The time, as entries and files hold it. */

/** The time as the clock on the wall shows it, with its offset. @param {Date} [date] */
export function stamp(date = new Date()) {
  const offset = -date.getTimezoneOffset();
  const local = new Date(date.getTime() + offset * 60_000).toISOString().slice(0, -1);
  const sign = offset < 0 ? "-" : "+";
  const [hours, minutes] = [Math.floor(Math.abs(offset) / 60), Math.abs(offset) % 60];
  return `${local}${sign}${String(hours).padStart(2, "0")}:${String(minutes).padStart(2, "0")}`;
}
