import { signedArea } from '@pourproof/plane';
import type { MeasuredJob } from '../fixes/prove.ts';
import type { Measured } from '../measured.ts';
import { areaBalances } from './area-balances.ts';
import { type Balance, type Miss, missesOf } from './balance.ts';
import { mixBalances } from './mix-balances.ts';
import { volumeBalances } from './volume-balances.ts';
import { widthBalances } from './width-balances.ts';

/**
 * Measures a proof a second time, by other ways: areas and volumes against their parts and their outlines, grams against volumes, and
 * widths at places drawn from a seed. What does not balance within its bounds is a fault of pourproof. Time: linear in the artwork, a
 * few percent of a proof.
 *
 * @param seed of the places at which widths are measured again
 * @returns what does not balance; empty for a proof that may be told
 */
export function selfCheck(measured: MeasuredJob, seed: number = seedOf(measured)): readonly Miss[] {
  const rounds =
    measured.is === 'at-once' ? [measured.all] : measured.all.rounds.map((round) => round.measured);
  return missesOf([
    ...rounds.flatMap((round) => balancesOf(round, seed)),
    ...(measured.is === 'in-rounds' ? [roundsInArtwork(measured.all.artworkArea, rounds)] : []),
  ]);
}

/** The seed of a proof that names none: it hangs on the artwork alone, so that the same proof is checked at the same places. */
export function seedOf({ all }: MeasuredJob): number {
  const { coords } = all.artwork;
  const bits = new Uint32Array(Float64Array.of(coords.length, coords[0] ?? 0, coords.at(-1) ?? 0).buffer);
  return bits.reduce((seed, each) => (Math.imul(seed, 31) + each) >>> 0, 17);
}

/** All balances of a cut, its fill and its widths. */
export function balancesOf(measured: Measured, seed: number): readonly Balance[] {
  return [
    ...areaBalances(measured),
    ...volumeBalances(measured),
    ...mixBalances(measured),
    ...widthBalances(measured, seed),
  ];
}

/** No round cuts outside the artwork. */
function roundsInArtwork(artworkArea: number, rounds: readonly Measured[]): Balance {
  const widest = Math.max(0, ...rounds.map(({ cutRegion }) => signedArea(cutRegion)));
  const by = Math.max(0, ...rounds.map(({ job, wallLength }) => job.toleranceMm * wallLength));
  return {
    id: 'rounds-lie-in-artwork',
    unit: 'mm2',
    got: widest,
    least: 0,
    most: artworkArea + by + 1e-6,
  };
}
