import { radiusAt } from '@pourproof/cutting';
import { parseBit, settleJob } from '@pourproof/job';
import { expect, test } from 'vitest';
import { cutterOf } from './cutter-of.ts';
import { passWidthMm } from './pass-width.ts';
import { stickStrokeMm } from './stick-stroke.ts';

test('a bull nose is flat within its corner and round outside, and a ball when the corner is half of it', () => {
  const bull = cutterOf(parseBit('bull:6mm:corner 1mm'));
  expect(radiusAt(bull, 0)).toBeCloseTo(2, 9);
  expect(radiusAt(bull, 1)).toBeCloseTo(3, 9);
  // on a quarter of a circle of 1 mm
  expect(radiusAt(bull, 0.5)).toBeCloseTo(2 + Math.sqrt(0.75), 9);
  const ball = cutterOf(parseBit('ball:6mm'));
  for (const height of [0, 0.5, 2, 3]) {
    expect(radiusAt(cutterOf(parseBit('bull:6mm:corner 3mm')), height)).toBeCloseTo(
      radiusAt(ball, height),
      9,
    );
  }
});

test('single strokes are wider than one pass of the smallest bit by what flattening may take on both sides', () => {
  const job = settleJob({ bit: ['flat:2mm', 'flat:1mm'], depth: '3mm' });
  expect(passWidthMm(job)).toBeCloseTo(1, 9);
  expect(stickStrokeMm(job)).toBeCloseTo(1 + 2 * job.toleranceMm, 12);
});
