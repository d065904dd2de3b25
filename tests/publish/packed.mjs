// `npm run test:packed`: what someone gets who installs the packages. Packs them all, lints the packages and their types, installs them
// into an empty project, runs the examples there, compiles against their types, bundles them for a browser and runs the bundles in one.
import { spawnSync } from 'node:child_process';
import { cpSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { build as bundle } from 'esbuild';
import { build as buildSite } from 'vite';
import { printedInWorker } from './in-worker.mjs';
import { installTarballs, wrongExamples } from './installed.mjs';
import { packAll } from './pack-all.mjs';
import { entriesForBrowsers, publicPackages } from './public-packages.mjs';
import { blocksOf, promisedLines, runExample } from './read-examples.mjs';

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

/** Where two lines begin to differ, with a little around it: a report is one long line. */
function firstDifference(is, wanted) {
  const at = [...wanted].findIndex((letter, k) => letter !== is[k]);
  const part = (line) => line.slice(Math.max(0, at - 60), at + 60);
  return `is …${part(is)}… instead of …${part(wanted)}…`;
}

/** A module of the project as one file for browsers, made by esbuild. */
async function bundleForBrowser(file) {
  const { outputFiles, warnings } = await bundle({
    entryPoints: [file],
    bundle: true,
    format: 'esm',
    platform: 'browser',
    loader: { '.ttf': 'binary' },
    write: false,
    outdir: project,
    logLevel: 'silent',
  });
  return { code: outputFiles[0].text, faults: warnings.map(({ text }) => `esbuild: ${text}`) };
}

for (const entry of entries) {
  await step(`browser bundles of ${entry}`, async () => {
    const file = join(project, 'browser.js');
    writeFileSync(file, `import * as entry from '${entry}';\nglobalThis.entry = entry;\n`);
    const { faults } = await bundleForBrowser(file);
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

// lettering needs the shaping library, whose WebAssembly comes along in the bundle
const LETTERING = `import { vet } from 'pourproof';
import font from './lora-400.ttf';
const source = { kind: 'lettering', text: 'Anno 1987', font };
const job = { capHeight: '15mm', bit: ['flat:1/16in'], depth: '3mm', wood: 'cherry', seal: 'shellac' };
// not the whole report: engines differ in the last digit of sines and powers, and pieces of equal size then change places
const { report } = await vet(source, job);
const codes = report.findings.map(({ code }) => code);
console.log(report.verdict, report.cut.areaMm2.toFixed(9), report.cut.volumeMm3.toFixed(8), ...codes);
`;

await step('examples and lettering in a worker of a browser', async () => {
  const faults = [];
  const script = join(project, 'in-worker.js');
  const compare = async (page, code, promised) => {
    writeFileSync(script, code);
    const printed = await printedInWorker((await bundleForBrowser(script)).code, promised.length);
    const at = promised.findIndex((line, k) => line !== printed[k]);
    if (at !== -1) {
      faults.push(`${page}, line ${at + 1} in a worker ${firstDifference(printed[at] ?? '', promised[at])}`);
    }
  };
  for (const { folder, manifest } of publicPackages().filter(({ manifest: { bin } }) => bin === undefined)) {
    for (const example of blocksOf(join(folder, 'README.md'), 'js')) {
      await compare(manifest.name, example, promisedLines(example));
    }
  }
  cpSync('fixtures/fonts/lora-400.ttf', join(project, 'lora-400.ttf'));
  const onNode = LETTERING.replace(
    "import font from './lora-400.ttf';",
    "import { readFileSync } from 'node:fs';\nconst font = readFileSync('fixtures/fonts/lora-400.ttf');",
  );
  await compare('lettering', LETTERING, [runExample(onNode, project).stdout.trimEnd()]);
  return faults;
});

rmSync(project, { recursive: true, force: true });
console.log(failed.length === 0 ? '\nThe packages are good.' : `\nFailed: ${failed.join('; ')}.`);
process.exitCode = failed.length === 0 ? 0 : 1;
