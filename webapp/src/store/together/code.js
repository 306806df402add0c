/**
 * What two phones show each other to join: WebRTC's offer and answer, cut down to the fields that
 * differ from one to the next, so that each fits one QR code that is readable across a table. The
 * fingerprint among them (RFC 8122) makes sure that whoever answers on the line is who was seen.
 *
 * A code, in base64url: one byte (version and which of the two), four bytes of pairing, the
 * fingerprint (SHA-256), user fragment and password of ICE (RFC 8839), and the addresses.
 * Everything else of a session description for one data channel (RFC 8841) is always the same.
 */

/**
 * @typedef {object} Described
 * @property {"offer" | "answer"} type
 * @property {string} sdp
 *
 * @typedef {object} Address
 * @property {string} host  an IPv4 or IPv6 address of the local net, or a name for mDNS
 * @property {number} port
 */

const VERSION = 1;

/** More would make the code hard to read; a phone has one or two. */
const MOST_ADDRESSES = 4;

/** RFC 8839: 4 to 256 and 22 to 256 characters; browsers use 4 to 8 and 24 to 32. */
const FRAGMENT = /^[A-Za-z0-9+/]{4,32}$/;
const PASSWORD = /^[A-Za-z0-9+/]{22,64}$/;

const MDNS = /^([\da-f]{8})-([\da-f]{4})-([\da-f]{4})-([\da-f]{4})-([\da-f]{12})\.local$/i;

/** How an address stands in a code: its kind, and its length in bytes. */
const LENGTH = /** @type {const} */ ({ mdns: 16, v4: 4, v6: 16 });
const KINDS = /** @type {(keyof typeof LENGTH)[]} */ (Object.keys(LENGTH));

/** The words of a code that is none; whoever asks turns them into a sentence. */
export class NotACode extends Error {}

/** @param {Uint8Array} bytes */
const toText = (bytes) =>
  btoa(String.fromCharCode(...bytes))
    .replaceAll("+", "-")
    .replaceAll("/", "_")
    .replaceAll("=", "");

/** @param {string} text */
function toBytes(text) {
  if (!/^[\w-]{1,600}$/.test(text)) throw new NotACode();
  try {
    const plain = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
    return Uint8Array.from(plain, (letter) => letter.charCodeAt(0));
  } catch {
    throw new NotACode();
  }
}

/** @param {string} hex */
const ofHex = (hex) => (hex.match(/../g) ?? []).map((pair) => Number.parseInt(pair, 16));

/** @param {Iterable<number>} bytes */
const inHex = (bytes) => Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0"));

/**
 * Eight groups of an IPv6 address, `::` filled in.
 * @param {string} host
 */
function groupsOf(host) {
  const [head, tail] = host.split("::").map((half) => half.split(":").filter(Boolean));
  const middle = tail ? Array(Math.max(0, 8 - head.length - tail.length)).fill("0") : [];
  const groups = [...head, ...middle, ...(tail ?? [])];
  return groups.length === 8 && groups.every((group) => /^[\da-f]{1,4}$/i.test(group))
    ? groups.map((group) => Number.parseInt(group, 16))
    : undefined;
}

/**
 * An address as bytes; nothing for one that could lead out of the local net (RFC 1918, RFC 3927,
 * RFC 4193, RFC 4291; RFC 6762 for names).
 * @param {string} host
 * @returns {{kind: keyof typeof LENGTH, bytes: number[]} | undefined}
 */
function bytesOf(host) {
  const name = MDNS.exec(host);
  if (name) return { kind: "mdns", bytes: ofHex(name.slice(1).join("")) };
  if (/^\d{1,3}(\.\d{1,3}){3}$/.test(host)) {
    const bytes = host.split(".").map(Number);
    return isLocal4(bytes) ? { kind: "v4", bytes } : undefined;
  }
  const groups = groupsOf(host);
  if (!groups) return undefined;
  const bytes = groups.flatMap((group) => [group >> 8, group & 255]);
  return isLocal6(bytes) ? { kind: "v6", bytes } : undefined;
}

/** @param {ArrayLike<number>} bytes */
function isLocal4(bytes) {
  const [a, b] = [bytes[0], bytes[1]];
  const within = Array.from(bytes).every((byte) => byte >= 0 && byte <= 255);
  return (
    within &&
    (a === 10 ||
      a === 127 ||
      (a === 172 && b >= 16 && b < 32) ||
      (a === 192 && b === 168) ||
      (a === 169 && b === 254))
  );
}

/** @param {ArrayLike<number>} bytes */
function isLocal6(bytes) {
  const loopback = Array.from(bytes).every((byte, at) => byte === (at === 15 ? 1 : 0));
  return (
    loopback || (bytes[0] & 0xfe) === 0xfc || (bytes[0] === 0xfe && (bytes[1] & 0xc0) === 0x80)
  );
}

/**
 * @param {keyof typeof LENGTH} kind
 * @param {Uint8Array} bytes
 */
function hostOf(kind, bytes) {
  if (kind === "v4") {
    if (!isLocal4(bytes)) throw new NotACode();
    return bytes.join(".");
  }
  const hex = inHex(bytes).join("");
  if (kind === "mdns") return `${hex.replace(/^(.{8})(.{4})(.{4})(.{4})/, "$1-$2-$3-$4-")}.local`;
  if (!isLocal6(bytes)) throw new NotACode();
  return (hex.match(/.{4}/g) ?? []).map((group) => group.replace(/^0{1,3}/, "")).join(":");
}

/** The addresses of a description that a phone in the same net can reach. @param {string} sdp */
function addressesOf(sdp) {
  /** @type {Address[]} */
  const found = [];
  for (const line of sdp.split(/\r?\n/)) {
    const [, proto, host, port, type] =
      /^a=candidate:\S+ 1 (\S+) \d+ (\S+) (\d+) typ (\S+)/.exec(line) ?? [];
    if (proto?.toLowerCase() !== "udp" || type !== "host" || !bytesOf(host)) continue;
    if (found.some((one) => one.host === host && one.port === Number(port))) continue;
    found.push({ host, port: Number(port) });
  }
  return found.slice(0, MOST_ADDRESSES);
}

/**
 * @param {string} sdp
 * @param {string} name
 */
const lineOf = (sdp, name) => new RegExp(`^a=${name}:(.*?)\r?$`, "m").exec(sdp)?.[1].trim() ?? "";

/**
 * The code of a description that a browser made.
 * @param {Described} described
 * @param {string} pairing  which invitation it belongs to: eight hexadecimal digits
 * @returns {string}
 * @throws {NotACode} where the description lacks something
 */
export function packed({ type, sdp }, pairing) {
  const fragment = lineOf(sdp, "ice-ufrag");
  const password = lineOf(sdp, "ice-pwd");
  const fingerprint = /^sha-256 ((?:[\da-f]{2}:){31}[\da-f]{2})$/i.exec(lineOf(sdp, "fingerprint"));
  if (!FRAGMENT.test(fragment) || !PASSWORD.test(password) || !fingerprint) throw new NotACode();
  const words = [fragment, password].flatMap((word) => [
    word.length,
    ...Array.from(word, (letter) => letter.charCodeAt(0)),
  ]);
  const addresses = addressesOf(sdp).flatMap(({ host, port }) => {
    const at = /** @type {{kind: keyof typeof LENGTH, bytes: number[]}} */ (bytesOf(host));
    return [KINDS.indexOf(at.kind), ...at.bytes, port >> 8, port & 255];
  });
  return toText(
    Uint8Array.from([
      (VERSION << 1) | (type === "answer" ? 1 : 0),
      ...ofHex(pairing),
      ...ofHex(fingerprint[1].replaceAll(":", "")),
      ...words,
      ...addresses,
    ]),
  );
}

/**
 * What a code says, as the browser takes it.
 * @param {string} code
 * @returns {Described & {pairing: string}}
 * @throws {NotACode} what is cut off, of a later version, or leads out of the local net
 */
export function unpacked(code) {
  const bytes = toBytes(code);
  let at = 0;
  const take = (/** @type {number} */ count) => {
    if (at + count > bytes.length) throw new NotACode();
    at += count;
    return bytes.subarray(at - count, at);
  };
  const word = (/** @type {RegExp} */ form) => {
    const text = String.fromCharCode(...take(take(1)[0]));
    if (!form.test(text)) throw new NotACode();
    return text;
  };
  const [head] = take(1);
  if (head >> 1 !== VERSION) throw new NotACode();
  const type = head & 1 ? "answer" : "offer";
  const pairing = inHex(take(4)).join("");
  const fingerprint = inHex(take(32)).join(":").toUpperCase();
  const fragment = word(FRAGMENT);
  const password = word(PASSWORD);
  /** @type {Address[]} */
  const addresses = [];
  while (at < bytes.length) {
    const kind = KINDS[take(1)[0]];
    if (!kind || addresses.length === MOST_ADDRESSES) throw new NotACode();
    const host = hostOf(kind, take(LENGTH[kind]));
    const [high, low] = take(2);
    addresses.push({ host, port: (high << 8) | low });
  }
  return { type, pairing, sdp: described({ type, fingerprint, fragment, password, addresses }) };
}

/**
 * @param {{type: "offer" | "answer", fingerprint: string, fragment: string, password: string,
 *   addresses: Address[]}} fields
 */
function described({ type, fingerprint, fragment, password, addresses }) {
  const lines = [
    "v=0",
    "o=- 1 1 IN IP4 127.0.0.1",
    "s=-",
    "t=0 0",
    "a=group:BUNDLE 0",
    "m=application 9 UDP/DTLS/SCTP webrtc-datachannel",
    "c=IN IP4 0.0.0.0",
    `a=ice-ufrag:${fragment}`,
    `a=ice-pwd:${password}`,
    "a=ice-options:trickle",
    `a=fingerprint:sha-256 ${fingerprint}`,
    `a=setup:${type === "offer" ? "actpass" : "active"}`,
    "a=mid:0",
    "a=sctp-port:5000",
    "a=max-message-size:65536",
    // The first is the one that the browser would take first.
    ...addresses.map(
      ({ host, port }, i) =>
        `a=candidate:${i + 1} 1 udp ${2_113_937_151 - 256 * i} ${host} ${port} typ host`,
    ),
  ];
  return `${lines.join("\r\n")}\r\n`;
}

/** A name for an invitation. */
export const newPairing = () => inHex(crypto.getRandomValues(new Uint8Array(4))).join("");
