import { existsSync, readFileSync, rmSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { publicPackages } from './public-packages.mjs';
import { blocksOf, promisedLines, runCommands, runExample } from './read-examples.mjs';

// node finds the packages from here; the name keeps runs at the same time apart
const HERE = `node_modules/.cache/examples-${process.pid}`;

afterAll(() => {
  rmSync(HERE, { recursive: true, force: true });
});

describe.each(publicPackages())('README of $folder', ({ folder, manifest }) => {
  const page = existsSync(`${folder}/README.md`) ? readFileSync(`${folder}/README.md`, 'utf8') : '';

  test('begins with the name of the package and says in a sentence what it is', () => {
    const [title, blank, sentence] = page.split('\n');
    expect(title).toBe(`# ${manifest.name}`);
    expect(blank).toBe('');
    expect(sentence).toMatch(/^[A-Z].{40,}\.$/u);
  });

  test('names every package of ours that it stands on, and no other', () => {
    const floor = page.slice(page.indexOf('\n## Floor\n')).split('\n\n')[1] ?? '';
    const named = [...floor.matchAll(/`(@pourproof\/[\w-]+|pourproof)`/gu)].map((match) => match[1]);
    const ours = Object.keys(manifest.dependencies ?? {}).filter((name) => name.includes('pourproof'));
    expect(named.toSorted()).toEqual(ours.toSorted());
  });

  test('has an example that prints what the page promises', () => {
    const examples = blocksOf(`${folder}/README.md`, 'js');
    const commands = blocksOf(`${folder}/README.md`, 'sh');
    expect(examples.length + commands.length).toBeGreaterThan(0);
    for (const example of examples) {
      const { stdout, stderr } = runExample(example, HERE);
      expect(stderr).toBe('');
      expect(promisedLines(example).length).toBeGreaterThan(0);
      expect(stdout.trimEnd().split('\n')).toEqual(promisedLines(example));
    }
    const answers = blocksOf(`${folder}/README.md`, 'text');
    commands.forEach((command, k) => {
      const { stdout, stderr } = runCommands(command, HERE);
      expect(stderr).toBe('');
      expect(stdout).toContain(answers[k]!);
    });
  });
});
