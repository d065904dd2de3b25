import {
  type AppliesTo,
  filledByShop,
  type GroupId,
  type JobInput,
  SETTING_GROUPS,
  SETTING_KEYS,
  SETTINGS,
  type Setting,
  type SettingKey,
  type TypedJob,
  typedJob,
  usualInput,
} from '@pourproof/job';
import type { MaterialsBook } from '@pourproof/materials';
import type { Tables } from './shelf.ts';

/** Names of a list, by id. */
export type Options = readonly (readonly [id: string, name: string])[];

/** A field of the job ticket: what it sets, how it is asked for, and when it means something. */
export interface JobField {
  readonly key: SettingKey;
  readonly label: string;
  /**
   * How it is typed: a text with its unit, a number, a line for each of several, one of a list, a tick, a day
   * and time.
   */
  readonly form: Setting['holds']['control'];
  /** How it is written, below the field. */
  readonly hint?: string;
}

/** What is on the sheet. */
export type SourceKind = 'file' | 'lettering' | null;

/** Fields that are shown together under a title. */
export interface JobGroup {
  readonly id: GroupId;
  readonly title: string;
  readonly fields: readonly JobField[];
}

/**
 * Groups with the fields that the job ticket shows, those of one title together; other parts of the page ask
 * for the rest.
 */
export const JOB_GROUPS: readonly JobGroup[] = SETTING_GROUPS.filter(
  ({ title }, k) => SETTING_GROUPS.findIndex((group) => group.title === title) === k,
)
  .map(({ id, title }) => ({
    id,
    title,
    fields: SETTING_GROUPS.filter((group) => group.title === title).flatMap((group) => fieldsOf(group.id)),
  }))
  .filter(({ fields }) => fields.length > 0);

function fieldsOf(id: GroupId): readonly JobField[] {
  return SETTING_KEYS.flatMap((key) => {
    const { group, label, holds, hint } = SETTINGS[key];
    return group !== id || label === undefined
      ? []
      : [{ key, label, form: holds.control, ...(hint === undefined ? {} : { hint }) }];
  });
}

/**
 * Whether a field means something for a job and what is on the sheet; a value that it has is shown in any
 * case.
 */
export function isAsked({ key }: JobField, job: TypedJob, source: SourceKind, tables: Tables): boolean {
  const { only } = SETTINGS[key];
  return only === undefined || job[key] !== undefined || means(only, job, source, tables);
}

function means(only: AppliesTo, { board, seal }: TypedJob, source: SourceKind, tables: Tables): boolean {
  const isOfSource =
    only.formats?.some((format) => (format === 'lettering') === (source === 'lettering')) ?? true;
  const isOfBoard = only.board === undefined || (only.board === 'with') === (board !== undefined);
  const isOfPattern = only.pattern === undefined || (board ?? '').trim().startsWith(only.pattern);
  const isOfSeal = only.isSealed !== true || (seal ?? usualOf('seal', {}, tables)) !== 'none';
  return isOfSource && isOfBoard && isOfPattern && isOfSeal;
}

/** What may be chosen for a field; an empty id stands for what holds where nothing is chosen. */
export function optionsOf({ key }: JobField, materials: MaterialsBook): Options {
  const { holds, usual, otherwise = '' } = SETTINGS[key];
  if (holds.table !== undefined) {
    return Object.entries(materials[holds.table]).map(([id, { name }]) => [id, name]);
  }
  const named = (holds.choices ?? []).map((id) => [id, holds.names?.[id] ?? id] as const);
  return usual !== undefined ? named : [['', otherwise], ...named.filter(([, name]) => name !== otherwise)];
}

/** What a field stands for while it is empty, in the shop if there is one, as typed; `''` where nothing does. */
export function usualValue(key: SettingKey, job: TypedJob, tables: Tables): string {
  const usual = usualOf(key, job, tables);
  return usual === undefined || Array.isArray(usual) ? '' : String(SETTINGS[key].holds.typed(usual));
}

/** The bits of a job, as typed: its own, those of the shop, or the usual one. */
export function bitsOf(job: TypedJob, tables: Tables): readonly string[] {
  return typedJob({ bit: job.bit ?? usualOf('bit', job, tables) }).bit ?? [];
}

function usualOf<Key extends SettingKey>(
  key: Key,
  job: TypedJob,
  { shop, materials }: Tables,
): JobInput[Key] {
  const { [key]: _, ...others }: JobInput = job;
  const { filled } = filledByShop(others, shop, materials);
  return filled[key] ?? usualInput(key, job);
}
