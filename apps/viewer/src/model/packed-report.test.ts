import { readFileSync } from 'node:fs';
import { vet } from 'pourproof';
import { expect, test } from 'vitest';
import { packedBuffers, packReport, unpackReport } from './packed-report.ts';

const { report } = await vet(
  {
    kind: 'file',
    name: 'board.svg',
    bytes: readFileSync(new URL('../../../../fixtures/demo/board.svg', import.meta.url)),
  },
  { bit: ['flat:1/8in'], depth: '3mm', width: '160mm' },
);

test('a report comes out as it went in, in memory and when it is saved', () => {
  expect(report.findings.flatMap(({ where }) => where).length).toBeGreaterThan(10);
  const packed = packReport(report);
  const back = unpackReport(structuredClone(packed, { transfer: packedBuffers(packed) }));
  expect(packed.places.every(({ points }) => points.length === 0)).toBe(true);
  expect(JSON.stringify(back)).toBe(JSON.stringify(report));
  const sizes = (from: typeof report) =>
    from.findings.flatMap(({ where }) =>
      where.map(({ atMm, what, outline, lengthMm, widthMm, areaMm2 }) => [
        atMm,
        what,
        outline,
        lengthMm,
        widthMm,
        areaMm2,
      ]),
    );
  expect(sizes(back)).toEqual(sizes(report));
});

test('the report that is packed keeps its places', () => {
  const places = report.findings.map(({ where }) => where.length);
  packReport(report);
  expect(report.findings.map(({ where }) => where.length)).toEqual(places);
});
