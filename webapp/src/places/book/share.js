/** Share the book, or one thing of it: as a file, a link, QR codes, tables or spectra. */
import { html, nothing } from "lit";
import "../../parts/boot-progress.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { stamp } from "../../clock.js";
import { segments } from "../../parts/inputs.js";
import { shareText } from "../../parts/share-text.js";
import { say } from "../../parts/toast.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { book, inDemo, reportFault, settings } from "../../store/index.js";
import { ownKits } from "../../store/kit/own-kits.js";
import { bookQuestion } from "../../store/questions/reading.js";
import { listStyle, t } from "../../words/index.js";
import { listed } from "../../words/isolated.js";
import { count, toTenth } from "../../words/numbers.js";
import { fileOf, handOver } from "./carry.js";
import { qrCode, roomFor } from "./qr-code.js";

/** @typedef {import("./carry.js").Written} Written */

/** What may stay here. */
const LEAVABLE = /** @type {const} */ (["photos", "position", "notes", "who"]);

/** A name that every file system takes. @param {string} name */
const plainName = (name) =>
  name
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim()
    .replaceAll(" ", "-")
    .slice(0, 60) || "book";

/** The address that opens a link in the app, wherever it is hosted. */
const address = (/** @type {string} */ link) => `${location.href.split("#")[0]}#copy=${link}`;

/** How wide a code is drawn at most, in px (see .code in styles.css). */
const WIDEST = 416;

class ShareView extends Page {
  static properties = properties({
    given: ["id", "only"],
    own: [
      "ready",
      "link",
      "codes",
      "shown",
      "table",
      "spectrumFiles",
      "problem",
      "separator",
      "without",
      "kits",
    ],
  });

  constructor() {
    super();
    this.id = "";
    /** What alone goes along: hang cards, or "" for all. @type {string} */
    this.only = "";
    /** The book's file, written and read back. @type {{file: File, count: number, sha256: string} | null} */
    this.ready = null;
    /** @type {import("../../kernel/answers.js").BookLink | null} */
    this.link = null;
    /** @type {string[]} */
    this.codes = [];
    /** Which code of a series is on screen. */
    this.shown = 0;
    /** @type {File | null} */
    this.table = null;
    /** TM-27 documents, one a spectrum. @type {File[]} */
    this.spectrumFiles = [];
    /** @type {"comma" | "semicolon"} */
    this.separator = listStyle();
    this.problem = "";
    /** What is left out. @type {string[]} */
    this.without = [];
    /** Whether the person's own kits go along. */
    this.kits = false;
    /** How much each makes the link longer, as far as it was told. @type {Record<string, any>} */
    this.takes = {};
    this.made = "";
    this.watch = new Watch(this, book, settings);
  }

  /** What everything here is made from. */
  get state() {
    return [book.version, this.only, this.kits, ...this.without].join(" ");
  }

  get thing() {
    return book.thing(this.id);
  }

  get name() {
    return plainName(this.thing?.data.name ?? t("share.wholeName"));
  }

  willUpdate() {
    if (this.made === this.state) return;
    // Made again when the book changes, so that what is shared is what is on screen.
    this.made = this.state;
    this.ready = null;
    this.link = null;
    this.codes = [];
    this.spectrumFiles = [];
    this.make().catch((error) => {
      this.problem = error instanceof Error ? error.message : String(error);
    });
  }

  /** The book as the kernel takes it; one thing goes as it stands, without its history. */
  get question() {
    const { id, ids, without } = this;
    if (!id) return { book: bookQuestion() };
    if (this.only) return { book: bookQuestion(id), of: id, only: this.only };
    const kits = ids.slice(1);
    return { book: bookQuestion(...ids), of: id, without, ...(kits.length ? { kits } : {}) };
  }

  async make() {
    this.problem = "";
    if (book.size === 0) return;
    const made = this.state;
    const ready = await this.writeFile();
    if (made !== this.state) return;
    this.ready = ready;
    await this.writeTable();
    await this.writeSpectra();
    if (!this.id) return;
    const link = await this.askHere({ ask: "book_link", ...this.question, size: this.room });
    if (link.problem) this.problem = link.problem.message;
    else if (made === this.state) {
      this.takes = { ...this.takes, ...link.takes };
      this.link = link;
    }
  }

  /** Write the file, read it back from what was written, and have the kernel check that. */
  async writeFile() {
    const written = await this.askHere({
      ask: "book_check",
      ...(this.without.length || this.only ? this.question : { book: bookQuestion(...this.ids) }),
      give: "text",
    });
    if (written.problem) throw new Error(written.problem.message);
    const day = stamp().slice(0, 10);
    const file = fileOf({
      name: `${this.name}-${day}.json`,
      media_type: "application/json",
      text: written.text ?? "",
    });
    const again = await this.askHere({ ask: "book_check", book: await file.text() });
    if (again.problem) throw new Error(again.problem.message);
    if (again.count !== written.count || again.sha256 !== written.sha256) {
      throw new Error(t("share.differs"));
    }
    return { file, count: again.count, sha256: again.sha256 };
  }

  /** Own kits that may go along with what is shared. */
  get others() {
    return this.thing?.kind === "kit" ? [] : ownKits();
  }

  /** What is shared, and what goes along with it. */
  get ids() {
    if (!this.id) return [];
    return [this.id, ...(this.kits ? this.others.map((kit) => kit.id) : [])];
  }

  async writeTable() {
    const table = await this.askHere({ ask: "book_csv", ...this.question, style: this.separator });
    if (table.problem) throw new Error(table.problem.message);
    this.table = fileOf({ name: `${this.name}.csv`, media_type: "text/csv", text: table.text });
  }

  /** How many characters of a link one code holds on this screen. */
  get room() {
    return roomFor(Math.min(this.clientWidth, WIDEST)) - address("").length;
  }

  /** @param {File[]} files @returns {Promise<boolean>} whether they were handed over */
  async hand(files) {
    const how = await handOver(files);
    if (how === "downloaded") say(t("share.downloaded", { name: files[0].name }));
    return how !== "cancelled";
  }

  async handFile() {
    const { ready } = this;
    if (!ready || !(await this.hand([ready.file]))) return;
    if (this.id) return;
    const { sha256 } = ready;
    await settings.set("backup", { at: stamp(), count: ready.count, sha256 });
  }

  async writeSpectra() {
    const spectra = this.spectra();
    if (spectra.length === 0) return;
    const created = stamp().slice(0, 19);
    const written = await this.askHere({ ask: "write", format: "tm27", spectra, created });
    if (written.problem) throw new Error(written.problem.message);
    this.spectrumFiles = written.files.map(fileOf);
  }

  /** The spectra of the readings that stand, named after their lights. */
  spectra() {
    const entries = book.part(this.id || undefined);
    const readings = new Set(entries.filter((one) => one.thing === "reading").map((one) => one.of));
    return [...readings].flatMap((id) => {
      const reading = book.standing(id);
      const spectrum = reading?.data.spectrum;
      if (!spectrum) return [];
      const { wavelengths_nm, values } = spectrum;
      return [{ name: book.thing(reading.parent)?.data.name ?? "", wavelengths_nm, values }];
    });
  }

  /** All of a setup, or what the crew needs to hang it. */
  renderOnly() {
    if (this.thing?.kind !== "setup") return nothing;
    return segments({
      name: "share-only",
      legend: t("share.what"),
      value: this.only,
      options: { "": t("share.all"), hang: t("hang.title") },
      onChange: (only) => {
        this.only = only;
      },
    });
  }

  renderAlong() {
    if (this.only) {
      return html`<p class="hint">${t("share.onlyHang")}</p>
        <p role="status">${this.link ? t("share.size", this.#size(this.link.size)) : t("share.writing")}</p>`;
    }
    const names = LEAVABLE.filter((name) => this.takes[name]);
    const kits = this.others;
    if (!names.length && !kits.length) return nothing;
    return html`<fieldset>
      <legend>${t("share.along")}</legend>
      ${names.map(
        (name) => html`<label class="check">
          <input
            type="checkbox"
            .checked=${!this.without.includes(name)}
            @change=${() => {
              this.without = this.without.includes(name)
                ? this.without.filter((one) => one !== name)
                : [...this.without, name];
            }}
          />
          <span>
            ${t(`share.${name}`)}
            <span class="hint">${t("share.takes", this.#size(this.takes[name]))}</span>
          </span>
        </label>`,
      )}
      ${
        kits.length
          ? html`<label class="check">
              <input
                type="checkbox"
                .checked=${this.kits}
                @change=${() => {
                  this.kits = !this.kits;
                }}
              />
              <span>
                ${t("share.kits")}
                <span class="hint">${listed(kits.map((kit) => kit.data.name))}</span>
              </span>
            </label>`
          : nothing
      }
      <p class="hint">${t("share.alongHint")}</p>
      <p role="status">${this.link ? t("share.size", this.#size(this.link.size)) : t("share.writing")}</p>
    </fieldset>`;
  }

  #size({ kB, codes } = { kB: 0, codes: 0 }) {
    return { kB: toTenth(kB), n: codes };
  }

  async copyLink() {
    if (!this.link) return;
    const name = this.thing?.data.name ?? "";
    await shareText(name, address(this.link.link), t("share.linkCopied"));
  }

  async makeCodes() {
    const answer = await this.askHere({ ask: "book_parts", ...this.question, size: this.room });
    if (answer.problem) throw new Error(answer.problem.message);
    this.codes = answer.parts;
    this.shown = 0;
    await this.updateComplete;
    this.querySelector(".codes")?.scrollIntoView();
  }

  renderCodes() {
    const { codes, shown } = this;
    if (codes.length === 0) {
      return html`<button type="button" @click=${() => this.makeCodes().catch(reportFault)}>
        ${t("share.showCodes")}
      </button>`;
    }
    const n = shown + 1;
    const turn = (/** @type {number} */ by) => () => {
      this.shown = (shown + by + codes.length) % codes.length;
    };
    return html`
      <div class="codes">
        <div class="actions">
          <p role="status">${t("share.code", { n, all: codes.length })}</p>
          ${
            codes.length > 1
              ? html`<button type="button" @click=${turn(-1)}>${t("share.codeBefore")}</button>
                  <button type="button" class="main" @click=${turn(1)}>
                    ${t("share.codeNext")}
                  </button>`
              : nothing
          }
        </div>
        ${qrCode(address(codes[shown]), t("share.code", { n, all: codes.length }))}
      </div>
    `;
  }

  render() {
    const { ready, link, thing } = this;
    const run = (/** @type {() => Promise<unknown>} */ work) => () => work().catch(reportFault);
    const spectra = this.spectrumFiles.length;
    if (this.id && !thing) {
      return html`<h1>${t("share.title")}</h1><p class="empty">${t("book.gone")}</p>`;
    }
    if (book.size === 0) {
      return html`<h1>${t("share.title")}</h1><p class="empty">${t("book.empty")}</p>`;
    }
    return html`
      <h1>${t("share.title")}: ${thing?.data.name ?? t("share.whole")}</h1>
      <p>${t("share.privacy")}</p>
      <ek-boot-progress></ek-boot-progress>
      ${problemNote(this.problem || undefined)}
      ${this.id ? [this.renderOnly(), this.renderAlong()] : nothing}
      ${
        this.id
          ? html`<section>
                <h2>${t("share.link")}</h2>
                <p class="hint">${t("share.linkWords")}</p>
                ${warningList(link?.warnings)}
                <button
                  type="button"
                  class="main"
                  ?disabled=${!link}
                  @click=${run(() => this.copyLink())}
                >
                  ${t("share.sendLink")}
                </button>
              </section>
              <section>
                <h2>${t("share.codes")}</h2>
                <p class="hint">${t("share.codesWords")}</p>
                ${this.renderCodes()}
              </section>`
          : nothing
      }
      <section>
        <h2>${t("share.file")}</h2>
        ${
          ready
            ? html`<p class="hint hash" data-testid="read-back">
                ${t("share.readBack", { n: ready.count, hash: ready.sha256.slice(0, 12) })}
              </p>`
            : html`<p class="hint" role="status">${t("share.writing")}</p>`
        }
        <button
          type="button"
          class=${this.id ? "" : "main"}
          ?disabled=${!ready}
          @click=${run(() => this.handFile())}
        >
          ${t("share.sendFile")}
        </button>
        ${this.id || inDemo() ? nothing : html`<p class="hint">${t("share.backup")}</p>`}
      </section>
      <section>
        <h2>${t("share.table")}</h2>
        ${segments({
          name: "table-style",
          legend: t("share.tableStyle"),
          value: this.separator,
          options: { comma: t("share.comma"), semicolon: t("share.semicolon") },
          onChange: (style) => {
            this.separator = /** @type {"comma"} */ (style);
            this.table = null;
            this.writeTable().catch(reportFault);
          },
        })}
        <button
          type="button"
          ?disabled=${!this.table}
          @click=${run(async () => this.table && this.hand([this.table]))}
        >
          ${t("share.sendTable")}
        </button>
        ${
          spectra
            ? html`<button type="button" @click=${run(() => this.hand(this.spectrumFiles))}>
                ${t("share.spectra", { n: count(spectra) })}
              </button>`
            : nothing
        }
      </section>
    `;
  }
}
customElements.define("ek-share", ShareView);
