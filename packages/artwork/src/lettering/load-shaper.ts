import type * as HarfBuzz from 'harfbuzzjs';

/**
 * The shaping library, loaded on the first call. Bundlers for browsers take `dist/browser/load-shaper.js` in
 * place of this file (see `imports` in package.json): the same library without its branch for Node, which
 * they cannot resolve, and with its WebAssembly inside.
 */
export function loadShaper(): Promise<typeof HarfBuzz> {
  return import('harfbuzzjs');
}
