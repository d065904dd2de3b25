export { type ArtworkSize, artworkSize } from './artwork-size.ts';
export { type Bit, bitName, bitSize, bitText, type VeeBit, widestMm } from './bit.ts';
export type { Block, Board } from './board/board.ts';
export type { HeightReading } from './board/height-reading.ts';
export { type Obstacle, parseObstacle, parsePlace } from './board/parse-obstacle.ts';
export { flatBitsBelow } from './common-bits.ts';
export type { CouponRow } from './coupons/coupon-row.ts';
export { couponsFileSchema, readCouponsFile } from './coupons/coupons-file.ts';
export { CARVE_MODES, FILE_UNITS, type FileReading, fileReading } from './file-reading.ts';
export { idleFont, idleSettings } from './idle-settings.ts';
export { JOB_DEFAULTS, type Job, type JobRows, settleJob, settleJobWith } from './job.ts';
export { JobError } from './job-error.ts';
export { type JobFile, jobFileSchema, readJobFile } from './job-file.ts';
export { LETTERING_SIDES, type LetteringSetting, letteringSetting } from './lettering-setting.ts';
export {
  type MaterialsFile,
  materialsFileSchema,
  readMaterialsFile,
} from './materials-file/materials-file.ts';
export { BIT_FORMS, parseBit } from './parse-bit.ts';
export { parseShopTime, shopTimeText } from './shop-time.ts';
export { typedUnit } from './typed-unit.ts';
