// Before and beside the program: says so when it could not start or has stopped, and gets the saved jobs out without it.
// Plain script on purpose: it must work where the program does not.
//
// The program tells it two things by events on window: "roomwright-started" once its screen is up, and
// "roomwright-stopped" with the reason in `detail` from its panic hook.
(() => {
  "use strict";
  const FLAG = "roomwright-start"; // in sessionStorage: how many starts in a row did not come up
  const PREFIX = "roomwright.";    // of every key that the program saves under

  const WORDS = {
    es: {
      title: "Roomwright se detuvo",
      what: "Algo falló en el programa. Lo que estaba guardado sigue en este dispositivo.",
      reload: "Volver a cargar",
      download: "Descargar los trabajos guardados",
      fresh: "Empezar sin el último trabajo",
      nothing: "No se encontró ningún trabajo guardado en este navegador.",
      report: "Lo que informó el programa",
      failed: "Roomwright no pudo empezar",
      unloaded: "Una parte del programa no se cargó. Con señal, vuelva a cargar la página. Lo que estaba guardado sigue en este dispositivo.",
    },
    en: {
      failed: "Roomwright could not start",
      unloaded: "A part of the program did not load. With a signal, load the page again. What was saved is still on this device.",
    },
  };

  // Storage may be blocked: then reading it throws.
  const attempt = (f, otherwise) => { try { return f(); } catch { return otherwise; } };
  const unfinished = attempt(() => Number(sessionStorage.getItem(FLAG)) || 0, 0);
  attempt(() => sessionStorage.setItem(FLAG, String(unfinished + 1)));
  let started = false;
  let stopped = false; // by a panic: the errors that it draws after it say nothing more

  function language() {
    const kept = attempt(() => localStorage.getItem(PREFIX + "lang"), null) || navigator.language || "en";
    return /^"?es\b/i.test(kept) ? "es" : "en";
  }

  function whenReady(f) {
    if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", f, { once: true });
    else f();
  }

  function saved() {
    const keys = {};
    for (let i = 0; i < localStorage.length; i++) {
      const key = localStorage.key(i);
      if (key.startsWith(PREFIX)) keys[key] = localStorage.getItem(key);
    }
    return keys;
  }

  function download() {
    const keys = attempt(saved, {});
    if (Object.keys(keys).length === 0) {
      document.querySelector('#stopped [data-word="nothing"]').hidden = false;
      return;
    }
    const text = JSON.stringify({ format: { name: "roomwright-rescue", version: 1 }, keys }, null, 1);
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text], { type: "application/json" }));
    link.download = "roomwright-saved.json";
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(link.href), 60000);
  }

  function show(report, title, what) {
    const box = document.getElementById("stopped");
    const lang = language();
    const words = WORDS[lang];
    box.lang = lang;
    for (const part of box.querySelectorAll("[data-word]")) {
      const key = part.dataset.word === "title" ? title : part.dataset.word === "what" ? what : part.dataset.word;
      if (words[key]) part.textContent = words[key];
    }
    const pre = box.querySelector("pre");
    if (report && !pre.textContent) pre.textContent = report;
    pre.parentElement.hidden = !pre.textContent;
    box.querySelector('[data-action="fresh"]').hidden = started;
    box.querySelector('[data-action="reload"]').onclick = () => location.reload();
    box.querySelector('[data-action="download"]').onclick = download;
    for (const waiting of document.querySelectorAll("#first-screen > :not(h1)")) waiting.hidden = true;
    box.hidden = false;
    box.scrollIntoView();
  }

  addEventListener("roomwright-started", () => {
    started = true;
    performance.mark("roomwright-started"); // make bench reads it
    attempt(() => sessionStorage.removeItem(FLAG));
    document.getElementById("stopped").hidden = true;
  });
  addEventListener("roomwright-stopped", (event) => {
    stopped = true;
    whenReady(() => show(event.detail, "title", "what"));
  });

  // Only until the program is up: its script or its wasm could not be had, or this browser is too old for it.
  addEventListener("error", (event) => {
    if (started || stopped) return;
    const source = event.target instanceof HTMLScriptElement ? event.target.src : event.message;
    if (source) whenReady(() => show(source, "failed", "unloaded"));
  }, true);
  addEventListener("unhandledrejection", (event) => {
    if (!started && !stopped) whenReady(() => show(String(event.reason), "failed", "unloaded"));
  });

  whenReady(() => {
    if (language() === "es") {
      document.documentElement.lang = "es";
      for (const part of document.querySelectorAll("[data-es]")) part.textContent = part.dataset.es;
    }
    // Two starts in a row that never came up, without a word: offer the way round before the third one tries.
    if (unfinished >= 2 && !started) show("", "failed", "what");
  });
})();
