import { AxisEdge } from '@pourproof/geometry';
import { type CleanRegion, pollStep, ringStart } from '@pourproof/plane';
import type { Measured } from '../measured.ts';
import { type Balance, equalWithin } from './balance.ts';

/** Places on the axis whose width is measured again. */
const SAMPLES = 16;
/** Clearances are right to 1e-9 of the artwork's size; a bottleneck may be off by 1e-10 of its own. */
const CLEARANCE_REL_TOL = 1e-7;
const CLEARANCE_TOL_MM = 1e-6;

/** A place on the axis with the radius that the axis gives to its inscribed disc, mm. */
interface Sample {
  readonly x: number;
  readonly y: number;
  readonly clearanceMm: number;
}

/** Balances of widths with what they are made from. */
interface Known extends Pick<Measured, 'axis' | 'artwork'> {
  readonly seed: number;
  readonly balances: readonly Balance[];
}

const known = new WeakMap<Measured['strokes'], Known>();

/** The {@link balancesOfWidths}: the same figures of the same artwork, kept from a proof before, balance as they did then. */
export function widthBalances(measured: Measured, seed: number): readonly Balance[] {
  const { axis, artwork, strokes } = measured;
  const before = known.get(strokes);
  if (before !== undefined && before.axis === axis && before.artwork === artwork && before.seed === seed) {
    return before.balances;
  }
  const balances = balancesOfWidths(measured, seed);
  known.set(strokes, { axis, artwork, seed, balances });
  return balances;
}

/**
 * Widths by the axis against the distance to the outline, edge by edge without the axis or its indices: at places drawn from a seed, and
 * where the narrowest stroke is.
 */
function balancesOfWidths({ axis, artwork, strokes }: Measured, seed: number): readonly Balance[] {
  const samples = [...sampled(axis, seed)];
  if (strokes.narrowestMm !== null) {
    const [x, y] = strokes.narrowestAt;
    samples.push({ x, y, clearanceMm: strokes.narrowestMm / 2 });
  }
  const distances = signedDistances(artwork, samples);
  const by = CLEARANCE_REL_TOL * axis.boundary.extent + CLEARANCE_TOL_MM;
  return samples.flatMap(({ clearanceMm }, index) => {
    const distance = distances[index] ?? Number.NaN;
    return [
      equalWithin(
        'width-is-distance-to-outline',
        'mm',
        [2 * clearanceMm, 2 * Math.abs(distance), 2 * by],
        index,
      ),
      // a place on the outline itself may come out on either side
      { id: 'width-lies-in-artwork', unit: 'mm', got: distance, least: -by, most: Infinity, index } as const,
    ];
  });
}

function* sampled(axis: Measured['axis'], seed: number): Generator<Sample> {
  const count = axis.edgeFrom.length;
  const { originX, originY } = axis.boundary;
  const edge = new AxisEdge(axis);
  const next = sharesFrom(seed);
  for (let k = 0; k < SAMPLES && count > 0; k++) {
    const e = Math.min(count - 1, Math.floor(next() * count));
    edge.load(e);
    edge.atShare(next());
    yield { x: edge.x + originX, y: edge.y + originY, clearanceMm: edge.clearance };
  }
}

/** Shares from 0 to below 1, the same for the same seed: a linear congruential generator (numbers of Numerical Recipes). */
function sharesFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Distance of each place from the outline, negative outside: inside by the parity of crossings. */
function signedDistances(region: CleanRegion, places: readonly Sample[]): readonly number[] {
  const { coords, ringEnds } = region;
  const x = Float64Array.from(places, (place) => place.x);
  const y = Float64Array.from(places, (place) => place.y);
  const least = new Float64Array(places.length).fill(Infinity);
  const isInside = new Uint8Array(places.length);
  for (let ring = 0; ring < ringEnds.length; ring++) {
    const first = ringStart(region, ring);
    const end = ringEnds[ring] as number;
    let ax = coords[2 * end - 2] as number;
    let ay = coords[2 * end - 1] as number;
    for (let i = first; i < end; i++) {
      pollStep();
      const bx = coords[2 * i] as number;
      const by = coords[2 * i + 1] as number;
      const dx = bx - ax;
      const dy = by - ay;
      const length2 = dx * dx + dy * dy;
      for (let k = 0; k < x.length; k++) {
        const px = x[k] as number;
        const py = y[k] as number;
        const share = length2 > 0 ? ((px - ax) * dx + (py - ay) * dy) / length2 : 0;
        const t = Math.min(1, Math.max(0, share));
        const qx = px - ax - t * dx;
        const qy = py - ay - t * dy;
        const d2 = qx * qx + qy * qy;
        if (d2 < (least[k] as number)) {
          least[k] = d2;
        }
        if (ay > py !== by > py && px < ax + ((py - ay) / dy) * dx) {
          isInside[k] = 1 - (isInside[k] as number);
        }
      }
      ax = bx;
      ay = by;
    }
  }
  return Array.from(least, (d2, k) => (isInside[k] === 1 ? 1 : -1) * Math.sqrt(d2));
}
