// New versions of the app: announced, and taken only when the person says so and no job is open anywhere.

let registration = null;
let listener = null;
let isTaking = false;

const announce = () => {
  if (registration?.waiting && navigator.serviceWorker.controller) listener?.invokeMethodAsync('Announce');
};

const watch = worker => worker?.addEventListener('statechange', () => {
  if (worker.state === 'installed') announce();
});

export async function start(announcer) {
  listener = announcer;
  if (!('serviceWorker' in navigator)) return;
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (isTaking) location.reload();
  });
  registration = await navigator.serviceWorker.register('service-worker.js', { updateViaCache: 'none' }).catch(() => null);
  if (!registration) return;
  watch(registration.installing);
  registration.addEventListener('updatefound', () => watch(registration.installing));
  announce();
}

/** Looks for a new version; without a network nothing happens. */
export const look = () => registration?.update().catch(() => {});

/** False where a job is open in this or another window. */
export async function take() {
  const held = await navigator.locks?.query();
  if (held?.held?.some(each => each.name === 'halfsplit-open-job')) return false;
  isTaking = true;
  registration?.waiting?.postMessage('take-over');
  return true;
}

/** True when everything is kept on this device for use without a network. */
export const isOfflineReady = () => registration?.active?.state === 'activated';
