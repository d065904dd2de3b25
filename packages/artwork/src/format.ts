// what `@pourproof/artwork/format` offers: what every reader needs, and no reader
export { ArtworkError, type ErrorPlace } from './artwork-error.ts';
export { artworkFormat } from './artwork-format.ts';
export { refuseEmpty } from './refuse-empty.ts';
export { refuseSize, type SizeGuard, sizeGuard } from './refuse-size.ts';
