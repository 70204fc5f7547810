// The page's side of the engine's workers: the desk does the job, the others think and keep nothing.

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

const engines = new Map([['desk', new Engine(true)]]);

/** A request in JSON; answers a reply in JSON, or {"lost": why} where it could not be kept or done. */
export function ask(which, request) {
  if (!engines.has(which)) engines.set(which, new Engine(false));
  return engines.get(which).ask(request);
}

export const end = which => engines.get(which)?.end();

/** How many workers may think beside the desk: none where memory is little or there is one core; each takes some 100 MB. */
export function thinkers() {
  const memory = navigator.deviceMemory ?? 8;
  const cores = navigator.hardwareConcurrency ?? 2;
  if (memory < 3 || cores < 2) return 0;
  return memory >= 6 && cores >= 6 ? 3 : memory >= 4 && cores >= 4 ? 2 : 1;
}
