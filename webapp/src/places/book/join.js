/** Join phones that stand in one net: show a code, read one, see who is there and what is pending. */
import { html, nothing } from "lit";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import "./scanner.js";
import { Watch } from "../../base/watch.js";
import { choice, textField } from "../../parts/inputs.js";
import { problemNote } from "../../parts/warnings.js";
import { route } from "../../router.js";
import { book, inDemo, reportFault, settings } from "../../store/index.js";
import { NotACode } from "../../store/together/code.js";
import { joined } from "../../store/together/joined.js";
import { possible } from "../../store/together/line.js";
import { t } from "../../words/index.js";
import { isolated } from "../../words/isolated.js";
import { count } from "../../words/numbers.js";
import { qrCode } from "./qr-code.js";

/** The address that opens the app where an invitation is answered. @param {string} code */
const address = (code) => `${location.href.split("#")[0]}#join=${code}`;

/** A code as the scanner reads it. @param {string} text */
const codeIn = (text) => text.trim().replace(/^.*#join=/s, "");

class JoinView extends Page {
  static properties = properties({ given: ["code"], own: ["problem", "asked"] });

  constructor() {
    super();
    /** An invitation that the address holds. */
    this.code = "";
    this.asked = "";
    this.problem = "";
    this.watch = new Watch(this, book, settings, joined);
  }

  willUpdate() {
    if (this.code && this.code !== this.asked) this.asked = this.code;
  }

  disconnectedCallback() {
    super.disconnectedCallback();
    joined.cancel();
  }

  /** @param {() => Promise<void>} work */
  async run(work) {
    this.problem = "";
    try {
      await work();
    } catch (error) {
      if (error instanceof NotACode) this.problem = t("join.notACode");
      else reportFault(error);
    }
  }

  /** An invitation is answered on a tap, so that no address alone joins anybody. */
  answer() {
    const { asked } = this;
    this.asked = "";
    // A reload must not offer it again: it is used up.
    if (route.now.rest) history.replaceState(null, "", "#join");
    this.code = "";
    return this.run(() => joined.follow(asked));
  }

  /** @param {string} text */
  read(text) {
    const code = codeIn(text);
    if (joined.making?.invites) return this.run(() => joined.welcome(code));
    this.asked = code;
    return this.answer();
  }

  renderWho() {
    return textField({
      id: "join-who",
      label: t("log.who"),
      hint: t("join.whoHint"),
      value: settings.get("who"),
      onInput: (who) => settings.set("who", who).catch(reportFault),
    });
  }

  renderShared() {
    const things = book
      .below(null, "production")
      .flatMap((production) => [production, ...book.below(production.id, "location")]);
    return choice({
      id: "join-shared",
      label: t("join.shared"),
      value: joined.scope,
      options: [
        { value: "", label: t("join.all") },
        ...things.map(({ id, parent, data }) => ({
          value: id,
          label: parent ? `${book.thing(parent)?.data.name} · ${data.name}` : data.name,
        })),
      ],
      onChange: (scope) => joined.share(scope),
    });
  }

  renderCode() {
    const { making } = joined;
    if (!making) return nothing;
    const label = t(making.invites ? "join.invitation" : "join.answer");
    return html`<section>
      <h2>${label}</h2>
      ${qrCode(address(making.code), label)}
      <p role="status">${t(making.invites ? "join.invitationWords" : "join.answerWords")}</p>
      ${making.invites ? this.renderScanner() : nothing}
      <div class="actions">
        <button type="button" class="quiet" @click=${() => joined.cancel()}>
          ${t("join.cancel")}
        </button>
      </div>
    </section>`;
  }

  renderScanner() {
    return html`<ek-scanner
      @code=${(/** @type {CustomEvent} */ event) => this.read(event.detail)}
    ></ek-scanner>`;
  }

  renderStart() {
    if (joined.making) return nothing;
    const invite = () => this.run(() => joined.invite());
    return this.asked
      ? html`<p>${t("join.asked")}</p>
          <div class="actions">
            <button type="button" class="main" @click=${() => this.answer()}>
              ${t("join.accept")}
            </button>
            <button
              type="button"
              class="quiet"
              @click=${() => {
                this.asked = "";
              }}
            >
              ${t("join.cancel")}
            </button>
          </div>`
      : html`<div class="actions">
            <button type="button" class="main" @click=${invite}>${t("join.invite")}</button>
          </div>
          <section>
            <h2>${t("join.read")}</h2>
            <p class="hint">${t("join.readWords")}</p>
            ${this.renderScanner()}
          </section>`;
  }

  renderMembers() {
    const members = [...joined.members];
    if (!members.length) return nothing;
    return html`<section>
      <h2>${t("join.who")}</h2>
      <ul class="members">
        ${members.map((member, at) => {
          const name = member.name ? isolated(member.name) : t("join.phone", { n: at + 1 });
          const n = member.peer?.pending.size ?? 0;
          const state =
            member.state === "joined" && n
              ? t("join.pending", { n, count: count(n) })
              : t(`join.state.${member.state}`);
          const trouble = member.peer?.trouble;
          return html`<li>
            <span>
              <strong>${name}</strong>
              <span class="hint">${state}</span>
              ${trouble ? html`<span class="problem">${trouble}</span>` : nothing}
            </span>
            <button
              type="button"
              aria-label=${t("join.partFrom", { name })}
              @click=${() => joined.part(member)}
            >
              ${t("join.part")}
            </button>
          </li>`;
        })}
      </ul>
    </section>`;
  }

  render() {
    const { why, detail } = joined;
    const refused = why
      ? [t(`join.why.${why}`), detail && isolated(detail)].filter(Boolean).join(" ")
      : "";
    if (!possible() || inDemo()) {
      return html`<h1>${t("join.title")}</h1>
        ${problemNote(t(inDemo() ? "join.demo" : "join.impossible"))} ${this.renderOtherWays()}`;
    }
    return html`
      <h1>${t("join.title")}</h1>
      ${joined.making ? nothing : html`<p>${t("join.words")}</p>`}
      ${problemNote(refused || undefined)} ${problemNote(this.problem || undefined)}
      ${why === "unreached" ? this.renderOtherWays() : nothing} ${this.renderMembers()}
      ${joined.making ? nothing : [this.renderWho(), this.renderShared()]} ${this.renderStart()}
      ${this.renderCode()}
      <p class="hint">${t("join.keepOpen")}</p>
      <p class="hint">${t("join.address")}</p>
    `;
  }

  renderOtherWays() {
    return html`<ul class="links">
      <li><a href="#share">${t("book.share")}</a></li>
      <li><a href="#receive">${t("receive.title")}</a></li>
    </ul>`;
  }
}
customElements.define("ek-join", JoinView);
