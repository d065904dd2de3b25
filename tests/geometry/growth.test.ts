import { medialAxis } from '@pourproof/geometry';
import type { CleanRegion, Rings } from '@pourproof/plane';
import { afterAll, expect, test } from 'vitest';
import { awkward, found, standing } from '../../packages/geometry/bench/awkward-regions.mjs';
import { stepCounter } from '../../packages/geometry/bench/count-steps.mjs';

type Make = (edges: number) => Rings;

/** Edges, and how many times as many. */
const FEW = 500;
const TIMES = 4;

/** Growth with n^1.15 is what is aimed at. */
const MOST_EXPONENT = 1.15;

/** Between such small numbers a tree gets two levels more on top of seven: as much again as n^0.15 allows. */
const SLACK = 1.2;

/** At these sizes its jitter has yet to make all of its points reflex or hidden: it grows by 1.6 here and falls from 4,000 edges on. */
const STILL_CHANGING = ['circle, jitter'];

const steps = await stepCounter();
afterAll(() => steps.stop());

const families: Record<string, Make> = {
  ...awkward,
  ...found,
  ...Object.fromEntries(Object.entries(standing).map(([name, { make }]) => [name, make])),
};
const names = Object.keys(families).filter((name) => !STILL_CHANGING.includes(name));

async function stepsAnEdge(make: Make, size: number): Promise<number> {
  // nothing in these families crosses or touches
  const region = make(size) as CleanRegion;
  return (await steps.count(() => void medialAxis(region))) / (region.coords.length / 2);
}

test.each(names)('steps an edge of the axis grow by no more than is aimed at: %s', async (name) => {
  const few = await stepsAnEdge(families[name], FEW);
  // one circle takes some 150; a counter that counts nothing would pass
  expect(few).toBeGreaterThan(100);
  const ratio = (await stepsAnEdge(families[name], TIMES * FEW)) / few;
  expect(ratio).toBeLessThan(TIMES ** (MOST_EXPONENT - 1) * SLACK);
});
