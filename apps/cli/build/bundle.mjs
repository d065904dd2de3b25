// Writes dist/bundle: the command line with all that it needs in a few files, so that Node neither looks for hundreds of modules nor reads what a
// command has no use for. What is imported by `import()` is a file of its own. Run by `npm run build:code`, from what tsc built.
// - Files in src/tables hold plain data alone: their values are computed here and stand in the bundle as JSON.
// - The shaping library reads its WebAssembly from a file that stands beside it.
// - The licences of all libraries inside go into dist/bundle/LICENSES.txt.
import { deepStrictEqual } from 'node:assert';
import { copyFileSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { rolldown } from 'rolldown';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const folder = fileURLToPath(new URL('..', import.meta.url));
const out = join(folder, 'dist', 'bundle');

/** A module of values as JSON text, which engines parse faster than code. */
function asData(exported, file) {
  const lines = Object.entries(exported).map(([name, value]) => {
    const text = JSON.stringify(value);
    deepStrictEqual(JSON.parse(text), value, `${name} of ${file} is no plain data`);
    return `export const ${name} = /* @__PURE__ */ JSON.parse(${JSON.stringify(text)});`;
  });
  return lines.join('\n');
}

const tables = {
  name: 'tables',
  load: {
    filter: { id: /[\\/]dist[\\/]tables[\\/][^\\/]+\.js$/ },
    handler: async (id) => asData(await import(pathToFileURL(id).href), basename(id)),
  },
};

/** The package that a file of node_modules belongs to, as a folder. */
function packageFolder(file) {
  const parts = file.split(/[\\/]/u);
  const at = parts.lastIndexOf('node_modules');
  return parts.slice(0, at + (parts[at + 1].startsWith('@') ? 3 : 2)).join('/');
}

/** Names, versions and licences of the libraries in a bundle, in the order of their names. */
function licences(files) {
  const folders = new Set(files.filter((file) => file.includes('node_modules')).map(packageFolder));
  return [...folders].toSorted().map((each) => {
    const { name, version, license } = JSON.parse(readFileSync(join(each, 'package.json'), 'utf8'));
    const file = readdirSync(each).find((entry) => /^licen[cs]e/iu.test(entry));
    const text = file === undefined ? `${license}` : readFileSync(join(each, file), 'utf8').trim();
    return `${name} ${version}\n\n${text}\n`;
  });
}

rmSync(out, { recursive: true, force: true });
const bundle = await rolldown({
  input: {
    pourproof: join(folder, 'dist', 'main.js'),
    'many-worker': join(root, 'packages/pourproof/dist/many-worker.js'),
  },
  // starts threads from a file of its own
  external: ['tinypool'],
  cwd: root,
  platform: 'node',
  plugins: [tables],
});
const { output } = await bundle.write({
  dir: out,
  format: 'esm',
  // names stay as they are, for the messages of a fault
  minify: { compress: true, mangle: false, codegen: true },
  comments: false,
  entryFileNames: '[name].js',
  chunkFileNames: '[name]-[hash].js',
});
await bundle.close();
copyFileSync(fileURLToPath(import.meta.resolve('harfbuzzjs/dist/harfbuzz.wasm')), join(out, 'harfbuzz.wasm'));
writeFileSync(
  join(out, 'LICENSES.txt'),
  `The files beside this one hold these libraries.\n\n${licences(output.flatMap(({ moduleIds = [] }) => moduleIds)).join('\n───\n\n')}`,
);
