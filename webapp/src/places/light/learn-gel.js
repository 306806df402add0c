/** On Light, after the fix: what the two readings, bare and gelled, teach about the gel. */
import { html, nothing } from "lit";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { gelNumbers } from "../../parts/gel-numbers.js";
import { textField } from "../../parts/inputs.js";
import { sayWithUndo } from "../../parts/toast.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { reportFault } from "../../store/index.js";
import { keepOwnGel, withOwnGels } from "../../store/kit/own-gels.js";
import { t } from "../../words/index.js";

class LearnGel extends Page {
  static properties = properties({ given: ["bare", "gelled", "gels"], own: ["name", "open"] });

  constructor() {
    super();
    /** @type {Record<string, any>} R */ this.bare = {};
    /** @type {Record<string, any>} R */ this.gelled = {};
    /** What was hung between the two readings. @type {string[]} */ this.gels = [];
    /** As typed; undefined until then. @type {string | undefined} */ this.name = undefined;
    this.open = false;
    this.learned = /** @type {LiveQuestion<"learn_gel">} */ (new LiveQuestion(this));
  }

  get nameNow() {
    return this.name ?? this.gels.join(" + ");
  }

  willUpdate() {
    const name = this.nameNow.trim();
    this.learned.put(
      this.open && name
        ? { ask: "learn_gel", bare: this.bare, gelled: this.gelled, name, ...withOwnGels() }
        : null,
    );
  }

  async keep() {
    if (!this.learned.answer) return;
    const { gel, nominal } = this.learned.answer;
    const undo = await keepOwnGel({ ...gel, nominal });
    sayWithUndo(t("learn.kept", { name: gel.name }), undo);
  }

  render() {
    const { answer } = this.learned;
    return html`<details
      class="more learn"
      ?open=${this.open}
      @toggle=${(/** @type {Event} */ event) => {
        this.open = /** @type {HTMLDetailsElement} */ (event.currentTarget).open;
      }}
    >
      <summary>${t("learn.title")}</summary>
      <p class="hint">${t("learn.lead")}</p>
      ${textField({
        id: "learn-name",
        label: t("learn.name"),
        hint: t("gel.nameHint"),
        value: this.nameNow,
        problem: this.learned.problemAt("name"),
        onInput: (name) => {
          this.name = name;
        },
      })}
      ${problemNote(this.learned.problemBeside(["name"]))}
      ${
        answer
          ? html`${gelNumbers(answer.gel, answer.nominal)} ${warningList(answer.warnings)}
              <div class="actions">
                <button type="button" class="main" @click=${() => this.keep().catch(reportFault)}>
                  ${t("learn.keep")}
                </button>
              </div>`
          : nothing
      }
    </details>`;
  }
}
customElements.define("ek-learn-gel", LearnGel);
