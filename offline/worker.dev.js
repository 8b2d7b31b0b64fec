// In place of the worker under `make dev`: takes an earlier one away, which would serve yesterday's code.
addEventListener("install", () => skipWaiting());
addEventListener("activate", (event) => event.waitUntil((async () => {
  for (const name of await caches.keys()) if (name.startsWith("roomwright ")) await caches.delete(name);
  await registration.unregister();
  for (const client of await clients.matchAll()) client.navigate(client.url);
})()));
