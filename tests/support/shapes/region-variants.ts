import { type CleanRegion, radians, rotation, type Transform, transformRings } from '@pourproof/plane';
import { cleanFrom, reversed } from './clean-from.ts';

/** The same region turned, mirrored, scaled, started elsewhere and with straight points, each with its scale. */
export function* variants(
  outer: number[],
  holes: number[][] = [],
): Generator<{ name: string; scale: number; region: CleanRegion }> {
  const started = [...outer.slice(4), ...outer.slice(0, 4)];
  yield { name: 'as given', scale: 1, region: cleanFrom([outer], holes) };
  yield { name: 'started elsewhere', scale: 1, region: cleanFrom([started], holes) };
  yield { name: 'walked backwards', scale: 1, region: cleanFrom([reversed(outer)], holes.map(reversed)) };
  yield {
    name: 'with straight points',
    scale: 1,
    region: cleanFrom([withPoints(outer, [0.25, 0.5])], holes),
  };
  const turned = (t: Transform, ring: number[]): number[] => [...transformRings(t, cleanFrom([ring])).coords];
  const maps: [string, number, Transform][] = [
    ['turned by 17.3°', 1, rotation(radians(17.3))],
    ['turned by 90°', 1, rotation(radians(90))],
    ['mirrored', 1, [-1, 0, 0, 1, 0, 0]],
    ['scaled by 1e6', 1e6, [1e6, 0, 0, 1e6, 0, 0]],
    ['scaled by 1e-6', 1e-6, [1e-6, 0, 0, 1e-6, 0, 0]],
  ];
  for (const [name, scale, map] of maps) {
    yield {
      name,
      scale,
      region: cleanFrom(
        [turned(map, outer)],
        holes.map((hole) => turned(map, hole)),
      ),
    };
  }
}

/** The ring with points put in along each edge. */
function withPoints(ring: readonly number[], shares: readonly number[]): number[] {
  return ring.flatMap((_, i) => {
    if (i % 2 === 1) {
      return [];
    }
    const j = (i + 2) % ring.length;
    const more = shares.flatMap((t) => [
      ring[i] + t * (ring[j] - ring[i]),
      ring[i + 1] + t * (ring[j + 1] - ring[i + 1]),
    ]);
    return [ring[i], ring[i + 1], ...more];
  });
}
