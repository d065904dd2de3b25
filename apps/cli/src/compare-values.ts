import type { JobInput, SettingKey, Shop } from '@pourproof/job';
import { jobFlags } from './job-flags.ts';
import type { ParsedFlags } from './parse-flags.ts';
import { FLAGS, type Flag } from './tables/flags.ts';
import { UsageError } from './usage-error.ts';

/** Settings whose words may hold an "or" of their own: they are compared by repeating the flag. */
const WORDED: ReadonlySet<SettingKey> = new Set<SettingKey>([
  'text',
  'font',
  'carve',
  'rounds',
  'colourOf',
  'start',
  'board',
  'keepClear',
  'reading',
  'block',
  'seenTo',
]);

/** Lists of the shop that a flag may stand for, by setting. */
const SHOP_LISTS: Readonly<Partial<Record<SettingKey, (shop: Shop) => readonly string[]>>> = {
  bit: ({ bits }) => bits.map(({ text }) => text),
  wood: ({ woods }) => woods,
  seal: ({ seals }) => seals.map(({ seal }) => seal),
  resin: ({ resins }) => resins.map(({ resin }) => resin),
  weigh: ({ scales }) => scales,
};

/** Values that a range may come to (our choice). */
const MAX_STEPS = 200;

/**
 * The values that a flag is compared over, each as a job gives it; one value where nothing is compared.
 *
 * A flag that `vet` takes once may be repeated, and values are parted by `or`; `shop` stands for a list of the shop, `2mm to 4mm by 0.5mm`
 * for a range. A flag that `vet` takes several times keeps its meaning: every one of them is a step of its own, and each may have an `or`.
 * For bits `then` puts several in one value, in the order of use.
 *
 * @throws {UsageError} where a value cannot be read, or the shop has no such list
 */
export function comparedValues(flag: Flag, flags: ParsedFlags, shop: Shop | null): readonly unknown[] {
  const typed = flags.values.get(flag.name) ?? [];
  const of = (text: string): readonly string[] =>
    flag.key !== undefined && WORDED.has(flag.key) ? [text] : alternatives(flag, text, shop);
  if (flag.many !== true) {
    return unique(typed.flatMap(of).map((text) => jobValueOf(flag, [text])));
  }
  const choices = typed
    .map((text) => of(text).map((each) => (flag.key === 'bit' ? bitsOf(each) : [each])))
    .reduce<readonly (readonly string[])[]>(
      (lists, slot) => lists.flatMap((list) => slot.map((more) => [...list, ...more])),
      [[]],
    );
  return unique(choices.map((texts) => (texts.length === 0 ? undefined : jobValueOf(flag, texts))));
}

function alternatives(flag: Flag, text: string, shop: Shop | null): readonly string[] {
  return text
    .split(/\s+or\s+/u)
    .map((each) => each.trim())
    .flatMap((each) =>
      each.toLowerCase() === 'shop' ? shopList(flag, shop) : (rangeOf(flag, each) ?? [each]),
    );
}

function shopList(flag: Flag, shop: Shop | null): readonly string[] {
  const list = flag.key === undefined ? undefined : SHOP_LISTS[flag.key];
  if (list === undefined) {
    throw new UsageError(`--${flag.name} has no list in a shop file.`, `Type its values, parted by "or".`);
  }
  const values = shop === null ? [] : list(shop);
  if (values.length === 0) {
    throw new UsageError(
      `--${flag.name} shop stands for what your shop file lists, but ${shop === null ? 'no shop file is given' : `${shop.name} lists none`}.`,
      shop === null ? 'Add --shop shop.json with yours.' : 'Write them into it, or type them here.',
    );
  }
  return values;
}

/** The values of a range such as `2mm to 4mm by 0.5mm`; `null` where it is none. */
function rangeOf(flag: Flag, text: string): readonly string[] | null {
  const [, from, to, by] = /^(.+?)\s+to\s+(.+?)\s+by\s+(.+)$/u.exec(text) ?? [];
  if (from === undefined || to === undefined || by === undefined) {
    return null;
  }
  const parts = [from, to, by].map((part) => /^([+-]?[\d.]+)\s*(.*)$/u.exec(part.trim()));
  const units = new Set(parts.map((part) => part?.[2]));
  const [start = Number.NaN, end = Number.NaN, step = Number.NaN] = parts.map((part) => Number(part?.[1]));
  const count = Math.floor((end - start) / step + 1e-9) + 1;
  if (units.size !== 1 || !(count >= 1 && count <= MAX_STEPS)) {
    throw new UsageError(
      `--${flag.name} "${text}" is no range of 1 to ${MAX_STEPS} values.`,
      'Write it like "2mm to 4mm by 0.5mm", all in one unit.',
    );
  }
  const [unit = ''] = units;
  return Array.from({ length: count }, (_, k) => `${Number((start + k * step).toPrecision(12))}${unit}`);
}

/** Bits in the order of use; `none` is none. */
function bitsOf(text: string): readonly string[] {
  return text
    .split(/\s+then\s+/u)
    .map((each) => each.trim())
    .filter((each) => each.toLowerCase() !== 'none');
}

function jobValueOf(flag: Flag, texts: readonly string[]): unknown {
  const job: JobInput = jobFlags({ files: [], values: new Map([[flag.name, texts]]) });
  return flag.key === undefined ? undefined : job[flag.key];
}

function unique(values: readonly unknown[]): readonly unknown[] {
  const seen = new Set<string>();
  return values.filter((value) => {
    const key = JSON.stringify(value) ?? '';
    return !seen.has(key) && seen.add(key) !== undefined;
  });
}

/** Flags of settings that were typed, in the order in which they were. */
export function typedSettings(flags: ParsedFlags): readonly Flag[] {
  return [...flags.values.keys()].flatMap((name) => {
    const flag = FLAGS.find((each) => each.name === name);
    return flag?.key === undefined ? [] : [flag];
  });
}
