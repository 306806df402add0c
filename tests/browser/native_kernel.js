// In a page of the tests the kernel's worker is this: it starts at once and has Python itself
// answer (native_kernel.py). Other workers, such as the reader of displays, are the browser's own.
{
  const Own = Worker;

  class Asking {
    constructor() {
      setTimeout(() => this.tell({ stage: "ready", part: 1 }));
    }
    tell(data) {
      if (!this.ended) this.onmessage?.(new MessageEvent("message", { data }));
    }
    async postMessage({ id, request, forms }) {
      if (id === undefined) return; // what the app's own start hands from worker to worker
      this.tell({ id, answer: await askNatively(request, forms ?? false) });
    }
    terminate() {
      this.ended = true;
    }
  }

  window.Worker = new Proxy(Asking, {
    construct: (_, [address, options]) =>
      /\/(worker|unpack)\.js$/.test(address) ? new Asking() : new Own(address, options),
  });
}
