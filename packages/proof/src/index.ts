export type { Advice, Check } from './checks/check.ts';
export { checks } from './checks/checks.ts';
export { FINDING_CODES, type FindingCode } from './codes.ts';
export { BIT_FORMS, type Bit, bitSize, bitText, parseBit } from './job/bit.ts';
export { type Job, type JobRows, settleJob, settleJobWith } from './job/job.ts';
export { JobError } from './job/job-error.ts';
export { type JobFile, jobFileSchema, readJobFile } from './job/job-file.ts';
export { type JudgementSourceId, judgementSources } from './judgement-sources.ts';
export {
  type MaterialsFile,
  materialsFileSchema,
  readMaterialsFile,
} from './materials-file/materials-file.ts';
export { adviceFor, type Picture, type Proof, prove } from './proof.ts';
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
export { STEP_WORDS, stepTitle } from './schedule/step-words.ts';
export { sealWords } from './seal-words.ts';
export { sourceText } from './source-text.ts';
