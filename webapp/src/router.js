/**
 * Hash routes: `#name/rest`, and `#copy=…` or `#join=…` for what a link carries. The address is the
 * state, so that the back button and a bookmark work in any subfolder of any host. Fires "change".
 */

export const FIRST = "light";

class Route extends EventTarget {
  constructor() {
    super();
    window.addEventListener("hashchange", () => this.dispatchEvent(new Event("change")));
  }

  /** @returns {{name: string, rest: string}} */
  get now() {
    const [, name, rest] = /^#?([^/=]*)[/=]?(.*)$/s.exec(location.hash) ?? [];
    return { name: name || FIRST, rest: rest ?? "" };
  }

  /** @param {string} name @param {string} [rest] */
  go(name, rest) {
    location.hash = rest ? `${name}/${rest}` : name;
  }

  /**
   * How to go on from here once some work is done; whoever went elsewhere meanwhile stays there.
   *
   * @returns {(name: string, rest?: string) => void}
   */
  onward() {
    const here = location.hash;
    return (name, rest) => {
      if (location.hash === here) this.go(name, rest);
    };
  }
}

export const route = new Route();
