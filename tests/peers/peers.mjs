// Independent tools judge the meshes that `calibgeom make` writes: every preset and a number of random specs.
// ADMesh must find nothing to fix and our volume; Manifold must accept each mesh with our volume and genus.
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync, existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Module from 'manifold-3d';

const tool = process.argv[2];
const wantedSpecs = 20;
const folder = mkdtempSync(join(tmpdir(), 'calibgeom-peers-'));
const manifold = await Module();
manifold.setup();

function make(name, args) {
  const file = join(folder, `${name}.stl`);
  const run = spawnSync('dotnet', [tool, 'make', ...args, '-o', file, '--json'], { encoding: 'utf8', maxBuffer: 1 << 26 });
  if (run.status === 1) return null; // design rules said no
  if (run.status !== 0) throw new Error(`${name}: make ended with ${run.status}: ${run.stderr}`);
  return { name, file, ...JSON.parse(run.stdout).result };
}

// A small generator of our own, so that the same specs come out on every machine.
let state = 20261125;
function random() {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return state / 4294967296;
}
const pick = list => list[Math.floor(random() * list.length)];
const between = (low, high, digits = 2) => Number((low + (high - low) * random()).toFixed(digits));

function randomSpec() {
  const sizes = [pick([8, 9, 10])];
  while (sizes.length < pick([2, 3, 3, 4])) sizes.push(Number((sizes.at(-1) * between(1.38, 1.5)).toFixed(2)));
  return {
    title: pick(['DEMO GREY', 'A1', '25 %', 'T-0.05']),
    nest: random() < 0.15 ? null : { sizes, clearances: sizes.slice(1).map(() => between(0.02, 0.12, 3)), wall: between(1.0, 1.3) },
    spans: random() < 0.2 ? null : { x: between(36, 46, 1), y: between(22, 30, 1) },
    columns: random() < 0.15 ? null : {
      diameters: [0.25, 0.315, 0.4, 0.5, 0.63, 0.8].slice(Math.floor(random() * 3)), copies: pick([1, 2, 3]), height: between(4, 9, 1),
      lean: pick([0, 0, 10, 20]), azimuth: between(0, 359, 0),
    },
    slots: random() < 0.3 ? null : {},
    squeeze: random() < 0.3 ? null : {},
    labels: random() < 0.3 ? null : {},
    tilt: { axis: pick(['x', 'y']), angle: pick([0, 0, between(1, 12, 1), -between(1, 12, 1)]) },
  };
}

function readStl(file) {
  const bytes = readFileSync(file);
  const count = bytes.readUInt32LE(80);
  const positions = new Float32Array(9 * count);
  for (let t = 0; t < count; t++)
    for (let i = 0; i < 9; i++) positions[9 * t + i] = bytes.readFloatLE(84 + 50 * t + 12 + 4 * i);
  return positions;
}

function weld(positions) {
  const index = new Map();
  const vertices = [];
  const triangles = new Uint32Array(positions.length / 3);
  for (let v = 0; v < triangles.length; v++) {
    const key = `${positions[3 * v]},${positions[3 * v + 1]},${positions[3 * v + 2]}`;
    if (!index.has(key)) {
      index.set(key, vertices.length / 3);
      vertices.push(positions[3 * v], positions[3 * v + 1], positions[3 * v + 2]);
    }
    triangles[v] = index.get(key);
  }
  return { vertices: new Float32Array(vertices), triangles };
}

function euler({ vertices, triangles }) {
  return vertices.length / 3 - triangles.length / 6; // closed: 3 T = 2 E
}

function checkManifold(object) {
  const { vertices, triangles } = weld(readStl(object.file));
  const solid = new manifold.Manifold(new manifold.Mesh({ numProp: 3, vertProperties: vertices, triVerts: triangles }));
  if (solid.status() !== 'NoError') throw new Error(`${object.name}: Manifold says ${solid.status()}`);
  const parts = solid.decompose();
  const theirs = parts.reduce((sum, part) => sum + 2 - 2 * part.genus(), 0);
  const ours = euler({ vertices, triangles });
  if (parts.length !== object.components) throw new Error(`${object.name}: ${parts.length} components, we say ${object.components}`);
  if (theirs !== ours || ours !== object.eulerCharacteristic)
    throw new Error(`${object.name}: Euler characteristic ${theirs} by Manifold, ${ours} counted, ${object.eulerCharacteristic} by us`);
  const volume = solid.volume();
  if (Math.abs(volume - object.volume) > 1e-5 * object.volume) throw new Error(`${object.name}: volume ${volume}, we say ${object.volume}`);
}

function checkAdmesh(object) {
  const text = execFileSync('admesh', [object.file], { encoding: 'utf8' });
  const number = label => Number(text.match(new RegExp(`${label}\\s*:\\s*(-?[0-9.]+)`))?.[1]);
  for (const label of ['Degenerate facets', 'Edges fixed', 'Facets removed', 'Facets added', 'Facets reversed', 'Backwards edges', 'Normals fixed'])
    if (number(label) !== 0) throw new Error(`${object.name}: ADMesh: ${label} ${number(label)}\n${text}`);
  const [, before] = text.match(/Total disconnected facets\s*:\s*(\d+)/) ?? [];
  if (Number(before) !== 0) throw new Error(`${object.name}: ADMesh: ${before} disconnected facets`);
  const volume = number('Volume');
  // ADMesh sums in single precision.
  if (Math.abs(volume - object.volume) > 2e-4 * object.volume) throw new Error(`${object.name}: volume ${volume} by ADMesh, we say ${object.volume}`);
}

const objects = ['standard', 'witness', 'search', 'fine', 'coarse', 'limit'].map(name => make(name, ['--object', name]));
let rejected = 0;
for (let i = 0; objects.length < 6 + wantedSpecs; i++) {
  if (i > 4 * wantedSpecs) throw new Error(`the design rules rejected ${rejected} of ${i} random specs`);
  const path = join(folder, `random${i}.json`);
  writeFileSync(path, JSON.stringify(randomSpec()));
  const object = make(`random${i}`, ['--object', path]);
  if (object === null) rejected++;
  else objects.push(object);
}
for (const object of objects) {
  if (!existsSync(object.file)) throw new Error(`${object.name} was not written`);
  checkAdmesh(object);
  checkManifold(object);
}
console.log(`peers: ADMesh and Manifold agree with us on ${objects.length} meshes (${rejected} random specs rejected by the design rules)`);
