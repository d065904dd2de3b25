import { expect, test } from 'vitest';
import { dxfNotices } from './dxf-notices.ts';
import { DxfPen } from './dxf-pen.ts';

// found by random files: 4096 copies of a hatch whose boundary does not close filled the memory
test.each(['chain', 'ring', 'area', 'broken loop'] as const)(
  '%s: counted among the points of a file',
  (kind) => {
    const sheet = { layer: '', colour: '', open: [], closed: [], patches: [], areas: [], brokenLoops: [] };
    const count = { numbers: 99_999_990 };
    const pen = new DxfPen(sheet, dxfNotices(), 0.005, { line: 7, type: 'HATCH' }, count);
    const line = [0, 0, 9, 0, 9, 9];
    const draw = {
      chain: () => pen.chain(line),
      ring: () => pen.ring(line),
      area: () => pen.area([line], 'evenodd'),
      'broken loop': () => pen.brokenLoop([{ coords: line }]),
    }[kind];
    draw();
    expect(count.numbers).toBe(99_999_996);
    expect(draw).toThrow('more than 50000000 points');
  },
);
