// what `@pourproof/artwork/dxf` offers: DXF alone
export { ArtworkError, type ErrorPlace } from './artwork-error.ts';
export type { DxfUnit } from './dxf/dxf-unit.ts';
export { type ReadDxfOptions, readDxf } from './dxf/read-dxf.ts';
