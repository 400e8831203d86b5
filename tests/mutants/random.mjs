// mulberry32, public domain: the same numbers every time; CALIBGEOM_SEED draws others.
export function seeded() {
  let state = Number(process.env.CALIBGEOM_SEED ?? 20261126);
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
