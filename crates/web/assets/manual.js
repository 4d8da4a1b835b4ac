// The manual's own script: finds pages by words in an index that lies beside it, and turns light to dark. It loads nothing from elsewhere.

const form = document.querySelector("[data-finder]");
const up = form.dataset.finder;
const field = document.getElementById("q");
const found = document.getElementById("found");
const SHOWN = 40;
// What a word in the title, the keys and the text counts: as a whole, and as a beginning.
const WEIGHTS = [[100, 70], [40, 25], [10, 6]];
const COMMON = new Set("a an and are at by do does for from how in is it of on or the to what when which with".split(" "));

document.querySelector("[data-light]").addEventListener("click", () => {
  const root = document.documentElement;
  const dark = root.dataset.light ? root.dataset.light === "dark" : matchMedia("(prefers-color-scheme: dark)").matches;
  root.dataset.light = dark ? "light" : "dark";
  localStorage.setItem("light", root.dataset.light);
});

// The words of a text in small letters; those joined by a hyphen or a subscript also by their parts.
function words(text) {
  const all = [];
  for (const raw of text.toLowerCase().replaceAll("\u03bc", "\u00b5").split(/[^\p{L}\p{N}_-]+/u)) {
    const word = raw.replace(/^[-_]+|[-_]+$/g, "");
    if (word) all.push(word);
    if (/[-_]/.test(word)) all.push(...word.split(/[-_]/).filter(Boolean));
  }
  return all;
}

// The index is read when somebody looks for something, not before.
let index;
function ready() {
  index ??= new Promise((done) => {
    const script = document.createElement("script");
    script.src = `${up}assets/index.js`;
    script.onload = () => done(window.entries.map(([kind, title, at, keys, text]) => ({ kind, title, at, text, parts: [title, keys, text].map((part) => new Set(words(part))) })));
    document.head.append(script);
  });
  return index;
}

// What one word counts in one part of an entry: whole, as the beginning of another, or not at all.
function counts(word, part, [whole, beginning]) {
  const one = word.length > 3 && word.endsWith("s") ? word.slice(0, -1) : word;
  if (part.has(word) || part.has(one)) return whole;
  if (one.length < 3) return 0;
  for (const other of part) if (other.startsWith(one)) return beginning;
  return 0;
}

function search(entries, query) {
  const all = words(query);
  const telling = all.filter((word) => !COMMON.has(word));
  const asked = telling.length ? telling : all;
  const hits = [];
  for (const entry of entries) {
    let [hit, score] = [0, 0];
    for (const word of asked) {
      const parts = entry.parts.map((part, k) => counts(word, part, WEIGHTS[k]));
      const best = Math.max(...parts);
      if (best > 0) hit += 1;
      score += best + Math.floor((parts.reduce((a, b) => a + b) - best) / 10);
    }
    if (words(entry.title).join(" ") === all.join(" ")) score += 200;
    if (hit) hits.push({ entry, hit, score });
  }
  const most = Math.max(0, ...hits.map((one) => one.hit));
  return hits.filter((one) => one.hit === most).sort((a, b) => b.score - a.score).map((one) => one.entry);
}

function element(tag, text, of) {
  const made = document.createElement(tag);
  if (text) made.textContent = text;
  of?.append(made);
  return made;
}

let turn = 0;
async function show(query) {
  const own = ++turn;
  if (!query.trim()) return found.replaceChildren();
  const hits = search(await ready(), query);
  if (own !== turn) return;
  found.replaceChildren();
  element("h2", `${hits.length} found for \u201c${query}\u201d`, found);
  if (!hits.length) element("p", "Nothing of the manual holds these words. Try another word of the trade, or a part of one.", found);
  const list = element("ol", "", found);
  list.className = "hits";
  for (const { kind, title, at, text } of hits.slice(0, SHOWN)) {
    const line = element("li", "", list);
    const word = element("span", `${kind} `, line);
    word.className = "small";
    element("a", title, line).href = up + at;
    if (text) element("p", text.length > 160 ? `${text.slice(0, 160).replace(/\s\S*$/, "")} ..` : text, line).className = "small";
  }
  if (hits.length > SHOWN) element("p", `${hits.length - SHOWN} more; another word narrows it.`, found).className = "small";
}

field.addEventListener("input", () => show(field.value));
form.addEventListener("submit", (event) => {
  event.preventDefault();
  show(field.value);
});
// A stroke goes to the field, as in many programs; Escape empties it.
addEventListener("keydown", (event) => {
  if (event.key === "/" && !/INPUT|TEXTAREA|SELECT/.test(document.activeElement.tagName)) {
    event.preventDefault();
    field.focus();
  } else if (event.key === "Escape" && document.activeElement === field) {
    field.value = "";
    show("");
  }
});
const asked = new URLSearchParams(location.search).get("q");
if (asked) {
  field.value = asked;
  show(asked);
}
