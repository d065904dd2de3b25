import { vet } from 'pourproof';
import { beforeAll, expect, test } from 'vitest';
import { sheetPicture } from '../model/sheet-picture.ts';
import { ART_LOOKS, artStyle } from './art-look.ts';
import { type Art, artBuffers, artOf } from './art-shapes.ts';
import { artPath, ringsPath } from './path-data.ts';

const BARS = `<svg xmlns="http://www.w3.org/2000/svg" width="900mm" height="30mm" viewBox="0 0 900 30">
  <rect x="805" y="5" width="40.1234" height="6"/><rect x="805" y="20" width="40" height="1"/></svg>`;

let picture: Awaited<ReturnType<typeof vet>>['picture'];
let art: Art;
beforeAll(async () => {
  const bytes = new TextEncoder().encode(BARS);
  const job = { bit: ['vee:60deg:1/2in'], depth: '3mm' };
  ({ picture } = await vet({ kind: 'file', name: 'bars.svg', bytes }, job));
  art = artOf(picture);
});

test('the packed lines are those of the picture to the micrometre, each shape with a look', () => {
  const pathOf = (name: string, layer: 'cut' | 'levelling' = 'cut'): string => {
    const shape = art.layers[layer].find((each) => each.name === name);
    return shape === undefined ? '' : artPath(shape, art.originMm);
  };
  expect(pathOf('cut')).toBe(ringsPath(picture.cut));
  expect(pathOf('cut')).toContain('845.123');
  expect(pathOf('drawn')).toBe(ringsPath(picture.artwork));
  expect(pathOf('drawn', 'levelling')).toBe(ringsPath(picture.artwork));
  expect(pathOf('depth')).toBe(picture.depths.map(({ outline }) => ringsPath(outline)).join(''));
  expect(pathOf('bleed-high')).toBe(picture.bleed.map(({ high }) => ringsPath(high)).join(''));
  for (const { name, ends, coords } of [...art.layers.cut, ...art.layers.levelling]) {
    expect(ART_LOOKS[name]).toBeDefined();
    expect(artStyle()).toContain(`.${name} {`);
    expect(ends.at(-1)).toBe(coords.length / 2);
  }
});

test('what is handed over is a copy: the proof keeps its own memory', () => {
  const before = picture.cut.coords.slice();
  const lean = sheetPicture(picture);
  const moved = structuredClone(lean, { transfer: artBuffers(lean.art) });
  expect(lean.art.layers.cut[0]?.coords.length).toBe(0);
  expect(moved.art).toEqual(art);
  expect(picture.cut.coords).toEqual(before);
  expect(moved.depthStepMm).toBe(picture.depths[0]?.depthMm);
  expect(moved.levelling.grades.map(({ grade, lengthMm }) => [grade, lengthMm])).toEqual(
    picture.levelling.grades
      .filter(({ lines, outlines }) => lines.length + outlines.length > 0)
      .map(({ grade, lengthMm }) => [grade, lengthMm]),
  );
});
