/** Renders its host again whenever one of the stores fires "change". */

/** @typedef {import("lit").ReactiveController} ReactiveController */

/** @implements {ReactiveController} */
export class Watch {
  /**
   * @param {import("lit").ReactiveControllerHost} host
   * @param {...EventTarget} stores
   */
  constructor(host, ...stores) {
    this.stores = stores;
    this.render = () => host.requestUpdate();
    host.addController(this);
  }

  hostConnected() {
    for (const store of this.stores) store.addEventListener("change", this.render);
  }

  hostDisconnected() {
    for (const store of this.stores) store.removeEventListener("change", this.render);
  }
}
