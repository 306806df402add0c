/** In which form the person's meter gives its numbers, chosen once. */
import { html, nothing } from "lit";
import { optionsOf, segments, textField } from "../../parts/inputs.js";
import { reportFault, settings } from "../../store/index.js";
import { chooseForms, FORMS } from "../../store/questions/forms.js";
import { t } from "../../words/index.js";

/** @param {keyof typeof FORMS} form */
const choose = (form) =>
  segments({
    name: `forms-${form}`,
    legend: t(`forms.${form}`),
    value: settings.get("forms")[form],
    options: optionsOf(/** @type {readonly "duv"[]} */ (FORMS[form]), (one) => t(`forms.${one}`)),
    onChange: (one) => chooseForms({ [form]: one }).catch(reportFault),
  });

export function meterForms() {
  const { tint, flash, iso } = settings.get("forms");
  return html`<section>
    <h2>${t("forms.title")}</h2>
    <p class="hint">${t("forms.hint")} <a href="#tint">${t("answer.terms")}</a></p>
    ${choose("cct")} ${choose("tint")} ${tint === "duv" ? nothing : choose("says")}
    ${choose("flash")}
    ${
      flash === "flash_f_number"
        ? textField({
            id: "forms-iso",
            label: t("edit.flash_iso"),
            hint: t("forms.flashHint"),
            number: true,
            value: iso,
            onInput: (typed) => chooseForms({ iso: typed }).catch(reportFault),
          })
        : nothing
    }
  </section>`;
}
