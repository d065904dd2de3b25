import type { TypedJob } from '@pourproof/job';
import { expect, test } from 'vitest';
import type { ArtworkSource } from './artwork-source.ts';
import { jobForSource } from './job-for-source.ts';

const bytes = new Uint8Array();
const file = (name: string): ArtworkSource => ({ kind: 'file', name, bytes, font: null });
const words: ArtworkSource = { kind: 'lettering', name: 'HI', text: 'HI', font: { name: 'a.ttf', bytes } };
const ofFile = { width: '90mm', fileUnit: 'in', join: '1mm', carve: 'visible' } as const;
const ofLettering: TypedJob = { capHeight: '15mm', align: 'right', arc: '80mm', axis: ['wght=600'] };

test('another drawing has its own size and its own way of being read', () => {
  expect(jobForSource({ ...ofFile, depth: '3mm' }, file('b.svg'), file('a.svg'))).toEqual({ depth: '3mm' });
  expect(jobForSource({ scale: 2 }, file('b.svg'), null)).toEqual({ scale: 2 });
});

test('a drawing of the same name is the one before, exported again', () => {
  expect(jobForSource(ofFile, file('a.dxf'), file('a.dxf'))).toEqual(ofFile);
});

test('what is set for lettering goes with it, and its font is that of the lettering', () => {
  expect(jobForSource({ ...ofLettering, font: 'a.ttf' }, file('a.svg'), words)).toEqual({});
  expect(jobForSource({ ...ofLettering, ...ofFile }, words, file('a.svg'))).toEqual({
    ...ofLettering,
    width: '90mm',
    font: 'a.ttf',
  });
});
