// A reading as people type it: comma or point, a unit behind it if they like. Null for what is no number.
function parseReading(text) {
  const match = /^([+-]?\d+(?:[.,]\d+)?)\s*(mm|in)?$/i.exec(text.trim().replace(/\u2212/g, "-"));
  if (!match) return null;
  return { text: match[1].replace(",", "."), value: Number(match[1].replace(",", ".")), unit: (match[2] || "").toLowerCase() };
}

// The value in mm.
function millimetres(reading) {
  return reading.unit === "in" ? reading.value * 25.4 : reading.value;
}
