import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { demoOrder } from './demo-order.ts';
import { nodeIo } from './node-io.ts';

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pourproof-demo-'));
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

test('the demo ends well: stopped first, clear with the change, sheet and overlay written', async () => {
  const pieces: string[] = [];
  const code = await demoOrder({
    ...nodeIo(),
    cwd: folder,
    out: { write: (text) => void pieces.push(text), isTerminal: false },
  });
  const out = pieces.join('');
  expect(code).toBe(0);
  expect(out).toMatch(/^STOP {2}board\.svg/mu);
  expect(out).toMatch(/^CLEAR {2}board\.svg/mu);
  expect(out).toMatch(
    /Sheet to print: proof-out\/sheet\.html\nOverlay in real size: proof-out\/overlay\.svg\n$/u,
  );
  expect(existsSync(join(folder, 'proof-out/sheet.html'))).toBe(true);
  expect(readFileSync(join(folder, 'proof-out/overlay.svg'), 'utf8')).toContain('<g id="left-standing"');
});
