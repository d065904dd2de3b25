import { type JobFile, type JobInput, settleJob } from '@pourproof/job';
import { judgeDrawing, type Report } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';

const VEE: JobFile = {
  schema: 'pourproof/job@1',
  bit: ['vee:60deg:12mm'],
  depth: '10mm',
  wood: 'poplar',
  seal: 'none',
  level: '0.3mm',
};
const BAR = rectangle(0, 0, 30, 4);
const reportOf = (job: JobInput = {}): Report =>
  judgeDrawing(drawingOf([BAR]), 'test', settleJob({ ...VEE, ...job })).report;

describe('high-bleed-wall at the leaning walls of a 60° V', () => {
  const at = (job: JobInput = {}) => reportOf(job).findings.find(({ code }) => code === 'high-bleed-wall');
  const travel = reportOf().bleed.blocks[0]?.travelMm.median ?? 0;
  const cos30 = Math.cos(Math.PI / 6);

  test('takes cos(A/2) of what an upright wall takes, across the grain and along it', () => {
    const upright = at({ bit: ['flat:1mm'] });
    expect(upright?.measured.value).toBeCloseTo(travel, 9);
    expect(at()?.measured.value).toBeCloseTo(travel * cos30, 9);
    // the two ends; with the fibres turned by 90° the two long walls
    expect(at()?.where).toHaveLength(2);
    const across = at({ grain: '90deg' });
    expect(across?.measured.value).toBeCloseTo(travel * cos30, 9);
    expect(across?.where.map(({ atMm: [, y] }) => y).toSorted()).toEqual([0, 4]);
    expect(at({ grain: '45deg' })?.measured.value).toBeCloseTo(travel * cos30 * Math.SQRT1_2, 9);
  });

  test('where fibres dive by 10° one end takes 0.93969 of the travel and the other 0.76604', () => {
    expect(at({ dive: '10deg' })?.measured.value).toBeCloseTo(travel * 0.9396926, 6);
    // a travel of 1.08 mm: only one end is above 1 mm, and without a dive none
    const sealed: JobInput = { seal: 'epoxy', coats: 1, sealHours: '2h' };
    const one = at({ ...sealed, dive: '10deg' });
    expect(one?.where).toHaveLength(1);
    expect(one?.where[0]?.atMm[0]).toBe(0);
    expect(one?.measured.value).toBeCloseTo(1.08 * 0.9396926, 2);
    expect(at(sealed)).toBeUndefined();
    expect(at({ ...sealed, bit: ['flat:1mm'] })?.where).toHaveLength(2);
    // turned by half a turn it is the other end
    expect(at({ ...sealed, dive: '10deg', grain: '180deg' })?.where[0]?.atMm[0]).toBe(30);
  });

  test('is silent on end grain, where walls drink downwards only', () => {
    expect(at({ dive: '90deg' })).toBeUndefined();
    expect(reportOf({ dive: '90deg' }).findings.map(({ code }) => code)).toContain('floor-drinks');
  });

  test('counts the slope of a shallow ball at the face, and none of a deep one', () => {
    // 1 mm deep the wall of a ball of radius 2 leans by asin(1/2) at the face
    const shallow = at({ bit: ['ball:4mm'], depth: '1mm' });
    expect(shallow?.measured.value).toBeCloseTo(travel * cos30, 6);
    expect(at({ bit: ['ball:2mm'], depth: '1.5mm' })?.measured.value).toBeCloseTo(travel, 6);
  });
});
