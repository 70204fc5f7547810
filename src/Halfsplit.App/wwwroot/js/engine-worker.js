// The engine in a worker of its own: the screen never waits for a sum. One request after the other.

import { dotnet } from '../_framework/dotnet.js';
import { append } from './store.js';

const desk = (async () => {
  const { getAssemblyExports, getConfig } = await dotnet.create();
  const assembly = await getAssemblyExports(getConfig().mainAssemblyName);
  return assembly.Halfsplit.App.Desk.DeskProgram;
})();

async function serve({ number, request, keeps }) {
  try {
    const reply = (await desk).Answer(request);
    if (keeps) {
      const { keep } = JSON.parse(reply);
      if (keep) await append(keep);
    }

    postMessage({ number, reply });
  } catch (error) {
    postMessage({ number, lost: error?.name ?? 'Error', detail: String(error?.stack ?? error) });
  }
}

let last = Promise.resolve();
onmessage = ({ data }) => {
  last = last.then(() => serve(data));
};
