import { ANSWER_SETTINGS } from './answer.ts';
import { SIZE_SETTINGS, SOURCE_SETTINGS } from './artwork.ts';
import { BOARD_SETTINGS } from './board.ts';
import { COLOUR_SETTINGS } from './colours.ts';
import { CUT_SETTINGS } from './cut.ts';
import type { Holds } from './holds.ts';
import { LETTERING_SETTINGS } from './lettering.ts';
import { LEVELLING_SETTINGS } from './levelling.ts';
import { MACHINE_SETTINGS, PASS_SETTINGS } from './machine.ts';
import { OUTLINE_SETTINGS } from './outlines.ts';
import { POUR_SETTINGS } from './pour.ts';
import { FLATTENING_SETTINGS, READING_SETTINGS } from './reading.ts';
import { RESIN_SETTINGS } from './resin.ts';
import { ROUND_SETTINGS } from './rounds.ts';
import { SEAL_SETTINGS } from './seal.ts';
import { SEEN_TO_SETTINGS } from './seen-to.ts';
import type { Setting } from './setting.ts';
import { SHOP_SETTINGS } from './shop.ts';
import { WOOD_SETTINGS } from './wood.ts';

/** Rows whose fields stand in a part of the job of their own; what is not given is absent there. */
export const SECTIONS = {
  size: SIZE_SETTINGS,
  outlines: OUTLINE_SETTINGS,
  lettering: LETTERING_SETTINGS,
  fileReading: READING_SETTINGS,
  machine: MACHINE_SETTINGS,
} as const;

/** Rows whose fields stand in the job itself; what is not given is `null` there. */
export const FLAT = {
  ...CUT_SETTINGS,
  ...WOOD_SETTINGS,
  ...SEAL_SETTINGS,
  ...RESIN_SETTINGS,
  ...COLOUR_SETTINGS,
  ...ROUND_SETTINGS,
  ...LEVELLING_SETTINGS,
  ...POUR_SETTINGS,
  ...BOARD_SETTINGS,
  ...SHOP_SETTINGS,
  ...PASS_SETTINGS,
  ...FLATTENING_SETTINGS,
  ...SEEN_TO_SETTINGS,
  ...ANSWER_SETTINGS,
} as const;

const ALL = {
  ...SOURCE_SETTINGS,
  ...READING_SETTINGS,
  ...LETTERING_SETTINGS,
  ...SIZE_SETTINGS,
  ...OUTLINE_SETTINGS,
  ...CUT_SETTINGS,
  ...WOOD_SETTINGS,
  ...SEAL_SETTINGS,
  ...RESIN_SETTINGS,
  ...COLOUR_SETTINGS,
  ...ROUND_SETTINGS,
  ...LEVELLING_SETTINGS,
  ...POUR_SETTINGS,
  ...BOARD_SETTINGS,
  ...SHOP_SETTINGS,
  ...MACHINE_SETTINGS,
  ...PASS_SETTINGS,
  ...FLATTENING_SETTINGS,
  ...SEEN_TO_SETTINGS,
  ...ANSWER_SETTINGS,
} as const;

type Table = typeof ALL;

/** Key of a setting, as it stands in a job file. */
export type SettingKey = keyof Table;

/** How each setting is given. */
type Given<Row> = Row extends { readonly holds: Holds<infer G, unknown> } ? G : never;

/**
 * A job as its maker gives it: any of the settings, each as typed text or as a structure. What is left out
 * has a usual value or is taken from elsewhere; see docs/settings.md.
 */
export type JobInput = { readonly [Key in SettingKey]?: Given<Table[Key]> | undefined } & {
  readonly schema?: 'pourproof/job@1' | undefined;
};

/** All settings of a job, by key, in the order in which answers name them. */
export const SETTINGS: Readonly<Record<SettingKey, Setting>> = ALL;

/** Keys of all settings, in the order of the table. */
export const SETTING_KEYS: readonly SettingKey[] = Object.keys(ALL) as readonly SettingKey[];
