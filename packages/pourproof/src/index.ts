export { ArtworkError } from '@pourproof/artwork/format';
export {
  type CouponRow,
  type Job,
  JobError,
  type JobFile,
  type JobInput,
  mergeJobs,
  readCouponsFile,
  readJobFile,
  readMaterialsFile,
  settleJob,
} from '@pourproof/job';
export { defaultMaterials, type MaterialsBook, MaterialsError } from '@pourproof/materials';
export { type Drawing, InternalError } from '@pourproof/plane';
export { type Finding, type Fix, type Picture, type Report, vetDrawing } from '@pourproof/proof';
export { type FindingEntry, findingEntries, type Vetted } from '@pourproof/wording';
export { readDrawing } from './read-drawing.ts';
export { type Refusal, refusalOf, refusalText } from './refusal.ts';
export { type Source, sourceName } from './source.ts';
export { type VetOptions, type Vetter, vet, vetter } from './vet.ts';
