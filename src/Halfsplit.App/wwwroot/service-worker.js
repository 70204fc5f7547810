// While developing, everything comes from the network: a cached build would hide the last change.
self.addEventListener('fetch', () => {});
