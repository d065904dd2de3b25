import { dirname, resolve } from 'node:path';
import { flagName, type SettingName } from '@pourproof/job';
import {
  type CouponRow,
  type JobInput,
  readCouponsFile,
  readJobFile,
  readMaterialsFile,
  readShopFile,
  type Shop,
  type VetOptions,
} from 'pourproof';
import type { Io } from './io.ts';
import { type ParsedFlags, typedValue } from './parse-flags.ts';
import { inputName, STDIN } from './read-input.ts';
import { readJson } from './read-json.ts';
import { UsageError } from './usage-error.ts';

/** Where files are looked for. */
export interface Place {
  readonly io: Io;
  readonly jobPath: string | null;
}

/** Where a file lies, or that it is the standard input. */
export function placeOf(typed: string, io: Io): string {
  return typed === STDIN ? STDIN : resolve(io.cwd, typed);
}

/** The folder that the paths of a job file start from. */
export function folderOf(jobPath: string, io: Io): string {
  return jobPath === STDIN ? io.cwd : dirname(jobPath);
}

export function pathFlag(flags: ParsedFlags, name: string, io: Io): string | null {
  const value = typedValue(flags, name);
  return value === undefined ? null : placeOf(value, io);
}

export async function jobFileAt(path: string, io: Io): Promise<JobInput> {
  const example = 'fixtures/jobs/sign.json; the schema is in docs/schema/job@1.json';
  const data = await readJson(path, 'job file', example, io);
  const isNamed = typeof data === 'object' && data !== null && 'schema' in data;
  // what calls itself a job is refused in the words of the library, which knows of no file
  return readJobFile(data, isNamed ? null : inputName(path));
}

/** A file of the maker's own: the one named, else the one of its usual name beside the job file, if it exists. */
async function pathBeside(
  name: 'materials' | 'shop',
  flags: ParsedFlags,
  { io, jobPath }: Place,
): Promise<string | null> {
  const named = pathFlag(flags, name, io);
  if (named !== null || jobPath === null || jobPath === STDIN) {
    return named;
  }
  const beside = resolve(dirname(jobPath), `${name}.json`);
  return (await io.fileIdentity(beside)) === null ? null : beside;
}

/**
 * Reads a shop file.
 *
 * @throws {UsageError} when it cannot be read, {@link JobError} when it cannot be used
 */
export async function shopAt(path: string, io: Io): Promise<Shop> {
  const example = 'fixtures/shops/shop.json; the schema is in docs/schema/shop@1.json';
  return readShopFile(await readJson(path, 'shop file', example, io), inputName(path));
}

async function materialsAt(
  path: string,
  shop: Shop | null,
  io: Io,
): Promise<NonNullable<VetOptions['materials']>> {
  const example = 'docs/schema/materials@1.json says';
  return readMaterialsFile(
    await readJson(path, 'materials file', example, io),
    inputName(path),
    shop?.materials,
  );
}

async function couponsAt(path: string, io: Io): Promise<readonly CouponRow[]> {
  const example = 'docs/schema/coupons@1.json says';
  return readCouponsFile(await readJson(path, 'coupons file', example, io), inputName(path));
}

/** What a maker's own files hold for a vet, and where they lie. */
export interface OwnFiles {
  readonly shop: Shop | null;
  readonly options: Pick<VetOptions, 'shop' | 'materials'>;
  readonly coupons: Pick<JobInput, 'coupons'>;
  /** The files that are read; `null` for one that is not there. */
  readonly paths: readonly (string | null)[];
}

/** Reads shop, materials and coupons, each where it is named or lies beside the job file. */
export async function ownFiles(flags: ParsedFlags, place: Place): Promise<OwnFiles> {
  const { io } = place;
  const shopPath = await pathBeside('shop', flags, place);
  const shop = shopPath === null ? null : await shopAt(shopPath, io);
  const materialsPath = await pathBeside('materials', flags, place);
  const couponsPath = pathFlag(flags, 'coupons', io);
  return {
    shop,
    options: {
      ...(shop === null ? {} : { shop }),
      ...(materialsPath === null ? {} : { materials: await materialsAt(materialsPath, shop, io) }),
    },
    coupons: couponsPath === null ? {} : { coupons: await couponsAt(couponsPath, io) },
    paths: [shopPath, materialsPath, couponsPath],
  };
}

/** Standard input can be read once. */
export function refuseSeveralStdin({ files, values }: ParsedFlags): void {
  const flags = ['texts', 'job', 'shop', 'materials', 'coupons', 'font'].filter(
    (name) => values.get(name)?.[0] === STDIN,
  );
  const uses = [...files.filter((name) => name === STDIN), ...flags.map((name) => `--${name} ${STDIN}`)];
  if (uses.length > 1) {
    throw new UsageError(
      `${uses.join(' and ')} are all the standard input, which can be read once.`,
      'Give the others as files.',
    );
  }
}

/** Settings by their flags; those that were not typed by their keys in the job file that is read, or in the shop's. */
export function settingNames(
  flags: ParsedFlags,
  { job, isFile, shop }: { readonly job: JobInput; readonly isFile: boolean; readonly shop: Shop | null },
): SettingName {
  const usual: Readonly<Record<string, unknown>> = shop?.usual ?? {};
  const given: Readonly<Record<string, unknown>> = job;
  return (key) => {
    const name = flagName(key);
    if (flags.values.has(name.slice(2))) {
      return name;
    }
    if (given[key] === undefined && usual[key] !== undefined) {
      return `${key} of ${shop?.name}`;
    }
    return isFile ? key : name;
  };
}
