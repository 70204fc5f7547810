// The jobs of this device, in IndexedDB: one record an event, only ever added. Used by the page and by the engine's worker.

const opened = new Promise((resolve, reject) => {
  const request = indexedDB.open('halfsplit', 1);
  request.onupgradeneeded = () => {
    // The third part of the key tells apart two events that carry one id with different contents: both are kept.
    request.result.createObjectStore('events', { keyPath: ['job', 'id', 'copy'] });
    request.result.createObjectStore('drafts', { keyPath: 'job' });
  };
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
  request.onblocked = () => reject(new DOMException('The store is open in another window.', 'BlockedError'));
});

const answer = request => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

const ended = transaction => new Promise((resolve, reject) => {
  transaction.oncomplete = () => resolve();
  transaction.onabort = () => reject(transaction.error ?? new DOMException('Not kept.', 'AbortError'));
});

const ofJob = job => IDBKeyRange.bound([job], [job, []]);

/** Adds lines behind the last event the writer knows; resolves only when they are kept for good. */
export async function append({ job, after, lines }) {
  const database = await opened;
  const transaction = database.transaction('events', 'readwrite', { durability: 'strict' });
  const done = ended(transaction);
  const events = transaction.objectStore('events');
  const last = await answer(events.openKeyCursor(ofJob(job), 'prev'));
  if ((last?.key[1] ?? null) !== (after ?? null)) {
    transaction.abort();
    await done.catch(() => {});
    throw new DOMException('Another window has added to this job.', 'ChangedError');
  }

  for (const { id, line } of lines) events.add({ job, id, copy: 0, line });
  await done;
}

/** The lines of one job, in order. */
export async function lines(job) {
  const database = await opened;
  const records = await answer(database.transaction('events').objectStore('events').getAll(ofJob(job)));
  return records.map(record => record.line);
}

/** Every job with its lines. */
export async function all() {
  const database = await opened;
  const records = await answer(database.transaction('events').objectStore('events').getAll());
  const jobs = new Map();
  for (const { job, line } of records) {
    if (!jobs.has(job)) jobs.set(job, []);
    jobs.get(job).push(line);
  }

  return [...jobs].map(([job, own]) => ({ job, lines: own }));
}

/** Adds what a copy of a job has and this device has not; nothing is overwritten. Answers how many were new. */
export async function merge(job, copies) {
  const database = await opened;
  const transaction = database.transaction('events', 'readwrite', { durability: 'strict' });
  const done = ended(transaction);
  const events = transaction.objectStore('events');
  const known = await answer(events.getAll(ofJob(job)));
  let added = 0;
  for (const { id, line } of copies) {
    const same = known.filter(record => record.id === id);
    if (same.some(record => record.line === line)) continue;
    const record = { job, id, copy: same.length, line };
    known.push(record);
    events.add(record);
    added++;
  }

  await done;
  return added;
}

/** What is being typed for a job; null for nothing. */
export async function draft(job) {
  const database = await opened;
  return (await answer(database.transaction('drafts').objectStore('drafts').get(job)))?.text ?? null;
}

/** Keeps what is being typed. */
export async function keepDraft(job, text) {
  const database = await opened;
  const transaction = database.transaction('drafts', 'readwrite');
  const done = ended(transaction);
  transaction.objectStore('drafts').put({ job, text });
  await done;
}
