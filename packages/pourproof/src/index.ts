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
  readShopFile,
  type Shop,
  settleJob,
} from '@pourproof/job';
export { defaultMaterials, type MaterialsBook, MaterialsError } from '@pourproof/materials';
export { type Drawing, InternalError } from '@pourproof/plane';
export {
  type Finding,
  type Fix,
  type Miss,
  type OutlinedPart,
  type Picture,
  ProofStopped,
  type ProofWatch,
  type Report,
  SelfCheckError,
  type StageName,
  vetDrawing,
} from '@pourproof/proof';
export { type FindingEntry, findingEntries, type Vetted } from '@pourproof/wording';
export {
  type ArtworkFile,
  type ArtworkFileFormat,
  type ArtworkFileOptions,
  artworkFile,
} from './artwork-file.ts';
export { type FaultBundle, type PackedSource, ProofFault } from './fault.ts';
export { jobOfWrittenArtwork } from './job-of-written-artwork.ts';
export { readDrawing } from './read-drawing.ts';
export { type Refusal, refusalOf, refusalText } from './refusal.ts';
export {
  type LookChange,
  REMEDY_PARTS,
  type Remedies,
  type Remedy,
  type RemedyChange,
  type RemedyCosts,
  type RemedyPart,
} from './remedy/remedies.ts';
export { type RemedyOptions, type RemedyWatch, remedy } from './remedy/remedy.ts';
export { type Source, sourceName } from './source.ts';
export { VERSION } from './version.ts';
export { replay, type VetOptions, type Vetter, type VetWatch, vet, vetter } from './vet.ts';
