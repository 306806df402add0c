/**
 * Files that were brought in and are being looked at: what the kernel understood of each, and
 * what the person decides about it. Nothing here is in the book yet. Fires "change".
 */
import { stamp } from "../../clock.js";
import { ask } from "../../kernel/client.js";
import { t } from "../../words/index.js";
import { base64, doorOf, isBook } from "./door.js";

/** The largest file that is handed to the kernel; it says the same of larger ones. */
const MOST_BYTES = 4_000_000;
/** Of files that are looked at one after the other, so often the screen is told, in ms. */
const TOLD_EVERY = 200;

/**
 * @typedef {object} Item  one thing that a file holds
 * @property {"light" | "gel" | "surface" | "camera"} kind
 * @property {string} name       as it is to be called
 * @property {boolean} chosen
 * @property {string} of         id of the light that was read, "" for a new one
 * @property {{wavelengths_nm: number[], values: number[]} | null} curve
 * @property {any} data           a reading's fields, a gel, or a camera
 * @property {string[]} notes
 * @property {any} [white]       the kernel's "describe" of a light
 * @property {string} [problem]  why it cannot be used
 * @property {boolean} [titled]  whether the file itself says what the light is called
 */

/**
 * @typedef {object} InFile
 * @property {number} key
 * @property {string} name
 * @property {Record<string, string>} bytes  as the kernel is asked: text or bytes_base64
 * @property {Record<string, string>} choices
 * @property {string} modified  the day the file was written, for one that says the hour alone
 * @property {boolean} waiting
 * @property {File | string} [book]  what turned out to be somebody's book, for the door of books
 * @property {any} [answer]
 * @property {Item[]} items
 * @property {{message: string, line?: number}[]} problems
 */

class Incoming extends EventTarget {
  /** @type {InFile[]} */ files = [];
  #last = 0;

  /** @type {ReturnType<typeof setTimeout> | undefined} */ #soon;

  #change() {
    clearTimeout(this.#soon);
    this.#soon = undefined;
    this.dispatchEvent(new Event("change"));
  }

  /** To draw a long list anew for each of its files would take longer than to read them. */
  #changeSoon() {
    if (this.looked === this.files.length) this.#change();
    else this.#soon ??= setTimeout(() => this.#change(), TOLD_EVERY);
  }

  /**
   * @param {string} name
   * @param {Record<string, string>} choices
   * @param {string} [modified]
   * @returns {InFile}
   */
  #add(name, choices, modified = stamp()) {
    this.#last += 1;
    /** @type {InFile} */
    const file = {
      key: this.#last,
      name,
      bytes: {},
      choices,
      modified: modified.slice(0, 10),
      waiting: true,
      items: [],
      problems: [],
    };
    this.files = [...this.files, file];
    return file;
  }

  /**
   * Read files and have the kernel look at them, one after the other.
   * @param {Iterable<File>} files
   * @param {Record<string, string>} [choices]
   */
  async take(files, choices = {}) {
    const taken = [...files].map((file) => ({
      file,
      entry: this.#add(file.name, choices, stamp(new Date(file.lastModified))),
    }));
    this.#change();
    for (const { file, entry } of taken) {
      if (!this.files.includes(entry)) continue; // dropped, or stopped
      if (await this.#belongsElsewhere(entry, file)) continue;
      if (file.size > MOST_BYTES) {
        this.#refuse(entry, t("files.tooLarge"));
        continue;
      }
      try {
        entry.bytes = { bytes_base64: await base64(file) };
      } catch {
        this.#refuse(entry, t("files.unreadable"));
        continue;
      }
      await this.#look(entry);
    }
  }

  /** @param {string} text pasted */
  async takeText(text) {
    const entry = this.#add(t("files.pasted"), {});
    entry.bytes = { text };
    this.#change();
    if (!(await this.#belongsElsewhere(entry, text))) await this.#look(entry);
  }

  /** @param {InFile} entry @param {File | string} brought */
  async #belongsElsewhere(entry, brought) {
    try {
      const door = await doorOf(brought);
      if (!isBook(door)) return false;
      entry.book = brought;
    } catch {
      this.#refuse(entry, t("files.unreadable"));
      return true;
    }
    entry.waiting = false;
    this.#change();
    return true;
  }

  /** @param {InFile} entry @param {string} message */
  #refuse(entry, message) {
    entry.waiting = false;
    entry.problems = [{ message }];
    this.#change();
  }

  /** @param {InFile} entry */
  async #look(entry) {
    const { choices } = entry;
    const question = {
      ...entry.bytes,
      choices,
      ...(entry.bytes.text ? {} : { file_name: entry.name }),
    };
    const answer = await ask({ ask: "import", ...question });
    if (entry.choices !== choices) return;
    if (answer.problem) {
      this.#refuse(entry, answer.problem.message);
      return;
    }
    entry.answer = answer;
    entry.problems = answer.problems;
    entry.items = [
      ...answer.spectra.map((/** @type {any} */ found) =>
        found.quantity === "transmittance" ? asGel(found) : asLight(found, entry),
      ),
      ...answer.cameras.map(asCamera),
      ...(answer.readings ?? []).map((/** @type {any} */ reading) => asReading(reading, entry)),
    ];
    entry.waiting = false;
    this.#changeSoon();
  }

  /**
   * What several files leave open alike, to be asked once.
   * @returns {{question: any, files: InFile[]}[]}
   */
  get shared() {
    /** @type {Map<string, {question: any, files: InFile[]}>} */
    const found = new Map();
    for (const file of this.files) {
      for (const question of file.answer?.questions ?? []) {
        const key = `${question.field} ${question.taken}`;
        const one = found.get(key) ?? { question, files: [] };
        one.files.push(file);
        found.set(key, one);
      }
    }
    return [...found.values()].filter(({ files }) => files.length > 1);
  }

  /** Decide for all files that ask it. @param {InFile[]} files @param {string} field @param {string} value */
  async decideAll(files, field, value) {
    for (const file of files) {
      file.choices = { ...file.choices, [field]: value };
      file.waiting = true;
    }
    this.#change();
    for (const file of files) await this.#look(file);
  }

  /** @param {Item} item @param {Partial<Item>} fields */
  change(item, fields) {
    Object.assign(item, fields);
    this.#change();
  }

  /** Those the person wants, of one kind. @param {Item["kind"]} kind */
  chosen(kind) {
    return this.files
      .flatMap((file) => (file.waiting ? [] : file.items))
      .filter((item) => item.kind === kind && item.chosen);
  }

  /** Take away what was used. @param {Item[]} items */
  done(items) {
    const used = new Set(items);
    this.files = this.files.flatMap((file) => {
      const left = file.items.filter((item) => !used.has(item));
      const whole = left.length === file.items.length;
      file.items = left;
      return left.length || whole ? [file] : [];
    });
    this.#change();
  }

  /** How many were looked at so far. */
  get looked() {
    return this.files.filter(({ waiting }) => !waiting).length;
  }

  /** Those not looked at yet are not looked at. @returns {number} how many those are */
  stop() {
    const left = this.files.length - this.looked;
    this.files = this.files.filter(({ waiting }) => !waiting);
    this.#change();
    return left;
  }

  /** @param {InFile} [entry] one file, or all */
  drop(entry) {
    this.files = entry ? this.files.filter((file) => file !== entry) : [];
    this.#change();
  }
}

/**
 * What a file says beside the colour, as a reading keeps it. A time without a zone is one of this
 * phone's clock.
 * @param {any} stated
 * @param {InFile} file
 */
function logged({ title: _, date, time, zone, ...about }, file) {
  if (!time) return about;
  const at = `${date ?? file.modified}T${time}.000`;
  return { ...about, read_at: `${at}${zone ?? stamp(new Date(at)).slice(-6)}` };
}

/** @param {any} found @param {InFile} file @returns {Item} */
function asLight(found, file) {
  const { name, wavelengths_nm, values, quantity, understood, stated, white, problem } = found;
  const curve = { wavelengths_nm, values };
  const isLight = quantity === "light";
  return {
    kind: isLight ? "light" : "surface",
    name,
    chosen: isLight && !problem,
    of: "",
    curve,
    data: { spectrum: curve, file: file.name, ...logged(stated, file) },
    notes: understood.notes,
    white,
    titled: Boolean(stated.title),
    problem: problem?.message,
  };
}

/** @param {any} reading @param {InFile} file @returns {Item} */
function asReading({ name, line: _, white, problem, stated, ...data }, file) {
  return {
    kind: "light",
    name,
    chosen: !problem,
    of: "",
    curve: null,
    data: { ...data, file: file.name, ...logged(stated ?? {}, file) },
    notes: [],
    white,
    titled: Boolean(name),
    problem: problem?.message,
  };
}

/** @param {any} found @returns {Item} */
function asGel({ name, wavelengths_nm, values, understood, gel: learned, problem }) {
  const gel = learned?.gel;
  return {
    kind: "gel",
    name: gel?.name ?? name,
    chosen: Boolean(gel),
    of: "",
    curve: gel
      ? { wavelengths_nm: gel.wavelengths_nm, values: gel.transmittance }
      : { wavelengths_nm, values },
    data: gel,
    notes: learned?.warnings ?? understood.notes,
    problem: problem?.message,
  };
}

/** @param {any} found @returns {Item} */
function asCamera({ problem, ...camera }) {
  return {
    kind: "camera",
    name: camera.name,
    chosen: !problem,
    of: "",
    curve: { wavelengths_nm: camera.wavelengths_nm, values: camera.green },
    data: camera,
    notes: [],
    problem: problem?.message,
  };
}

export const incoming = new Incoming();
