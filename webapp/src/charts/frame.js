/** Laying out points in a drawing. One scale for both ways, so that shapes stay true. */

/** @typedef {[number, number]} Point */
/** @typedef {{across: [number, number], up: [number, number]}} Box */

/**
 * The box that holds the centre and all points, with some air.
 * @param {readonly Point[]} points
 * @returns {Box}
 */
export function extent(points) {
  const all = [...points, /** @type {Point} */ ([0, 0])];
  const range = (/** @type {number} */ axis) => {
    const values = all.map((point) => point[axis]);
    return /** @type {[number, number]} */ ([Math.min(...values), Math.max(...values)]);
  };
  return { across: range(0), up: range(1) };
}

/**
 * @param {Box} needed
 * @param {{width: number, height: number,
 *          pad: {left: number, right: number, top: number, bottom: number}}} page
 */
export function place(needed, { width, height, pad }) {
  const wide = width - pad.left - pad.right;
  const high = height - pad.top - pad.bottom;
  const span = (/** @type {[number, number]} */ [low, high_]) => Math.max(high_ - low, 1e-9) * 1.2;
  const scale = Math.min(wide / span(needed.across), high / span(needed.up));
  const middle = (/** @type {[number, number]} */ [low, high_]) => (low + high_) / 2;
  const [midAcross, midUp] = [middle(needed.across), middle(needed.up)];
  const centre = [pad.left + wide / 2, pad.top + high / 2];
  return {
    /** @type {Box} what is in view */
    box: {
      across: [midAcross - wide / 2 / scale, midAcross + wide / 2 / scale],
      up: [midUp - high / 2 / scale, midUp + high / 2 / scale],
    },
    /** @param {Point} point @returns {Point} on the page, to a tenth of a pixel */
    at: ([across, up]) => [
      Math.round((centre[0] + (across - midAcross) * scale) * 10) / 10,
      Math.round((centre[1] - (up - midUp) * scale) * 10) / 10,
    ],
  };
}
