/**
 * The book's entries: plain data that is only ever added to. An edit or a delete is a new entry
 * that names the ones it replaces, so undo is one more entry and two books merge as a union.
 *
 * @typedef {"production" | "location" | "setup" | "light" | "reading" | "surface" | "gel" | "kit"} Kind
 *
 * @typedef {object} Entry
 * @property {string} id       22 random characters
 * @property {string} at       local time with its offset, to the millisecond
 * @property {Kind} thing
 * @property {string} of       id of the thing: the id of its first entry
 * @property {string | null} parent  id of the thing one level up
 * @property {string[]} after  ids of the entries this one replaces
 * @property {Record<string, any>} data
 * @property {boolean} [gone]
 * @property {string} [who]
 */
import { stamp } from "../../clock.js";

/** 128 random bits as 22 characters of base64url. */
export function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return btoa(String.fromCharCode(...bytes))
    .replaceAll("+", "-")
    .replaceAll("/", "_")
    .replaceAll("=", "");
}

/**
 * The first entry of a new thing.
 * @param {Kind} thing
 * @param {string | null} parent
 * @param {Record<string, any>} data
 * @returns {Entry}
 */
export function creation(thing, parent, data) {
  const id = newId();
  return { id, at: stamp(), thing, of: id, parent, after: [], data };
}

/**
 * The entry that replaces `heads` (all of one thing) with `data`.
 * @param {readonly Entry[]} heads
 * @param {Record<string, any>} data
 * @param {boolean} [gone]
 * @returns {Entry}
 */
export function replacement(heads, data, gone = false) {
  const { thing, of, parent } = heads[0];
  const entry = {
    id: newId(),
    at: stamp(),
    thing,
    of,
    parent,
    after: heads.map((e) => e.id),
    data,
  };
  return gone ? { ...entry, gone: true } : entry;
}
