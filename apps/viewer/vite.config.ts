import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
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

/** All files of the page, so that it opens without a connection. A new version waits until the page says that nobody is at work. */
const offline = VitePWA({
  registerType: 'prompt',
  // the page registers it itself, under its policy
  injectRegister: null,
  manifest: {
    name: 'pourproof',
    short_name: 'pourproof',
    description:
      'Vets artwork that will be carved in wood and filled with coloured resin, before the first chip.',
    lang: 'en',
    display: 'standalone',
    start_url: './',
    scope: './',
    background_color: '#c9cec9',
    theme_color: '#c9cec9',
    icons: [
      { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
      { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
      { src: 'icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
    ],
  },
  workbox: {
    globPatterns: ['**/*.{html,js,css,svg,png,ttf,woff2,txt}'],
    maximumFileSizeToCacheInBytes: 4_000_000,
    cleanupOutdatedCaches: true,
    inlineWorkboxRuntime: true,
    sourcemap: false,
  },
});

export default defineConfig({
  // relative addresses, so that the built folder works wherever it is put
  base: './',
  plugins: [pagePolicy, offline],
  resolve: { conditions: ['@pourproof/source', 'module', 'browser', 'development|production'] },
  worker: { format: 'es', plugins: () => [withoutUnused] },
  build: { target: 'es2022', assetsInlineLimit: 0, chunkSizeWarningLimit: 1500 },
  server: { fs: { allow: [fileURLToPath(new URL('../../', import.meta.url))] } },
  preview: { host: '127.0.0.1', port: 4173, headers: { 'Content-Security-Policy': HEADER_POLICY } },
});
