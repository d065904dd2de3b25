// `node tests/publish/measure-sizes.mjs` prints what each entry weighs in a page; `--write` records it in sizes.json.
import { readFileSync, writeFileSync } from 'node:fs';
import process from 'node:process';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { entriesForBrowsers } from './public-packages.mjs';

const RECORD = 'tests/publish/sizes.json';

/**
 * Bytes of an entry as a page would load it: all its exports with everything below, bundled, minified, gzipped; parts that are
 * loaded only when they are needed count too.
 * @param {string} entry
 * @returns {Promise<number>}
 */
export async function gzippedBytes(entry) {
  const { outputFiles } = await build({
    // resolved as a page would resolve it, from a folder that may name every package
    stdin: { contents: `export * from '${entry}';`, resolveDir: 'tests' },
    conditions: ['@pourproof/source'],
    bundle: true,
    minify: true,
    splitting: true,
    format: 'esm',
    platform: 'browser',
    outdir: 'none',
    write: false,
    logLevel: 'silent',
  });
  return outputFiles.reduce((sum, file) => sum + gzipSync(file.contents, { level: 9 }).length, 0);
}

/**
 * The sizes on record, in bytes by entry.
 * @returns {Record<string, number>}
 */
export const recordedSizes = () => JSON.parse(readFileSync(RECORD, 'utf8'));

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const sizes = {};
  for (const entry of entriesForBrowsers()) {
    sizes[entry] = await gzippedBytes(entry);
    console.log(`${entry.padEnd(32)} ${(sizes[entry] / 1024).toFixed(1).padStart(8)} KiB`);
  }
  if (process.argv.includes('--write')) {
    writeFileSync(RECORD, `${JSON.stringify(sizes, null, 2)}\n`);
  }
}
