export type { Advice, Check } from './checks/check.ts';
export { checks } from './checks/checks.ts';
export { FINDING_CODES, type FindingCode } from './codes.ts';
export type { CouponRow } from './coupons/coupon-row.ts';
export { readCouponsFile } from './coupons/coupons-file.ts';
export { passWidthMm } from './cut/pass-width.ts';
export { cutSentences } from './facts/cut-sentences.ts';
export type { Fact } from './facts/fact.ts';
export { jobFacts } from './facts/job-facts.ts';
export { measureFacts } from './facts/measure-facts.ts';
export { resinFacts } from './facts/resin-facts.ts';
export { VERDICT_WORDS } from './facts/verdict-words.ts';
export { workFacts } from './facts/work-facts.ts';
export { type ArtworkSize, artworkSize } from './job/artwork-size.ts';
export { type Bit, bitSize, bitText, widestMm } from './job/bit.ts';
export { CARVE_MODES, FILE_UNITS, type FileReading, fileReading } from './job/file-reading.ts';
export { idleFont, idleSettings } from './job/idle-settings.ts';
export { JOB_DEFAULTS, type Job, type JobRows, settleJob, settleJobWith } from './job/job.ts';
export { JobError } from './job/job-error.ts';
export { type JobFile, jobFileSchema, readJobFile } from './job/job-file.ts';
export { LETTERING_SIDES, type LetteringSetting, letteringSetting } from './job/lettering-setting.ts';
export { BIT_FORMS, parseBit } from './job/parse-bit.ts';
export { stickStrokeMm } from './job/stick-stroke.ts';
export { typedUnit } from './job/typed-unit.ts';
export { type JudgementSourceId, judgementSources } from './judgement-sources.ts';
export { GRADE_WORDS } from './levelling/grade-words.ts';
export type { LevellingGrade, LevellingMap } from './levelling/levelling-map.ts';
export {
  type MaterialsFile,
  materialsFileSchema,
  readMaterialsFile,
} from './materials-file/materials-file.ts';
export { adviceFor, type Picture, type PicturedBlock, type Proof, prove } from './proof.ts';
export {
  type FindingEntry,
  type FixEntry,
  findingEntries,
  type MarkedPlace,
} from './report/finding-entries.ts';
export { jsonSchemas } from './report/json-schema.ts';
export {
  type Finding,
  type FindingPlace,
  type FixOption,
  type Report,
  reportSchema,
  type Severity,
} from './report/report.ts';
export { calendarFile } from './schedule/calendar-file.ts';
export { sealWords } from './seal-words.ts';
export { sourceText } from './source-text.ts';
