// The codes by which phones join: small, whole again, and closed to whatever leads out of the net.
import assert from "node:assert/strict";
import { test } from "node:test";
import encodeQR from "../../webapp/node_modules/qr/index.js";
import { NotACode, packed, unpacked } from "../../webapp/src/store/together/code.js";
import { chance } from "./chance.mjs";

const by = chance(7);
const upTo = (n) => Math.floor(by() * n);
const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const word = (length) => Array.from({ length }, () => LETTERS[upTo(64)]).join("");
const hex = (length) => Array.from({ length }, () => upTo(16).toString(16)).join("");

const HOSTS = [
  () => `${hex(8)}-${hex(4)}-${hex(4)}-${hex(4)}-${hex(12)}.local`,
  () => `192.168.${upTo(256)}.${upTo(256)}`,
  () => `10.${upTo(256)}.${upTo(256)}.${upTo(256)}`,
  () => `172.${16 + upTo(16)}.${upTo(256)}.${upTo(256)}`,
  () => `fd00::${1 + upTo(9)}:${1 + upTo(9)}`,
  () => "fe80::1",
];
const OUTSIDE = ["8.8.8.8", "172.32.0.1", "192.0.2.2", "2001:db8::1", "example.local", "::"];

/** A session description as browsers write it (RFC 8829), with what a code leaves out as well. */
function description(type, hosts) {
  const candidates = hosts.flatMap(([host, port]) => [
    `a=candidate:1531659340 1 udp 2113937151 ${host} ${port} typ host generation 0 network-cost 999`,
    `a=candidate:1531659341 1 tcp 1518280447 ${host} 9 typ host tcptype active generation 0`,
    `a=candidate:1531659342 1 udp 1677729535 203.0.113.9 ${port} typ srflx raddr 0.0.0.0 rport 0`,
  ]);
  const fingerprint = hex(64).toUpperCase().match(/../g).join(":");
  return {
    type,
    sdp: [
      "v=0",
      "o=- 8723271471104968007 2 IN IP4 127.0.0.1",
      "s=-",
      "t=0 0",
      "m=application 9 UDP/DTLS/SCTP webrtc-datachannel",
      ...candidates,
      `a=ice-ufrag:${word(4 + upTo(5))}`,
      `a=ice-pwd:${word(22 + upTo(11))}`,
      `a=fingerprint:sha-256 ${fingerprint}`,
      `a=setup:${type === "offer" ? "actpass" : "active"}`,
      "",
    ].join("\r\n"),
  };
}

/** The lines that must be the same on the other side. */
const fields = (sdp) =>
  sdp.split("\r\n").filter((line) => /^a=(ice-ufrag|ice-pwd|fingerprint|setup)/.test(line));

const addresses = (sdp) =>
  [...sdp.matchAll(/^a=candidate:\S+ 1 udp \d+ (\S+) (\d+) typ host/gm)].map(
    ([, host, port]) => `${host} ${port}`,
  );

/** Every group of an IPv6 address written out. */
const whole = (at) =>
  at.replace(/^(fd00|fe80)::(\S*)/, (_, head, tail) => {
    const rest = tail.split(":");
    return [head, ...Array(7 - rest.length).fill("0"), ...rest].join(":");
  });

test("10 000 codes by chance say what the browsers said, and fit version 15 at most", () => {
  let longest = "";
  for (let n = 0; n < 10_000; n++) {
    const type = n % 2 ? "offer" : "answer";
    const hosts = Array.from({ length: upTo(5) }, () => [HOSTS[upTo(6)](), 1 + upTo(65_535)]);
    const asked = description(type, hosts);
    const pairing = hex(8);
    const code = packed(asked, pairing);
    const again = unpacked(code);
    assert.equal(again.type, type);
    assert.equal(again.pairing, pairing);
    assert.deepEqual(fields(again.sdp), fields(asked.sdp));
    const told = [...new Set(hosts.map(([host, port]) => whole(`${host} ${port}`)))];
    assert.deepEqual(addresses(again.sdp), told);
    if (code.length > longest.length) longest = code;
  }
  const address = `https://a-host-with-a-long-name.example/evenkelvin/#join=${longest}`;
  const modules = encodeQR(address, "raw", { ecc: "low", border: 1 }).length - 2;
  const version = (modules - 17) / 4;
  assert.ok(version <= 15, `version ${version}`);
});

test("no address outside the local net goes into a code, or comes out of one", () => {
  const { sdp } = unpacked(
    packed(
      description(
        "offer",
        OUTSIDE.map((host) => [host, 5000]),
      ),
      hex(8),
    ),
  );
  assert.deepEqual(addresses(sdp), []);
  const code = packed(description("offer", [["192.168.1.7", 5000]]), hex(8));
  const bytes = Buffer.from(code, "base64url");
  bytes.set([8, 8, 8, 8], bytes.indexOf(Buffer.from([192, 168, 1, 7])));
  assert.throws(() => unpacked(bytes.toString("base64url")), NotACode);
});

test("what is cut off, changed or of a later version is no code, and never another exception", () => {
  const code = packed(
    description("answer", [
      [HOSTS[0](), 4000],
      ["10.0.0.3", 4001],
    ]),
    hex(8),
  );
  const bytes = Buffer.from(code, "base64url");
  const lines = unpacked(code).sdp.split("\r\n").length - 2;
  let taken = 0;
  for (let n = 0; n < 20_000; n++) {
    const changed = Buffer.from(bytes.subarray(0, n % 3 ? undefined : upTo(bytes.length)));
    for (let each = 0; each < 1 + upTo(3) && changed.length; each++) {
      changed[upTo(changed.length)] = upTo(256);
    }
    try {
      const { sdp } = unpacked(changed.toString("base64url"));
      // A line of it never becomes two.
      assert.equal(sdp.split("\r\n").length, lines + addresses(sdp).length);
      taken += 1;
    } catch (error) {
      assert.ok(error instanceof NotACode, String(error));
    }
  }
  assert.ok(taken > 0);
  for (const text of ["", "hello", "https://example.org", "A".repeat(5000), "€", "AA=="]) {
    assert.throws(() => unpacked(text), NotACode);
  }
});

test("a description that lacks its fingerprint is refused", () => {
  const asked = description("offer", []);
  const sdp = asked.sdp.replace(/a=fingerprint.*\r\n/, "");
  assert.throws(() => packed({ ...asked, sdp }, hex(8)), NotACode);
});
