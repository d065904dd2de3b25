import type { Coupon, MaterialsBook, Resin, Scale, Sealer, Wood } from '@pourproof/materials';
import type { AnswerSettings } from './settings/answer.ts';
import type { ArtworkSize } from './settings/artwork.ts';
import type { BoardSettings } from './settings/board.ts';
import type { ColourSettings } from './settings/colours.ts';
import type { CutSettings } from './settings/cut.ts';
import type { LetteringSetting } from './settings/lettering.ts';
import type { LevellingSettings } from './settings/levelling.ts';
import type { MachineSettings, PassSettings } from './settings/machine.ts';
import type { OutlineChange } from './settings/outlines.ts';
import type { PourSettings } from './settings/pour.ts';
import type { FileReading, FlatteningSettings } from './settings/reading.ts';
import type { ResinSettings } from './settings/resin.ts';
import type { RoundSettings } from './settings/rounds.ts';
import type { SealSettings } from './settings/seal.ts';
import type { SeenToSettings } from './settings/seen-to.ts';
import type { ShopSettings } from './settings/shop.ts';
import type { JobInput, SettingKey } from './settings/table.ts';
import type { WoodSettings } from './settings/wood.ts';
import type { Shop } from './shop-file/shop.ts';

/** What a job is about: a file, lettering in a font, or a drawing that has been read already. */
export type SourceKind = 'file' | 'lettering' | 'drawing';

/** The question that is vetted, every value settled. Lengths in mm, angles in degrees, times in hours. */
export interface Job
  extends CutSettings,
    WoodSettings,
    SealSettings,
    ResinSettings,
    ColourSettings,
    RoundSettings,
    LevellingSettings,
    PourSettings,
    BoardSettings,
    ShopSettings,
    PassSettings,
    FlatteningSettings,
    SeenToSettings,
    AnswerSettings {
  /** What was settled for; `null` where it is not known yet. */
  readonly source: SourceKind | null;
  readonly size: ArtworkSize;
  readonly outlines: OutlineChange;
  readonly lettering: LetteringSetting;
  readonly fileReading: FileReading;
  readonly machine: MachineSettings;
  /** Test slots that the maker has cut and read, of any board. */
  readonly coupons: readonly Coupon[];
  /** All materials that the job may name. */
  readonly materials: MaterialsBook;
  /** The rows of the materials that it does name. */
  readonly rows: JobRows;
  /** What it was settled from, with the coupons that stood beside it. */
  readonly input: JobInput;
  /** Settings that were given, in the order in which they were. */
  readonly given: readonly SettingKey[];
  /** The shop that it was settled with; `null` where there is none. */
  readonly shop: Shop | null;
  /** Settings that were not given and are those of the shop. */
  readonly fromShop: readonly SettingKey[];
  /** Settings that neither were given nor are the shop's, and have a usual value. */
  readonly defaults: readonly SettingKey[];
}

/** The materials of a job. */
export interface JobRows {
  readonly wood: Wood;
  readonly seal: Sealer;
  readonly resin: Resin;
  readonly scale: Scale;
}
