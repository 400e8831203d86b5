// The object in 3D on a plain canvas: every triangle into a depth buffer, shaded by its normal; no library and no
// graphics card needed. The part under a dot is kept beside the depth, so that a finger can name it.
function decode(base64, Type) {
  const text = atob(base64);
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  return new Type(bytes.buffer);
}

function createView(canvas, mesh, onPick) {
  const grid = decode(mesh.vertices, Uint16Array);
  const corners = decode(mesh.triangles, mesh.vertices16 ? Uint16Array : Uint32Array);
  const partOf = decode(mesh.partOf, Uint8Array);
  const points = Float64Array.from(grid, (g, i) => mesh.min[i % 3] + g * mesh.step);
  const count = corners.length / 3;
  const normals = new Float32Array(3 * count);
  const middle = [0, 1, 2].map((k) => (mesh.min[k] + mesh.max[k]) / 2);
  const radius = Math.hypot(...[0, 1, 2].map((k) => (mesh.max[k] - mesh.min[k]) / 2));
  const state = { azimuth: -62, elevation: 38, zoom: 1, lit: "" };
  let ids = null;
  let asked = false;

  for (let t = 0; t < count; t++) {
    const [a, b, c] = [0, 1, 2].map((k) => 3 * corners[3 * t + k]);
    const u = [0, 1, 2].map((k) => points[b + k] - points[a + k]);
    const v = [0, 1, 2].map((k) => points[c + k] - points[a + k]);
    const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    const length = Math.hypot(...n) || 1;
    for (let k = 0; k < 3; k++) normals[3 * t + k] = n[k] / length;
  }

  function axes() {
    const a = (state.azimuth * Math.PI) / 180;
    const e = (state.elevation * Math.PI) / 180;
    const [sa, ca, se, ce] = [Math.sin(a), Math.cos(a), Math.sin(e), Math.cos(e)];
    return { right: [-sa, ca, 0], up: [-se * ca, -se * sa, ce], toward: [ce * ca, ce * sa, se] };
  }

  function dot(v, x, y, z) {
    return v[0] * x + v[1] * y + v[2] * z;
  }

  function draw() {
    asked = false;
    const density = Math.min(2, window.devicePixelRatio || 1);
    const width = Math.max(1, Math.round(canvas.clientWidth * density));
    const height = Math.max(1, Math.round(canvas.clientHeight * density));
    if (canvas.width !== width || canvas.height !== height) {
      canvas.width = width;
      canvas.height = height;
    }
    const { right, up, toward } = axes();
    const scale = ((Math.min(width, height * 1.35) / 2) * 0.98 * state.zoom) / radius;
    const screen = new Float32Array(points.length);
    for (let i = 0; i < points.length; i += 3) {
      const [x, y, z] = [points[i] - middle[0], points[i + 1] - middle[1], points[i + 2] - middle[2]];
      screen[i] = width / 2 + scale * dot(right, x, y, z);
      screen[i + 1] = height / 2 - scale * dot(up, x, y, z);
      screen[i + 2] = dot(toward, x, y, z);
    }
    const depth = new Float32Array(width * height).fill(-Infinity);
    ids = new Int32Array(width * height).fill(-1);
    for (let t = 0; t < count; t++) fill(t, screen, depth, width, height);
    paint(width, height, depth, [0, 1, 2].map((k) => toward[k] * 0.62 + up[k] * 0.62 - right[k] * 0.48));
  }

  function fill(t, screen, depth, width, height) {
    const [a, b, c] = [3 * corners[3 * t], 3 * corners[3 * t + 1], 3 * corners[3 * t + 2]];
    const [ax, ay, bx, by, cx, cy] = [screen[a], screen[a + 1], screen[b], screen[b + 1], screen[c], screen[c + 1]];
    const area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    if (area > -1e-9) return; // Seen from behind: Y runs down, so that front faces turn clockwise.
    const top = Math.max(0, Math.ceil(Math.min(ay, by, cy) - 0.5));
    const bottom = Math.min(height - 1, Math.floor(Math.max(ay, by, cy) - 0.5));
    const left = Math.max(0, Math.ceil(Math.min(ax, bx, cx) - 0.5));
    const rightmost = Math.min(width - 1, Math.floor(Math.max(ax, bx, cx) - 0.5));
    for (let y = top; y <= bottom; y++)
      for (let x = left; x <= rightmost; x++) {
        const wa = ((bx - x - 0.5) * (cy - y - 0.5) - (by - y - 0.5) * (cx - x - 0.5)) / area;
        const wb = ((cx - x - 0.5) * (ay - y - 0.5) - (cy - y - 0.5) * (ax - x - 0.5)) / area;
        const wc = 1 - wa - wb;
        if (wa < 0 || wb < 0 || wc < 0) continue;
        const z = wa * screen[a + 2] + wb * screen[b + 2] + wc * screen[c + 2];
        const at = y * width + x;
        if (z > depth[at]) {
          depth[at] = z;
          ids[at] = t;
        }
      }
  }

  function paint(width, height, depth, lamp) {
    const context = canvas.getContext("2d");
    const image = context.createImageData(width, height);
    for (let at = 0; at < ids.length; at++) {
      const t = ids[at];
      if (t < 0) continue;
      const n = 3 * t;
      const light =
        0.42 +
        0.62 * Math.max(0, dot(lamp, normals[n], normals[n + 1], normals[n + 2])) +
        0.08 * (1 + normals[n + 2]);
      const lit = state.lit && mesh.parts[partOf[t]] === state.lit;
      const edge = isEdge(at, width, depth) ? 0.55 : 1;
      const [r, g, b] = lit ? [232, 163, 61] : [169, 185, 198];
      image.data[4 * at] = r * Math.min(1.2, light) * edge;
      image.data[4 * at + 1] = g * Math.min(1.2, light) * edge;
      image.data[4 * at + 2] = b * Math.min(1.2, light) * edge;
      image.data[4 * at + 3] = 255;
    }
    context.putImageData(image, 0, 0);
  }

  // Where faces meet at an angle, or something much farther begins.
  function isEdge(at, width, depth) {
    for (const beside of [at + 1, at + width]) {
      if (beside >= ids.length || ids[beside] === ids[at]) continue;
      if (ids[beside] < 0 || Math.abs(depth[beside] - depth[at]) > 0.8) return true;
      const [a, b] = [3 * ids[at], 3 * ids[beside]];
      if (dot(normals.subarray(a, a + 3), normals[b], normals[b + 1], normals[b + 2]) < 0.9) return true;
    }
    return false;
  }

  function redraw() {
    if (!asked) {
      asked = true;
      requestAnimationFrame(draw);
    }
  }

  // The part at a place of the page; a few dots round it count too, for fingers are wide.
  function partAt(clientX, clientY) {
    const box = canvas.getBoundingClientRect();
    const x = Math.floor(((clientX - box.left) / box.width) * canvas.width);
    const y = Math.floor(((clientY - box.top) / box.height) * canvas.height);
    let found = "";
    for (const reach of [0, 4, 8])
      for (const [dx, dy] of [[0, 0], [reach, 0], [-reach, 0], [0, reach], [0, -reach]]) {
        const [px, py] = [x + dx, y + dy];
        if (px < 0 || py < 0 || px >= canvas.width || py >= canvas.height) continue;
        const t = ids[py * canvas.width + px];
        const part = t >= 0 ? mesh.parts[partOf[t]] : "";
        if (part && part !== "plinth") return part;
        found = found || part;
      }
    return found;
  }

  let start = null;
  canvas.addEventListener("pointerdown", (event) => {
    start = { x: event.clientX, y: event.clientY, azimuth: state.azimuth, elevation: state.elevation, moved: false };
    canvas.setPointerCapture(event.pointerId);
  });
  canvas.addEventListener("pointermove", (event) => {
    if (!start) {
      if (event.pointerType === "mouse") onPick(partAt(event.clientX, event.clientY), false);
      return;
    }
    const [dx, dy] = [event.clientX - start.x, event.clientY - start.y];
    start.moved = start.moved || Math.hypot(dx, dy) > 6;
    if (start.moved) turn(start.azimuth - dx * 0.5, start.elevation + dy * 0.5);
  });
  canvas.addEventListener("pointerup", (event) => {
    if (start && !start.moved) onPick(partAt(event.clientX, event.clientY), true);
    start = null;
  });
  canvas.addEventListener("pointercancel", () => (start = null));
  canvas.addEventListener("keydown", (event) => {
    const steps = { ArrowLeft: [-10, 0], ArrowRight: [10, 0], ArrowUp: [0, 10], ArrowDown: [0, -10] };
    if (steps[event.key]) turn(state.azimuth + steps[event.key][0], state.elevation + steps[event.key][1]);
    else if (event.key === "+" || event.key === "-")
      zoom(event.key === "+" ? 1.2 : 1 / 1.2);
    else return;
    event.preventDefault();
  });
  window.addEventListener("resize", redraw);

  function turn(azimuth, elevation) {
    state.azimuth = ((azimuth % 360) + 360) % 360;
    state.elevation = Math.max(-90, Math.min(90, elevation));
    redraw();
  }

  function zoom(factor) {
    state.zoom = Math.max(0.5, Math.min(6, state.zoom * factor));
    redraw();
  }

  redraw();
  return {
    state,
    zoom,
    light(part) {
      if (state.lit !== part) {
        state.lit = part;
        redraw();
      }
    },
  };
}
