import { describe, expect, test } from 'vitest';
import { JobError } from '../refusals/job-error.ts';
import { settleJob } from '../settle-job.ts';
import { readMaterialsFile } from './materials-file.ts';

const file = (entries: object): object => ({ schema: 'pourproof/materials@1', ...entries });

describe('a materials file', () => {
  test('adds a resin by its label, which a job can then name', () => {
    const book = readMaterialsFile(
      file({ resins: { mine: { like: 'coating', ratioByWeight: { a: 100, b: 45 }, deepestPourMm: 10 } } }),
      'materials.json',
    );
    const job = settleJob({ resin: 'mine' }, { materials: book });
    expect(job.rows.resin.ratioByWeight?.value).toEqual({ a: 100, b: 45 });
    expect(job.rows.resin.deepestPourMm).toMatchObject({ value: 10, status: 'entered' });
    // what the label does not say stays the default of its class
    expect(job.rows.resin.gelMin.status).toBe('inference');
  });

  test('changes a wood, a sealer and a scale that ship with pourproof', () => {
    const book = readMaterialsFile(
      file({
        woods: { maple: { bleedPriorMm: 0.9 } },
        sealers: { shellac: { solids: 0.24 } },
        scales: { bench: { name: 'bench scale', resolutionG: 0.05 } },
      }),
      'materials.json',
    );
    const job = settleJob({ seal: 'shellac', weigh: 'bench' }, { materials: book });
    expect(job.rows.wood.bleedPriorMm?.value).toBe(0.9);
    expect(job.rows.seal.solids.value).toBe(0.24);
    expect(job.rows.scale.resolutionG.value).toBe(0.05);
  });

  test.each([
    [{ woods: { oakk: {} } }, 'woods.oakk'],
    [{ resins: { mine: { like: 'nothing' } } }, 'resins.mine.like'],
    [{ resins: { coating: { gelmin: 3 } } }, 'gelmin'],
    [{ resins: { coating: { potLifeMin: 60, gelMin: 30 } } }, 'resins.coating.gelMin'],
    [{ scales: { bench: { name: 'bench', resolutionG: 0 } } }, 'scales.bench.resolutionG'],
    [
      {
        sealers: {
          epoxy: {
            curve: [
              { hours: 5, factor: 0.5 },
              { hours: 2, factor: 0.1 },
            ],
          },
        },
      },
      'curve[1]',
    ],
  ])('says where %j is wrong', (entries, place) => {
    const read = () => readMaterialsFile(file(entries), 'materials.json');
    expect(read).toThrow(JobError);
    expect(read).toThrow(place);
    expect(read).toThrow('materials.json');
  });

  test('without its schema line is refused with the place of the schema', () => {
    expect(() => readMaterialsFile({ woods: {} }, 'materials.json')).toThrow('docs/schema/materials@1.json');
  });
});
