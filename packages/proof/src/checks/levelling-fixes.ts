import { type LevelMethodId, levelMethods } from '@pourproof/materials';
import { cutShape } from '../cut/cut-shape.ts';
import { deepestReachMm } from '../cut/short-bit.ts';
import { type LevelledPlace, levelledAs } from '../levelling/levelling-map.ts';
import { marginOf, type StrokeShop } from '../levelling/stroke-margin.ts';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import { leastWhole } from './least-whole.ts';

/** Least that levelling takes off, mm: a fix that leaves nothing to level is none (our choice). */
const STEP_MM = 0.01;
/** No pocket is deeper, mm (our choice: beyond it a wrong unit is assumed). */
const DEEPEST_MM = 100;
/** Deepening by more than this factor makes it another job, and is not offered (our choice). */
const MAX_DEEPENED = 4;
/** Widening by more than this many times its width makes it another drawing (our choice). */
const MAX_WIDENED = 1;

/** A job changed in one respect. */
interface Change {
  readonly deeperMm?: number;
  readonly coats?: number;
  readonly widerMm?: number;
  readonly lessMm?: number;
}

/**
 * Ways to keep colour at the place where it goes first, each the least that is enough, tried on the section there: under the plan, and at the upper
 * end of what the method takes off.
 */
export function levellingFixes(measured: Measured, first: LevelledPlace): Fix[] {
  const { job } = measured;
  const holds = (change: Change): boolean => {
    const holdsMm = heldMm(measured, first, change);
    return (
      holdsMm !== null &&
      holdsMm.plan >= job.levelMm - (change.lessMm ?? 0) &&
      holdsMm.gone >= highMm(measured)
    );
  };
  const options: Fix[] = [];
  const deepen = least(
    (deeperMm) => holds({ deeperMm }),
    Math.min(deepestMm(job) - STEP_MM, MAX_DEEPENED * job.depthMm) - job.depthMm,
  );
  if (deepen !== null) {
    options.push({ do: 'deepen', byMm: deepen, clears: true });
  }
  for (let fewer = job.coats - 1; fewer >= 1; fewer--) {
    if (holds({ coats: fewer })) {
      options.push({ do: 'fewer-coats', coats: fewer, clears: true });
      break;
    }
  }
  const widen = least((widerMm) => holds({ widerMm }), MAX_WIDENED * first.widthMm);
  if (widen !== null) {
    options.push({ do: 'widen', what: first.form, byMm: widen, clears: true });
  }
  return [...options, ...lessOff(measured, first)];
}

/** What may come off under a change before the place is spoilt, and before all colour is gone; `null` if no bit enters. */
function heldMm(
  { job, sealFilm, shape: now, heights }: Measured,
  { atMm, form, widthMm, needs }: LevelledPlace,
  { deeperMm = 0, coats = job.coats, widerMm = 0 }: Change,
): { readonly plan: number; readonly gone: number } | null {
  // a round or sloped end is wider at the face when it goes deeper
  const shape = deeperMm === 0 ? now : cutShape(job.bits, job.depthMm + deeperMm);
  const wideMm = widthMm + widerMm;
  const section = shape.sectionAt(Math.max(shape.entersMm, wideMm));
  // a stroke as wide as the bit is cut though its curves were flattened, but none that is narrower
  if (section === null || wideMm + 2 * job.toleranceMm < shape.entersMm) {
    return null;
  }
  const shop: StrokeShop = {
    filmMm: job.coats > 0 ? (sealFilm * coats) / job.coats : 0,
    shrinkagePct: job.rows.resin.shrinkagePct.value,
    shallowByMm: Math.max(0, -(heights?.heightAt(atMm) ?? 0)),
  };
  const margin = marginOf(levelledAs(form, section, shop, 0), section, shop, needs);
  const gone = Math.min(margin.goneMm, margin.unseenMm);
  return { plan: Math.min(gone, margin.thinMm, margin.shallowMm), gone };
}

/** The upper end of what the method takes off, in all levellings that the colour lives through; a plan of nothing takes nothing. */
export function highMm({ job, site }: Measured): number {
  return job.levelMm === 0 ? 0 : site.levellings * levelMethods[job.levelBy].removalMm.high;
}

/** A smaller plan where one is enough; or a method that takes no more off at its upper end than there is. */
function lessOff(measured: Measured, first: LevelledPlace): Fix[] {
  const { job } = measured;
  const held = heldMm(measured, first, {});
  if (held === null) {
    return [];
  }
  const other = otherWay(measured, held);
  const toMm = Math.floor(held.plan / STEP_MM) * STEP_MM;
  if (toMm >= STEP_MM && toMm < job.levelMm) {
    const byMm = Math.ceil((job.levelMm - held.plan) / STEP_MM - ROUNDING) * STEP_MM;
    return [
      { do: 'level-less', byMm: Number(byMm.toFixed(2)), clears: held.gone >= highMm(measured) },
      ...other,
    ];
  }
  return other;
}

/** Ways of levelling that take no more off at their upper end than there is. */
function otherWay({ job }: Measured, held: { readonly plan: number; readonly gone: number }): Fix[] {
  const way = (Object.keys(levelMethods) as LevelMethodId[]).find((id) => {
    const { value, high } = levelMethods[id].removalMm;
    const planMm = job.given.includes('level') ? job.levelMm : value;
    return high < levelMethods[job.levelBy].removalMm.high && held.gone >= high && held.plan >= planMm;
  });
  return way === undefined ? [] : [{ do: 'level-by', method: way, clears: true }];
}

/** Rounding of a length in steps. */
const ROUNDING = 1e-6;

/** The greatest depth that the bits reach and that does not cut through the board. */
function deepestMm({ bits, thicknessMm }: Measured['job']): number {
  return Math.min(thicknessMm ?? DEEPEST_MM, deepestReachMm(bits));
}

/** The least hundredths of a millimetre, up to a limit, that are enough; `null` where none are. */
function least(isEnough: (mm: number) => boolean, mostMm: number): number | null {
  const most = Math.floor(mostMm * 100);
  if (most <= 0 || !isEnough(most / 100)) {
    return null;
  }
  return leastWhole(0, most, (hundredths) => isEnough(hundredths / 100)) / 100;
}
