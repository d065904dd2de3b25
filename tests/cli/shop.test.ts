import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readShopFile, vet } from 'pourproof';
import { afterAll, expect, test } from 'vitest';
import { captured } from '../support/cli/captured-run.ts';

const folder = mkdtempSync(join(tmpdir(), 'shop-'));
afterAll(() => rmSync(folder, { recursive: true }));

const BAR =
  '<svg xmlns="http://www.w3.org/2000/svg" width="70mm" height="20mm" viewBox="0 0 70 20"><path d="M5 5H65V11H5Z"/></svg>';
const write = (name: string, data: object | string): void =>
  writeFileSync(join(folder, name), typeof data === 'string' ? data : JSON.stringify(data));
write('bar.svg', BAR);
write('job.json', { schema: 'pourproof/job@1', artwork: 'bar.svg', depth: '3mm', seal: 'epoxy' });

const SHOP = {
  schema: 'pourproof/shop@1',
  bits: [
    { bit: 'flat:3mm:length 9mm', price: 12, changeMinutes: 4 },
    { bit: 'flat:1mm', changeMinutes: 5 },
  ],
  seals: [{ seal: 'epoxy', coats: 2, sealHours: '30h' }],
  resins: [{ resin: 'coating', pricePerG: 0.05 }],
  usual: { feed: '1200mm/min', wood: 'cherry', level: '0.4mm' },
};
const run = (...argv: string[]) => captured(argv, { cwd: folder });
const flat = (text: string): string => text.replace(/\s+/gu, ' ');

test('shop.json beside the job file is taken, and every value says that it comes from there', async () => {
  write('shop.json', SHOP);
  const { out, err } = await run('vet', '--job', 'job.json', '--full');
  rmSync(join(folder, 'shop.json'));
  expect(err).toBe('');
  const text = flat(out);
  expect(text).toMatch(/Bit 3 mm flat from shop\.json/u);
  expect(text).toMatch(/Wood black cherry from shop\.json/u);
  expect(text).toMatch(/of your shop feed 1200 mm\/min; by common practice plunge 300 mm\/min/u);
  expect(text).toContain('plus 4.0 min of your shop to put in the bit');
  expect(text).toMatch(
    /Not given, so taken from shop\.json bit 3 mm flat wood cherry coats 2 seal-hours 30 h resin coating level 0\.4 mm price-per-g 0\.05 feed 1200 mm\/min/u,
  );
  const usual = text.slice(text.indexOf('Not given, so taken as usual'));
  expect(usual).not.toMatch(/ (?:wood|bit|resin|level) /u);
});

test('the report is that of a job that says the same, but for where it comes from', async () => {
  write('mine.json', SHOP);
  const job = { depth: '3mm', seal: 'epoxy', units: 'mm' } as const;
  const said = {
    bit: ['flat:3mm:length 9mm'],
    coats: 2,
    sealHours: '30h',
    resin: 'coating',
    pricePerG: 0.05,
    ...SHOP.usual,
  };
  const source = { kind: 'file', name: 'bar.svg', bytes: new TextEncoder().encode(BAR) } as const;
  const shop = readShopFile(SHOP, 'mine.json');
  const own = (await vet(source, job, { shop })).report;
  // ways out name bits at hand
  const { materials } = shop;
  const typed = (await vet(source, { ...job, ...said }, { materials })).report;
  const { fromShop, ...rest } = own;
  expect(fromShop).toEqual(['bit', 'wood', 'coats', 'sealHours', 'resin', 'level', 'pricePerG', 'feed']);
  const { changeMinutes, ...time } = rest.cut.time;
  expect(changeMinutes).toBe(4);
  const assumptions = time.assumptions.map((each) =>
    each.origin === 'shop' ? { ...each, origin: 'given' } : each,
  );
  expect({ ...rest, cut: { ...rest.cut, time: { ...time, assumptions } } }).toEqual(typed);
  const { out } = await run('vet', '--job', 'job.json', '--shop', 'mine.json', '--units', 'mm', '--json');
  expect(JSON.parse(out)).toEqual(own);
});

test('a way out says where the bit that it adds is still to be bought', async () => {
  const said = async (toBuy: boolean): Promise<string> => {
    write('buy.json', { ...SHOP, bits: [{ bit: 'flat:6mm' }, { bit: 'flat:1mm', toBuy }] });
    const narrow = BAR.replace('V11H5Z', 'V6.5H5Z');
    write('narrow.svg', narrow);
    return (await run('vet', 'narrow.svg', '--shop', 'buy.json', '--depth', '3mm')).out.replace(/\s+/gu, ' ');
  };
  expect(await said(true)).toMatch(
    /Add a 1 mm flat bit: it fits everywhere\. By the list of your shop it is still to be bought\./u,
  );
  expect(await said(false)).toMatch(/Add a 1 mm flat bit: it fits everywhere\./u);
  expect(await said(false)).not.toContain('bought');
});

test('flags go before the shop; a second bit is put in too', async () => {
  const { out } = await run(
    ...['vet', 'bar.svg', '--shop', 'mine.json', '--depth', '3mm', '--bit', 'flat:3mm', '--bit', 'flat:1mm'],
    ...['--wood', 'walnut', '--json'],
  );
  const report = JSON.parse(out);
  expect(report.fromShop).not.toContain('wood');
  expect(report.bleed.blocks[0].species).toBe('black walnut');
  expect(report.cut.perCutter.map((each: { passes: number }) => each.passes > 0)).toEqual([true, true]);
  expect(report.cut.time.changeMinutes).toBe(9);
});

test('a scale that takes little asks for more cups', async () => {
  const own = (capacityG: number): object => ({
    ...SHOP,
    scales: ['bench'],
    materials: { scales: { bench: { name: 'bench scale', resolutionG: 0.01, capacityG } } },
  });
  const cups = async (capacityG: number): Promise<number> => {
    write('scale.json', own(capacityG));
    const { out } = await run(
      'vet',
      'bar.svg',
      '--shop',
      'scale.json',
      '--depth',
      '3mm',
      '--boards',
      '40',
      '--json',
    );
    const [
      {
        massG,
        cups: { count },
      },
    ] = JSON.parse(out).pour.colours;
    expect(count).toBeGreaterThanOrEqual(Math.ceil(massG / capacityG));
    return count;
  };
  expect(await cups(10)).toBeGreaterThan(await cups(1000));
});

test.each<readonly [string, object | string, RegExp]>([
  ['not JSON', '{"schema":', /shop\.json is not JSON|bad\.json is not JSON/u],
  ['another schema', { schema: 'pourproof/job@1' }, /bad\.json is not a pourproof\/shop@1 file/u],
  ['a bad bit', { ...SHOP, bits: ['flat:3'] }, /bad\.json: bits, row 1: .*\n {2}What to do: Did you mean/u],
  ['an unknown key', { ...SHOP, feed: '3m/min' }, /feed: means nothing here/u],
])('%s is one message and exit code 2', async (_, data, message) => {
  write('bad.json', data);
  const { code, out, err } = await run('vet', 'bar.svg', '--shop', 'bad.json');
  expect([code, out]).toEqual([2, '']);
  expect(err).toMatch(message);
});

test('what a job makes impossible of the shop is told as the shop’s', async () => {
  write('deep.json', { ...SHOP, usual: { depth: '8mm' } });
  const { code, err } = await run('vet', 'bar.svg', '--shop', 'deep.json', '--thickness', '6mm');
  expect(code).toBe(2);
  expect(err).toContain('depth of deep.json');
});
