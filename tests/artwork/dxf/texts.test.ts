import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type LetteringFont, openFont, readDxf } from '@pourproof/artwork';
import { boundsOf } from '@pourproof/plane';
import { beforeAll, describe, expect, test } from 'vitest';
import { drawingArea } from '../../support/dxf/drawing-area.ts';
import { dxfText, MM } from '../../support/dxf/dxf-text.ts';

const HEIGHT = 15;
let font: LetteringFont;

beforeAll(async () => {
  font = await openFont(readFileSync(join(import.meta.dirname, '../../../fixtures/fonts/lora-400.ttf')));
});

function read(entities: (string | number)[], blocks?: (string | number)[]) {
  const text = dxfText(entities, { header: MM, ...(blocks ? { blocks } : {}) });
  return readDxf(text, { fonts: [font] });
}

function box(entities: (string | number)[], blocks?: (string | number)[]): number[] {
  const boxes = read(entities, blocks).shapes.map((shape) => boundsOf(shape.region.coords));
  return [0, 1, 2, 3].map((k) => (k < 2 ? Math.min : Math.max)(...boxes.map((b) => b[k])));
}

const text = (...codes: (string | number)[]) => [0, 'TEXT', 8, 'A', 40, HEIGHT, 1, 'HH', ...codes];
const mtext = (...codes: (string | number)[]) => [0, 'MTEXT', 8, 'A', 40, HEIGHT, ...codes];
// flattening keeps within 5 µm; H has straight sides, and its height states the capitals
const near = 2;

describe('texts as outlines', () => {
  test('capitals stand on the baseline and are as high as the entity says', () => {
    const [, top, , bottom] = box(text(10, 100, 20, 50));
    expect(bottom).toBeCloseTo(-50, near);
    expect(top).toBeCloseTo(-50 - HEIGHT, near);
    expect(read(text(10, 0, 20, 0)).notices.map((n) => n.code)).toEqual(['text-in-given-font']);
  });

  test('alignment puts the second point where it says', () => {
    const left = box(text(10, 0, 20, 0));
    const width = left[2] - left[0];
    // side bearings of H are alike on both sides, so the middle of the ink is the middle of the text
    const centred = box(text(10, 0, 20, 0, 11, 100, 21, 50, 72, 1));
    expect((centred[0] + centred[2]) / 2).toBeCloseTo(100, 1);
    expect(centred[3]).toBeCloseTo(-50, near);
    const right = box(text(10, 0, 20, 0, 11, 100, 21, 50, 72, 2, 73, 3));
    expect(right[2]).toBeCloseTo(100 - left[0], 1);
    expect(right[1]).toBeCloseTo(-50, near);
    const middle = box(text(10, 0, 20, 0, 11, 100, 21, 50, 72, 4));
    expect((middle[0] + middle[2]) / 2).toBeCloseTo(100, 1);
    expect((middle[1] + middle[3]) / 2).toBeCloseTo(-50, near);
    const fit = box(text(10, 0, 20, 0, 11, 200, 21, 0, 72, 5));
    expect(fit[3] - fit[1]).toBeCloseTo(HEIGHT, near);
    expect((fit[0] + fit[2]) / 2).toBeCloseTo(100, 0);
    const aligned = box(text(10, 0, 20, 0, 11, 200, 21, 0, 72, 3));
    const stretch = (aligned[2] - aligned[0]) / width;
    expect(aligned[3] - aligned[1]).toBeCloseTo(HEIGHT * stretch, 1);
  });

  test('width factor, slant and turn keep the area rule', () => {
    const area = drawingArea(read(text(10, 0, 20, 0)));
    expect(drawingArea(read(text(10, 0, 20, 0, 41, 1.5))) / area).toBeCloseTo(1.5, 6);
    expect(drawingArea(read(text(10, 0, 20, 0, 51, 20))) / area).toBeCloseTo(1, 6);
    expect(drawingArea(read(text(10, 0, 20, 0, 50, 33))) / area).toBeCloseTo(1, 6);
    expect(box(text(10, 0, 20, 0, 50, 90))[0]).toBeCloseTo(-HEIGHT, near);
    // the top of a slanted H leans by height · tan 20°
    const leans = box(text(10, 0, 20, 0, 51, 20))[2] - box(text(10, 0, 20, 0))[2];
    expect(leans).toBeCloseTo(HEIGHT * Math.tan(Math.PI / 9), near);
  });

  test('backwards and upside down texts are mirrored about their point', () => {
    const plain = box(text(10, 0, 20, 0));
    const backwards = box(text(10, 0, 20, 0, 71, 2));
    expect(backwards[0]).toBeCloseTo(-plain[2], near);
    const upsideDown = box(text(10, 0, 20, 0, 71, 4));
    expect(upsideDown[3]).toBeCloseTo(HEIGHT, near);
  });

  test('a text in a mirrored and stretched block is mirrored and stretched', () => {
    const block = [0, 'BLOCK', 8, '0', 2, 'B', 10, 0, 20, 0, ...text(10, 0, 20, 0), 0, 'ENDBLK'];
    const plain = box(text(10, 0, 20, 0));
    const placed = box([0, 'INSERT', 8, 'A', 2, 'B', 10, 0, 20, 0, 41, -2, 42, 3], block);
    expect(placed[0]).toBeCloseTo(-2 * plain[2], 1);
    expect(placed[1]).toBeCloseTo(-3 * HEIGHT, near);
  });

  test('lines of an MTEXT hang from its attachment point, five thirds of the height apart', () => {
    const top = box(mtext(10, 10, 20, 100, 71, 1, 1, '{\\fSans|b0;HH}\\PHH'));
    expect(top[1]).toBeCloseTo(-100, near);
    expect(top[3]).toBeCloseTo(-100 + HEIGHT + (HEIGHT * 5) / 3, near);
    const middle = box(mtext(10, 10, 20, 100, 71, 5, 1, 'HH\\PHH'));
    expect((middle[1] + middle[3]) / 2).toBeCloseTo(-100, near);
    expect((middle[0] + middle[2]) / 2).toBeCloseTo(10, 1);
    const turned = box(mtext(10, 0, 20, 0, 71, 1, 11, 0, 21, 1, 1, 'HH'));
    expect(turned[0]).toBeCloseTo(0, near);
    expect(turned[2]).toBeCloseTo(HEIGHT, near);
  });

  test('attributes are set, their definitions in blocks and hidden ones are not', () => {
    const block = [0, 'BLOCK', 8, '0', 2, 'B', 10, 0, 20, 0, 0, 'ATTDEF', 8, '0', 40, 5, 1, 'X', 0, 'ENDBLK'];
    const attribute = (flags: number) => [
      0,
      'ATTRIB',
      8,
      'A',
      10,
      0,
      20,
      0,
      40,
      HEIGHT,
      1,
      'HH',
      2,
      'TAG',
      70,
      flags,
    ];
    const drawing = read(
      [0, 'INSERT', 8, 'A', 66, 1, 2, 'B', 10, 0, 20, 0, ...attribute(0), ...attribute(1), 0, 'SEQEND'],
      block,
    );
    expect(drawingArea(drawing)).toBeCloseTo(drawingArea(read(text(10, 0, 20, 0))), 6);
    expect(drawing.notices.map((n) => n.code)).toEqual(['text-in-given-font', 'invisible-entity']);
  });

  test('without a font the words are told', () => {
    const { notices, shapes } = readDxf(
      dxfText([...text(10, 0, 20, 0), ...mtext(1, 'Two\\Plines')], { header: MM }),
    );
    expect(shapes).toEqual([]);
    expect(notices[0].text.mm).toContain('"HH"');
    expect(notices[0].text.mm).toContain('"Two lines"');
  });
});
