export { type Bit, bitName, bitSize, bitText, type VeeBit, widestMm } from './bits/bit.ts';
export { BIT_FORMS } from './bits/bit-forms.ts';
export type { BitInput } from './bits/bit-input.ts';
export { flatBitsBelow } from './bits/common-bits.ts';
export { parseBit } from './bits/parse-bit.ts';
export type { Block, Board } from './board/board.ts';
export type { HeightReading } from './board/height-reading.ts';
export { type HeldDown, type Hollow, isHollow, isThrough, type Obstacle } from './board/obstacle.ts';
export type { CouponRow } from './coupons/coupon-row.ts';
export { couponsFileSchema, readCouponsFile } from './coupons/coupons-file.ts';
export { idleFont, idleSeenTo, idleSettings } from './idle-settings.ts';
export type { Job, JobRows, SourceKind } from './job.ts';
export { type JobFile, jobFileSchema, readJobFile } from './job-file.ts';
export {
  type MaterialsFile,
  materialsFileSchema,
  readMaterialsFile,
} from './materials-file/materials-file.ts';
export { mergeJobs } from './merge-jobs.ts';
export { JobError } from './refusals/job-error.ts';
export type { JobErrorCode, JobFaults } from './refusals/job-faults.ts';
export { type SettingName, spokenPlace } from './refusals/setting-name.ts';
export { refuseReading } from './refuse-for-source.ts';
export type { ArtworkSize } from './settings/artwork.ts';
export { flagName, flagOf } from './settings/flag-of.ts';
export { type GroupId, SETTING_GROUPS, type SettingGroup } from './settings/groups.ts';
export type { LetteringSetting } from './settings/lettering.ts';
export type { OutlineChange } from './settings/outlines.ts';
export type { FileReading } from './settings/reading.ts';
export type { AppliesTo, Setting } from './settings/setting.ts';
export { type JobInput, SETTING_KEYS, SETTINGS, type SettingKey } from './settings/table.ts';
export { usualInput } from './settings/usual-input.ts';
export { type SettleOptions, settleJob } from './settle-job.ts';
export { type Filled, filledByShop } from './shop-file/filled-by-shop.ts';
export { readShopFile } from './shop-file/read-shop-file.ts';
export { type Shop, type ShopBit, type ShopResin, type ShopSeal, shopBit } from './shop-file/shop.ts';
export { shopFileSchema } from './shop-file/shop-schema.ts';
export { type TypedJob, typedJob } from './typed-job.ts';
export { typedUnit } from './typed-unit.ts';
export { knownWord } from './values/known-row.ts';
export { nearestWord } from './values/nearest-word.ts';
export { parseShopTime, shopTimeText } from './values/shop-time.ts';
