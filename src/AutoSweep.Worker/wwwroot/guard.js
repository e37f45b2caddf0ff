// Which screen this is. The browser's tab keeps the name over a reload; a second tab, or a copy of this one, makes its own.
"use strict";
(() => {
  const place = "autosweep-screen";
  // randomUUID is only there on https and loopback; this is everywhere.
  const fresh = () => Array.from(crypto.getRandomValues(new Uint8Array(16)), byte => byte.toString(16).padStart(2, "0")).join("");
  const name = sessionStorage.getItem(place) ?? fresh();
  // A copied tab copies the storage as well: while this page is open the name is not in there.
  const keep = () => sessionStorage.setItem(place, name);
  const hide = () => sessionStorage.removeItem(place);
  hide();
  addEventListener("pagehide", keep);
  addEventListener("pageshow", hide);
  globalThis.autosweepScreen = () => name;
})();
