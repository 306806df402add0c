// The web app's side of the kernel: a promise for each question. Questions wait here, not in the
// worker, so that one no longer wanted can be dropped; the worker holds one at a time. Python in
// the worker cannot be interrupted: where an abandoned question keeps others waiting for longer
// than a fresh worker needs to start, and two seconds at least, a fresh one takes over.
import { inOurWords, language, t } from "../words/index.js";
import { turns } from "../words/isolated.js";
import { startKernel } from "./start.js";

/**
 * @typedef {{stage: "runtime" | "packages" | "kernel" | "ready" | "failed", part: number,
 *            words: string}} StageReport
 * @typedef {import("./answers.js").Ask} Ask
 * @typedef {{id: number, request: string, forms: boolean, tries: number, wanted: boolean,
 *            resolve: (answer: unknown) => void, reject: (reason: unknown) => void}} Waiting
 */

/** A question that brings the worker down is asked once more of a fresh one, then given up. */
const MOST_TRIES = 2;
/** A browser may end a worker without a word. No honest answer takes so long. */
const MOST_WAIT = 120_000; // ms

/** @type {Worker | undefined} */
let worker;
/** @type {StageReport} */
let report = { stage: "runtime", part: 0, words: "" };
/** @type {Set<(report: StageReport) => void>} */
const listeners = new Set();
/** @type {Waiting[]} */
const waiting = [];
/** @type {Waiting | undefined} */
let current;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let overdue;
let lastId = 0;
/** The longest search of a set takes about so long at desk speed: it is let finish. */
const LEAST_PATIENCE = 2000; // ms
/** When the worker was started, and how long the last one took until it answered, in ms. */
let started = 0;
let startTook = 0;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let patience;

/** @param {StageReport} next */
function setReport(next) {
  report = next;
  for (const listener of listeners) listener(report);
}

function start() {
  if (worker) return;
  setReport({ stage: "runtime", part: 0, words: "" });
  started = performance.now();
  worker = startKernel();
  worker.onmessage = ({ data }) => {
    if (data.stage) setReport({ ...data, words: "" });
    else if (data.fatal !== undefined) fail(data.fatal, data.booting);
    else settle(data);
    if (data.stage === "ready") {
      startTook = performance.now() - started;
      next();
    }
  };
  worker.onerror = (event) => {
    event.preventDefault();
    fail(event.message || t("kernel.fileMissing"), report.stage !== "ready");
  };
}

function stop() {
  clearTimeout(overdue);
  keepWorker();
  worker?.terminate();
  worker = undefined;
}

function next() {
  if (current || report.stage !== "ready") {
    replaceWorkerSoon();
    return;
  }
  current = waiting.shift();
  if (!current) return;
  current.tries += 1;
  worker?.postMessage({ id: current.id, request: current.request, forms: current.forms });
  clearTimeout(overdue);
  overdue = setTimeout(() => current && fail(t("kernel.noAnswer"), false), MOST_WAIT);
}

function keepWorker() {
  clearTimeout(patience);
  patience = undefined;
}

/** An abandoned question may keep others waiting only for as long as a fresh worker would. */
function replaceWorkerSoon() {
  if (patience || !current || current.wanted || waiting.length === 0) return;
  patience = setTimeout(
    () => {
      stop();
      current = undefined;
      start();
    },
    Math.max(startTook, LEAST_PATIENCE),
  );
}

/** @param {{id: number, answer?: string, stumbled?: string, memory?: boolean}} told */
function settle({ id, answer, stumbled, memory }) {
  if (current?.id !== id) return;
  keepWorker();
  const { forms, resolve } = current;
  if (answer === undefined) {
    resolve(
      problem(memory ? t("kernel.noMemory") : t("kernel.stumbled", { words: stumbled ?? "" })),
    );
  } else {
    // English comes as plain text, which costs nothing.
    resolve(forms ? inOurWords(JSON.parse(answer)) : JSON.parse(answer));
  }
  current = undefined;
  next();
}

/**
 * The worker is lost: while booting that is told and left to the person ({@link restart}); later
 * a fresh worker takes over and the unanswered question is asked again.
 * @param {string} words
 * @param {boolean} booting
 */
function fail(words, booting) {
  stop();
  const lost = current;
  current = undefined;
  if (lost?.wanted && lost.tries < MOST_TRIES) waiting.unshift(lost);
  else lost?.resolve(problem(t("kernel.gaveUp", { words })));
  if (booting) {
    const sentence = t("kernel.noStart", { words });
    setReport({ stage: "failed", part: 0, words: sentence });
    for (const question of waiting.splice(0)) question.resolve(problem(sentence));
  } else {
    start();
  }
}

/** @param {string} message */
const problem = (message) => ({ problem: { field: "", message } });

/**
 * Ask the kernel. The answer is plain data, or `{problem: {field, line?, message}}`.
 * @template {Ask} A
 * @param {import("./answers.js").Question<A>} request
 * @param {{signal?: AbortSignal}} [options] an aborted question that has not started is dropped;
 *   either way its promise rejects with an AbortError
 * @returns {Promise<import("./answers.js").Reply<A>>}
 */
export function ask(request, { signal } = {}) {
  return new Promise((resolve, reject) => {
    if (signal?.aborted) {
      reject(signal.reason);
      return;
    }
    if (report.stage === "failed") {
      resolve(/** @type {import("./answers.js").Refused<A>} */ (problem(report.words)));
      return;
    }
    lastId += 1;
    const text = JSON.stringify(request);
    /** @type {Waiting} */
    const question = {
      id: lastId,
      request: text,
      // English comes whole, unless a name in it has to be set apart from the words around it.
      forms: language() !== "en" || turns(text),
      tries: 0,
      wanted: true,
      resolve: (answer) => resolve(/** @type {import("./answers.js").Reply<A>} */ (answer)),
      reject,
    };
    signal?.addEventListener("abort", () => {
      const place = waiting.indexOf(question);
      if (place >= 0) waiting.splice(place, 1);
      question.wanted = false;
      reject(signal.reason);
      replaceWorkerSoon();
    });
    waiting.push(question);
    start();
    next();
  });
}

/**
 * Follow the boot; the listener is called at once with the present stage.
 * @param {(report: StageReport) => void} listener
 * @returns {() => void} call it to stop following
 */
export function onStage(listener) {
  listeners.add(listener);
  listener(report);
  return () => listeners.delete(listener);
}

/**
 * Start the kernel if need be, and wait until it answers.
 * @returns {Promise<void>} rejects with the reason when it cannot start
 */
export function ready() {
  if (report.stage !== "failed") start();
  return new Promise((resolve, reject) => {
    const leave = onStage(({ stage, words }) => {
      if (stage !== "ready" && stage !== "failed") return;
      queueMicrotask(() => leave());
      if (stage === "ready") resolve();
      else reject(new Error(words));
    });
  });
}

/** Try again after the stage `failed`. */
export function restart() {
  stop();
  start();
}
