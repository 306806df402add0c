/** The kinds of lamp that the kernel has a stand-in spectrum for, in the order they are offered. */
export const LAMPS = /** @type {const} */ ([
  "unknown",
  "tungsten",
  "daylight",
  "hmi",
  "fluorescent",
  "led",
  "led rgb",
  "plasma",
  "mercury",
  "sodium",
  "flash",
]);
