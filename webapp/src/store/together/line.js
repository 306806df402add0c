/**
 * A line between two phones in one net: WebRTC without any server. One makes an offer, the other
 * answers it; both travel as codes that the phones show each other. While the line stands, spare
 * lines are agreed over it, so that a phone that was away comes back without new codes.
 */
import { NotACode, newPairing, packed, unpacked } from "./code.js";

/** Milliseconds for a browser to find its own addresses. */
const GATHERING = 3000;

/** Bytes at which the browser asks for more to send. */
const LOW = 250_000;

/** How long each spare line is tried. */
const TRYING = 20_000;
/** Lines that are agreed ahead. */
export const SPARES = 3;

/** Whether this browser can do it at all. */
export const possible = () =>
  typeof RTCPeerConnection === "function" && Boolean(globalThis.crypto?.subtle);

/** @typedef {{connection: RTCPeerConnection, channel: RTCDataChannel, pairing: string}} Line */

/** @param {string} pairing @returns {Line} */
function open(pairing) {
  // No server of any kind: only addresses of the local net are found.
  const connection = new RTCPeerConnection({ iceServers: [] });
  const channel = connection.createDataChannel("book", { negotiated: true, id: 0 });
  channel.bufferedAmountLowThreshold = LOW;
  return { connection, channel, pairing };
}

/** @param {RTCPeerConnection} connection */
async function gathered(connection) {
  if (connection.iceGatheringState === "complete") return;
  await new Promise((resolve) => {
    const look = () => connection.iceGatheringState === "complete" && resolve(undefined);
    connection.addEventListener("icegatheringstatechange", look);
    setTimeout(resolve, GATHERING);
  });
}

/** @param {Line} line */
const codeOf = ({ connection, pairing }) =>
  packed(/** @type {any} */ (connection.localDescription), pairing);

/** @returns {Promise<Line & {code: string}>} a line that waits for its answer */
export async function offer() {
  const line = open(newPairing());
  await line.connection.setLocalDescription();
  await gathered(line.connection);
  return { ...line, code: codeOf(line) };
}

/**
 * @param {string} code  an offer's
 * @returns {Promise<Line & {code: string}>}
 * @throws {NotACode}
 */
export async function answer(code) {
  const { pairing, ...described } = unpacked(code);
  if (described.type !== "offer") throw new NotACode();
  const line = open(pairing);
  await line.connection.setRemoteDescription(described);
  await line.connection.setLocalDescription();
  await gathered(line.connection);
  return { ...line, code: codeOf(line) };
}

/**
 * Give a line its answer.
 * @param {Line} line
 * @param {string} code
 * @throws {NotACode} one that answers another offer too
 */
export async function accept(line, code) {
  const { pairing, ...described } = unpacked(code);
  if (described.type !== "answer" || pairing !== line.pairing) throw new NotACode();
  await line.connection.setRemoteDescription(described);
}

/**
 * Resolves when the channel is open.
 * @param {Line} line
 * @param {number} patience  milliseconds
 * @returns {Promise<boolean>} whether it opened in time
 */
export function opened({ channel, connection }, patience) {
  if (channel.readyState === "open") return Promise.resolve(true);
  return new Promise((resolve) => {
    const timer = setTimeout(() => resolve(false), patience);
    const end = (/** @type {boolean} */ open) => () => {
      clearTimeout(timer);
      resolve(open);
    };
    channel.addEventListener("open", end(true), { once: true });
    channel.addEventListener("close", end(false), { once: true });
    connection.addEventListener("connectionstatechange", () => {
      if (connection.connectionState === "failed") end(false)();
    });
  });
}

/** @param {Line | undefined} line */
export function hangUp(line) {
  line?.channel.close();
  line?.connection.close();
}

/**
 * The inviting side's spare lines: it keeps their answers and takes them all at once when it has
 * lost the line; the first that opens is the new one.
 */
export class Waiting {
  /** @type {(Line & {answer: string})[]} */
  lines = [];

  /** @param {(code: string) => Promise<string>} asked  gives the other's answer */
  async agree(asked) {
    for (let left = SPARES; left > 0; left--) {
      const line = await offer();
      this.lines.push({ ...line, answer: await asked(line.code) });
    }
  }

  /** @param {number} patience @returns {Promise<Line | undefined>} */
  async again(patience) {
    const { lines } = this;
    this.lines = [];
    const all = lines.map(async (line) => {
      await accept(line, line.answer);
      if (!(await opened(line, patience))) throw new Error("not opened");
      return line;
    });
    const first = await Promise.any(all).catch(() => undefined);
    for (const line of lines) if (line !== first) hangUp(line);
    return first;
  }

  drop() {
    for (const line of this.lines) hangUp(line);
    this.lines = [];
  }
}

/** The invited side's: it tries one after the other, each for a while, when it is back in the net. */
export class Trying {
  /** @type {Line[]} */
  lines = [];

  /** Answer a spare offer, without starting to look for the other yet. @param {string} code */
  async agree(code) {
    const { pairing, ...described } = unpacked(code);
    if (described.type !== "offer" || this.lines.length >= SPARES) throw new NotACode();
    const line = open(pairing);
    this.lines.push(line);
    await line.connection.setRemoteDescription(described);
    const answer = await line.connection.createAnswer();
    return packed(/** @type {any} */ (answer), pairing);
  }

  /** @param {() => Promise<void>} back  resolves when it makes sense to try */
  async again(back) {
    for (let line = this.lines.shift(); line; line = this.lines.shift()) {
      await back();
      await line.connection.setLocalDescription();
      if (await opened(line, TRYING)) {
        this.drop();
        return line;
      }
      hangUp(line);
    }
    return undefined;
  }

  drop() {
    for (const line of this.lines) hangUp(line);
    this.lines = [];
  }
}
