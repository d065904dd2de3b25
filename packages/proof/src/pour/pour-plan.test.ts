import { limits, resins, scales } from '@pourproof/materials';
import { describe, expect, test } from 'vitest';
import { batchCount } from './batch-count.ts';
import { type FillMeasures, fillBudget } from './fill-budget.ts';
import { type PourTerms, pourPlan, withVolumeError } from './pour-plan.ts';

/** The pocket of the worked numbers: 2000 mm² at 3.2 mm, 0.5 mm proud, 15 % waste. */
const POCKET: FillMeasures = {
  cutAreaMm2: 2000,
  volumeMm3: 6400,
  sealedMm2: 2000,
  volumeErrorMm3: 0,
  depthErrorMm: 0,
  film: { filmMm: 0, lowMm: 0, highMm: 0 },
  overpourMm: 0.5,
  overpourRange: limits.overpour,
  uptakeMl: 0,
  shrinkagePct: resins.coating.shrinkagePct,
};
const TERMS: PourTerms = {
  resin: resins.coating,
  scale: scales.tenth,
  wastePct: 15,
  pigmentPct: 3,
  overpourMm: 0.5,
  boards: 1,
  shopTempC: 25,
  pricePerG: null,
};
const plan = (measures: Partial<FillMeasures> = {}, terms: Partial<PourTerms> = {}, pockets = 4) =>
  pourPlan(
    [{ name: 'all', resin: null, budget: fillBudget({ ...POCKET, ...measures }), pockets, depthMm: 3.2 }],
    {
      ...TERMS,
      ...terms,
    },
  );

describe('a pour', () => {
  test('of the worked pocket is 8.51 ml, 6.524 + 2.723 g', () => {
    const [all] = plan().colours;
    expect(all?.volumeMl).toBeCloseTo(8.51, 9);
    expect(all?.partAG).toBeCloseTo(6.524, 3);
    expect(all?.partBG).toBeCloseTo(2.723, 3);
    // 15 % of 7.4 ml
    expect(all?.wasteMl).toBeCloseTo(1.11, 9);
    expect(all?.cup.partsG).toEqual([6.5, 2.7, 0.3]);
    expect(all?.cup.runningG).toEqual([6.5, 9.2, 9.5]);
  });

  test('of five boards mixes five times as much at once', () => {
    expect(plan({}, { boards: 5 }).colours[0]?.massG).toBeCloseTo(5 * (plan().colours[0]?.massG ?? 0), 9);
  });

  test('costs its mass times the price, and nothing when no price is told', () => {
    expect(plan({}, { pricePerG: 0.05 }).price).toBeCloseTo(0.05 * (6.524 + 2.723), 3);
    expect(plan().price).toBeNull();
  });

  test('is poured in the fewest equal layers that the resin allows, overpour included', () => {
    const deep = pourPlan(
      [{ name: 'all', resin: null, budget: fillBudget(POCKET), pockets: 1, depthMm: 12 }],
      TERMS,
    );
    // 12.5 mm at 6 mm a layer
    expect(deep.layers).toEqual({ count: 3, eachMm: 12.5 / 3 });
    expect(plan().layers.count).toBe(1);
  });

  test('of nothing weighs nothing', () => {
    const none = plan({ cutAreaMm2: 0, volumeMm3: 0 }, {}, 0);
    expect(none.colours[0]?.massG).toBe(0);
    expect(none.colours[0]?.uncertaintyPct).toBe(0);
  });
});

describe('the uncertainty of a fill', () => {
  test('is that of its single cause when there is one', () => {
    // 2000 mm² × 0.1 mm is 0.2 ml of 7.4 ml; overpour and shrinkage set to be certain
    const certain = { overpourRange: { ...limits.overpour, low: 0.5, high: 0.5 } };
    const dry = { ...resins.coating.shrinkagePct, low: 0, high: 0 };
    expect(
      fillBudget({ ...POCKET, ...certain, shrinkagePct: dry, depthErrorMm: 0.1 }).uncertaintyPct,
    ).toBeCloseTo((100 * 0.2) / 7.4, 9);
  });

  test('takes overpour as practice spreads it: 0.3 to 1 mm round 0.5 mm', () => {
    const item = fillBudget(POCKET).items.find((each) => each.cause === 'overpour');
    expect(item?.lessMl).toBeCloseTo(0.4, 9);
    expect(item?.moreMl).toBeCloseTo(1, 9);
  });

  test('puts half of what end grain may drink into the fill', () => {
    const budget = fillBudget({ ...POCKET, uptakeMl: 1 });
    expect(budget.uptakeMl).toBe(0.5);
    expect(budget.items.find((each) => each.cause === 'end-grain')).toEqual({
      cause: 'end-grain',
      lessMl: 0.5,
      moreMl: 0.5,
    });
  });

  test('lets the film take no more than the whole cut', () => {
    expect(fillBudget({ ...POCKET, film: { filmMm: 9, lowMm: 9, highMm: 9 } }).cutMl).toBe(0);
  });
});

describe('cups', () => {
  test('are as many as the working time asks for', () => {
    // (25 − 3) / 0.5 = 44 pockets a cup: 100 pockets are three cups
    expect(batchCount(100, 25, 500, 10, 1)).toMatchObject({
      batches: 3,
      pocketsPerBatch: 44,
      isHurried: false,
    });
  });

  test('are never smaller than the scale can split, and say so', () => {
    expect(batchCount(100, 25, 25, 10, 1)).toMatchObject({ batches: 2, isHurried: true });
    expect(batchCount(100, 25, 5, 10, 1)).toMatchObject({ batches: 1, isHurried: true });
  });

  test('are mixed anew for each layer, for what is left over is hard by then', () => {
    expect(batchCount(10, 25, 500, 10, 3)).toMatchObject({ batches: 3, isHurried: false });
    expect(batchCount(100, 25, 500, 10, 3)).toMatchObject({ batches: 9, isHurried: false });
    // 8.3 g for each layer is less than the scale can split, yet each layer needs its cup
    expect(batchCount(100, 25, 25, 10, 3)).toMatchObject({ batches: 3, isHurried: true });
    const [deep] = pourPlan(
      [{ name: 'all', resin: null, budget: fillBudget(POCKET), pockets: 1, depthMm: 12 }],
      TERMS,
    ).colours;
    expect(deep?.layers.count).toBe(3);
    expect(deep?.count.batches).toBe(3);
  });

  test('are fewer in a cool shop, where resin stays workable longer', () => {
    const cups = (shopTempC: number): number | undefined =>
      plan({}, { shopTempC }, 100).colours[0]?.count.batches;
    expect(plan({ volumeMm3: 640_000, cutAreaMm2: 200_000 }, {}, 100).colours[0]?.count.batches).toBe(3);
    expect(cups(15)).toBe(1);
  });
});

test('colours share an error of the volume as they share what was planned for it, equally where nothing was', () => {
  const fill = (name: string, volumeErrorMm3: number) => ({
    ...{ name, resin: null, pockets: 1, depthMm: 3.2 },
    budget: fillBudget({ ...POCKET, volumeErrorMm3 }),
  });
  const shares = (...errors: number[]): readonly (number | undefined)[] =>
    withVolumeError(
      pourPlan(
        errors.map((error, k) => fill(`colour ${k}`, error)),
        TERMS,
      ),
      1000,
    ).colours.map(({ budget }) => budget.items.find(({ cause }) => cause === 'geometry')?.moreMl);
  expect(shares(30, 10)).toEqual([expect.closeTo(0.75, 12), expect.closeTo(0.25, 12)]);
  expect(shares(0, 0)).toEqual([0.5, 0.5]);
});
