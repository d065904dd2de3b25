// Which sources are mutated, and the tests that are to notice, cheap ones first.
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** Seed of the samples. */
export const SEED = 20261129;

/** Tests that take seconds of a processor; a mutant comes to them when no other test noticed it. */
const DEAR = {
  materials: [
    'packages/materials/src/calibration/calibrated-travel.test.ts',
    'packages/materials/src/calibration/pooled-belief.test.ts',
    'packages/materials/src/calibration/coverage.test.ts',
  ],
  proof: [
    'packages/proof/src/board/near-clamps.test.ts',
    'packages/proof/src/board/near-parts.test.ts',
    'tests/proof/findings/losses.test.ts',
    'tests/proof/fixes-applied.test.ts',
    'tests/proof/glue-up.test.ts',
    'tests/proof/rounds.test.ts',
    'tests/proof/rounds-laws.test.ts',
    'tests/proof/seen-to.test.ts',
    'tests/proof/ways-out-tried.test.ts',
  ],
  arrangement: ['tests/arrangement/booleans.test.ts'],
  geometry: [
    'packages/geometry/src/sweep/gaps-along.test.ts',
    'tests/geometry/hard-regions.test.ts',
    'tests/geometry/laws.test.ts',
    'tests/geometry/medial-axis.test.ts',
    'tests/geometry/opening-differential.test.ts',
    'tests/geometry/opening-engines.test.ts',
    'tests/geometry/nearly-flush-edges.test.ts',
    'tests/geometry/raster-widths.test.ts',
    'tests/geometry/stroke-flattening.test.ts',
    'tests/geometry/turning-changes-nothing.test.ts',
  ],
  cutting: [
    'packages/cutting/src/following/volume/sector-moments.test.ts',
    'packages/cutting/src/following/volume/swept-volume.test.ts',
    'tests/cutting/as-wide-as-the-bit.test.ts',
    'tests/cutting/carve-depth.test.ts',
    'tests/cutting/carve-laws.test.ts',
    'tests/cutting/carve-rounded-bounds.test.ts',
    'tests/cutting/carve-walls.test.ts',
    'tests/cutting/paths-clearing.test.ts',
    'tests/cutting/paths-lettering.test.ts',
    'tests/cutting/paths-random.test.ts',
    'tests/cutting/stepped-volumes.test.ts',
  ],
  artwork: [
    'packages/artwork/src/clip/near-rings.test.ts',
    'packages/artwork/src/flatten/flatten-nurbs.test.ts',
    'packages/artwork/src/lettering/damage.test.ts',
    'packages/artwork/src/lettering/glyph-outline.test.ts',
    'packages/artwork/src/lettering/read-stick-lettering.test.ts',
    'packages/artwork/src/lettering/unpack-font.test.ts',
  ],
};

/** Tests that read the text of sources, which bears all mutants at once. */
const READ_SOURCES = ['tests/materials/limits-read.test.ts', 'tests/materials/units.test.ts'];

/** Findings of many jobs told in full. */
const AS_JUDGED = 'tests/verdicts/as-judged.test.ts';

/** Holds published schemas and pages of findings to the code. */
const FINDINGS_CONTRACT = 'tests/house/findings-contract.test.ts';

/** Holds the page of sources to all that cite them. */
const SOURCES_PAGE = 'tests/materials/pages.test.ts';

const ALL_DEAR = Object.values(DEAR).flat();

const own = (name) => [`packages/${name}/src`];

export const SETS = {
  judging: {
    size: 200,
    folders: ['packages/proof/src', 'packages/materials/src'],
    tiers: {
      materials: [
        [...own('materials'), 'tests/materials'],
        [...own('proof'), 'tests/proof', 'tests/job', ...DEAR.materials],
        [AS_JUDGED, 'packages/wording/src', 'tests/wording', ...DEAR.proof],
      ],
      proof: [
        [...own('proof'), 'tests/proof'],
        [
          AS_JUDGED,
          FINDINGS_CONTRACT,
          SOURCES_PAGE,
          'packages/proof/src/board/near-clamps.test.ts',
          'packages/proof/src/board/near-parts.test.ts',
          'tests/proof/rounds.test.ts',
          'tests/proof/rounds-laws.test.ts',
          'tests/proof/ways-out-tried.test.ts',
          'tests/job',
        ],
        [...DEAR.proof, 'packages/wording/src', 'tests/wording', 'tests/verdicts'],
      ],
    },
  },
  kernels: {
    size: 400,
    folders: [
      ...['plane', 'arrangement', 'geometry', 'cutting'].map((name) => `packages/${name}/src`),
      ...['chains', 'clip', 'flatten', 'path', 'stroke'].map((name) => `packages/artwork/src/${name}`),
    ],
    tiers: {
      plane: [
        [...own('plane'), ...own('arrangement'), ...own('geometry')],
        ['tests/arrangement', 'tests/geometry', ...own('job'), ...own('cutting'), ...own('artwork')],
        [
          'tests/job',
          'tests/cutting',
          'tests/proof',
          'tests/artwork/svg',
          'tests/artwork/dxf',
          'tests/wording',
        ],
      ],
      arrangement: [
        [...own('arrangement'), 'tests/arrangement'],
        [...DEAR.arrangement, ...own('geometry'), 'tests/geometry', ...own('artwork')],
        [
          ...DEAR.geometry,
          ...own('cutting'),
          'tests/cutting',
          ...DEAR.artwork,
          'tests/artwork/svg',
          'tests/artwork/dxf',
        ],
      ],
      geometry: [
        [...own('geometry'), 'tests/geometry'],
        [...DEAR.geometry, ...own('cutting'), 'tests/cutting'],
        [...DEAR.cutting, ...own('proof'), 'tests/proof'],
      ],
      cutting: [
        [...own('cutting'), 'tests/cutting'],
        DEAR.cutting,
        [...own('proof'), 'tests/proof', 'tests/geometry'],
      ],
      artwork: [
        own('artwork'),
        ['tests/artwork/svg', 'tests/artwork/dxf', 'tests/artwork/lettering/joins.test.ts'],
        [...DEAR.artwork, 'tests/geometry'],
      ],
    },
  },
};

/** The test files of a tier: folders stand for all tests below them but the dear ones, which are named where they belong. */
export function testFiles(paths) {
  return [...new Set(paths.flatMap(below))];
}

function below(path) {
  if (statSync(path).isFile()) {
    return [path];
  }
  return readdirSync(path, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => join(path, name))
    .filter((name) => !ALL_DEAR.includes(name) && !READ_SOURCES.includes(name))
    .sort();
}
