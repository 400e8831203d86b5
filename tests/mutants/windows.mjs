// A random sample of folders' code: windows of 12 lines as patterns of Stryker's, in one line of JSON.
// windows.mjs SHARE ROOT FOLDER...
import { readFileSync, readdirSync } from "node:fs";
import { join, relative } from "node:path";
import { seeded } from "./random.mjs";

const [share, root, ...folders] = process.argv.slice(2);
const random = seeded();
const patterns = [];
for (const folder of folders)
  for (const name of readdirSync(join(root, folder), { recursive: true }).sort()) {
    if (!name.endsWith(".cs")) continue;
    const path = join(root, folder, name);
    const lines = readFileSync(path, "utf8").replace(/^\uFEFF/, "").split(/(?<=\n)/);
    let at = 0;
    let spans = "";
    for (let i = 0; i < lines.length; i += 12) {
      const window = lines.slice(i, i + 12);
      const end = at + window.join("").length;
      const code = window.filter((l) => l.trim() && !/^(\/\/|using )/.test(l.trim()));
      if (code.length > 3 && random() < Number(share)) spans += `{${at}..${end}}`;
      at = end;
    }
    if (spans) patterns.push(relative(root, path) + spans);
  }
console.log(JSON.stringify(patterns));
