export type { Advice, Check } from './checks/check.ts';
export { checks } from './checks/checks.ts';
export { FINDING_CODES, type FindingCode } from './codes.ts';
export { passWidthMm } from './cut/pass-width.ts';
export { refuseShortBit } from './cut/refuse-short-bit.ts';
export { stickStrokeMm } from './cut/stick-stroke.ts';
export { type JudgementSourceId, judgementSources } from './judgement-sources.ts';
export type { LevellingGrade, LevellingMap } from './levelling/levelling-map.ts';
export { jsonSchemas } from './report/json-schema.ts';
export {
  type Finding,
  type FindingPlace,
  type FixOption,
  type Report,
  reportSchema,
  type Severity,
} from './report/report.ts';
export { planSchedule, type StepId } from './schedule/plan-schedule.ts';
export { scheduleReport } from './schedule/schedule-report.ts';
export { sealWords } from './seal-words.ts';
export { adviceFor, type Picture, type PicturedBlock, type Proof, vetDrawing } from './vet-drawing.ts';
