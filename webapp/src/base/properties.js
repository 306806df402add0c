/** What an element is drawn from: what it is given from outside, and what it keeps to itself. */

/**
 * For an element's `static properties`; none of them is read from an attribute.
 * @param {{given?: string[], own?: string[]}} names
 * @returns {Record<string, import("lit").PropertyDeclaration>}
 */
export const properties = ({ given = [], own = [] }) =>
  Object.fromEntries([
    ...given.map((name) => [name, { attribute: false }]),
    ...own.map((name) => [name, { state: true }]),
  ]);
