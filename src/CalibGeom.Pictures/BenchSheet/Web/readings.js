// The readings file that "calibgeom predict" and the log read, out of what was typed.
function csvField(text) {
  return /[",;#]/.test(text) ? '"' + text.replace(/"/g, '""') + '"' : text;
}

// Free text on one line.
function oneLine(text) {
  return text.replace(/[\u0000-\u001f\u007f\u0085\u2028\u2029]+/g, " ").trim();
}

// A note that a spreadsheet would take for a formula gets an apostrophe, which spreadsheets take for "this is text".
function noteText(text) {
  const line = oneLine(text || "");
  return /^[=+\-@]/.test(line) ? "'" + line : line;
}

function readingsText(sheet) {
  const lines = ["# digest " + sheet.digest];
  if (sheet.temperature) lines.push("# temperature " + sheet.temperature);
  if (sheet.state) lines.push("# state " + sheet.state);
  if (sheet.expansion) lines.push("# expansion " + sheet.expansion);
  if (sheet.material) lines.push("# material " + sheet.material);
  lines.push("# instrument cal resolution=" + sheet.resolution + (sheet.mpe ? " mpe=" + sheet.mpe : ""));
  for (const [name, value] of sheet.settings) if (value) lines.push("# " + name + " " + oneLine(value));
  lines.push("feature,value,unit,instrument,note");
  for (const row of sheet.rows)
    lines.push(
      [row.feature, row.value, row.unit || "", row.instrument || "", noteText(row.note)].map(csvField).join(",")
    );
  return lines.join("\n") + "\n";
}
