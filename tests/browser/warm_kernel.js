// One kernel for all pages of a phone: a page without the app runs the real worker, and in every
// other page `Worker` only passes on what is said, over a channel of the browser. A page that ends a
// worker with a question open ends the real one, as it would its own. What was answered once is told
// again at once: an answer depends on nothing but its question (tests/kernel).
{
  const line = new BroadcastChannel("one kernel");

  class Passing {
    constructor() {
      this.name = crypto.randomUUID();
      this.hear = ({ data }) => {
        if (data.to !== this.name && data.to !== "all") return;
        if (data.error === undefined) this.onmessage?.(new MessageEvent("message", { data: data.told }));
        else this.onerror?.(new ErrorEvent("error", { message: data.error, cancelable: true }));
      };
      line.addEventListener("message", this.hear);
      line.postMessage({ from: this.name });
    }
    postMessage(asked) {
      if (asked.id === undefined) return; // what the app's own start hands from worker to worker
      line.postMessage({ from: this.name, asked });
    }
    terminate() {
      line.removeEventListener("message", this.hear);
      line.postMessage({ from: this.name, ended: true });
    }
  }

  const pass = () => {
    const open = new Map(); // number of a question → who asked, what, and under which number
    const answers = new Map(); // by question
    let last = 0;
    let ready;
    let worker;
    const start = () => {
      worker?.terminate();
      open.clear();
      ready = undefined;
      worker = new Worker("./worker.js");
      worker.onerror = ({ message }) => line.postMessage({ to: "all", error: message });
      worker.onmessage = ({ data }) => {
        if (data.stage === "ready") ready = data;
        const asked = open.get(data.id);
        open.delete(data.id);
        if (asked && data.answer !== undefined) answers.set(asked.question, data.answer);
        line.postMessage(asked ? { to: asked.from, told: { ...data, id: asked.id } } : { to: "all", told: data });
      };
    };
    line.onmessage = ({ data: { from, asked, ended } }) => {
      if (!from) return;
      if (asked) {
        const { id, ...rest } = asked;
        const question = JSON.stringify(rest);
        const answer = answers.get(question);
        if (answer !== undefined) {
          line.postMessage({ to: from, told: { id, answer } });
          return;
        }
        last += 1;
        open.set(last, { from, id, question });
        worker.postMessage({ ...rest, id: last });
      } else if (ended) {
        if ([...open.values()].some((each) => each.from === from)) start();
      } else if (ready) line.postMessage({ to: from, told: ready });
    };
    start();
  };

  if (location.pathname === "/one-kernel") pass();
  else window.Worker = Passing;
}
