// Wires the page: fields, maps, slips, what is kept over a reload, and the file to save.
const data = JSON.parse(document.getElementById("data").textContent);
const form = document.getElementById("sheet");
const byId = new Map(data.features.map((f) => [f.id, f]));
const key = "calibgeom-sheet-" + data.digest + "-" + data.name;
const all = (selector, root) => [...(root || document).querySelectorAll(selector)];
const say = (text) => (document.getElementById("said").textContent = text);

function number(name, fallback) {
  const reading = parseReading(form.elements[name].value);
  return reading ? reading.text : fallback || "";
}

// --- sizes -----------------------------------------------------------------------------------------------------

function checkRow(row) {
  const feature = byId.get(row.dataset.feature);
  const note = row.querySelector(".slip");
  const resolution = Number(number("resolution", "0.01"));
  const said = [];
  for (const field of all("input.reading", row)) {
    const reading = field.value.trim() ? parseReading(field.value) : null;
    const slip = reading ? findSlip(feature, millimetres(reading), data.features, data.slips, resolution) : null;
    const text = field.value.trim() && !reading ? "This is no number. Write it with a comma or a point." : slip && slip.text;
    field.classList.toggle("doubtful", Boolean(text));
    field.setAttribute("aria-invalid", text ? "true" : "false");
    if (text) said.push(field.value.trim() + ": " + text);
  }
  note.textContent = said.length ? "\u26A0 " + said.join(" ") : "";
}

function addRepeat(row, value) {
  const fields = all("input.reading", row);
  const field = fields[0].cloneNode();
  const label = byId.get(row.dataset.feature).id + ", reading " + (fields.length + 1) + ", mm";
  field.value = value || "";
  field.name = row.dataset.feature + "#" + (fields.length + 1);
  field.setAttribute("aria-label", label);
  fields[fields.length - 1].after(field);
  return field;
}

// --- maps: columns, tunnels, slots ------------------------------------------------------------------------------

const stages = ["", ...data.stages.map((s) => s.word)];

function setStage(cell, word) {
  cell.dataset.value = word;
  cell.querySelector(".word").textContent = word || "\u2013";
}

function setOpen(cell, open) {
  cell.dataset.value = open;
  cell.querySelector(".word").textContent = open || "\u2013";
}

function countOpen(row) {
  const cells = all(".opening", row);
  const marked = cells.filter((c) => c.dataset.value);
  const open = cells.filter((c) => c.dataset.value === "open").length;
  row.querySelector(".count").textContent =
    marked.length === cells.length ? open + " open of " + cells.length : marked.length ? "mark every one" : "";
  return marked.length === cells.length ? String(open) : "";
}

// --- what is kept ----------------------------------------------------------------------------------------------

function collect() {
  const kept = { fields: {}, cells: {} };
  for (const field of form.elements) {
    if (!field.name) continue;
    if (field.type === "radio" || field.type === "checkbox") {
      if (field.checked) kept.fields[field.name] = field.value;
    } else if (field.value) kept.fields[field.name] = field.value;
  }
  for (const cell of all("[data-cell]")) if (cell.dataset.value) kept.cells[cell.dataset.cell] = cell.dataset.value;
  return kept;
}

function keep() {
  try {
    localStorage.setItem(key, JSON.stringify(collect()));
  } catch {
    say("This browser keeps nothing over a reload: save the file before you close the page.");
  }
}

function restore() {
  let kept = null;
  try {
    kept = JSON.parse(localStorage.getItem(key));
  } catch {
    kept = null;
  }
  if (!kept) return;
  for (const [name, value] of Object.entries(kept.fields)) {
    const repeat = /^(.*)#(\d+)$/.exec(name);
    if (repeat && byId.has(repeat[1])) {
      const row = form.querySelector('.row[data-feature="' + repeat[1] + '"]');
      while (row && all("input.reading", row).length < Math.min(50, Number(repeat[2]))) addRepeat(row);
    }
    const field = form.elements[name];
    if (!field) continue;
    if (field instanceof RadioNodeList || field.type === "radio")
      all('input[type="radio"]', form).forEach((r) => (r.checked = r.checked || (r.name === name && r.value === value)));
    else if (field.type === "checkbox") field.checked = true;
    else field.value = value;
  }
  for (const cell of all("[data-cell]")) {
    const value = kept.cells[cell.dataset.cell] || "";
    if (cell.classList.contains("opening")) setOpen(cell, value);
    else setStage(cell, value);
  }
}

// --- the file --------------------------------------------------------------------------------------------------

function toSheet() {
  const rows = [];
  for (const feature of data.features) {
    const row = form.querySelector('.row[data-feature="' + feature.id + '"]');
    const note = row && row.querySelector("input.note") ? row.querySelector("input.note").value : "";
    if (feature.unit === "stage") {
      const cell = document.querySelector('[data-cell="' + feature.id + '"]');
      if (cell && cell.dataset.value) rows.push({ feature: feature.id, value: cell.dataset.value });
    } else if (!row) continue;
    else if (feature.unit === "mm")
      for (const field of all("input.reading", row)) {
        const reading = parseReading(field.value);
        if (reading) rows.push({ feature: feature.id, value: reading.text, unit: reading.unit || "mm", instrument: "cal", note });
      }
    else if (feature.unit === "count") {
      const count = countOpen(row);
      if (count) rows.push({ feature: feature.id, value: count, note });
    } else {
      const checked = row.querySelector("input:checked");
      if (checked) rows.push({ feature: feature.id, value: checked.value, note });
    }
  }
  const text = (name) => form.elements[name].value;
  const chosen = (name) => {
    const found = form.querySelector('input[name="' + name + '"]:checked');
    return found ? found.value : "";
  };
  return {
    digest: data.digest,
    temperature: number("temperature"),
    state: chosen("state"),
    expansion: number("expansion"),
    material: chosen("material"),
    resolution: number("resolution", "0.01"),
    mpe: number("mpe"),
    settings: [...data.settings.map((s) => [s.word, s.number ? number(s.word) : text(s.word)]), ["notes", text("notes")]],
    rows,
  };
}

function save() {
  const sheet = toSheet();
  if (sheet.rows.length === 0) {
    say("Nothing has been filled in yet.");
    return;
  }
  const trial = form.elements.trial.value.replace(/[^\w-]+/g, "-").replace(/^-+|-+$/g, "");
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([readingsText(sheet)], { type: "text/csv;charset=utf-8" }));
  link.download = data.name + (trial ? "-" + trial : "") + ".csv";
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  say("Saved " + link.download + ", " + sheet.rows.length + " readings. Next: calibgeom predict " + link.download);
}

// --- the object ------------------------------------------------------------------------------------------------

function lightRows(part, jump) {
  all(".lit").forEach((e) => e.classList.remove("lit"));
  const rows = part ? all("[data-part]").filter((e) => e.dataset.part === part) : [];
  rows.forEach((e) => e.classList.add("lit"));
  document.getElementById("named").textContent = part || "Turn with a finger, the mouse or arrow keys; tap a part.";
  if (jump && rows.length) rows[0].scrollIntoView({ block: "center", behavior: "smooth" });
}

const canvas = document.getElementById("object");
const view = createView(canvas, data.mesh, (part, tapped) => {
  view.light(part === "plinth" ? "" : part);
  lightRows(part, tapped && part !== "plinth");
});
document.getElementById("nearer").addEventListener("click", () => view.zoom(1.25));
document.getElementById("farther").addEventListener("click", () => view.zoom(0.8));

form.addEventListener("focusin", (event) => {
  const owner = event.target.closest("[data-part]");
  if (!owner) return;
  view.light(owner.dataset.part);
  lightRows(owner.dataset.part, false);
});

form.addEventListener("input", (event) => {
  const row = event.target.closest(".row");
  if (event.target.name === "resolution") all(".row.size").forEach(checkRow);
  else if (row && row.classList.contains("size")) checkRow(row);
  keep();
});

form.addEventListener("submit", (event) => {
  event.preventDefault();
  save();
});

document.addEventListener("click", (event) => {
  const button = event.target.closest("button");
  if (!button) return;
  if (button.classList.contains("repeat")) addRepeat(button.closest(".row")).focus();
  else if (button.classList.contains("column"))
    setStage(button, stages[(stages.indexOf(button.dataset.value || "") + 1) % stages.length]);
  else if (button.classList.contains("opening")) {
    setOpen(button, button.dataset.value === "open" ? "closed" : button.dataset.value === "closed" ? "" : "open");
    countOpen(button.closest(".row"));
  } else if (button.id === "standing") {
    const chosen = form.querySelector('input[name="state"]:checked');
    const word = chosen && chosen.value !== "post-cured" ? "wash" : "cure";
    all("button.column").forEach((c) => c.dataset.value || setStage(c, word));
  } else if (button.dataset.openings) {
    const row = button.closest(".row");
    all(".opening", row).forEach((c) => setOpen(c, button.dataset.openings));
    countOpen(row);
  } else if (button.id === "print") window.print();
  else if (button.id === "fresh") {
    if (!window.confirm("Empty the whole sheet? What was typed is lost unless it was saved.")) return;
    try {
      localStorage.removeItem(key);
    } catch {
      // Nothing was kept, then.
    }
    form.reset();
    all("button.column").forEach((c) => setStage(c, ""));
    all("button.opening").forEach((c) => setOpen(c, ""));
    all(".row.size").forEach(checkRow);
    return;
  } else return;
  keep();
});

restore();
all(".row.size").forEach(checkRow);
all(".row.openings").forEach(countOpen);
lightRows("", false);
