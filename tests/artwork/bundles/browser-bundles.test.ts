import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { readLettering } from '@pourproof/artwork/lettering';
import { build as esbuild } from 'esbuild';
import { build as vite } from 'vite';
import { expect, test } from 'vitest';

/** Where a bare import of a package is looked for, as in a project that has installed it. */
const installed = fileURLToPath(new URL('.', import.meta.url));

/** What each entry of the package is imported for, with the largest minified bundle in kB: a tenth above what it measures. */
const ENTRIES = {
  // 52 kB of it work out calc() and other math functions: @csstools/css-calc with its tokens and parser
  '@pourproof/artwork/svg': { uses: 'readSvg', kB: 405 },
  '@pourproof/artwork/dxf': { uses: 'readDxf', kB: 100 },
  // 636 kB of it are the shaper with its WebAssembly, 90 kB unpack WOFF2, most of them the dictionary of Brotli
  '@pourproof/artwork/lettering': { uses: 'readLettering', kB: 860 },
  // sideEffects is false: of the whole package a bundle holds what it uses
  '@pourproof/artwork': { uses: 'readSvg', kB: 405 },
} as const;

/** Nothing but what a newcomer would type: no loaders, no externals, no conditions. */
async function bundle(
  entry: string,
  uses: string,
  format: 'esm' | 'iife',
): Promise<{ code: string; inputs: string[] }> {
  const { outputFiles, metafile } = await esbuild({
    stdin: {
      contents: `import { ${uses} } from '${entry}'; globalThis.used = ${uses};`,
      resolveDir: installed,
    },
    bundle: true,
    format,
    minify: true,
    metafile: true,
    write: false,
    logLevel: 'silent',
  });
  return { code: outputFiles[0]!.text, inputs: Object.keys(metafile.inputs) };
}

test.each(Object.entries(ENTRIES))(
  'esbuild bundles %s for a browser, below its size',
  async (entry, { uses, kB }) => {
    for (const format of ['esm', 'iife'] as const) {
      const { code } = await bundle(entry, uses, format);
      expect(code.length / 1000, format).toBeLessThan(kB);
      expect(code.length / 1000, format).toBeGreaterThan(kB / 1.3);
      expect(code).not.toMatch(/\bfrom ?"(?:node:|module"|fs"|path")|require\("/);
    }
  },
);

test.each(['svg', 'dxf'] as const)('%s alone pulls in no font shaper', async (format) => {
  const { uses } = ENTRIES[`@pourproof/artwork/${format}`];
  const { code, inputs } = await bundle(`@pourproof/artwork/${format}`, uses, 'esm');
  expect(inputs.filter((path) => /harfbuzz|bidi-js|woff2|brotli|load-shaper/.test(path))).toEqual([]);
  expect(code).not.toContain('hb_shape');
  expect(gzipSync(code).length / 1000).toBeLessThan(format === 'svg' ? 137 : 39);
});

test('dxf alone pulls in nothing that reads XML or style sheets', async () => {
  const { inputs } = await bundle('@pourproof/artwork/dxf', 'readDxf', 'esm');
  const packages = inputs.flatMap((path) => /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path)?.[1] ?? []);
  expect([...new Set(packages)]).toEqual(['robust-predicates']);
});

test('the shaper comes with lettering, WebAssembly inside, and sets text as Node does', async () => {
  const { code, inputs } = await bundle('@pourproof/artwork/lettering', 'readLettering', 'esm');
  expect(inputs.filter((path) => /browser\/load-shaper\.js$/.test(path))).toHaveLength(1);
  expect(inputs.filter((path) => /node_modules\/harfbuzzjs/.test(path))).toEqual([]);
  await import(`data:text/javascript;base64,${Buffer.from(code).toString('base64')}`);
  const { used } = globalThis as unknown as { used: typeof readLettering };
  const font = new Uint8Array(readFileSync(new URL('../../../fixtures/fonts/lora-400.ttf', import.meta.url)));
  const options = { font, capHeightMm: 10 };
  expect((await used('Vatic fig', options)).shapes).toEqual(
    (await readLettering('Vatic fig', options)).shapes,
  );
});

test.each(Object.entries(ENTRIES))('vite bundles %s without any setting', async (entry, { uses }) => {
  const root = mkdtempSync(join(installed, '.vite-'));
  try {
    writeFileSync(join(root, 'index.html'), '<script type="module" src="./main.js"></script>');
    writeFileSync(join(root, 'main.js'), `import { ${uses} } from '${entry}'; globalThis.used = ${uses};`);
    const warnings: string[] = [];
    await vite({
      root,
      configFile: false,
      logLevel: 'silent',
      build: { write: false, rollupOptions: { onwarn: (warning) => warnings.push(warning.message) } },
    });
    expect(warnings).toEqual([]);
  } finally {
    rmSync(root, { recursive: true });
  }
});
