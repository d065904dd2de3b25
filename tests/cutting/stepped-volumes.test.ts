import { carve, profileCutter } from '@pourproof/cutting';
import { type MedialAxis, medialAxis, vVolume } from '@pourproof/geometry';
import { type CleanRegion, radians } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { offsetPeers, PEER_GRID_MM } from '../support/oracles/offset-peers.ts';
import { lettered } from '../support/shapes/lettered.ts';

/** Numbers of prisms, each twice the one before, so that the sections of the finest include all others. */
const LEVELS = [8, 16, 32, 64];
const FINEST = 64;
const ARC_MM = 1e-4;
const SLACK_MM = 4 * PEER_GRID_MM;

const GLYPHS = [
  ['R', 'lora-400.ttf'],
  ['g', 'bodoni-moda-400.ttf'],
  ['&', 'dancing-script-400.ttf'],
  ['8', 'arvo-400.ttf'],
  ['W', 'josefin-sans-400.ttf'],
] as const;

const peer = (await offsetPeers()).find(({ name }) => name === 'clipper2-wasm')!;
const shortMm = peer.arcExcess * ARC_MM + SLACK_MM;

/**
 * Sums of prisms inside and around a body whose sections at FINEST + 1 heights lie between `low` and `high`,
 * both monotonic.
 */
function bracket(low: readonly number[], high: readonly number[], heightMm: number, levels: number) {
  const step = FINEST / levels;
  let below = 0;
  let above = 0;
  for (let k = 0; k < FINEST; k += step) {
    below += Math.min(low[k]!, low[k + step]!) * (heightMm / levels);
    above += Math.max(high[k]!, high[k + step]!) * (heightMm / levels);
  }
  return { below, above };
}

function expectClosingBrackets(
  volume: number,
  low: readonly number[],
  high: readonly number[],
  heightMm: number,
): void {
  for (const levels of LEVELS) {
    const { below, above } = bracket(low, high, heightMm, levels);
    expect(below, `${levels} levels`).toBeLessThanOrEqual(volume);
    expect(above, `${levels} levels`).toBeGreaterThanOrEqual(volume);
    // sections are monotonic: the gap is one step of their total change, and a little for the arcs
    const step = (heightMm / levels) * Math.max(...high);
    expect(above - below, `${levels} levels`).toBeLessThan(1.1 * step);
  }
}

/**
 * Sections of a V cut: the artwork eroded by the inset of the flanks, with radii adjusted so that the
 * engine's chords stay on the safe side.
 */
function vSections(region: CleanRegion, radii: readonly number[]) {
  const at = (radius: number) => peer.areas(region, radius, [0], ARC_MM)[0]!;
  return {
    low: radii.map((r) => at(r + shortMm)),
    high: radii.map((r) => at(Math.max(0, r - SLACK_MM))),
  };
}

const largestClearance = (axis: MedialAxis): number => axis.nodeR.reduce((a, b) => Math.max(a, b), 0);

describe.each(GLYPHS)('%s in %s', (text, face) => {
  const made = lettered(text, face, 15, 0.01);
  const heights = Array.from({ length: FINEST + 1 }, (_, k) => k / FINEST);

  test.each([60, 90])('V cut of %d° to its full depth, and to half of it', async (deg) => {
    const region = await made;
    const axis = medialAxis(region);
    const slope = Math.tan(radians(deg / 2));
    for (const share of [1, 0.5]) {
      const depthMm = (share * largestClearance(axis)) / slope;
      const { low, high } = vSections(
        region,
        heights.map((h) => h * depthMm * slope),
      );
      const cut = { includedRad: radians(deg), depthMm: share === 1 ? Infinity : depthMm };
      expectClosingBrackets(vVolume(axis, cut), low, high, depthMm);
    }
  });

  test('ball, cone with a flat tip and tapered ball, wherever their rim fits', async () => {
    const region = await made;
    const axis = medialAxis(region);
    const rim = 0.6 * largestClearance(axis);
    const profiles: Record<string, (h: number) => number> = {
      ball: (h) => rim * Math.sqrt(1 - (1 - h) ** 2),
      'cone with a flat tip': (h) => rim * (0.3 + 0.7 * h),
      'tapered ball': (h) => rim * (h < 0.2 ? Math.sqrt(Math.max(0, h * (0.4 - h))) : h),
    };
    for (const radiusAt of Object.values(profiles)) {
      const profile = heights.map((h) => [h * 2, radiusAt(h)] as const);
      const reaches = profile.map(([, radius]) => radius);
      const low = peer.areas(
        region,
        rim + shortMm,
        reaches.map((q) => Math.max(0, q - SLACK_MM)),
        ARC_MM,
      );
      const high = peer.areas(
        region,
        rim - SLACK_MM,
        reaches.map((q) => q + shortMm),
        ARC_MM,
      );
      const { volumeMm3 } = carve(axis, [{ cutter: profileCutter(profile), way: 'clear' }], { depthMm: 2 });
      expectClosingBrackets(volumeMm3, low, high, 2);
    }
  });
});
