import { type CleanRegion, packRings } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { medialAxis } from '../medial-axis/medial-axis.ts';
import { AxisEdge } from './axis-edge.ts';
import { beyondCorners } from './beyond-corners.ts';
import { EndBranch } from './end-branch.ts';

/** The branches of a region from its free ends; of its axis nothing is a corner's but what the graph leaves out. */
function branchesOf(...rings: number[][]): { readonly branches: EndBranch[]; readonly edge: AxisEdge } {
  const axis = medialAxis(packRings(rings) as CleanRegion);
  const graph = beyondCorners(axis);
  const edge = new AxisEdge(axis);
  const start = new Float64Array(axis.edgeFrom.length);
  const ends = Array.from(axis.nodeR, (_, k) => k).filter(
    (k) => k >= axis.bottleneckCount && graph.same[k] === k && graph.degree[k] === 1,
  );
  const all = ends.map((end) => new EndBranch(axis, end, graph, start, edge));
  // from its widest place none leads on
  return { branches: all.filter(({ edges }) => edges.length > 0), edge };
}

/** A horn: straight below, a parabola-like curve above, pointed at x = 0 and 8 mm wide at x = 60. */
const horn = [
  0,
  0,
  60,
  0,
  60,
  8,
  ...Array.from({ length: 23 }, (_, k) => 60 - 2.5 * (k + 1)).flatMap((x) => [x, (8 * x * x) / 3600]),
].slice(0, -2);
const wedge = [0, -0.5, 40, -3, 40, 3, 0, 0.5];
const waist = [0, 0, 20, 0.2, 40, -2, 40, 12, 20, 8, 0, 8.4];
const waved = [0, 0, 30, 0, 60, -1, 60, 8, 30, 6.8, 15, 7, 0, 6];

describe.each([
  ['horn', [horn]],
  ['wedge', [wedge]],
  ['waist', [waist]],
  ['wave', [waved]],
])('branches of a %s', (_name, rings) => {
  const { branches, edge } = branchesOf(...rings);

  test('there are some, and their nodes lie along them', () => {
    expect(branches.length).toBeGreaterThan(0);
    for (const { ways, radii, nodes, edges, wholeMm } of branches) {
      expect([ways.length, radii.length, nodes.length]).toEqual(Array(3).fill(edges.length + 1));
      expect(ways.at(-1)).toBe(wholeMm);
      expect([...ways].sort((a, b) => a - b)).toEqual(ways);
    }
  });

  test('the edge on which a way ends is the last that begins no later, also at nodes', () => {
    for (const branch of branches) {
      const { ways, edges, wholeMm } = branch;
      const between = ways.slice(1).map((way, k) => (way + ways[k]!) / 2);
      for (const way of [...ways.slice(0, -1), ...between, wholeMm * 0.999]) {
        const wanted = ways.slice(0, -1).reduce((last, begin, k) => (begin <= way ? k : last), 0);
        expect(branch.stepAt(way)).toBe(wanted);
        expect(wanted).toBeLessThan(edges.length);
      }
    }
  });

  test('the clearance at a node is that of the node, and runs on between without a jump', () => {
    for (const branch of branches) {
      const { ways, radii, wholeMm } = branch;
      for (const [k, way] of ways.entries()) {
        expect(branch.radiusAt(way)).toBeCloseTo(radii[k]!, 9);
        // clearance changes by no more than the way
        expect(Math.abs(branch.radiusAt(way + 1e-4 * wholeMm) - radii[k]!)).toBeLessThan(1.001e-4 * wholeMm);
      }
      expect(branch.radiusAt(wholeMm + 1)).toBe(radii.at(-1));
    }
  });

  test('a place on a rising edge is as far along it as the way says', () => {
    for (const branch of branches) {
      const { ways, edges, wholeMm } = branch;
      for (const share of [0.13, 0.5, 0.77, 0.96]) {
        const way = share * wholeMm;
        const { step, share: place } = branch.placeAt(way);
        expect(step).toBe(branch.stepAt(way));
        if (branch.isRising(step)) {
          edge.load(edges[step]!);
          expect(ways[step]! + edge.lengthBetween(0, place)).toBeCloseTo(way, 9);
          edge.atShare(place);
          expect(branch.radiusAt(way)).toBeCloseTo(edge.clearance, 9);
        } else {
          expect(place).toBe(0);
        }
      }
      expect(branch.placeAt(wholeMm)).toEqual({ step: edges.length, share: 0 });
    }
  });

  test('slopes are the quotients of clearance and way', () => {
    for (const branch of branches) {
      const { ways } = branch;
      for (let step = 0; step + 1 < ways.length; step++) {
        const [from, to] = [ways[step]!, ways[step + 1]!];
        if (to - from > 1e-3) {
          const off = 1e-4 * (to - from);
          const middle = (from + to) / 2;
          const quotient = (branch.radiusAt(middle + off) - branch.radiusAt(middle - off)) / (2 * off);
          expect(branch.slopeOn(step, middle)).toBeCloseTo(quotient, 4);
        }
      }
    }
  });
});
