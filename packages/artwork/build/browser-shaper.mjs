// Writes dist/browser/load-shaper.js, which bundlers for browsers take in place of src/lettering/load-shaper.ts: harfbuzzjs as it is published, but
// - without the branch for Node, whose import of "module" bundlers for browsers cannot resolve,
// - without top-level await, which bundles of the form "iife" do not have,
// - with its WebAssembly inside, since nothing tells a bundler to copy a file that is named by a URL only.
// Run by `npm run build:code`.
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const folder = dirname(fileURLToPath(import.meta.resolve('harfbuzzjs')));
const licence = readFileSync(join(folder, '../LICENSE'), 'utf8').trim();

/** The text with its only occurrence of a part replaced; a new version of the library that is built otherwise stops here. */
function replaced(text, part, by) {
  if (text.split(part).length !== 2) {
    throw new Error(`harfbuzzjs is not built as expected: "${part}" should occur once`);
  }
  return text.replace(part, () => by);
}

const withoutNode = {
  name: 'without-node',
  setup(bundle) {
    bundle.onLoad({ filter: /harfbuzz\.js$/ }, ({ path }) => {
      const text = readFileSync(path, 'utf8');
      // undeclared, it is what `define` says below: what it guards is left out
      const [declaration = 'var ENVIRONMENT_IS_NODE'] = /var ENVIRONMENT_IS_NODE=[^;]*;/.exec(text) ?? [];
      return { contents: replaced(text, declaration, '') };
    });
    bundle.onLoad({ filter: /index\.mjs$/ }, ({ path }) => {
      const text = readFileSync(path, 'utf8');
      return {
        contents: replaced(text, 'init(await createHarfBuzz());', 'export { createHarfBuzz, init };'),
      };
    });
  },
};

await build({
  stdin: {
    contents: `
      import * as harfbuzz from './index.mjs';
      import wasmBinary from './harfbuzz.wasm';
      export async function loadShaper() {
        loading ??= harfbuzz.createHarfBuzz({ wasmBinary }).then(harfbuzz.init);
        await loading;
        return harfbuzz;
      }
      let loading;
    `,
    resolveDir: folder,
  },
  bundle: true,
  format: 'esm',
  platform: 'browser',
  target: 'es2022',
  minify: true,
  loader: { '.wasm': 'binary' },
  // the address of the library's own file, from which it would load the WebAssembly if it were not inside
  define: { ENVIRONMENT_IS_NODE: 'false', 'import.meta.url': '"file:///"' },
  plugins: [withoutNode],
  banner: { js: `/*! harfbuzzjs, changed as build/browser-shaper.mjs says.\n\n${licence}\n*/` },
  outfile: fileURLToPath(new URL('../dist/browser/load-shaper.js', import.meta.url)),
});
