// Tries mutants one by one: each is written into a clone, built, and given to the tests that ought to notice.
// try-mutants.mjs REPORT...: of each line of samples.json so many mutants, drawn out of reports of Stryker.
import { execFileSync, spawn } from "node:child_process";
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { seeded } from "./random.mjs";

const root = execFileSync("git", ["rev-parse", "--show-toplevel"]).toString().trim();

const samples = JSON.parse(readFileSync(join(root, "tests/mutants/samples.json"), "utf8"));
const mutants = [];
for (const report of process.argv.slice(2))
  for (const [name, file] of Object.entries(JSON.parse(readFileSync(report, "utf8")).files))
    for (const m of file.mutants)
      if (m.status !== "CompileError")
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
  for (const library of new Set(samples.map((s) => s.library)))
    if (await run(clone, "dotnet", "build", `tests/${library}.Tests`, "-c", "Release")) throw new Error("It does not build.");
  return clone;
}

async function tried(sample, clone) {
  const { library, tests, all, counts } = sample;
  const built = `tests/${library}.Tests/bin/Release/net10.0/${library}`;
  const filter = tests.split(" ").map((t) => `FullyQualifiedName~${library}.Tests.${t}`).join("|");
  const test = () => run(clone, "dotnet", "vstest", `${built}.Tests.dll`, `--TestCaseFilter:${filter}`, "--", "xUnit.StopOnFail=true");
  const sound = readFileSync(join(clone, `${built}.dll`));
  if (await test()) throw new Error(`${sample.folder}: the tests fail without a mutant.`);
  for (let m; counts.all < sample.count && (m = all.pop()); ) {
    const file = join(clone, m.path);
    const before = readFileSync(file, "utf8").replace(/^\uFEFF/, "");
    if (before !== m.source) throw new Error(`${m.path} is not what the report saw.`);
    writeFileSync(file, mutated(m));
    if (!(await run(clone, "dotnet", "build", `src/${library}`, "-c", "Release", "--no-restore", "--no-dependencies"))) {
      copyFileSync(join(clone, `src/${library}/bin/Release/net10.0/${library}.dll`), join(clone, `${built}.dll`));
      const code = await test();
      const told = code === 0 ? "survived" : code < 0 ? "timed out" : "killed";
      counts.all++;
      counts[told] = (counts[told] ?? 0) + 1;
      const line = m.location.start.line;
      if (told !== "killed")
        console.log(told, `${m.path}:${line}`, m.source.split("\n")[line - 1].trim(), "=>", m.replacement.replace(/\s+/g, " "));
    }
    writeFileSync(file, before);
  }
  writeFileSync(join(clone, `${built}.dll`), sound);
}

const clones = await Promise.all([ready(), ready()]);
for (const sample of samples) {
  Object.assign(sample, { all: drawn(sample), counts: { all: 0 } });
  await Promise.all(clones.map((clone) => tried(sample, clone)));
  console.log(`${sample.library}/${sample.folder}`, sample.counts);
}
for (const clone of clones) rmSync(clone, { recursive: true });
