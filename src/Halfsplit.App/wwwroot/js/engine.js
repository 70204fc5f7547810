// The page's side of the two engine workers: one does the job, the other thinks ahead and keeps nothing.

class Engine {
  #keeps;
  #worker = null;
  #waiting = new Map();
  #number = 0;

  constructor(keeps) {
    this.#keeps = keeps;
  }

  ask(request) {
    this.#worker ??= this.#start();
    const number = ++this.#number;
    return new Promise(resolve => {
      this.#waiting.set(number, resolve);
      this.#worker.postMessage({ number, request, keeps: this.#keeps });
    });
  }

  /** Ends a worker whose thoughts are of no more use. */
  end() {
    this.#worker?.terminate();
    this.#worker = null;
    for (const resolve of this.#waiting.values()) resolve(JSON.stringify({ lost: 'Ended' }));
    this.#waiting.clear();
  }

  #start() {
    const worker = new Worker(new URL('./engine-worker.js', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }) => {
      this.#waiting.get(data.number)?.(data.lost ? JSON.stringify({ lost: data.lost, detail: data.detail }) : data.reply);
      this.#waiting.delete(data.number);
    };
    worker.onerror = event => {
      event.preventDefault();
      this.end();
    };
    return worker;
  }
}

const engines = { desk: new Engine(true), ahead: new Engine(false) };

/** A request in JSON; answers a reply in JSON, or {"lost": why} where it could not be kept or done. */
export const ask = (which, request) => engines[which].ask(request);

export const end = which => engines[which].end();

/** A phone with little memory or one core thinks only when asked. */
export const mayThinkAhead = () => (navigator.deviceMemory ?? 8) >= 3 && (navigator.hardwareConcurrency ?? 2) >= 2;
