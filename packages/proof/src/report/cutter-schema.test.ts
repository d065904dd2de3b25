import { describe, expect, test } from 'vitest';
import { cutterSchema } from './cutter-schema.ts';

const CUTTERS = [
  { kind: 'flat', diameterMm: 3, cuttingLengthMm: null },
  { kind: 'ball', diameterMm: 3, cuttingLengthMm: 12 },
  { kind: 'bull', diameterMm: 6, cornerMm: 1, cuttingLengthMm: null },
  { kind: 'vee', angleDeg: 60, diameterMm: 12.7, tipMm: 0.2, tipRadiusMm: 0, cuttingLengthMm: null },
  { kind: 'taper', tipDiameterMm: 0.5, sideDeg: 5, diameterMm: 6, cuttingLengthMm: null },
  { kind: 'profile', points: [{ heightMm: 0, diameterMm: 2 }], cuttingLengthMm: null },
] as const;

describe.each(CUTTERS)('a cutter in the report: $kind', (cutter) => {
  test('is told with all its measures', () => {
    expect(cutterSchema.parse(cutter)).toEqual(cutter);
  });

  test.each(Object.keys(cutter))('lacks something without its %s', (key) => {
    const { [key]: _, ...rest } = cutter as Record<string, unknown>;
    expect(cutterSchema.safeParse(rest).success).toBe(false);
  });
});
