export { FINDING_CODES, type FindingCode } from './codes.ts';
export {
  type ColourOutline,
  type ColourOutlines,
  colourOutlines,
  type OutlinedPart,
} from './colours/colour-outlines.ts';
export { passWidthMm } from './cut/pass-width.ts';
export { stickStrokeMm } from './cut/stick-stroke.ts';
export { applyFix, FIX_SETTINGS, type FixContext } from './fixes/apply-fix.ts';
export { reorderedRounds } from './fixes/changed-rounds.ts';
export { FIX_WORK, type FixWork } from './fixes/fix-work.ts';
export type { Redrawing, TrialJob } from './fixes/trials.ts';
export { type JudgementSourceId, judgementSources } from './judgement-sources.ts';
export type { PicturedGrade, PicturedGradeId, PicturedLevelling } from './levelling/pictured-levelling.ts';
export type { Picture, PicturedBlock, PicturedColour, PicturedObstacle } from './picture.ts';
export {
  type Amount,
  type Finding,
  type FindingPlace,
  PLACE_KINDS,
  type PlaceKind,
  type Severity,
} from './report/finding-schema.ts';
export type { Fix, FixStep } from './report/fix-schema.ts';
export { jsonSchemas } from './report/json-schema.ts';
export { type Report, reportSchema } from './report/report.ts';
export type { StepId } from './schedule/plan-schedule.ts';
export type { Balance, BalanceId, BalanceUnit, Miss } from './self-check/balance.ts';
export { SelfCheckError } from './self-check/self-check-error.ts';
export { ProofStopped, type ProofWatch, STAGE_NAMES, type StageName, Stages } from './stages/stages.ts';
export { findingsIn, judgeDrawing, type Proof, vetDrawing, vettingSteps } from './vet-drawing.ts';
