// Keeps what is typed on this device, tells what cannot be read, and saves it all as one small file.
"use strict";
(function () {
  const form = document.getElementById("sheet");
  const kept = "precover field sheet " + form.dataset.job + " " + location.pathname;
  const fields = Array.from(form.querySelectorAll("input, select"));
  const number = String.raw`\d+(?:\.\d+)?(?:-\d+\/\d+)?|\d+\/\d+|\.\d+`;

  function read(field) {
    return field.type === "radio" ? (field.checked ? field.value : "") : field.value.trim();
  }

  function remember() {
    const values = {};
    for (const field of fields) if (read(field)) values[field.id] = read(field);
    try { localStorage.setItem(kept, JSON.stringify(values)); } catch (error) { /* kept nowhere */ }
    tell();
  }

  function recall() {
    let values = {};
    try { values = JSON.parse(localStorage.getItem(kept)) || {}; } catch (error) { /* nothing kept */ }
    for (const field of fields) {
      if (!(field.id in values)) continue;
      if (field.type === "radio") field.checked = true; else field.value = values[field.id];
    }
    for (const field of fields) check(field);
    tell();
  }

  function listed(text) { return text ? JSON.parse(text) : []; }

  function pattern(units) {
    const unit = units.map((each) => each.replace(/[.*+?^${}()|[\]\\\/]/g, "\\$&")).join("|");
    const one = "(?:" + number + ")\\s*(?:" + unit + ")";
    return "(?:" + one + "|(?:" + number + ")\\s*ft\\s*(?:" + number + ")\\s*in)";
  }

  // What is wrong with a field, in words; nothing where it can be read.
  function wrong(field) {
    const text = read(field);
    if (!text || text === "unknown" || listed(field.dataset.words).includes(text)) return "";
    const example = field.dataset.example ? ", such as " + field.dataset.example : "";
    if (field.dataset.format === "count") return /^\d{1,4}$/.test(text) ? "" : "A whole number" + example + ".";
    const units = listed(field.dataset.units).filter((each) => each !== "ft in");
    if (!units.length) return "";
    const parts = field.dataset.format === "opening" ? text.split(/\s+x\s+/) : [text];
    const whole = new RegExp("^" + pattern(units) + "$");
    if (parts.every((part) => whole.test(part))) return "";
    return "A number with its unit (" + units.slice(0, 6).join(", ") + ")" + example + ".";
  }

  function check(field) {
    const line = document.getElementById(field.id + "-wrong");
    if (!line) return true;
    line.textContent = wrong(field);
    field.setAttribute("aria-invalid", line.textContent ? "true" : "false");
    return !line.textContent;
  }

  function signed(item) {
    const by = document.getElementById("by").value.trim();
    const on = document.getElementById("on").value;
    if (by) item.by = by;
    if (on) item.on = on;
    return item;
  }

  function answer(field) {
    const text = read(field);
    const way = JSON.parse(field.dataset.way);
    if (field.dataset.item) {
      const item = JSON.parse(field.dataset.item);
      for (const key of Object.keys(item)) if (item[key] === "?") item[key] = text;
      return { way: way, item: signed(item) };
    }
    const instead = field.dataset.instead ? JSON.parse(field.dataset.instead) : null;
    if (instead && text === instead[0]) return { way: instead[1], value: text, was: "" };
    const value = field.dataset.format === "count" && /^\d+$/.test(text) ? Number(text) : text;
    return { way: way, value: value, was: field.dataset.was || "" };
  }

  function look(tick) {
    const chosen = tick.querySelector("input:checked");
    if (!chosen) return null;
    const item = JSON.parse(tick.dataset.tick);
    item.outcome = chosen.value;
    const found = tick.querySelector("input[type=text]").value.trim();
    if (found) item.found = found;
    return { way: ["looked_at"], item: signed(item) };
  }

  function answers() {
    const asked = fields.filter((field) => field.dataset.way && read(field)).map(answer);
    const ticks = Array.from(form.querySelectorAll("[data-tick]")).map(look).filter(Boolean);
    return asked.concat(ticks);
  }

  function tell() {
    document.getElementById("count").textContent = answers().length + " filled in";
  }

  function save() {
    const bad = fields.filter((field) => !check(field));
    if (bad.length) { bad[0].focus(); return; }
    const sheet = { precover_field_sheet: 1, job: form.dataset.job, answers: answers() };
    const link = document.createElement("a");
    const name = form.dataset.job.replace(/[^A-Za-z0-9]+/g, "-").replace(/^-+|-+$/g, "").toLowerCase();
    link.href = URL.createObjectURL(new Blob([JSON.stringify(sheet, null, 1)], { type: "application/json" }));
    link.download = (name || "job") + "-field-sheet.json";
    link.click();
  }

  form.addEventListener("input", (event) => { check(event.target); remember(); });
  form.addEventListener("submit", (event) => event.preventDefault());
  document.getElementById("save").addEventListener("click", save);
  document.getElementById("empty").addEventListener("click", () => {
    if (!confirm("Empty all fields of this sheet?")) return;
    form.reset();
    remember();
    for (const field of fields) check(field);
  });
  recall();
})();
