// Sounds, keys, the foot pedal, and what to do when the bench computer is gone. No library, nothing from elsewhere.
"use strict";
(() => {
  // ---- What belongs to this screen: kept in its browser, and missing where that keeps nothing.
  const usual = { sound: "on", volume: "70", pedal: "" };
  const kept = name => { try { return localStorage.getItem("autosweep." + name) ?? usual[name]; } catch { return usual[name]; } };
  const keep = (name, value) => { try { localStorage.setItem("autosweep." + name, value); } catch { usual[name] = value; } };

  const showSettings = () => {
    for (const field of document.querySelectorAll("[data-setting]")) {
      const value = kept(field.dataset.setting);
      if (field.type === "checkbox") field.checked = value === "on"; else field.value = field.dataset.setting === "pedal" ? value || "none yet" : value;
    }
    showHint();
  };

  // ---- Sounds (Web Audio API, W3C). A browser keeps quiet until somebody has touched the page (its autoplay rules).
  // Steps of hertz, seconds and shape. The four differ in number, direction and timbre, so that a noisy room does not mix them up.
  const sounds = {
    recognised: [[1320, 0.07, "sine"]],
    done: [[660, 0.12, "triangle"], [990, 0.22, "triangle"]],
    wrongoutput: [[330, 0.16, "square"], [0, 0.05], [220, 0.34, "square"]],
    question: [[880, 0.14, "triangle"], [660, 0.14, "triangle"], [880, 0.14, "triangle"], [660, 0.14, "triangle"], [880, 0.3, "triangle"]],
  };
  let audio = null;

  const isQuiet = () => kept("sound") === "on" && audio?.state !== "running";
  const showHint = () => document.getElementById("sound-hint")?.toggleAttribute("hidden", !isQuiet());
  const wake = () => {
    audio ??= new AudioContext();
    audio.onstatechange = showHint;
    if (audio.state !== "running") audio.resume().then(showHint, showHint);
    showHint();
  };

  const sound = name => {
    // What was asked for last, for who looks at the page from outside.
    document.documentElement.dataset.sound = name;
    if (kept("sound") !== "on" || audio?.state !== "running" || !sounds[name]) return;
    let at = audio.currentTime + 0.01;
    for (const [hertz, seconds, shape] of sounds[name]) {
      if (hertz > 0) tone(hertz, at, seconds, shape);
      at += seconds;
    }
  };
  const tone = (hertz, at, seconds, shape) => {
    const [source, gain] = [audio.createOscillator(), audio.createGain()];
    const loud = Number(kept("volume")) / 100 * (shape === "square" ? 0.35 : 0.8);
    source.type = shape;
    source.frequency.value = hertz;
    // Ten milliseconds up and down: a tone that is cut off clicks.
    gain.gain.setValueAtTime(0, at);
    gain.gain.linearRampToValueAtTime(loud, at + 0.01);
    gain.gain.setValueAtTime(loud, at + seconds - 0.02);
    gain.gain.linearRampToValueAtTime(0, at + seconds);
    source.connect(gain).connect(audio.destination);
    source.start(at);
    source.stop(at + seconds);
  };

  // ---- Keys and the pedal (KeyboardEvent of UI Events, W3C).
  const isField = it => it instanceof HTMLTextAreaElement || it instanceof HTMLSelectElement
    || (it instanceof HTMLInputElement && !["checkbox", "radio", "range", "button", "submit"].includes(it.type));
  // Under an open dialog nothing can be pressed.
  const press = selector => {
    const room = document.querySelector("dialog[open]") ?? document;
    const button = [...room.querySelectorAll(selector)].find(one => !one.disabled && one.getClientRects().length > 0);
    button?.click();
    return button;
  };
  const learn = event => {
    if (["Tab", "Escape", "Shift", "Control", "Alt", "Meta"].includes(event.key)) return;
    event.preventDefault();
    keep("pedal", event.code || event.key);
    showSettings();
  };
  const named = event => event.key.length === 1 ? event.key.toLowerCase() : event.key;

  document.addEventListener("keydown", event => {
    wake();
    if (event.repeat || event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return;
    const on = event.target;
    if (on instanceof HTMLElement && on.dataset.setting === "pedal") return learn(event);
    // A pedal that types a letter stays a letter where somebody types.
    const typing = isField(on);
    if (kept("pedal") === (event.code || event.key) && !(typing && (event.key.length === 1 || event.key === "Enter"))) {
      if (press("[data-pedal]")) event.preventDefault();
      return;
    }
    // Enter sends the form of the field that somebody types in; on a button or link it presses that one, as ever.
    if (typing || (["Enter", " "].includes(event.key) && on instanceof Element && on.closest("button, a[href], summary"))) return;
    if (press(`[data-key="${CSS.escape(named(event))}"]`)) event.preventDefault();
  });
  document.addEventListener("pointerdown", wake);
  // A button that was touched must not be pressed again by the next Enter.
  document.addEventListener("click", event => { if (event.detail > 0) event.target.closest?.("button")?.blur(); });

  document.addEventListener("click", event => {
    const button = event.target.closest?.("[data-try], [data-forget], #lost-look");
    if (!button) return;
    if (button.dataset.try) sound(button.dataset.try);
    if (button.dataset.forget) { keep(button.dataset.forget, ""); showSettings(); }
    if (button.id === "lost-look") look();
  });
  document.addEventListener("input", event => {
    const field = event.target;
    if (!(field instanceof HTMLInputElement) || !field.dataset.setting || field.readOnly) return;
    keep(field.dataset.setting, field.type === "checkbox" ? (field.checked ? "on" : "off") : field.value);
    showHint();
  });

  // ---- The bench computer is gone, or was started again.
  const lost = document.getElementById("components-reconnect-modal");
  let looking = null;
  // An answer is waited for before the page is loaded again: a browser's own error page would look no further.
  const look = async () => {
    try { if ((await fetch(document.baseURI, { cache: "no-store", signal: AbortSignal.timeout(3000) })).ok) location.reload(); } catch { }
  };
  const lookOn = () => { looking ??= setInterval(look, 2000); look(); };
  lost.addEventListener("components-reconnect-state-changed", event => {
    const state = event.detail.state;
    if (state === "hide") { clearInterval(looking); looking = null; lost.close(); return; }
    if (!lost.open) lost.showModal();
    // Blazor has given up, or another process answers that knows nothing of this screen.
    if (["failed", "rejected", "resume-failed"].includes(state)) lookOn();
  });
  lost.addEventListener("cancel", event => event.preventDefault());

  window.autosweep = { sound, settings: showSettings };
  // As long as it takes: whoever comes back from lunch finds the screen alive.
  Blazor.start({ circuit: { reconnectionOptions: { maxRetries: 1000000, retryIntervalMilliseconds: 1000 } } });
})();
