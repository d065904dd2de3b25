// `node tests/publish/installed.mjs TARBALLS`: installs the packed packages in that folder into an empty project, outside of this
// checkout, and runs the examples of all READMEs there, with the node and its npm that run this.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import process from 'node:process';
import { pathToFileURL } from 'node:url';
import { publicPackages } from './public-packages.mjs';
import { blocksOf, promisedLines, runCommands, runExample } from './read-examples.mjs';

/**
 * An empty project with the packages of a folder of tarballs installed.
 * @param {string} tarballs
 * @returns {string} folder of the project; the caller removes it
 */
export function installTarballs(tarballs) {
  const project = mkdtempSync(join(tmpdir(), 'pourproof-packed-'));
  writeFileSync(join(project, 'package.json'), JSON.stringify({ private: true, type: 'module' }));
  const files = readdirSync(tarballs).map((file) => resolve(tarballs, file));
  const command = `npm install --no-audit --no-fund --loglevel=error ${files.join(' ')}`;
  const { status, stderr } = runCommands(command, project);
  if (status !== 0) {
    throw new Error(`npm install of the packed packages failed:\n${stderr}`);
  }
  return project;
}

/**
 * Runs every example of the READMEs in a project that has the packages installed.
 * @param {string} project
 * @returns {string[]} what did not answer as its page promises; empty when all did
 */
export function wrongExamples(project) {
  const wrong = [];
  const expectLines = (page, { stdout, stderr, status }, isPromised) => {
    if (stderr !== '' || !isPromised(stdout)) {
      wrong.push(`${page} (exit ${status}) printed\n${stdout}${stderr}`);
    }
  };
  for (const { folder } of publicPackages()) {
    const page = join(folder, 'README.md');
    for (const example of blocksOf(page, 'js')) {
      const promised = promisedLines(example).join('\n');
      expectLines(page, runExample(example, project), (printed) => printed.trimEnd() === promised);
    }
    const answers = blocksOf(page, 'text');
    blocksOf(page, 'sh').forEach((command, k) => {
      expectLines(page, runCommands(command, project), (printed) => printed.includes(answers[k]));
    });
  }
  // the README of the repository names its demo artwork from the root of the checkout
  const artwork = 'fixtures/demo/board.svg';
  mkdirSync(dirname(join(project, artwork)), { recursive: true });
  cpSync(artwork, join(project, artwork));
  for (const example of blocksOf('README.md', 'js')) {
    writeFileSync(join(project, 'from-readme.mjs'), example);
    expectLines(
      'README.md',
      spawnSync(process.execPath, ['from-readme.mjs'], { cwd: project, encoding: 'utf8' }),
      (printed) => /^(clear|caution|stop) [\d.]+ mm² cut$/mu.test(printed),
    );
  }
  return wrong;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const project = installTarballs(process.argv[2] ?? 'node_modules/.cache/packed');
  const wrong = wrongExamples(project);
  rmSync(project, { recursive: true, force: true });
  for (const fault of wrong) {
    console.error(fault);
  }
  console.log(
    wrong.length === 0 ? `the packed install and its examples run on node ${process.version}` : 'FAILED',
  );
  process.exitCode = wrong.length === 0 ? 0 : 1;
}
