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

/** The library that reads style sheets brings one that writes source maps, which nothing here asks for. */
const noSourceMaps: Plugin = {
  name: 'no-source-maps',
  enforce: 'pre',
  load: {
    filter: { id: /[\\/]css-tree[\\/]lib[\\/]generator[\\/]sourceMap\.js$/u },
    handler: () => 'export const generateSourceMap = (handlers) => handlers;',
  },
};

export default defineConfig({
  // relative addresses, so that the built folder works wherever it is put
  base: './',
  plugins: [pagePolicy],
  resolve: { conditions: ['@pourproof/source', 'module', 'browser', 'development|production'] },
  worker: { format: 'es', plugins: () => [noSourceMaps] },
  build: { target: 'es2022', assetsInlineLimit: 0, chunkSizeWarningLimit: 1500 },
  server: { fs: { allow: [fileURLToPath(new URL('../../', import.meta.url))] } },
  preview: { host: '127.0.0.1', port: 4173, headers: { 'Content-Security-Policy': HEADER_POLICY } },
});
