// Readings that look like slips of the pen. The numbers and words come from the library's own rules (data.slips), so
// that the sheet and "calibgeom predict" say the same; a test holds both side by side.
function near(value, expected, tolerance) {
  return Math.abs(value / expected - 1) <= tolerance;
}

function closesWithLight(id) {
  return id.startsWith("slot") || id.startsWith("squeeze");
}

// A plinth far from its thickness was squeezed or lifted: that is what it is read for.
function isEvidence(id) {
  return id === "plinth.thickness";
}

// Print-through, for which it is read, makes a bridge thicker by some tenths, and not thinner.
function isFar(feature, value, rules) {
  const more = value - feature.nominal;
  if (feature.id === "bridge.thickness") return more > rules.farBridgeMm || more < -rules.thinBridgeMm;
  const off = Math.abs(more);
  return off > rules.farShare * Math.abs(feature.nominal) && off > rules.farMm;
}

function partnerOf(id) {
  if (id.includes(".inside.")) return id.replace(".inside.", ".outside.");
  return id.includes(".outside.") ? id.replace(".outside.", ".inside.") : null;
}

function looksLike(feature, value, features, rules) {
  const ratio = value / feature.nominal;
  for (const shape of rules.shapes) if (near(ratio, shape.ratio, shape.tolerance)) return shape.text;
  const partner = features.find((f) => f.id === partnerOf(feature.id));
  if (partner && near(value / partner.nominal, 1, rules.sameTolerance))
    return "It looks like " + partner.id + ": were inside and outside swapped?";
  const order = (a, b) =>
    Math.abs(value - a.nominal) - Math.abs(value - b.nominal) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
  const same = features.filter((f) => f.unit === "mm" && f.axis === feature.axis && f.nominal > 0).sort(order)[0];
  return same && near(value / same.nominal, 1, rules.sameTolerance) ? "It looks like " + same.id + "." : "";
}

// The slip that a size looks like: { rule, text }, or null.
function findSlip(feature, value, features, rules, resolution) {
  if (feature.unit !== "mm" || closesWithLight(feature.id)) return null;
  if (isEvidence(feature.id) && looksLike(feature, value, features, rules) === "") return null;
  if (isFar(feature, value, rules)) {
    const like = looksLike(feature, value, features, rules);
    return { rule: "reading-far-off", text: ("This is far from what was designed. " + like).trim() };
  }
  const thousandths = value * 1000;
  const whole = Math.round(thousandths);
  const digits = whole % 1000;
  if (Math.abs(thousandths - whole) > 1e-6 || resolution < rules.finestHundredths || digits < 1 || digits > 9) return null;
  const meant = (Math.floor(value) + digits / 100).toFixed(2);
  return { rule: "doubled-zero", text: "This is finer than a step of the caliper. Was it " + meant + "?" };
}
