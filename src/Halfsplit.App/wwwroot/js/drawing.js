// Moves and enlarges a drawing: two fingers, the wheel, a drag, or the keys + - 0 and the arrows.

const views = new WeakMap();

/** Gives the drawings in an element the colours of the page. */
export function colour(frame) {
  const chosen = document.documentElement.dataset.theme;
  const dark = chosen === 'dark' || (chosen !== 'light' && matchMedia('(prefers-color-scheme: dark)').matches);
  for (const svg of frame.querySelectorAll('svg.hs-drawing')) {
    svg.classList.toggle('hs-dark', dark);
    svg.classList.toggle('hs-light', !dark);
  }
}

export function attach(frame, listener) {
  colour(frame);
  const svg = frame.querySelector('svg');
  const [x, y, width, height] = svg.getAttribute('viewBox').split(/[ ,]+/).map(Number);
  const view = { svg, whole: { x, y, width, height }, now: null, fingers: new Map(), moved: 0, stop: new AbortController() };
  views.set(frame, view);
  // At first as large as one reads it, round what is asked or blamed: a whole circuit is too small for a phone.
  const box = frame.getBoundingClientRect();
  view.now = fitted(view, box);
  show(view);
  const mark = (svg.querySelector('.hs-red, .hs-about, .hs-fault-mark') ?? svg).getBoundingClientRect();
  const at = { x: mark.x + mark.width / 2, y: mark.y + mark.height / 2 };
  scale(view, frame, Math.max(1, view.now.width / (box.width * 1.25)), at.x, at.y);
  shift(view, frame, at.x - box.x - box.width / 2, at.y - box.y - box.height / 2);
  const signal = view.stop.signal;
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => colour(frame), { signal });

  frame.addEventListener('pointerdown', event => {
    view.fingers.set(event.pointerId, event);
    if (view.fingers.size === 1) view.moved = 0;
  }, { signal });
  frame.addEventListener('pointermove', event => {
    const before = view.fingers.get(event.pointerId);
    if (!before) return;
    const others = [...view.fingers.values()].filter(finger => finger.pointerId !== event.pointerId);
    if (others.length === 1) {
      const apart = finger => Math.hypot(finger.clientX - others[0].clientX, finger.clientY - others[0].clientY);
      scale(view, frame, apart(event) / Math.max(1, apart(before)), (event.clientX + others[0].clientX) / 2, (event.clientY + others[0].clientY) / 2);
    } else if (others.length === 0) {
      shift(view, frame, before.clientX - event.clientX, before.clientY - event.clientY);
    }

    view.moved += Math.hypot(before.clientX - event.clientX, before.clientY - event.clientY);
    view.fingers.set(event.pointerId, event);
  }, { signal });
  for (const end of ['pointerup', 'pointercancel', 'pointerleave']) {
    frame.addEventListener(end, event => view.fingers.delete(event.pointerId), { signal });
  }

  frame.addEventListener('click', event => {
    // A drag ends in a click too.
    if (view.moved > 8) return;
    choose(event.target, listener);
  }, { signal });
  frame.addEventListener('wheel', event => {
    event.preventDefault();
    scale(view, frame, event.deltaY < 0 ? 1.15 : 1 / 1.15, event.clientX, event.clientY);
  }, { signal, passive: false });
  frame.addEventListener('keydown', event => {
    const step = 60;
    const moves = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] };
    if (event.key in moves) shift(view, frame, ...moves[event.key]);
    else if (event.key === '+' || event.key === '=') zoom(frame, 1.4);
    else if (event.key === '-') zoom(frame, 1 / 1.4);
    else if (event.key === '0') zoom(frame, 0);
    else if (event.key === 'Enter' || event.key === ' ') choose(document.activeElement, listener);
    else return;
    event.preventDefault();
  }, { signal });
}

/** Enlarges round the middle; 0 shows the whole drawing. */
export function zoom(frame, factor) {
  const view = views.get(frame);
  if (!view) return;
  if (factor === 0) {
    view.now = fitted(view, frame.getBoundingClientRect());
    show(view);
    return;
  }

  const box = frame.getBoundingClientRect();
  scale(view, frame, factor, box.x + box.width / 2, box.y + box.height / 2);
}

export function detach(frame) {
  views.get(frame)?.stop.abort();
  views.delete(frame);
}

/** The whole drawing in the shape of its frame. */
function fitted({ whole }, box) {
  const ratio = box.height / box.width;
  const width = Math.max(whole.width, whole.height / ratio);
  return { x: whole.x - (width - whole.width) / 2, y: whole.y, width, height: width * ratio };
}

function choose(element, listener) {
  const terminal = element.closest?.('[data-terminal]');
  const part = element.closest?.('[data-part]');
  if (terminal) listener.invokeMethodAsync('TappedTerminal', terminal.dataset.terminal);
  else if (part) listener.invokeMethodAsync('TappedPart', part.dataset.part);
}

function scale(view, frame, factor, clientX, clientY) {
  const { now, whole } = view;
  const width = Math.min(Math.max(whole.width, whole.height) * 2, Math.max(whole.width / 12, now.width / factor));
  const applied = now.width / width;
  const box = frame.getBoundingClientRect();
  const at = { x: now.x + ((clientX - box.x) / box.width) * now.width, y: now.y + ((clientY - box.y) / box.height) * now.height };
  view.now = { x: at.x - (at.x - now.x) / applied, y: at.y - (at.y - now.y) / applied, width, height: now.height / applied };
  show(view);
}

function shift(view, frame, x, y) {
  const box = frame.getBoundingClientRect();
  view.now.x += (x / box.width) * view.now.width;
  view.now.y += (y / box.height) * view.now.height;
  show(view);
}

const show = ({ svg, now }) => svg.setAttribute('viewBox', `${now.x} ${now.y} ${now.width} ${now.height}`);
