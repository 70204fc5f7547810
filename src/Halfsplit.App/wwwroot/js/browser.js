// What only the browser can do: speak, stay awake, share, keep a setting.

let lock = null;
let wantsAwake = false;

async function holdAwake() {
  if (!wantsAwake || document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
  // Refused on an empty battery; the job goes on without.
  lock = await navigator.wakeLock.request('screen').catch(() => null);
}

document.addEventListener('visibilitychange', holdAwake);

/** Keeps the screen on while a job is open; a lock falls with every switch to another app and is taken anew. */
export async function stayAwake(wanted) {
  wantsAwake = wanted;
  if (wanted) await holdAwake();
  else await lock?.release();
}

export const isAwake = () => lock !== null && !lock.released;

/** Reads a text aloud; a second call while speaking falls silent. */
export function speak(text, language) {
  if (!('speechSynthesis' in window)) return false;
  if (speechSynthesis.speaking) {
    speechSynthesis.cancel();
    return true;
  }

  const spoken = new SpeechSynthesisUtterance(text);
  spoken.lang = language;
  spoken.rate = 0.95;
  speechSynthesis.speak(spoken);
  return true;
}

export const hush = () => window.speechSynthesis?.cancel();

export const setting = name => localStorage.getItem(`halfsplit.${name}`);

export const keepSetting = (name, value) => localStorage.setItem(`halfsplit.${name}`, value);

/** auto, light or dark. */
export function theme(name) {
  document.documentElement.dataset.theme = name;
}

/** The language of the page and of what is installed, and the words for the case that the app stops. */
export function language(code, fault, again) {
  document.documentElement.lang = code;
  document.querySelector('link[rel=manifest]').href = code === 'en' ? 'manifest.webmanifest' : `manifest.${code}.webmanifest`;
  document.getElementById('fault-text').textContent = fault;
  document.getElementById('fault-again').textContent = again;
}

export const languages = () => navigator.languages ?? [navigator.language];

/** Hands a file to the person. */
export function download(name, type, text) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** Shares a file where the phone can; false where it can't. Who changed their mind wants no file either. */
export async function share(name, type, text, title) {
  const file = new File([text], name, { type });
  if (!navigator.canShare?.({ files: [file] })) return false;
  try {
    await navigator.share({ files: [file], title });
    return true;
  } catch (refusal) {
    return refusal.name === 'AbortError';
  }
}

/** Prints what is in a frame, without the app round it. */
export function print(frame) {
  const inside = document.querySelector(frame).contentWindow;
  inside.focus();
  inside.print();
}

/** Puts the focus on an element and tells whether it is there. */
export function focus(selector) {
  const element = document.querySelector(selector);
  element?.focus();
  return element !== null;
}

/** Moves an element to where it is seen. */
export const show = selector => document.querySelector(selector)?.scrollIntoView({ block: 'nearest' });

/** Goes to a screen, which is the part of the address behind the hash. */
export function go(hash) {
  location.hash = hash;
}

export const toTop = () => window.scrollTo(0, 0);

// While a job is open no window may swap the app under it: every page with one holds a share of this lock.
let release = null;

export async function jobIsOpen(open) {
  release?.();
  release = null;
  if (open && navigator.locks) {
    await new Promise(held => {
      navigator.locks.request('halfsplit-open-job', { mode: 'shared' }, () => {
        held();
        return new Promise(resolve => { release = resolve; });
      });
    });
  }
}

/** Opens a dialog so that what lies behind it can't be reached. */
export function openDialog(dialog) {
  if (!dialog.open) dialog.showModal();
}

export function closeDialog(dialog) {
  if (dialog.open) dialog.close();
}
