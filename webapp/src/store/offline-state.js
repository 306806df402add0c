/** Whether the app is at hand without a network, and which build is shown. Fires "change". */
class OfflineState extends EventTarget {
  /** The build on screen, once it is kept; empty while it comes from the network. */
  build = "";

  /** @param {string} build */
  put(build) {
    this.build = build;
    this.dispatchEvent(new Event("change"));
  }
}

export const offlineState = new OfflineState();
