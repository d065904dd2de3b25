import { readFileSync } from 'node:fs';
import {
  JobError,
  type JobInput,
  mergeJobs,
  readMaterialsFile,
  readShopFile,
  SETTING_KEYS,
  SETTINGS,
  type SettingKey,
  type Shop,
  settleJob,
  usualInput,
} from '@pourproof/job';
import { describe, expect, test } from 'vitest';

const file = (entries: object): object => ({ schema: 'pourproof/shop@1', ...entries });
const shopOf = (entries: object): Shop => readShopFile(file(entries), 'shop.json');

const KEYS = SETTING_KEYS.filter((key) => SETTINGS[key].isOfShop === true);

/** Three values of each setting that a shop may state, none of them what is assumed. */
const VALUES: Readonly<Partial<Record<SettingKey, readonly [unknown, unknown, unknown]>>> = {
  bit: [['flat:2mm'], ['flat:3mm'], ['ball:4mm']],
  depth: ['2mm', '2.5mm', '4mm'],
  wood: ['cherry', 'walnut', 'ash'],
  seal: ['shellac', 'epoxy', 'sanding-sealer'],
  coats: [2, 3, 4],
  sealHours: ['5h', '6h', '7h'],
  resin: ['laminating', 'deep-pour', 'laminating'],
  colourant: ['dye', 'dye', 'dye'],
  pigmentPct: [1, 2, 4],
  level: ['0.3mm', '0.6mm', '0.9mm'],
  levelBy: ['drum', 'planer', 'drum'],
  overpour: ['0.2mm', '0.4mm', '0.9mm'],
  wastePct: [5, 6, 7],
  weigh: ['fine', 'kitchen', 'fine'],
  pricePerG: [0.01, 0.02, 0.03],
  feed: ['800mm/min', '900mm/min', '1100mm/min'],
  plunge: ['100mm/min', '200mm/min', '400mm/min'],
  rapid: ['2000mm/min', '3000mm/min', '4000mm/min'],
  accelerationMmPerS2: [100, 300, 400],
  passDepth: ['1mm', '1.2mm', '1.4mm'],
  stepoverPct: [20, 30, 45],
  shopTemp: ['18C', '19C', '23C'],
  boardSpread: [0.2, 0.3, 0.4],
  units: ['in', 'in', 'in'],
};

/** What a job comes to, whoever said it. */
function meaning(job: ReturnType<typeof settleJob>): object {
  const { input: _, given: __, defaults: ___, shop: ____, fromShop: _____, materials, ...values } = job;
  const { atHand: ______, ...tables } = materials;
  return { ...values, tables };
}

describe('where a value comes from', () => {
  test('every setting of a shop has values here', () => {
    const known = KEYS.filter((key) => VALUES[key] !== undefined);
    expect(known).toEqual(KEYS);
  });

  test.each(KEYS)(
    '%s: flags go before the job file, that before the shop, that before what is assumed',
    (key) => {
      const [one, two, three] = VALUES[key] ?? [];
      const shop = shopOf({ usual: { [key]: one } });
      const by = (job: JobInput): object => meaning(settleJob(job, { shop }));
      const alone = settleJob({}, { shop });
      expect(meaning(alone)).toEqual(meaning(settleJob({ ...unitOf(key, one), [key]: one })));
      expect(alone.fromShop).toEqual([key]);
      expect(alone.defaults).not.toContain(key);
      expect(alone.given).toEqual([]);
      const inFile: JobInput = { [key]: two };
      expect(by(inFile)).toEqual(meaning(settleJob(inFile)));
      expect(settleJob(inFile, { shop }).fromShop).toEqual([]);
      const typed = mergeJobs(inFile, { [key]: three });
      expect(by(typed)).toEqual(meaning(settleJob(typed)));
    },
  );

  test('a shop that states what is assumed changes no value, only its origin', () => {
    const stated = KEYS.filter((key) => SETTINGS[key].usual !== undefined);
    const usual = Object.fromEntries(stated.map((key) => [key, usualInput(key, {})]));
    const job = settleJob({}, { shop: shopOf({ usual }) });
    expect(meaning(job)).toEqual(meaning(settleJob({})));
    expect(job.fromShop).toEqual(stated);
    expect(job.defaults.filter((key) => stated.includes(key))).toEqual([]);
  });
});

/** Answers follow the lengths of a job, not those of a shop. */
function unitOf(key: SettingKey, value: unknown): JobInput {
  return key === 'units' ? { units: value as 'in' } : { units: 'mm' };
}

describe('lists of what is at hand', () => {
  test('the first bit, wood, resin and scale are taken where the job names none; a seal never is', () => {
    const job = settleJob(
      {},
      {
        shop: shopOf({
          bits: [{ bit: 'flat:1mm', toBuy: true }, 'flat:2mm'],
          woods: ['Cherry', 'maple'],
          seals: ['epoxy'],
          resins: [{ resin: 'deep-pour', pricePerG: 0.05 }],
          scales: ['fine'],
        }),
      },
    );
    expect(job.bits).toEqual([{ kind: 'flat', diameterMm: 2, cuttingLengthMm: null }]);
    expect(job).toMatchObject({
      wood: 'cherry',
      seal: 'none',
      resin: 'deep-pour',
      weigh: 'fine',
      pricePerG: 0.05,
    });
    expect(job.fromShop).toEqual(['bit', 'wood', 'resin', 'weigh', 'pricePerG']);
  });

  test('a seal brings the coats and the wait that the shop gives it, and a resin its price', () => {
    const shop = shopOf({
      seals: [
        { seal: 'shellac', coats: 3, sealHours: '4h' },
        { seal: 'epoxy', sealHours: '10h' },
      ],
      resins: ['coating', { resin: 'deep-pour', pricePerG: 0.05 }],
      usual: { seal: 'shellac', sealHours: '20h', pricePerG: 0.01 },
    });
    expect(settleJob({}, { shop })).toMatchObject({
      seal: 'shellac',
      coats: 3,
      sealHours: 4,
      pricePerG: 0.01,
    });
    expect(settleJob({ seal: 'Epoxy' }, { shop })).toMatchObject({ coats: 1, sealHours: 10 });
    expect(settleJob({ coats: 2, resin: 'deep-pour' }, { shop })).toMatchObject({
      coats: 2,
      pricePerG: 0.05,
    });
  });

  test('a bit has the edge of the same bit of the list where the job does not say it', () => {
    const shop = shopOf({ bits: ['flat:1/8in:length 10mm', 'flat:1/8in:length 12mm', 'ball:2mm'] });
    const edges = (bit: readonly string[], rounds?: string): unknown => {
      const job = settleJob({ bit, ...(rounds === undefined ? {} : { rounds }) }, { shop });
      return [...job.bits, ...job.rounds.flatMap(({ bits }) => bits ?? [])].map(
        (each) => each.cuttingLengthMm,
      );
    };
    expect(edges(['flat:3.175mm', 'flat:1/8in:length 9mm', 'flat:3mm', 'ball:2mm'])).toEqual([
      12,
      9,
      null,
      null,
    ]);
    expect(edges(['flat:3mm'], 'red with flat:1/8in')).toEqual([null, 12]);
  });

  test('bits of the list are the sizes at hand, those of a file of materials before them', () => {
    const shop = shopOf({ bits: ['flat:1/16in', 'vee:60deg:1/2in', 'bull:6mm:corner 1mm'] });
    const sizes = shop.materials.cutters.value.map(({ shape, label }) => `${shape} ${label}`);
    expect(sizes).toEqual(['flat 1/16in', 'vee 60deg']);
    const cutters = [{ shape: 'flat', label: '2mm', diameterMm: 2, angleDeg: null }];
    const book = readMaterialsFile(
      { schema: 'pourproof/materials@1', cutters },
      'materials.json',
      shop.materials,
    );
    expect(settleJob({}, { shop, materials: book }).materials.cutters.value).toEqual(cutters);
  });

  test('on a described board the woods are those of the board', () => {
    const shop = shopOf({ woods: ['cherry'], usual: { units: 'in' } });
    const job = settleJob({ board: 'plain 300x180x20mm walnut' }, { shop });
    expect(job).toMatchObject({ wood: 'walnut', units: 'mm', fromShop: [] });
  });

  test('entries of its own are of the shape of a file of materials, whose rows stand before them', () => {
    const shop = shopOf({
      materials: { resins: { mine: { like: 'coating', deepestPourMm: 9, potLifeMin: 30 } } },
      resins: ['mine'],
    });
    const own = { resins: { mine: { like: 'mine', potLifeMin: 40 } } };
    const book = readMaterialsFile(
      { schema: 'pourproof/materials@1', ...own },
      'materials.json',
      shop.materials,
    );
    const { resin } = settleJob({}, { shop, materials: book }).rows;
    expect([resin.deepestPourMm.value, resin.potLifeMin.value]).toEqual([9, 40]);
  });
});

test('the shop to copy from is one', () => {
  const text = readFileSync('fixtures/shops/shop.json', 'utf8');
  const shop = readShopFile(JSON.parse(text), 'shop.json');
  expect(shop.bits.map(({ text: bit, isToBuy }) => `${bit}${isToBuy ? ', to buy' : ''}`)).toContain(
    'flat:1mm:length 4mm, to buy',
  );
  expect(settleJob({}, { shop })).toMatchObject({ wood: 'cherry', seal: 'shellac', coats: 2, sealHours: 4 });
});

test.each<readonly [object, RegExp, RegExp]>([
  [
    { bitz: [] },
    /shop\.json is not a pourproof\/shop@1 file:\n {2}bitz: means nothing here; did you mean "bits"\?/u,
    /schema/u,
  ],
  [
    { bits: [{ bit: 'flat:2mm', cost: 3 }] },
    /bits, row 1: cost|bits, row 1, cost: means nothing here/u,
    /schema/u,
  ],
  [{ usual: { text: 'Rowan' } }, /usual\.text: means nothing here/u, /schema/u],
  [{ usual: { wdth: '3mm' } }, /usual\.wdth: means nothing here/u, /schema/u],
  [{ bits: [] }, /bits: is an empty list/u, /schema/u],
  [{ bits: ['flat:2mm', 'flat:3'] }, /^shop\.json: bits, row 2: /u, /3mm or 3in/u],
  [{ bits: ['flat:2mm', { bit: 'round:3mm' }] }, /^shop\.json: bits, row 2/u, /flat/u],
  [
    { woods: ['maple', 'chery'] },
    /^shop\.json: woods, row 2: wood "chery" is unknown/u,
    /Did you mean cherry\?/u,
  ],
  [{ seals: [{ seal: 'shellac', sealHours: '4' }] }, /^shop\.json: seals, row 1: sealHours: /u, /4h/u],
  [{ resins: ['x'] }, /^shop\.json: resins, row 1: resin "x" is unknown/u, /Known/u],
  [{ usual: { depth: '3' } }, /^shop\.json: usual\.depth: /u, /3mm or 3in/u],
  [{ usual: { depth: '300mm' } }, /^shop\.json: usual\.depth is 300/u, /unit/u],
  [{ materials: { resins: { mine: {} } } }, /^shop\.json: materials\.resins\.mine: /u, /like/u],
  [{ bits: [{ bit: 'flat:2mm', price: -1 }] }, /bits, row 1, price: /u, /schema/u],
])('%j is refused with its place and a remedy', (entries, what, remedy) => {
  const thrown = (() => {
    try {
      return shopOf(entries);
    } catch (error) {
      return error;
    }
  })();
  expect(thrown).toBeInstanceOf(JobError);
  expect((thrown as JobError).what).toMatch(what);
  expect((thrown as JobError).remedy).toMatch(remedy);
});
