// `npm run test:packed`: what someone gets who installs the packages. Packs them all, lints the packages and their types, installs them
// into an empty project, runs the examples there, compiles against their types and bundles them for a browser.
import { spawnSync } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { build as bundle } from 'esbuild';
import { build as buildSite } from 'vite';
import { installTarballs, wrongExamples } from './installed.mjs';
import { packAll } from './pack-all.mjs';
import { entriesForBrowsers } from './public-packages.mjs';

const TARBALLS = 'node_modules/.cache/packed';
const failed = [];

async function step(name, faultsOf) {
  const started = Date.now();
  let faults;
  try {
    faults = await faultsOf();
  } catch (error) {
    faults = [error.message];
  }
  for (const fault of faults) {
    console.error(fault);
  }
  if (faults.length > 0) {
    failed.push(name);
  }
  console.log(
    `── ${name}: ${faults.length === 0 ? 'good' : 'FAILED'} after ${((Date.now() - started) / 1000).toFixed(1)} s`,
  );
}

/** What a tool of this checkout says where it fails. */
function faultsOfTool(command, args) {
  const { status, stdout, stderr } = spawnSync('npx', ['--no-install', command, ...args], {
    encoding: 'utf8',
  });
  return status === 0 ? [] : [`${command} ${args.join(' ')}\n${stdout}${stderr}`];
}

const packed = packAll(TARBALLS);
await step('publint', () => packed.flatMap(({ tarball }) => faultsOfTool('publint', ['--strict', tarball])));
await step('are the types wrong', () =>
  packed.flatMap(({ tarball }) =>
    faultsOfTool('attw', [tarball, '--profile', 'esm-only', '--no-color', '--no-emoji']),
  ),
);

let project = '';
await step('install into an empty project', () => {
  project = installTarballs(TARBALLS);
  return [];
});
await step('examples of the READMEs', () => wrongExamples(project));

const entries = entriesForBrowsers();
const everything = entries.map((entry, k) => `export * as entry${k} from '${entry}';`).join('\n');

for (const resolution of ['nodenext', 'bundler']) {
  await step(`types, resolved as ${resolution}, libraries checked`, () => {
    const compilerOptions = {
      strict: true,
      exactOptionalPropertyTypes: true,
      skipLibCheck: false,
      noEmit: true,
      target: 'es2023',
      // zod names the URL of browsers and of node
      lib: ['es2023', 'dom'],
      types: [],
      module: resolution === 'bundler' ? 'esnext' : 'nodenext',
      moduleResolution: resolution,
    };
    writeFileSync(join(project, 'consumer.ts'), everything);
    writeFileSync(
      join(project, 'tsconfig.json'),
      JSON.stringify({ compilerOptions, files: ['consumer.ts'] }),
    );
    return faultsOfTool('tsc', ['-p', project]);
  });
}

for (const entry of entries) {
  await step(`browser bundles of ${entry}`, async () => {
    const faults = [];
    const file = join(project, 'browser.js');
    writeFileSync(file, `import * as entry from '${entry}';\nglobalThis.entry = entry;\n`);
    const built = await bundle({
      entryPoints: [file],
      bundle: true,
      format: 'esm',
      platform: 'browser',
      write: false,
      outdir: project,
      logLevel: 'silent',
    });
    faults.push(...built.warnings.map(({ text }) => `esbuild: ${text}`));
    await buildSite({
      root: project,
      configFile: false,
      logLevel: 'silent',
      build: {
        write: false,
        rollupOptions: {
          input: file,
          // a module of node that a browser has not is replaced by an empty one, with no more than a warning
          onwarn: (warning) => faults.push(`vite: ${warning.message}`),
        },
      },
    });
    return faults;
  });
}

rmSync(project, { recursive: true, force: true });
console.log(failed.length === 0 ? '\nThe packages are good.' : `\nFailed: ${failed.join('; ')}.`);
process.exitCode = failed.length === 0 ? 0 : 1;
