/** The name of a kernel's worker that gets what Python is made of from another (start.js). */
export const HELPED = "helped";
