/** What every view is: a custom element that renders into the page itself, under one stylesheet. */
import { LitElement } from "lit";

export class Page extends LitElement {
  createRenderRoot() {
    return this;
  }
}
