// The sheet's own script: sends what is typed, puts the answered pieces in place, and keeps the reader's place in them.

const name = document.body.dataset.sheet;
const base = name === undefined ? "" : `/sheet/${encodeURIComponent(name)}`;
const api = name === undefined ? "" : `/api/sheets/${encodeURIComponent(name)}`;
const find = (id) => document.getElementById(id);
let version = Number(document.querySelector("[data-version]")?.dataset.version ?? 0);
// Answers may come in another order than they were asked for: each has its turn, and each piece the turn it is of.
let turn = 0;
let shown = 0;
const turns = new Map();
let pointed = null;
let beside = null;
let views = false;
// Changes go one after the other, in the order in which they were made.
let last = Promise.resolve();

// Water finds its level: the one motion, and only where it may move.
const WET = 'svg [data-part="water"], svg [data-part="oil"]';
const LEVEL = [{ transform: "translateY(-1.4px)" }, { transform: "translateY(.5px)", offset: 0.6 }, { transform: "none" }];
const still = matchMedia("(prefers-reduced-motion: reduce)");
let moved = [];
let leaves = new Map();
// The leaves that an answer takes over as they are, wherever they stand in it.
let wanted = new Set();

// A millimetre of the drawing is read at so many pixels.
const PER_MM = 4.8;

function view(afresh) {
  const query = new URLSearchParams();
  if (wide) query.set("wide", String(wide));
  if (beside) query.set("beside", beside);
  if (pointed) query.set("part", pointed);
  if (views) query.set("views", "true");
  query.set("questions_later", "true");
  if (far) query.set("charts_later", "true");
  if (!afresh) query.set("has", [...document.querySelectorAll("[data-hash]")].map((leaf) => leaf.dataset.hash).join("."));
  return query.toString();
}

// How wide the drawing may be, and whether the charts are out of sight: looked at when nothing waits for it, as asking lays
// out the page.
let wide = 0;
let far = false;
function measure() {
  const drawing = document.querySelector("#picture .drawing");
  wide = drawing ? Math.round(Math.max(drawing.clientWidth - 16, 880) / PER_MM) : 0;
  const charts = find("way");
  far = charts !== null && charts.getBoundingClientRect().top > 1.2 * innerHeight;
}
let measuring = 0;
function measureSoon() {
  clearTimeout(measuring);
  measuring = setTimeout(measure, 60);
}
addEventListener("scroll", measureSoon, { passive: true });
addEventListener("resize", measureSoon);

// What nobody waits for comes once the drawing stands.
let following = 0;
function follow() {
  clearTimeout(following);
  following = setTimeout(() => ask("GET", `${base}/later?${view()}`), 120);
}

async function ask(method, path, body) {
  const asked = { turn: ++turn, over: version, changes: method !== "GET" };
  const headers = { Accept: "text/html" };
  if (body !== undefined) headers["Content-Type"] = "application/json";
  let answer;
  try {
    answer = await fetch(path, { method, headers, body: body === undefined ? undefined : JSON.stringify(body) });
  } catch {
    trouble("The program does not answer. Is it still running? What was typed last is not saved.");
    return null;
  }
  const text = await answer.text();
  if (!answer.ok && !text.includes("data-patch")) {
    trouble(text.trim() || `The program answered ${answer.status}.`);
    return null;
  }
  try {
    put(text, asked);
  } catch (fault) {
    console.error(fault);
    trouble("What the program answered could not be put on this page. Load the page again; what was sent is saved.");
  }
  return answer.ok ? answer : null;
}

function trouble(words) {
  const place = find("trouble");
  aside(place);
  place.replaceChildren(Object.assign(document.createElement("p"), { textContent: words }), closer("trouble"));
}

// A message stands where it does not cover the field that it is about.
function aside(place) {
  const at = document.activeElement?.getBoundingClientRect();
  place.classList.toggle("above", at !== undefined && document.activeElement !== document.body && at.top > innerHeight / 2);
}

function closer(id) {
  const button = Object.assign(document.createElement("button"), { type: "button", textContent: "Close" });
  button.dataset.close = id;
  return button;
}

// Puts each answered piece in the place of the one of its id; what is being typed in stays as it is typed.
function put(text, asked) {
  const fresh = new DOMParser().parseFromString(text, "text/html");
  const stamp = fresh.querySelector("[data-version]");
  const now = Number(stamp?.dataset.version);
  const whole = stamp !== null && stamp.dataset.later === undefined;
  // An answer of before a change that stands here already, or charts for a drawing that is not here yet: all is asked for again.
  if (stamp && asked.over <= now && now < version || stamp && !whole && now > version) return void redraw();
  if (whole && now === version && asked.turn < shown) return;
  const older = asked.turn < shown;
  if (whole) shown = Math.max(shown, asked.turn);
  const focused = document.activeElement;
  const mark = focused && focused.id ? { id: focused.id, start: focused.selectionStart, end: focused.selectionEnd } : null;
  const part = focused?.dataset?.part;
  // What the reader opened stays open.
  const open = new Set([...document.querySelectorAll("details[open] > summary")].map(opening));
  for (const summary of fresh.querySelectorAll("details > summary")) if (open.has(opening(summary))) summary.parentElement.open = true;
  // A message stands until the next change is done: what is only looked at takes none away that was not read yet.
  if (asked.changes && !fresh.getElementById("trouble")) find("trouble").replaceChildren();
  // Where each piece was scrolled to is asked before anything is changed: asking later would lay out the page each time.
  const outer = [...fresh.querySelectorAll("[data-patch]")].filter((piece) => !piece.parentElement.closest("[data-patch]"));
  const late = ({ id }) => whole ? false : asked.turn < (turns.get(id) ?? 0);
  const pieces = outer.map((piece) => ({ piece, old: find(piece.id) })).filter(({ piece, old }) => old && !late(piece));
  for (const { piece } of pieces) turns.set(piece.id, asked.turn);
  for (const one of pieces) one.scroll = one.old.scrollTop;
  moved = [];
  leaves = new Map([...document.querySelectorAll("[data-hash]")].map((leaf) => [leaf.dataset.hash, leaf]));
  const follows = fresh.querySelector("[data-kept]") !== null;
  wanted = new Set([...fresh.querySelectorAll("[data-same]")].map((same) => same.dataset.same));
  // What two answers at a time left behind cannot be put together from leaves: then all is asked for afresh.
  if ([...wanted].some((hash) => !leaves.has(hash))) return redraw(true);
  for (const { piece, old, scroll } of pieces) {
    // A text that was begun and is not saved stays, with the version that it was begun over.
    if (old.querySelector("textarea[data-typed]")) continue;
    // Nor is a field taken away while somebody types in it: its own answer brings the piece up to date.
    if (focused?.dataset?.typed !== undefined && old.contains(focused)) continue;
    const begun = [...old.querySelectorAll("[data-typed][id]")].map((field) => [field.id, field.value]);
    const shown = piece.id === "panel" || piece.id === "beside";
    if (piece.id === "trouble") aside(piece);
    if (shown) old.hidden = piece.hidden = false;
    merge(old, piece);
    if (scroll !== 0) find(piece.id).scrollTop = scroll;
    for (const [id, value] of begun) {
      const field = find(id);
      if (field) { field.value = value; field.dataset.typed = ""; }
    }
  }
  if (follows && stamp) follow();
  if (whole) version = now;
  for (const part of moved) if (!still.matches) part.animate(LEVEL, { duration: 450, easing: "ease-out" });
  if (mark) {
    const again = find(mark.id);
    if (again && again !== document.activeElement) {
      again.focus({ preventScroll: true });
      if (mark.start !== null && again.setSelectionRange && again.type !== "checkbox") try { again.setSelectionRange(mark.start, mark.end); } catch { /* a list has no selection */ }
    }
  } else if (part && !focused.isConnected) document.querySelector(`svg [data-part="${CSS.escape(part)}"][tabindex]`)?.focus({ preventScroll: true });
  place();
  measureSoon();
  // What it was asked for with is not what the reader looks at by now.
  if (whole && older) redraw();
}

// Brings an element to what came fresh: what is the same in both is left alone, and with it its layout and what the reader
// does in it.
function merge(old, fresh) {
  if (fresh.dataset.kept !== undefined && fresh.id === old.id) return;
  // In place of a leaf that the page has came its hash.
  if (fresh.dataset.same !== undefined && fresh.dataset.same === old.dataset.hash || old.isEqualNode(fresh)) return reset(old);
  const changes = fresh.dataset.same === undefined && !wanted.has(old.dataset.hash);
  if (changes && old.nodeName === fresh.nodeName && old.id === fresh.id && old.childNodes.length === fresh.childNodes.length) {
    if (old.matches(WET)) moved.push(old);
    for (const { name } of [...old.attributes]) if (!fresh.hasAttribute(name)) old.removeAttribute(name);
    for (const { name, value } of fresh.attributes) if (old.getAttribute(name) !== value) old.setAttribute(name, value);
    const pairs = [...old.childNodes].map((child, k) => [child, fresh.childNodes[k]]);
    for (const [child, other] of pairs) {
      if (child.nodeType === 1 && other.nodeType === 1) merge(child, other);
      else if (!child.isEqualNode(other)) child.replaceWith(document.adoptNode(other));
    }
    if (old.matches(FIELDS)) reset(old);
    return;
  }
  for (const same of fresh.matches("[data-same]") ? [fresh] : fresh.querySelectorAll("[data-same]")) {
    const leaf = leaves.get(same.dataset.same).cloneNode(true);
    if (same === fresh) fresh = leaf;
    else same.replaceWith(leaf);
  }
  for (const kept of fresh.querySelectorAll("[data-kept]")) {
    const stays = find(kept.id);
    if (stays) kept.replaceWith(stays);
  }
  if (old.matches(WET) && fresh.matches(WET)) moved.push(fresh);
  old.replaceWith(document.adoptNode(fresh));
}

const FIELDS = "input, select, textarea";

// A field shows what stands in the enquiry, also where the page itself is as it was.
function reset(old) {
  for (const field of old.matches(FIELDS) ? [old] : old.querySelectorAll(FIELDS)) {
    if (field.dataset.typed !== undefined) continue;
    const first = field.tagName === "SELECT" ? Math.max(0, [...field.options].findIndex((one) => one.defaultSelected)) : 0;
    // Setting what is set already would lay out the page, once for each field.
    if (field.tagName === "SELECT") { if (field.selectedIndex !== first) field.selectedIndex = first; }
    else if (field.value !== field.defaultValue) field.value = field.defaultValue;
  }
}

const opening = (summary) => summary.closest("[id]")?.id + "/" + summary.textContent.slice(0, 40);

function change(method, path, body) {
  last = last.catch(() => null).then(async () => {
    const answer = await ask(method, `${path}?${view()}`, body);
    // What stands in the panel of a number or a find is of the sheet before the change; that of a part came fresh with it.
    if (answer && pointed === null) unpoint();
    return answer;
  });
  return last;
}

const act = (actions) => change("POST", `${api}/actions`, actions);

// What is pointed at opens beside the pointer, inside the window.
let spot = null;
function place() {
  const panel = find("panel");
  if (!panel || panel.hidden || !spot) return;
  const width = panel.offsetWidth;
  panel.style.left = `${Math.max(8, Math.min(spot.x + 12, scrollX + document.documentElement.clientWidth - width - 12))}px`;
  panel.style.top = `${Math.max(scrollY + 8, Math.min(spot.y + 8, scrollY + innerHeight - panel.offsetHeight - 12))}px`;
}

async function point(id, at) {
  pointed = id;
  spot = at;
  await ask("GET", `${base}/part/${encodeURIComponent(id)}?${view()}`);
  find("panel")?.querySelector("h2")?.focus();
}

function unpoint() {
  const panel = find("panel");
  if (!panel || panel.hidden) return false;
  panel.hidden = true;
  const was = pointed;
  pointed = null;
  document.querySelector(`svg [data-part="${CSS.escape(was ?? "")}"][tabindex]`)?.focus({ preventScroll: true });
  return true;
}

async function show(which) {
  const aside = find("beside");
  const begun = aside.querySelector("textarea[data-typed]");
  if (begun && !confirm("What was typed here is not saved. Leave it?")) return;
  if (begun) delete begun.dataset.typed;
  if (beside === which) {
    beside = null;
    aside.hidden = true;
    aside.replaceChildren();
  } else {
    beside = which;
    await ask("GET", `${base}/beside/${which}?${view()}`);
    find("beside").querySelector("textarea, input, button, [tabindex]")?.focus();
  }
  for (const button of document.querySelectorAll("nav [data-beside]")) button.setAttribute("aria-expanded", String(button.dataset.beside === beside));
  await redraw();
}

const redraw = (afresh) => ask("GET", `${base}/pieces?${view(afresh)}`);

document.addEventListener("click", async (event) => {
  const at = event.target.closest("[data-close], [data-light], [data-step], [data-beside], [data-views], [data-study], [data-act], [data-point], [data-trail], [data-remedy], [data-like], svg [data-part], [data-find], [data-stop], [data-save], [data-look], [data-copy], [data-copied], [data-act-away]");
  // A click on nothing closes what stands over the sheet.
  if (!at) return void (event.target.closest("#panel, #beside form, input, select, textarea, a, button, summary") || unpoint());
  const set = at.dataset;
  const here = { x: event.pageX || at.getBoundingClientRect().left + scrollX, y: event.pageY || at.getBoundingClientRect().bottom + scrollY };
  if (set.close === "panel") unpoint();
  else if (set.close !== undefined) find(set.close).replaceChildren();
  else if (set.light !== undefined) light();
  else if (set.step) change("POST", `${api}/${set.step}`);
  else if (set.beside) show(set.beside);
  else if (set.views !== undefined) { views = !views; redraw(); }
  else if (set.study !== undefined) { at.disabled = true; ask("GET", `${base}/way?study=true&${view()}`); }
  else if (set.act) { if (await act(JSON.parse(set.act)) && set.settles !== undefined) unpoint(); }
  else if (set.point) point(set.point, here);
  else if (set.trail !== undefined) { pointed = null; spot = here; ask("GET", `${base}/trail/${set.trail}`); }
  else if (set.remedy !== undefined) { pointed = null; spot = here; ask("GET", `${base}/remedy/${set.remedy}`); }
  else if (set.find !== undefined) { pointed = null; spot = here; ask("GET", `${base}/find/${set.find}`); }
  else if (set.actAway) { if (await act(JSON.parse(set.actAway))) location.reload(); }
  else if (set.stop) fetch(`/api/packages/${set.stop}`, { method: "DELETE" });
  else if (set.save) keep(set.save);
  else if (set.look) { const frame = find("look"); frame.hidden = false; frame.src = set.look; }
  else if (set.copy) { await navigator.clipboard.writeText(find(set.copy).textContent); tell("Copied."); }
  else if (set.copied !== undefined) { await navigator.clipboard.writeText(set.copied); tell("Copied."); }
  else if (set.like) begin({ like: set.like });
  else if (set.part) point(set.part, here);
});

document.addEventListener("keydown", (event) => {
  if (event.key === "Escape" && unpoint()) event.preventDefault();
  const part = event.target.closest?.("svg [data-part], mark[data-find]");
  if (part && (event.key === "Enter" || event.key === " ")) {
    event.preventDefault();
    const box = part.getBoundingClientRect();
    const here = { x: box.left + scrollX + box.width / 2, y: box.top + scrollY + box.height / 2 };
    if (part.dataset.find !== undefined) { pointed = null; spot = here; ask("GET", `${base}/find/${part.dataset.find}`); }
    else point(part.dataset.part, here);
  }
  const typing = event.target.matches?.("input, textarea, select");
  if (name !== undefined && (event.ctrlKey || event.metaKey) && !typing && event.key.toLowerCase() === "z") {
    event.preventDefault();
    change("POST", `${api}/${event.shiftKey ? "redo" : "undo"}`);
  }
});

// What was begun is kept through every redrawing until it is sent.
document.addEventListener("input", (event) => { event.target.dataset.typed = ""; });

// A column or a row of a spreadsheet goes into the field and those after it, as one change.
document.addEventListener("paste", (event) => {
  const field = event.target;
  const text = event.clipboardData?.getData("text/plain") ?? "";
  if (!field.matches?.(".inputs [data-set]") || !/[\t\n]/.test(text.trim())) return;
  event.preventDefault();
  const cells = text.trim().split(/\r?\n/).flatMap((line) => line.split("\t")).map((cell) => cell.trim());
  const fields = [...field.closest("#beside, #panel, main").querySelectorAll(".inputs [data-set]")].filter((one) => one.offsetParent !== null);
  const from = fields.indexOf(field);
  const actions = cells.slice(0, fields.length - from).map((value, k) => ({ value, path: fields[from + k].dataset.set })).filter((cell) => cell.value !== "");
  act(actions.map(({ path, value }) => ({ do: "set", path, value })));
});

// Who decides states the day; today's is offered once he begins, and may be changed.
function offerDay(event) {
  const day = event.target.form?.elements.date;
  if (!day || day === event.target || day.dataset.today === undefined || day.value !== "") return;
  const now = new Date();
  day.value = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
  day.dataset.typed = "";
}
document.addEventListener("focusin", offerDay);
document.addEventListener("input", offerDay);

document.addEventListener("change", (event) => {
  const path = event.target.dataset.set;
  if (!path) return;
  delete event.target.dataset.typed;
  const value = event.target.value.trim();
  act([value === "" ? { do: "unset", path } : { do: "set", path, value }]);
});

document.addEventListener("submit", async (event) => {
  const form = event.target;
  const set = form.dataset;
  const told = Object.fromEntries(new FormData(form));
  // A form without a word for this script goes its own way.
  if (Object.keys(set).length === 0) return;
  event.preventDefault();
  // A text stays begun until it is saved.
  for (const field of form.elements) if (field.tagName !== "TEXTAREA") delete field.dataset.typed;
  if (set.set) { if (told.value.trim() !== "") act([{ do: "set", path: set.set, value: told.value.trim() }]); }
  else if (set.decide) act([{ do: "decide", rule: set.decide, ...told }]);
  else if (set.add) act([{ do: "add", block: set.add, keys: Object.entries(told).filter(([, value]) => value.trim() !== "") }]);
  else if (set.fresh) {
    // A new block is called by what names it, then its key is claimed with the sentence it comes from.
    const called = set.called === undefined ? set.value : told.called.trim();
    const place = `${set.fresh} "${called}"`;
    const others = [...form.querySelectorAll("[data-with]")].map((field) => ({ do: "set", path: `${place}.${field.dataset.with}`, value: field.value.trim() }));
    act([{ do: "add", block: set.fresh, keys: [[set.called ?? set.key, called]] }, ...others,
      set.list !== undefined ? { do: "set", path: `${place}.${set.key}`, value: set.value }
        : set.called === undefined ? { do: "set", path: `${place}.${set.key}`, value: set.value, from: set.from }
        : { do: "claim", path: `${place}.${set.key}`, value: set.value, from: set.from }]);
  }
  else if (set.package) make(set.package, told.edition);
  else if (set.new !== undefined) begin({ name: told.name, mail: told.mail });
  else if (set.text !== undefined) {
    if (!await change("PUT", `${api}/text`, { text: told.text, over: Number(told.over) })) return;
    delete form.elements.text.dataset.typed;
    await ask("GET", `${base}/beside/text?${view()}`);
  }
  else if (set.mail !== undefined) {
    if (!await change("PUT", `${api}/mail`, { mail: told.mail })) return;
    delete form.elements.mail.dataset.typed;
    await ask("GET", `${base}/beside/mail?${view()}`);
  }
});

async function begin(how) {
  const answer = await fetch("/api/sheets", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(how) });
  const told = await answer.json();
  // A mail that was pasted is what is worked through next.
  if (answer.ok) location.assign(told.address + (how.mail?.trim() ? "#mail" : ""));
  else trouble((told.refused ?? []).map((fault) => `${fault.place}: ${fault.reason}; ${fault.remedy}.`).join(" ") || told.error);
}

function tell(words) {
  find("told").textContent = words;
  setTimeout(() => { if (find("told").textContent === words) find("told").textContent = ""; }, 4000);
}

// A package is made in the background; the page asks how it stands until it is there.
async function make(sheet, edition) {
  const answer = await fetch(`/api/sheets/${encodeURIComponent(sheet)}/packages`, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ edition }) });
  const told = await answer.json();
  if (!answer.ok) return trouble(told.error ?? (told.refused ?? []).map((fault) => `${fault.place}: ${fault.reason}`).join("; "));
  do {
    await new Promise((done) => setTimeout(done, 150));
    await ask("GET", `/api/packages/${told.package}`);
  } while (find("package")?.dataset.making !== undefined);
}

async function keep(number) {
  const answer = await fetch(`/api/packages/${number}/save`, { method: "POST" });
  const told = await answer.json();
  if (answer.ok) tell(`Saved in the folder ${told.folder} beside the enquiry.`);
  else trouble(told.error ?? (told.refused ?? []).map((fault) => `${fault.place}: ${fault.reason}; ${fault.remedy}.`).join(" "));
}

function light() {
  const root = document.documentElement;
  const dark = root.dataset.light ? root.dataset.light === "dark" : matchMedia("(prefers-color-scheme: dark)").matches;
  root.dataset.light = dark ? "light" : "dark";
  localStorage.setItem("light", root.dataset.light);
}

if (name !== undefined && find("picture")) {
  measure();
  if (location.hash === "#mail") show("mail");
  // The drawing is laid out for the width there is.
  let was = 0;
  let waits = 0;
  new ResizeObserver(() => {
    const now = find("picture").clientWidth;
    if (Math.abs(now - was) < 40) return;
    was = now;
    clearTimeout(waits);
    waits = setTimeout(() => { measure(); redraw(); }, 60);
  }).observe(document.querySelector("main"));
  // Another window or another program may change the file.
  setInterval(async () => {
    if (document.hidden) return;
    const answer = await fetch(`${api}/version`).catch(() => null);
    if (answer?.ok && (await answer.json()).version !== version) await last.then(() => redraw());
  }, 3000);
}
