// Tries mutants one by one: each is written into a clone, built, and given to the tests that ought to notice, the
// quick ones first. A name of samples.json that begins with "-" takes tests out.
// try-mutants.mjs REPORT...: of each sample so many mutants, drawn out of reports of Stryker.
// CALIBGEOM_SAMPLES=Planar tries only the samples whose library and folder hold the word.
import { execFileSync, spawn } from "node:child_process";
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { seeded } from "./random.mjs";

const root = execFileSync("git", ["rev-parse", "--show-toplevel"]).toString().trim();

const nameOf = ({ library, folder }) => join(library, folder);
const samples = JSON.parse(readFileSync(join(root, "tests/mutants/samples.json"), "utf8")).filter((sample) =>
  nameOf(sample).includes(process.env.CALIBGEOM_SAMPLES ?? ""));
const projects = new Set(samples.flatMap((sample) => sample.tests.map((t) => t.in)));
const mutants = [];
for (const report of process.argv.slice(2))
  for (const [name, file] of Object.entries(JSON.parse(readFileSync(report, "utf8")).files))
    for (const m of file.mutants)
      if (m.status !== "CompileError" && m.status !== "Ignored")
        mutants.push({ path: name.replace(/.*\/src\//, "src/"), source: file.source.replace(/^\uFEFF/, ""), ...m });

function drawn({ library, folder }) {
  const all = mutants.filter((m) => m.path.startsWith(join("src", library, folder) + "/"));
  const random = seeded();
  for (let i = all.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [all[i], all[j]] = [all[j], all[i]];
  }
  return all;
}

function mutated({ source, location: { start, end }, replacement }) {
  const lines = source.split("\n");
  const at = (p) => lines.slice(0, p.line - 1).reduce((n, l) => n + l.length + 1, 0) + p.column - 1;
  return source.slice(0, at(start)) + replacement + source.slice(at(end));
}

const run = (folder, command, ...args) =>
  new Promise((done) =>
    spawn(command, args, { cwd: folder, stdio: "ignore", env: { ...process.env, RunAnalyzers: "false" }, timeout: 180000 })
      .on("exit", (code) => done(code ?? -1)));

async function ready() {
  const clone = mkdtempSync(join(tmpdir(), "mutants-"));
  execFileSync("git", ["clone", "-q", root, clone]);
  for (const project of projects)
    if (await run(clone, "dotnet", "build", `tests/${project}`, "-c", "Release")) throw new Error(`${project} does not build.`);
  return clone;
}

const built = (project) => `tests/${project}/bin/Release/net10.0`;

function filter(project, words) {
  const named = words.split(" ").filter((w) => !w.startsWith("-")).map((w) => `FullyQualifiedName~${project}.${w}`);
  const out = words.split(" ").filter((w) => w.startsWith("-")).map((w) => `FullyQualifiedName!~${project}.${w.slice(1)}`);
  return [...(named.length ? [`(${named.join("|")})`] : []), ...out].join("&");
}

// 0 when all passed, below 0 when they had to be stopped.
async function tested(clone, tests) {
  for (const { in: project, named } of tests) {
    const code = await run(clone, "dotnet", "vstest", `${built(project)}/${project}.dll`,
      `--TestCaseFilter:${filter(project, named)}`, "--", "xUnit.StopOnFail=true");
    if (code !== 0) return code;
  }
  return 0;
}

async function tried(sample, clone) {
  const { library, tests, all, counts } = sample;
  const places = [...new Set(tests.map((t) => join(clone, built(t.in), `${library}.dll`)))];
  const sound = readFileSync(places[0]);
  if (await tested(clone, tests)) throw new Error(`${nameOf(sample)}: the tests fail without a mutant.`);
  for (let m; counts.all < sample.count && (m = all.pop()); ) {
    const file = join(clone, m.path);
    const before = readFileSync(file, "utf8").replace(/^\uFEFF/, "");
    if (before !== m.source) throw new Error(`${m.path} is not what the report saw.`);
    writeFileSync(file, mutated(m));
    if (!(await run(clone, "dotnet", "build", `src/${library}`, "-c", "Release", "--no-restore", "--no-dependencies"))) {
      for (const place of places) copyFileSync(join(clone, `src/${library}/bin/Release/net10.0/${library}.dll`), place);
      const code = await tested(clone, tests);
      const told = code === 0 ? "survived" : code < 0 ? "timed out" : "killed";
      counts.all++;
      counts[told] = (counts[told] ?? 0) + 1;
      const line = m.location.start.line;
      console.log(told, `${m.path}:${line}`, m.source.split("\n")[line - 1].trim(), "=>", m.replacement.replace(/\s+/g, " "));
    }
    writeFileSync(file, before);
  }
  for (const place of places) writeFileSync(place, sound);
}

const clones = await Promise.all([ready(), ready()]);
for (const sample of samples) {
  Object.assign(sample, { all: drawn(sample), counts: { all: 0 } });
  await Promise.all(clones.map((clone) => tried(sample, clone)));
  console.log(nameOf(sample), sample.counts);
}
for (const clone of clones) rmSync(clone, { recursive: true });
