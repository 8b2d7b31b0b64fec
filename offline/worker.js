// Keeps the whole app on the device. Written into dist/sw.js by the `offline` crate, with the files of that build.
//
// A version is kept whole or not at all: each file's bytes are checked against the build's list, so that a deploy half done
// can't mix two versions. A new version waits until the page asks for it: nobody's entry is cut off by an update.
const version = "@version@";
const files = @files@; // path: SHA-256 of its bytes
const prefix = `roomwright ${new URL(registration.scope).pathname} `;
const cacheName = prefix + version;

async function sha256(response) {
  const digest = await crypto.subtle.digest("SHA-256", await response.arrayBuffer());
  return btoa(String.fromCharCode(...new Uint8Array(digest)));
}

async function fetched(path, hash) {
  for (const cache of ["no-cache", "reload"]) { // the second time past every copy on the way
    const response = await fetch(new Request(path, { cache }));
    if (response.ok && !response.redirected && await sha256(response.clone()) === hash) return response;
  }
  throw new Error(`${path} is not of version ${version}`);
}

addEventListener("install", (event) => event.waitUntil((async () => {
  const responses = await Promise.all(Object.entries(files).map(async ([path, hash]) => [path, await fetched(path, hash)]));
  const cache = await caches.open(cacheName);
  for (const [path, response] of responses) await cache.put(path, response);
})()));

addEventListener("activate", (event) => event.waitUntil((async () => {
  for (const name of await caches.keys()) if (name.startsWith(prefix) && name !== cacheName) await caches.delete(name);
  await clients.claim();
})()));

addEventListener("message", (event) => {
  if (event.data === "skip-waiting") skipWaiting();
});

addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== location.origin) return;
  event.respondWith((async () => {
    const cache = await caches.open(cacheName);
    return await cache.match(request.mode === "navigate" ? "./" : request) || fetch(request);
  })());
});
