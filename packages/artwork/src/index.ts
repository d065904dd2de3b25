export { ArtworkError, type ErrorPlace } from './artwork-error.ts';
