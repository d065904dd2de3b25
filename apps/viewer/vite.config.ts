import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';
import { HEADER_POLICY, PAGE_POLICY } from './content-policy.ts';

/** The policy goes into the built page; the server for developers puts styles and code of its own into the page. */
const pagePolicy: Plugin = {
  name: 'page-policy',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: PAGE_POLICY },
      injectTo: 'head-prepend',
    },
  ],
};

/** Parts of the libraries that read style sheets which nothing here asks for: source maps, and steps through documents of another library. */
const UNUSED = [
  [/[\\/]css-tree[\\/]lib[\\/]generator[\\/]sourceMap\.js$/u, 'export const generateSourceMap = undefined;'],
  [/[\\/]domutils[\\/].*[\\/]index\.js$/u, 'export {};'],
] as const;

const withoutUnused: Plugin = {
  name: 'without-unused',
  enforce: 'pre',
  load: (id) => UNUSED.find(([file]) => file.test(id))?.[1] ?? null,
};

export default defineConfig({
  // relative addresses, so that the built folder works wherever it is put
  base: './',
  plugins: [pagePolicy],
  resolve: { conditions: ['@pourproof/source', 'module', 'browser', 'development|production'] },
  worker: { format: 'es', plugins: () => [withoutUnused] },
  build: { target: 'es2022', assetsInlineLimit: 0, chunkSizeWarningLimit: 1500 },
  server: { fs: { allow: [fileURLToPath(new URL('../../', import.meta.url))] } },
  preview: { host: '127.0.0.1', port: 4173, headers: { 'Content-Security-Policy': HEADER_POLICY } },
});
