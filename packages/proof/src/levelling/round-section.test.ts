import { parseBit } from '@pourproof/job';
import { expect, test } from 'vitest';
import { cutShape } from '../cut/cut-shape.ts';
import { clearShareOfDot, levelledDot } from './round-section.ts';

const dot = (bit: string, depthMm: number, widthMm: number) => {
  const section = cutShape([parseBit(bit)], depthMm).sectionAt(widthMm);
  if (section === null) {
    throw new Error('the bit enters');
  }
  return section;
};
const BARE = { filmMm: 0, shrinkagePct: 0, shallowByMm: 0 };

test('a cone of 60° and 2 mm is √3 mm deep and loses 2 s tan 30° of width', () => {
  const left = levelledDot(dot('vee:60deg:1/2in', 10, 2), BARE, 0.5);
  expect(left.colourDepthMm).toBeCloseTo(Math.sqrt(3) - 0.5, 9);
  expect(left.widthMm).toBeCloseTo(2 - 2 * 0.5 * Math.tan(Math.PI / 6), 9);
});

test('a cone sinks by a third of what a cylinder does', () => {
  const cone = levelledDot(dot('vee:60deg:1/2in', 10, 2), { ...BARE, shrinkagePct: 3 }, 0);
  expect(cone.colourDepthMm).toBeCloseTo(Math.sqrt(3) * (1 - 0.01), 9);
  const cylinder = levelledDot(dot('flat:2mm', 3, 6), { ...BARE, shrinkagePct: 3 }, 0);
  expect(cylinder.colourDepthMm).toBeCloseTo(3 * (1 - 0.03), 9);
});

test('seal pools to (3 t r²/(sin tan²))^⅓ in a cone and to t (1 + 2 D/r) in a cylinder', () => {
  const half = Math.PI / 6;
  const cone = levelledDot(dot('vee:60deg:1/2in', 10, 2), { ...BARE, filmMm: 0.05 }, 0);
  const pool = Math.cbrt((3 * 0.05) / (Math.sin(half) * Math.tan(half) ** 2));
  expect(cone.colourDepthMm).toBeCloseTo(Math.sqrt(3) - pool, 9);
  const cylinder = levelledDot(dot('flat:2mm', 3, 6), { ...BARE, filmMm: 0.1 }, 0);
  expect(cylinder.colourDepthMm).toBeCloseTo(3 - 0.1 * (1 + (2 * 3) / 3), 9);
});

test('the dot of a ball is a segment of its sphere: π h² (3 R − h)/3', () => {
  // R = 2 mm, 2 mm deep and 4 mm wide: half a ball, 16 π/3 mm³ over 4 π mm²
  const left = levelledDot(dot('ball:4mm', 2, 4), { ...BARE, shrinkagePct: 3 }, 0);
  expect(left.colourDepthMm).toBeCloseTo(2 - (0.03 * 16) / 12, 4);
});

test('seal on the dot of a ball pools to a cap as large as film times the surface 2π R D', () => {
  const [radius, depth, film] = [2, 2, 0.05];
  const left = levelledDot(dot('ball:4mm', depth, 4), { ...BARE, filmMm: film }, 0);
  const pool = depth - left.colourDepthMm;
  const cap = (Math.PI * pool ** 2 * (3 * radius - pool)) / 3;
  // bound: the pool stands in the lowest few of 64 chords for the arc
  expect(cap / (film * 2 * Math.PI * radius * depth)).toBeCloseTo(1, 2);
});

test('seal takes t (4/w + 1/D) of a cylinder and 6 t/(w cos(A/2)) of a cone, half as much again as of a groove', () => {
  expect(clearShareOfDot(dot('flat:2mm', 3, 2), 0.1)).toBeCloseTo(0.1 * (4 / 2 + 1 / 3), 9);
  expect(clearShareOfDot(dot('vee:60deg:1/2in', 10, 2), 0.1)).toBeCloseTo(
    (6 * 0.1) / (2 * Math.cos(Math.PI / 6)),
    9,
  );
});
