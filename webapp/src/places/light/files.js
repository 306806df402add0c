/** Files: what was understood of the files brought in, to be checked before anything is kept. */
import { html, nothing } from "lit";
import { guard } from "lit/directives/guard.js";
import { repeat } from "lit/directives/repeat.js";
import { sketch } from "../../charts/sketch.js";
import { Keeping } from "../../parts/keeping.js";
import { centreOf } from "../../store/log/target.js";
import "../../parts/boot-progress.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { bringText, fileButton } from "../../parts/bring-files.js";
import { choice, optionsOf, segments } from "../../parts/inputs.js";
import { LAMPS } from "../../parts/lamp-kinds.js";
import { longWork } from "../../parts/long-work.js";
import { say, sayWithUndo } from "../../parts/toast.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { route } from "../../router.js";
import { incoming } from "../../store/drafts/incoming.js";
import { lightDraft } from "../../store/drafts/light-draft.js";
import { book, settings } from "../../store/index.js";
import { keepCamera, LONGEST_NAME } from "../../store/kit/cameras.js";
import { gels } from "../../store/kit/gels.js";
import { keepOwnGel } from "../../store/kit/own-gels.js";
import {
  currentSetup,
  isSameName,
  keepReading,
  lightNamed,
  lightsOf,
  targetToKeep,
  workInSetup,
} from "../../store/log/shoot.js";
import { visitor } from "../../store/log/visitor.js";
import { t, tMaybe } from "../../words/index.js";
import { joined } from "../../words/isolated.js";
import {
  dayOf,
  duv,
  illuminance,
  kelvin,
  mired,
  nanometres,
  stops,
  timeOfDay,
  whenRead,
} from "../../words/numbers.js";

/** @typedef {import("../../store/drafts/incoming.js").Item} Item */
/** @typedef {import("../../store/drafts/incoming.js").InFile} InFile */

/** So many lights are named one by one; of more each is opened to be renamed. */
const FEW = 4;

class FilesView extends Page {
  static properties = properties({ own: ["untitled", "setups", "lamp"] });

  constructor() {
    super();
    /** What readings without a title are. @type {"each" | "time" | "one"} */
    this.untitled = "each";
    /** How setups begin; as the kernel proposes until the person says. @type {"" | "one" | "title" | "time"} */
    this.setups = "";
    /** What lit those whose files do not say. @type {typeof LAMPS[number]} */
    this.lamp = "unknown";
    this.grouping = /** @type {LiveQuestion<"group">} */ (new LiveQuestion(this));
    this.keeping = new Keeping(this);
    this.watch = new Watch(this, incoming, book, settings, gels);
  }

  willUpdate() {
    const some = this.toGroup;
    const whole = incoming.looked === incoming.files.length;
    this.grouping.put(whole && some.length > 1 ? this.groupQuestion(some) : null);
  }

  /** Those that are not a kept light's already. */
  get toGroup() {
    return incoming.chosen("light").filter((item) => !item.of);
  }

  /** @param {Item[]} items @returns {import("../../kernel/answers.js").Question<"group">} */
  groupQuestion(items) {
    const { setups, untitled } = this;
    return {
      ask: "group",
      readings: items.map(({ titled, name, data }) => ({
        title: titled ? name : "",
        at: data.read_at ?? "",
      })),
      untitled,
      ...(setups ? { setups } : {}),
    };
  }

  /** A book that came alone goes on to the door of books; among other files it waits for a tap. */
  updated() {
    if (incoming.files.length === 1 && incoming.files[0].book) this.toBooks(incoming.files[0]);
  }

  /** @param {InFile} file that is somebody's book */
  toBooks(file) {
    if (!file.book) return;
    incoming.drop(file);
    visitor.bring(file.book);
    route.go("receive");
  }

  /** Put one spectrum on Light, where its fix is shown before it is kept. @param {Item} item */
  toLight(item) {
    const { typed } = lightDraft;
    const earlier = typed;
    const { file, ...reading } = item.data;
    const light = item.of || typed.light;
    const name = (item.of && book.thing(item.of)?.data.name) || typed.name || item.name;
    if (item.of && item.of !== typed.light) lightDraft.measureAgain(item.of);
    if (reading.spectrum) {
      lightDraft.type({ way: "spectrum", spectrum: reading.spectrum, source: file, name, light });
    } else {
      lightDraft.typeReading(reading, { name, light });
    }
    if (earlier.light !== light && (earlier.x || earlier.cct_K || earlier.spectrum))
      sayWithUndo(t("light.setAside"), () => lightDraft.start(earlier));
    incoming.done([item]);
    route.go("light");
  }

  /** Keep every chosen light in this setup, every chosen gel and camera in the kit. */
  keep() {
    const lights = incoming.chosen("light");
    const some = incoming.chosen("gel");
    const cameras = incoming.chosen("camera");
    const onward = route.onward();
    return this.keeping.run(async () => {
      const target = await targetToKeep(centreOf());
      const fresh = this.toGroup;
      const grouped = await this.askHere(this.groupQuestion(fresh));
      if (grouped.problem) throw new Error(grouped.problem.message);
      const later = lights.filter((item) => item.of).sort((a, b) => timeOf(a) - timeOf(b));
      for (const item of later) await this.keepLight(item, target);
      let had = 0;
      for (const group of grouped.groups) {
        const name = setupName(group);
        if (name) await workInSetup(name);
        const before = readingsOf(currentSetup());
        for (const { readings } of group.lights) {
          const items = readings.map((/** @type {number} */ at) => fresh[at]);
          let light = ofThatTitle(items[0]);
          for (const item of items) {
            if (before.some((one) => isSame(one, item))) {
              incoming.done([item]);
              had += 1;
              continue;
            }
            // Where keeping breaks off, the rest is still this light's.
            item.of = light;
            light = await this.keepLight(item, target);
          }
        }
      }
      for (const item of some) {
        await keepOwnGel({ ...item.data, name: item.name.trim() || item.data.name });
        incoming.done([item]);
      }
      for (const item of cameras) {
        await keepCamera({ ...item.data, name: item.name.trim() || item.data.name });
        incoming.done([item]);
      }
      if (!incoming.files.length) {
        onward(lights.length ? "set" : some.length ? "kit" : "cameras");
      }
      return [
        lights.length > had ? t("files.keptReadings", { n: lights.length - had }) : "",
        had ? t("files.hadAlready", { n: had }) : "",
        some.length ? t("files.keptGels", { n: some.length }) : "",
        cameras.length ? t("files.keptCameras", { n: cameras.length }) : "",
      ]
        .filter(Boolean)
        .join(" ");
    });
  }

  /**
   * Keep a reading with the light that it is, or with a new one.
   * @param {Item} item @param {Record<string, any>} target
   * @returns {Promise<string>} the id of the light
   */
  async keepLight(item, target) {
    const known = book.standing(item.of);
    const n = lightsOf(currentSetup()).length + 1;
    const { light } = await keepReading({
      light: known?.id ?? null,
      lightData: known
        ? {}
        : { name: item.name.trim() || t("light.nth", { n }), lamp: item.data.lamp ?? this.lamp },
      // A table may say what lamp it was and what hung; a spectrum alone says neither.
      data: {
        ...item.data,
        lamp: item.data.lamp ?? known?.data.lamp ?? this.lamp,
        pack: item.data.pack ?? [],
        target,
      },
    });
    incoming.done([item]);
    return light;
  }

  /** One question for all whose files do not say what lit them: daylight is used for windows. */
  renderLamp() {
    const open = this.toGroup.filter(({ data }) => !data.lamp);
    if (open.length < 2) return nothing;
    return choice({
      id: "files-lamp",
      label: t("files.lamp", { n: open.length }),
      value: this.lamp,
      options: LAMPS.map((value) => ({ value, label: t(`lamp.${value}`) })),
      onChange: (lamp) => {
        this.lamp = /** @type {"unknown"} */ (lamp);
      },
    });
  }

  /** How the day parts into setups, and one question for all that have no title. */
  renderGroups() {
    const { answer } = this.grouping;
    if (!answer || this.toGroup.length < 2) return nothing;
    const { ways, groups, untitled, pauses } = answer;
    return html`
      ${
        ways.length > 1
          ? segments({
              name: "files-setups",
              legend: t("files.setups"),
              value: answer.setups,
              options: optionsOf(ways, (way) => t(`files.setups.${way}`)),
              onChange: (way) => {
                this.setups = /** @type {"one"} */ (way);
              },
            })
          : nothing
      }
      ${
        groups.length > 1
          ? html`<ul class="plain">
              ${groups.map(
                (group) => html`<li>
                  ${t("files.group", {
                    setup: setupName(group) || setupHere(),
                    lights: t("files.lights", { n: group.lights.length }),
                    n: group.lights.reduce((sum, { readings }) => sum + readings.length, 0),
                  })}
                </li>`,
              )}
            </ul>`
          : nothing
      }
      ${
        untitled > 1
          ? segments({
              name: "files-untitled",
              legend: t("files.untitled", { n: untitled }),
              value: this.untitled,
              options: {
                each: t("files.each"),
                ...(pauses ? { time: t("files.untilPause") } : {}),
                one: t("files.one"),
              },
              onChange: (way) => {
                this.untitled = /** @type {"each"} */ (way);
              },
            })
          : nothing
      }
    `;
  }

  /** @param {any} question @param {InFile[]} files that ask it */
  renderQuestion(question, files) {
    const { field, message, taken, options } = question;
    return choice({
      id: `file-${files[0].key}-${field}${files.length > 1 ? "-all" : ""}`,
      label: files.length > 1 ? t("files.forAll", { message, n: files.length }) : message,
      value: taken,
      options: options.map((/** @type {string} */ option) => ({
        value: option,
        label: tMaybe(`option.${option}`, option),
      })),
      onChange: (value) => incoming.decideAll(files, field, value),
    });
  }

  /** @param {InFile} file @param {typeof incoming.shared} shared  what is asked once for several */
  renderFile(file, shared) {
    const { answer } = file;
    const words =
      answer && (answer.spectra.length || answer.cameras.length || answer.readings?.length)
        ? t("files.format", answer)
        : "";
    return html`<section class="in-file" aria-busy=${file.waiting ? "true" : "false"}>
      <header>
        <h2>${file.name}</h2>
        <button
          type="button"
          class="quiet"
          aria-label=${t("files.dropName", { name: file.name })}
          @click=${() => incoming.drop(file)}
        >
          ${t("files.drop")}
        </button>
      </header>
      ${file.waiting ? html`<p class="hint" role="status">${t("files.reading")}</p>` : nothing}
      ${words ? html`<p class="hint">${words}</p>` : nothing}
      ${
        file.book
          ? html`<p class="problem">${t("files.book")}</p>
              <button type="button" @click=${() => this.toBooks(file)}>
                ${t("files.openBook")}
              </button>`
          : nothing
      }
      ${(answer?.questions ?? [])
        .filter(
          (/** @type {any} */ { field, taken }) =>
            !shared.some((one) => one.question.field === field && one.question.taken === taken),
        )
        .map((/** @type {any} */ question) => this.renderQuestion(question, [file]))}
      ${
        file.problems.length
          ? html`<ul class="faults">
              ${file.problems.map(
                ({ message, line }) => html`<li class="problem">
                  ${line ? t("files.line", { line, message }) : message}
                </li>`,
              )}
            </ul>`
          : nothing
      }
      <ul class="found">
        ${file.items.map((item, index) => this.renderItem(item, `${file.key}-${index}`))}
      </ul>
    </section>`;
  }

  /** @param {Item} item @param {string} key */
  renderItem(item, key) {
    const usable = item.kind !== "surface" && !item.problem;
    const nominal = item.kind === "gel" ? gels.nominalOf(item.name.trim()) : undefined;
    const { white } = item;
    return html`<li>
      <label class="check">
        <input
          type="checkbox"
          .checked=${item.chosen}
          ?disabled=${!usable}
          @change=${(/** @type {Event} */ event) =>
            incoming.change(item, {
              chosen: /** @type {HTMLInputElement} */ (event.target).checked,
            })}
        />
        <span>
          <strong>${item.name || t("files.noName")}</strong>
          <span class="hint">
            ${
              item.kind === "gel"
                ? item.data &&
                  t("files.gel", {
                    mired: mired(item.data.mired),
                    duv: duv(item.data.duv),
                    stops: stops(item.data.stops),
                  })
                : item.kind === "surface"
                  ? t("files.surface")
                  : item.kind === "camera"
                    ? t("files.camera")
                    : white
                      ? t("files.white", { cct: kelvin(white.cct_K), duv: duv(white.duv) })
                      : ""
            }
            ${item.curve ? covers(item.curve) : nothing}
            ${item.kind === "light" ? beside(item) : nothing}
          </span>
        </span>
      </label>
      ${guard([item.curve, item.name], () =>
        item.curve
          ? item.kind === "camera"
            ? sketch(item.data, t("cameras.curve", { name: item.name }))
            : sketch(item.curve, t("files.sketch", { name: item.name }))
          : nothing,
      )}
      ${problemNote(item.problem)}
      ${warningList([...item.notes, ...(white?.warnings ?? [])])}
      ${
        usable && item.chosen
          ? incoming.chosen("light").length > FEW
            ? html`<details class="more">
                <summary>${t("files.rename")}</summary>
                ${this.renderNaming(item, key, nominal)}
              </details>`
            : this.renderNaming(item, key, nominal)
          : nothing
      }
    </li>`;
  }

  /**
   * @param {Item} item
   * @param {string} key
   * @param {import("../../store/kit/gels.js").Gel | undefined} nominal
   */
  renderNaming(item, key, nominal) {
    const lights = item.kind === "light" ? lightsOf(currentSetup()) : [];
    return html`
      ${
        lights.length
          ? choice({
              id: `of-${key}`,
              label: t("files.of"),
              value: item.of,
              options: [
                { value: "", label: t("files.newLight") },
                ...lights.map(({ light }) => ({ value: light.id, label: light.data.name })),
              ],
              onChange: (of) => incoming.change(item, { of }),
            })
          : nothing
      }
      ${
        item.of
          ? nothing
          : html`<div class="field">
              <label for="name-${key}">${t("light.name")}</label>
              <input
                id="name-${key}"
                type="text"
                maxlength=${LONGEST_NAME}
                autocomplete="off"
                list=${item.kind === "gel" ? "gel-names" : nothing}
                .value=${item.name}
                @input=${(/** @type {Event} */ event) =>
                  incoming.change(item, {
                    name: /** @type {HTMLInputElement} */ (event.target).value,
                  })}
              />
              ${
                item.kind === "gel"
                  ? html`<p class="hint">
                      ${
                        nominal
                          ? t("gel.replaces", {
                              name: nominal.name,
                              mired: mired(nominal.mired),
                              stops: stops(nominal.stops),
                            })
                          : t("gel.nameHint")
                      }
                    </p>`
                  : nothing
              }
            </div>`
      }
    `;
  }

  /** In how many setups what is new will stand. */
  get partsIn() {
    return this.toGroup.length > 1 ? (this.grouping.answer?.groups.length ?? 1) : 1;
  }

  renderActions() {
    const lights = incoming.chosen("light");
    const some = [...incoming.chosen("gel"), ...incoming.chosen("camera")];
    const count = lights.length + some.length;
    const [only] = count === 1 && lights.length === 1 ? lights : [];
    const setup = this.partsIn > 1 ? t("files.nSetups", { n: this.partsIn }) : setupHere();
    const label = lights.length
      ? some.length
        ? t("files.keepBoth", { n: count })
        : t("files.keepLights", { n: lights.length, setup })
      : t("files.keepGels", { n: some.length });
    if (!count) return nothing;
    return html`<div class="bar">
      ${this.keeping.note()}
      <div class="actions">
        <button
          type="button"
          class=${only ? "" : "main"}
          ?disabled=${this.keeping.busy}
          @click=${this.keep}
        >
          ${this.keeping.busy ? t("light.keeping") : label}
        </button>
        ${
          only
            ? html`<button type="button" class="main" @click=${() => this.toLight(only)}>
                ${t("files.toLight")}
              </button>`
            : nothing
        }
      </div>
    </div>`;
  }

  render() {
    const files = [...incoming.files].sort((a, b) => timeOf(a.items[0]) - timeOf(b.items[0]));
    const { shared } = incoming;
    return html`
      <h1>${t("files.title")}</h1>
      ${files.length ? html`<ek-boot-progress></ek-boot-progress>` : html`<p>${t("files.lead")}</p>`}
      ${
        incoming.looked < files.length
          ? longWork(
              t("files.progress", { done: incoming.looked, n: files.length }),
              () => say(t("files.stopped", { n: incoming.stop() })),
              incoming.looked / files.length,
            )
          : nothing
      }
      ${shared.map(({ question, files: those }) => this.renderQuestion(question, those))}
      ${this.renderGroups()} ${this.renderLamp()}
      ${repeat(
        files,
        ({ key }) => key,
        (file) => this.renderFile(file, shared),
      )}
      <datalist id="gel-names">
        ${gels.nominal.map((gel) => html`<option value=${gel.name}></option>`)}
      </datalist>
      ${this.renderActions()}
      <div class="actions">${fileButton({ id: "more-files", label: t("files.choose"), main: !files.length })}
        ${fileButton({ id: "a-folder", label: t("files.folder"), folder: true })}</div>
      <details class="more" ?open=${!files.length}>
        <summary>${t("files.paste")}</summary>
        <div class="field">
          <label for="paste-text">${t("files.pasteLabel")}</label>
          <textarea
            id="paste-text"
            rows="5"
            spellcheck="false"
            autocapitalize="off"
            @change=${(/** @type {Event} */ event) => {
              const area = /** @type {HTMLTextAreaElement} */ (event.target);
              if (area.value.trim()) bringText(area.value);
              area.value = "";
            }}
            @paste=${(/** @type {ClipboardEvent} */ event) => {
              const text = event.clipboardData?.getData("text/plain") ?? "";
              if (!text.trim()) return;
              event.preventDefault();
              bringText(text);
            }}
          ></textarea>
        </div>
      </details>
    `;
  }
}
customElements.define("ek-files", FilesView);

/** The setup that is worked in, or that will be made. */
const setupHere = () => currentSetup()?.data.name ?? t("book.nthSetup", { n: 1 });

/**
 * What the setup of a group is called; "" for the one that is worked in.
 * @param {{title: string, stretch: number | null, from: string | null, to: string | null}} group
 */
function setupName({ title, stretch, from, to }) {
  if (stretch === null || !from || !to) return title;
  const span = `${timeOfDay(from)}–${timeOfDay(to)}`;
  return `${dayOf(from)}, ${from.slice(0, 16) === to.slice(0, 16) ? timeOfDay(from) : span}`;
}

/** @typedef {{name: string, data: Record<string, any>}} Kept  a reading and the name of its light */

/** All that a setup has been read. @param {{id: string} | undefined} setup @returns {Kept[]} */
const readingsOf = (setup) =>
  (setup ? book.below(setup.id, "light") : []).flatMap((light) =>
    book.below(light.id, "reading").map(({ data }) => ({ name: light.data.name, data })),
  );

/**
 * Whether a reading was brought in before: taken at the same time, with all the same numbers, and
 * of the same light where it says of which. Its file may be called otherwise.
 * @param {Kept} kept @param {Item} item
 */
const isSame = ({ name, data }, item) =>
  Boolean(item.data.read_at) &&
  item.data.read_at === data.read_at &&
  (!item.titled || isSameName(name, item.name)) &&
  Object.entries(item.data).every(
    ([key, value]) => key === "file" || JSON.stringify(value) === JSON.stringify(data[key]),
  );

/**
 * The light of the setup worked in that a titled reading is of: "" where it has none of that name.
 * @param {Item} item
 */
const ofThatTitle = ({ titled, name }) => (titled && lightNamed(currentSetup(), name)?.id) || "";

/** When a light was read, as far as its file says: what is not said stands last. @param {Item | undefined} item */
const timeOf = (item) => Date.parse(item?.data?.read_at) || Number.MAX_SAFE_INTEGER;

/** What its file says of a light beside its colour. @param {Item} item */
function beside({ data, white }) {
  const level = white?.exposure_lx_s
    ? `${data.exposure_lx_s} lx·s`
    : white?.illuminance_lx && illuminance(white, settings.get("illuminance"));
  return joined([level, data.read_at && whenRead(data.read_at), data.place].filter(Boolean));
}

/** Which wavelengths a curve covers, in how many samples. @param {{wavelengths_nm: number[]}} curve */
function covers({ wavelengths_nm: nm }) {
  return t("files.covers", {
    from: nanometres(nm[0]),
    to: nanometres(nm[nm.length - 1]),
    n: nm.length,
  });
}
