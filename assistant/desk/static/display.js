// Puts each new state on the page and sends what is typed. Everything shown was escaped where it was drawn.
"use strict";

const root = document.documentElement;
const part = (name) => document.getElementById(name);
const line = part("line");
const main = part("what");
const SIZES = 4;
const SMALLEST = 3;
const THEMES = [["", "as the system", "Auto"], ["dark", "dark", "Dark"], ["light", "light", "Light"],
  ["contrast", "high contrast", "High"]];
let covers = null;
let events = Number(document.body.dataset.events); // so that an early answer belongs to what the page came with
let said = "";
let chosen = false;
let over = false;
let level = 0; // of the microphone, 0 to 4

/** Whether the middle's texts stay within its padding. */
function holds() {
  const box = main.getBoundingClientRect();
  const style = getComputedStyle(main);
  const top = box.top + parseFloat(style.borderTopWidth) + parseFloat(style.paddingTop);
  const bottom = box.bottom - parseFloat(style.borderBottomWidth) - parseFloat(style.paddingBottom);
  const all = [...main.children].map((one) => one.getBoundingClientRect());
  const inside = all.every((one) => one.top >= top - 1 && one.bottom <= bottom + 1);
  return inside && main.scrollWidth <= main.clientWidth + 1;
}

/** The largest of the fixed sizes at which all of it is there; the page grows where even the smallest is too large. */
function fit() {
  document.body.classList.remove("flows");
  for (let size = 0; size <= SMALLEST; size += 1) {
    main.dataset.fit = size;
    if (holds()) {
      break;
    }
  }
  if (!holds() || document.body.scrollHeight > document.body.clientHeight + 1) {
    document.body.classList.add("flows");
  }
}

/** The disc within the ring: sound comes in. It stays a still ring where motion is not wanted. */
function ring() {
  part("level")?.setAttribute("r", matchMedia("(prefers-reduced-motion: reduce)").matches ? 0 : 1.25 * level);
}

function show(state) {
  for (const name of ["where", "what", "turn"]) {
    if (part(name).dataset.drawn !== state[name]) {
      part(name).innerHTML = state[name];
      part(name).dataset.drawn = state[name];
    }
  }
  document.body.dataset.kind = state.kind;
  document.body.dataset.whose = state.whose;
  if (covers !== null && state.covers !== covers) {
    line.value = "";
    said = part("live").textContent = "";
  }
  level = state.whose === "listening" ? level : 0;
  ring();
  covers = state.covers;
  events = state.events;
  if (state.whose === "speaking" && !chosen) {
    announce(false);
  }
  if (state.live !== said) {
    said = state.live;
    part("live").textContent = announces() ? said : "";
  }
  over = state.whose === "over";
  line.disabled = over;
  for (const key of document.querySelectorAll("[data-words]")) {
    key.disabled = over;
  }
  fit();
}

const announces = () => part("announce").getAttribute("aria-pressed") === "true";
function announce(on) {
  part("announce").setAttribute("aria-pressed", String(on));
}

function send(words) {
  const sent = { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ words, events }) };
  fetch("words", sent).then(async (answer) => {
    part("lost").textContent = answer.ok ? "" : `Not taken. ${await answer.text()}`;
    fit();
  }, lost);
}

function lost() {
  if (!over) {
    part("lost").textContent = "No connection. The attempt goes on at the terminal.";
    fit();
  }
}

part("words").addEventListener("submit", (event) => {
  event.preventDefault();
  send(line.value);
  line.value = "";
});
for (const key of document.querySelectorAll("[data-words]")) {
  key.addEventListener("click", () => {
    send(key.dataset.words);
    line.focus();
  });
}
document.addEventListener("keydown", (event) => {
  const plain = !event.ctrlKey && !event.altKey && !event.metaKey;
  const elsewhere = document.activeElement === document.body;
  if (event.key === " " && plain && line.value === "" && (elsewhere || document.activeElement === line)) {
    event.preventDefault();
    send("");
  } else if (event.key.length === 1 && plain && elsewhere) {
    line.focus();
  }
});

function resize(by) {
  const size = Math.min(SIZES - 1, Math.max(0, Number(root.dataset.size || 0) + by));
  root.dataset.size = size;
  fit();
}
part("smaller").addEventListener("click", () => resize(-1));
part("larger").addEventListener("click", () => resize(1));
let theme = 0;
part("theme").textContent = THEMES[0][2];
part("theme").addEventListener("click", () => {
  theme = (theme + 1) % THEMES.length;
  const [name, words, label] = THEMES[theme];
  if (name) {
    root.dataset.theme = name;
  } else {
    delete root.dataset.theme;
  }
  part("theme").textContent = label;
  part("theme").setAttribute("aria-label", `Colours: ${words} (${label})`);
});
part("announce").addEventListener("click", () => {
  chosen = true;
  announce(!announces());
});

const states = new EventSource("events");
states.addEventListener("message", (event) => {
  part("lost").textContent = "";
  show(JSON.parse(event.data));
  if (over) {
    states.close();
  }
});
states.addEventListener("level", (event) => {
  level = Number(event.data);
  ring();
});
states.addEventListener("error", lost);
addEventListener("resize", fit);
main.addEventListener("toggle", fit, true);
fit();
