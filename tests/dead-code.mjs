// Code that nothing but index files and tests asks for: `node tests/dead-code.mjs`.
// An index file is no use, and a test alone is none: what only they name goes. What a user of a package alone is to call bears the tag @public where it
// is declared. Exports of an index that no other package asks for must bear it too, in the packages whose index is lean already.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

const LEAN = ['plane', 'arrangement', 'geometry'];

const entries = readdirSync('packages').flatMap((name) => {
  const { exports = {} } = JSON.parse(readFileSync(`packages/${name}/package.json`, 'utf8'));
  const sources = Object.values(exports).map((target) => target['@pourproof/source']);
  return sources.filter((source) => source !== undefined).map((source) => join('packages', name, source));
});

/** The text of the file that declares a name which an entry hands on. */
function declaringText(entry, name) {
  for (const [, names, from] of readFileSync(entry, 'utf8').matchAll(
    /export\s*\{([^}]*)\}\s*from\s*'([^']+)'/gu,
  )) {
    const file = normalize(join(dirname(entry), from));
    if (names.split(/[\s,]+/u).includes(name) && existsSync(file)) {
      return readFileSync(file, 'utf8');
    }
  }
  return '';
}

/** Whether the comment in front of a declaration has the tag. */
function isPublic(entry, name) {
  const text = declaringText(entry, name);
  const at = text.search(new RegExp(`^export (async )?(function|const|class) ${name}\\b`, 'mu'));
  return at >= 0 && text.slice(text.lastIndexOf('/**', at), at).includes('@public');
}

const knip = spawnSync(
  'npx',
  [
    '--no-install',
    'knip',
    '--production',
    '--config',
    'tests/knip-production.jsonc',
    '--include',
    'exports,files',
    '--reporter',
    'json',
  ],
  { encoding: 'utf8', maxBuffer: 1 << 26 },
);
if (!knip.stdout.startsWith('{')) {
  console.error(knip.stdout + knip.stderr);
  process.exit(2);
}
const faults = [];
for (const { file, exports, files } of JSON.parse(knip.stdout).issues) {
  if (files.length > 0) {
    faults.push(`${file}: no file that runs imports it`);
  }
  for (const { name, line } of exports) {
    const isEntry = entries.includes(file);
    if (!isEntry) {
      faults.push(`${file}:${line}: ${name} is asked for by index files and tests only`);
    } else if (LEAN.includes(file.split('/')[1]) && !isPublic(file, name)) {
      faults.push(
        `${file}:${line}: ${name} is exported, but no other package asks for it and it is not @public`,
      );
    }
  }
}
console.log(faults.length === 0 ? 'No dead code.' : faults.join('\n'));
process.exit(faults.length === 0 ? 0 : 1);
