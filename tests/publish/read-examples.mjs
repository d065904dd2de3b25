// The code blocks of a page, and running one of them as a reader would: pasted into a file, by node.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import process from 'node:process';

/**
 * The fenced blocks of one language on a page, without their fences.
 * @param {string} page path of the page
 * @param {string} language
 * @returns {string[]}
 */
export const blocksOf = (page, language) =>
  [...readFileSync(page, 'utf8').matchAll(new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\``, 'gmu'))].map(
    (match) => match[1],
  );

/**
 * What an example says that it prints: the comments behind its calls of `console.log`, a line each.
 * @param {string} example
 * @returns {string[]}
 */
export const promisedLines = (example) =>
  [...example.matchAll(/^\s*console\.log\(.*\); \/\/ (.*)$/gmu)].map((match) => match[1]);

/**
 * Runs an example as a module inside `folder`, from where node finds the packages.
 * @param {string} example
 * @param {string} folder is made if it is not there
 */
export function runExample(example, folder) {
  const script = join(folder, 'example.mjs');
  mkdirSync(folder, { recursive: true });
  writeFileSync(script, example);
  return spawnSync(process.execPath, [script], { encoding: 'utf8' });
}

/**
 * Runs commands of a page in a shell inside `folder`, with the node that runs this.
 * @param {string} commands
 * @param {string} folder is made if it is not there
 */
export function runCommands(commands, folder) {
  mkdirSync(folder, { recursive: true });
  const env = { ...process.env, PATH: `${dirname(process.execPath)}:${process.env.PATH}` };
  return spawnSync('bash', ['-c', commands], { encoding: 'utf8', cwd: folder, env });
}
