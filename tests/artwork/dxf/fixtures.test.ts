import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readDxf } from '@pourproof/artwork';
import { boundsOf, type Drawing } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { drawingArea, unionArea } from '../../support/dxf/drawing-area.ts';

interface Expected {
  areaMm2: number;
  relativeError: number;
  why: string;
  notices: string[];
  boundsMm?: [number, number, number, number];
  layers?: Record<string, number>;
  scaleSafe?: boolean;
}

const folder = join(import.meta.dirname, '../../../fixtures/dxf');
const names = readdirSync(folder)
  .filter((file) => file.endsWith('.dxf'))
  .map((file) => file.slice(0, -'.dxf'.length));

function load(name: string): { text: string; expected: Expected } {
  return {
    text: readFileSync(join(folder, `${name}.dxf`), 'utf8'),
    expected: JSON.parse(readFileSync(join(folder, `${name}.expected.json`), 'utf8')) as Expected,
  };
}

function expectArea(drawing: Drawing, areaMm2: number, relativeError: number): void {
  expect(Math.abs(drawingArea(drawing) / areaMm2 - 1)).toBeLessThanOrEqual(relativeError);
}

describe.each(names)('%s', (name) => {
  const { text, expected } = load(name);

  test('has the area of its closed form and the notices that it calls for', () => {
    const drawing = readDxf(new TextEncoder().encode(text));
    expectArea(drawing, expected.areaMm2, expected.relativeError);
    expect(drawing.notices.map((notice) => notice.code)).toEqual(expected.notices);
    if (expected.boundsMm) {
      const boxes = drawing.shapes.map((shape) => boundsOf(shape.region.coords));
      const bounds = [0, 1, 2, 3].map((k) => (k < 2 ? Math.min : Math.max)(...boxes.map((box) => box[k])));
      bounds.forEach((value, k) => {
        // flattening keeps within 5 µm of the curve
        expect(Math.abs(value - expected.boundsMm![k])).toBeLessThanOrEqual(0.005);
      });
    }
    for (const [key, area] of Object.entries(expected.layers ?? {})) {
      const shapes = drawing.shapes.filter((shape) => `${shape.layer} ${shape.colour}` === key);
      expect(unionArea(shapes)).toBeCloseTo(area, 6);
    }
  });

  test('is the same by any line ending', () => {
    for (const ending of ['\r\n', '\r', '\r\r\n']) {
      expect(readDxf(text.replaceAll('\n', ending))).toEqual(readDxf(text));
    }
  });
});

// gaps and far places are lengths, and paper is no matter inside blocks: those do not stretch with the artwork
test.each(names.filter((name) => load(name).expected.scaleSafe !== false))(
  '%s keeps its area rule in nested blocks: mirrored, stretched unevenly and turned',
  (name) => {
    const { text, expected } = load(name);
    // outer block: x by −3; inner: y by 1.5, turned: area by 4.5
    expectArea(readDxf(inNestedBlocks(text)), 4.5 * expected.areaMm2, expected.relativeError);
  },
);

/** The file with its entities moved into a block that is inserted in another block, each time transformed. */
function inNestedBlocks(text: string): string {
  const [before, entities] = text.split('0\nSECTION\n2\nENTITIES\n');
  const body = entities.slice(0, entities.lastIndexOf('0\nENDSEC'));
  const inner = `0\nBLOCK\n8\n0\n2\nINNER\n70\n0\n10\n1\n20\n2\n30\n0\n${body}0\nENDBLK\n`;
  const outer =
    '0\nBLOCK\n8\n0\n2\nOUTER\n70\n0\n10\n0\n20\n0\n30\n0\n0\nINSERT\n8\n0\n2\nINNER\n10\n4\n20\n5\n42\n1.5\n50\n37\n0\nENDBLK\n';
  const end = before.endsWith('0\nENDSEC\n') && before.includes('2\nBLOCKS\n');
  const blocks = end
    ? `${before.slice(0, -'0\nENDSEC\n'.length)}${inner}${outer}0\nENDSEC\n`
    : `${before}0\nSECTION\n2\nBLOCKS\n${inner}${outer}0\nENDSEC\n`;
  return `${blocks}0\nSECTION\n2\nENTITIES\n0\nINSERT\n8\n0\n2\nOUTER\n10\n-7\n20\n3\n41\n-3\n50\n-20\n0\nENDSEC\n0\nEOF\n`;
}
