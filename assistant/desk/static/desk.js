// Keeps the desk's pages up to date and sends what the instructor marks. Everything shown was escaped where it was drawn.
"use strict";

const page = document.body.dataset;
const root = page.root;
const part = (id) => document.getElementById(id);
const JUST_NOW_MS = 700; // a button whose step has only just changed is not pressed on purpose
const STILL_MS = 1500; // rows stay where they are while the pointer moves over them
const drawn = new WeakMap();
const rows = new Map();
let ahead = 0; // the desk's clock less this browser's, milliseconds
let chosen = null; // key of the chosen row, or id of the chosen step
let step = {}; // what marks are for on the page of one attempt
let pointed = 0;
let later = 0;

// What came from the desk.

function put(target, html) {
  if (!target || drawn.get(target) === html) {
    return;
  }
  drawn.set(target, html);
  const inside = (kind) => [...target.querySelectorAll(kind)];
  const focused = inside("button, a, summary").indexOf(document.activeElement);
  const open = inside("details").map((one) => one.open);
  target.innerHTML = html;
  inside("details").forEach((one, place) => { one.open = open[place] ?? one.open; });
  if (focused >= 0) {
    target.tabIndex = -1;
    (inside("button, a, summary")[focused] ?? target).focus({ preventScroll: true });
  }
}

function take(news) {
  ahead = news.clock - Date.now();
  if (news.rows) {
    board(news.rows);
  }
  for (const [id, html] of Object.entries(news.parts ?? {})) {
    put(id.startsWith("row-") ? rows.get(id.slice(4))?.querySelector(".live") : part(id), html);
  }
  if (news.step) {
    const when = (name) => (news.step[name] === step[name] ? step[`${name}Changed`] : Date.now());
    step = { ...news.step, markChanged: when("mark"), nowChanged: when("now") };
  }
  for (const [id, state] of Object.entries(news.states ?? {})) {
    const item = part(`see-${id}`);
    item.dataset.state = state;
    for (const button of item.querySelectorAll("[data-mark]")) {
      button.setAttribute("aria-pressed", String(button.dataset.mark === state));
    }
  }
  for (const entry of news.entries ?? []) {
    if (!part(`entry-${entry.number}`)) {
      const line = document.createElement("li");
      line.id = `entry-${entry.number}`;
      line.innerHTML = entry.html;
      part("log").prepend(line);
    }
  }
  tick();
}

function tick() {
  for (const clock of document.querySelectorAll(".clock")) {
    const seconds = Math.max(0, Math.floor((Date.now() + ahead - Number(clock.dataset.since)) / 1000));
    const text = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
    if (clock.textContent !== text) {
      clock.textContent = text;
    }
  }
}

function lost(text) {
  if (part("lost").textContent !== text) {
    part("lost").textContent = text;
  }
}

function say(text) {
  part("said").textContent = text;
}

// The rows.

function board(facts) {
  const list = part("rows");
  const calls = [];
  for (const fact of facts) {
    const row = rows.get(fact.key) ?? newRow(list, fact);
    const before = row.fact;
    row.fact = fact;
    row.classList.toggle("goes", fact.goesOn);
    row.classList.toggle("is-free", fact.free);
    const link = row.querySelector(".open");
    link.firstChild.textContent = fact.name;
    link.lastChild.textContent = fact.learner;
    link.href = fact.attempt ? `attempt/${fact.attempt}` : `start?station=${encodeURIComponent(fact.name)}`;
    const sign = row.querySelector(".sign");
    sign.hidden = !fact.file;
    sign.href = `records/${fact.file}/sign`;
    sign.setAttribute("aria-label", `Sign off ${fact.learner}`);
    row.querySelector(".target").textContent = fact.target ? `S and N: ${fact.target}` : "No step waits to be marked as seen.";
    row.markChanged = before?.step === fact.step ? row.markChanged : Date.now();
    row.nowChanged = before?.now === fact.now ? row.nowChanged : Date.now();
    if (fact.waits && before?.word !== fact.word) {
      calls.push(`${fact.name}, ${fact.learner}: ${fact.word}. ${fact.why}`);
    }
  }
  const known = new Set(facts.map((fact) => fact.key));
  for (const [key, row] of rows) {
    if (!known.has(key)) {
      row.remove();
      rows.delete(key);
    }
  }
  const waiting = facts.filter((fact) => fact.waits).length;
  const busy = facts.filter((fact) => fact.goesOn && !fact.free).length;
  const stations = facts.length === 1 ? "1 station" : `${facts.length} stations`;
  const waits = waiting === 1 ? "1 waits for you" : `${waiting || "Nobody"} ${waiting ? "wait" : "waits"} for you`;
  part("summary").textContent = facts.length ? `${stations}, ${busy} at work. ${waits}.` : "";
  part("nobody").hidden = facts.length > 0;
  document.title = `${waiting ? `(${waiting}) ` : ""}Instructor's desk`;
  if (calls.length) {
    say(calls.join(" "));
  }
  arrange(list, facts.map((fact) => rows.get(fact.key)));
}

function newRow(list, fact) {
  const row = part("row").content.firstElementChild.cloneNode(true);
  row.id = `station-${fact.key}`;
  row.querySelector(".open").append(document.createTextNode(""), document.createElement("span"));
  row.querySelector(".acts").setAttribute("aria-label", `Marks for ${fact.name}`);
  const start = row.querySelector(".begin");
  start.href = `start?station=${encodeURIComponent(fact.name)}`;
  start.setAttribute("aria-label", `Start an attempt at ${fact.name}`);
  row.addEventListener("focusin", () => choose(fact.key));
  row.addEventListener("click", () => choose(fact.key));
  rows.set(fact.key, row);
  list.append(row);
  if (location.hash === `#${row.id}`) {
    choose(fact.key);
    row.querySelector(".open").focus();
  }
  return row;
}

/** Puts the rows in order. The one with the focus is never moved, only what is around it, and it stays where it is seen. */
function arrange(list, wanted) {
  clearTimeout(later);
  const wait = pointed + STILL_MS - Date.now();
  if (wait > 0 && list.children.length === wanted.length) {
    later = setTimeout(() => arrange(list, wanted), wait);
    return;
  }
  if (wanted.every((row, place) => list.children[place] === row)) {
    return;
  }
  const anchor = wanted.find((row) => row.contains(document.activeElement)) ?? rows.get(chosen);
  const top = anchor?.getBoundingClientRect().top;
  const place = wanted.indexOf(anchor);
  if (place < 0) {
    list.append(...wanted);
    return;
  }
  anchor.before(...wanted.slice(0, place));
  anchor.after(...wanted.slice(place + 1));
  scrollBy(0, anchor.getBoundingClientRect().top - top);
}

function choose(key) {
  if (chosen === key) {
    return;
  }
  rows.get(chosen)?.classList.remove("chosen");
  chosen = key;
  rows.get(key)?.classList.add("chosen");
}

// Marks.

function newId() {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

async function send(address, fields) {
  try {
    const answer = await fetch(root + address, {
      method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(fields),
    });
    if (!answer.ok) {
      return { problem: (await answer.text()).trim() };
    }
    return answer.status === 204 ? {} : await answer.json();
  } catch {
    return { problem: "No connection to the desk. Nothing was sent." };
  }
}

async function give(attempt, kind, fields) {
  const { problem } = await send(`attempt/${attempt}/${kind}`, { id: newId(), ...fields });
  lost(problem ?? "");
  if (!problem) {
    say("Sent.");
  }
}

/** Ends an attempt for now; what the instructor says of it becomes a note. */
async function stop(attempt, words) {
  if (words) {
    await give(attempt, "mark", { mark: "note", step: "", words });
  }
  await give(attempt, "direct", { what: "stop" });
}

/** What a button means: for which attempt and step, as they are shown now. */
function meant(button) {
  const row = button.closest("#rows > li");
  const fact = row?.fact;
  const aim = fact
    ? { ...fact, mark: fact.step, markSay: fact.target, markChanged: row.markChanged, nowChanged: row.nowChanged }
    : { attempt: page.attempt, ...step };
  const mark = button.dataset.mark;
  const own = button.dataset.step;
  if (own) {
    const item = button.closest("[data-step]:not(button)");
    const say = item?.dataset.name ?? item?.innerText.split("\n")[0] ?? "";
    return { attempt: aim.attempt, step: own, say, changed: 0, ahead: item?.dataset.state === "ahead" };
  }
  const toSee = mark === "seen" || mark === "not seen";
  const whole = ["unsafe", "note"].includes(mark) || !mark;
  if (toSee) {
    return { attempt: aim.attempt, step: aim.mark, say: aim.markSay, changed: aim.markChanged, missing: !aim.mark };
  }
  return {
    attempt: aim.attempt, step: whole ? "" : aim.now, say: whole ? "" : aim.say, changed: whole ? 0 : aim.nowChanged,
  };
}

function press(button) {
  const { mark, direct, happen, undo } = button.dataset;
  const aim = meant(button);
  if (undo) {
    give(aim.attempt, "mark", { mark: "undo", undoes: undo });
  } else if (aim.ahead) {
    lost("The learner has not reported this step yet. Mark it once they have.");
  } else if (aim.missing) {
    lost("No step waits to be marked as seen here.");
  } else if (!button.dataset.ask && Date.now() < aim.changed + JUST_NOW_MS) {
    lost("The step has just changed. Look, and press again.");
  } else if (button.dataset.ask) {
    const what = button.firstChild.textContent.trim();
    ask({ what, say: aim.say, label: button.dataset.ask, happen, needs: !("optional" in button.dataset) }, (words, kind) => {
      if (mark) {
        give(aim.attempt, "mark", { mark, step: aim.step, words });
      } else if (direct === "stop") {
        stop(aim.attempt, words);
      } else if (direct) {
        give(aim.attempt, "direct", { what: direct, words });
      } else {
        give(aim.attempt, "happen", { what: kind, words });
      }
    });
  } else if (mark) {
    give(aim.attempt, "mark", { mark, step: aim.step });
  } else {
    give(aim.attempt, "direct", { what: direct });
  }
}

let answer = null;
function ask({ what, say: about, label, happen, needs }, then) {
  part("ask-what").textContent = what;
  part("ask-step").textContent = about;
  part("ask-label").textContent = label;
  part("ask-happen").hidden = !happen;
  part("ask-problem").textContent = "";
  part("ask-words").value = "";
  part("ask-words").required = false;
  answer = { then, needs };
  part("ask").showModal();
  part("ask-words").focus();
}

function answered(event) {
  event.preventDefault();
  const words = part("ask-words").value.trim();
  const kind = part("ask").querySelector("[name=happen]:checked").value;
  if ((answer.needs || kind === "other") && !words) {
    part("ask-problem").textContent = "Some words are needed here.";
    part("ask-words").focus();
    return;
  }
  part("ask").close();
  answer.then(words, kind);
}

// Keys.

const keysOn = () => part("keys")?.getAttribute("aria-pressed") === "true";
function setKeys(on) {
  part("keys").setAttribute("aria-pressed", String(on));
  document.documentElement.dataset.keys = on ? "on" : "off";
  keep("keys", on ? "on" : "off");
}

function keep(name, value) {
  try {
    localStorage.setItem(name, value);
  } catch {
    // this browser keeps nothing
  }
}

function kept(name) {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

const MARKS = { s: "seen", n: "not seen", c: "cue", u: "unsafe", o: "overrule", t: "note" };

function key(event) {
  const writes = event.target.closest("input, textarea, select, dialog");
  if (!keysOn() || writes || event.ctrlKey || event.altKey || event.metaKey || event.repeat) {
    return;
  }
  const letter = event.key.toLowerCase();
  if (letter === "j" || letter === "k") {
    event.preventDefault();
    move(letter === "j" ? 1 : -1);
  } else if (MARKS[letter]) {
    event.preventDefault();
    const button = markButton(MARKS[letter]);
    if (button) {
      press(button);
    }
  }
}

function markButton(mark) {
  if (page.page === "board") {
    const row = rows.get(chosen);
    return row?.fact.goesOn ? row.querySelector(`[data-mark="${mark}"]`) : null;
  }
  if (mark === "seen" || mark === "not seen") {
    const item = document.activeElement.closest("#see > li") ?? (step.mark && part(`see-${step.mark}`));
    return item ? item.querySelector(`[data-mark="${mark}"]`) : null;
  }
  return document.querySelector(`#acts [data-mark="${mark}"]`);
}

function move(by) {
  const list = page.page === "board" ? [...part("rows").children] : [...part("see").children];
  const here = list.findIndex((one) => one.contains(document.activeElement));
  const now = here >= 0 ? here : list.findIndex((one) => one.classList.contains("chosen"));
  const next = list[Math.min(list.length - 1, Math.max(0, now < 0 ? 0 : now + by))];
  next?.querySelector(".open, .acts button")?.focus();
}

// Forms.

function fieldsOf(form) {
  const fields = {};
  for (const [name, value] of new FormData(form)) {
    if (name === "seen") {
      fields.seen = [...(fields.seen ?? []), value];
    } else if (typeof value === "string" && value !== "") {
      fields[name] = value;
    }
  }
  return fields;
}

async function post(event) {
  event.preventDefault();
  const form = event.target;
  const button = form.querySelector("button[type=submit]");
  const problem = form.querySelector(".problem");
  problem.textContent = "";
  button.disabled = true; // a form that is sent twice would begin two attempts
  const done = await send(form.dataset.post.replace(root, ""), fieldsOf(form));
  button.disabled = false;
  for (const secret of form.querySelectorAll("[type=password]")) {
    secret.value = "";
  }
  if (done.problem) {
    problem.textContent = done.problem;
    button.focus();
    return;
  }
  if (done.said) {
    try {
      sessionStorage.setItem("said", done.said);
    } catch {
      // it is shown nowhere else
    }
  }
  if (done.code) {
    part("code").textContent = done.code;
  } else if (done.to) {
    location.assign(root + done.to);
  } else {
    location.reload();
  }
}

function starting() {
  const form = part("start");
  for (const name of ["checklist", "mode", "typed"]) {
    const before = kept(`start-${name}`);
    const field = form.elements[name];
    if (before !== null && [...(field.options ?? field)].some((one) => one.value === before)) {
      field.value = before;
    }
  }
  let asked = 0;
  const show = async () => {
    const fields = fieldsOf(form);
    part("drawing").hidden = !fields.drawn;
    const mine = (asked += 1);
    try {
      const reply = await fetch(`${root}order?${new URLSearchParams(fields)}`);
      const text = await reply.text();
      if (mine !== asked) {
        return;
      }
      part("problem").textContent = reply.ok ? "" : text;
      part("order").innerHTML = reply.ok ? text : "";
    } catch {
      lost("No connection to the desk.");
    }
  };
  form.addEventListener("change", (event) => {
    if (["checklist", "mode", "typed"].includes(event.target.name)) {
      keep(`start-${event.target.name}`, event.target.value);
    }
    if (!["learner", "station", "mode", "typed"].includes(event.target.name)) {
      show();
    }
  });
  show();
  part("file").addEventListener("change", async (event) => {
    part("list").value = await event.target.files[0]?.text() ?? "";
  });
}

// Together.

document.addEventListener("click", (event) => {
  const button = event.target.closest("[data-mark], [data-direct], [data-happen], [data-undo]");
  if (button) {
    press(button);
  }
});
for (const form of document.querySelectorAll("[data-post]")) {
  form.addEventListener("submit", post);
}
if (part("keys")) {
  setKeys(kept("keys") !== "off");
  part("keys").addEventListener("click", () => setKeys(!keysOn()));
  document.addEventListener("keydown", key);
  part("ask").querySelector("form").addEventListener("submit", answered);
  part("ask-cancel").addEventListener("click", () => part("ask").close());
}
if (page.page === "board") {
  for (const kind of ["pointermove", "pointerdown"]) {
    part("rows").addEventListener(kind, () => { pointed = Date.now(); });
  }
}
if (page.page === "start") {
  starting();
}
if (page.live) {
  const source = new EventSource(page.live);
  let cut = false;
  source.addEventListener("message", (event) => {
    if (cut) {
      cut = false;
      lost("");
    }
    take(JSON.parse(event.data));
  });
  source.addEventListener("error", () => {
    cut = true;
    lost("No connection to the desk: what is shown may be old. The attempts go on at their stations.");
  });
  setInterval(tick, 1000);
}
try {
  const before = sessionStorage.getItem("said");
  sessionStorage.removeItem("said");
  if (before) {
    part("notice").textContent = before;
  }
} catch {
  // nothing was kept
}
