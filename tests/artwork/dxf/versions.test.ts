import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { resolveRegions } from '@pourproof/arrangement';
import { readDxf } from '@pourproof/artwork';
import { signedArea } from '@pourproof/plane';
import { expect, test } from 'vitest';

const folder = join(import.meta.dirname, '../../../fixtures/dxf/written');
const areas = JSON.parse(readFileSync(join(folder, 'areas.json'), 'utf8')) as Record<string, number>;

test.each(Object.entries(areas))(
  '%s by an independent library covers the sum of its closed forms',
  (name, areaMm2) => {
    const { shapes, notices } = readDxf(readFileSync(join(folder, `${name}.dxf`)));
    const area = signedArea(resolveRegions(shapes.map((shape) => shape.region)).region);
    // wide lines are united on a grid, which leaves some 1e-9
    expect(Math.abs(area / areaMm2 - 1)).toBeLessThan(1e-8);
    // the oldest version has no unit variable
    expect(notices.map((notice) => notice.code)).toEqual(name.includes('r12') ? ['unit-missing'] : []);
  },
);
