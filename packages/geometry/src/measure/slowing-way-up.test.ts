import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { slowingBetween } from './slowing-way.ts';
import { slowingWayUp } from './slowing-way-up.ts';

/** Steps of a way and how fast the clearance rises on each, from a tip on. */
const steps = fc.array(
  fc.tuple(
    fc.oneof(fc.double({ min: 0.01, max: 3, noNaN: true }), fc.constant(0)),
    fc.oneof(fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(0, 0.3)),
  ),
  { minLength: 1, maxLength: 120 },
);

test('a rising way slows where one that is walked from node to node does', () => {
  fc.assert(
    fc.property(steps, (list) => {
      const ways = [0];
      const radii = [0];
      for (const [length, slope] of list) {
        ways.push((ways.at(-1) ?? 0) + length);
        radii.push((radii.at(-1) ?? 0) + length * slope);
      }
      const wholeMm = ways.at(-1) ?? 0;
      const radiusAt = (way: number): number => {
        const k = Math.max(
          0,
          ways.findLastIndex((at) => at <= Math.min(way, wholeMm)),
        );
        const share = k + 1 < ways.length ? (Math.min(way, wholeMm) - ways[k]) / (ways[k + 1] - ways[k]) : 0;
        return radii[k] + (share > 0 ? share * (radii[k + 1] - radii[k]) : 0);
      };
      const nodesAfter = (way: number, upTo: number, most: number): number[] =>
        ways.filter((at) => at > way && at <= upTo && at < wholeMm).slice(0, most);
      const from = ways[1] === 0 ? 0.01 : ways[1] / 2;
      const found = slowingWayUp({ wholeMm, radiusAt, nodesAfter }, from);
      const end = wholeMm / 2;
      const places = [...ways, ...ways.map((at) => at / 2)].filter((at) => at >= from && at < end);
      const walked = slowingBetween([...places.sort((a, b) => a - b), end], from, 0, radiusAt);
      expect(found).toBe(walked);
    }),
    cases(200),
  );
});
