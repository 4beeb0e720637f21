import { preact } from '@preact/preset-vite';
import { defineConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

const version = process.env['REELWARD_VERSION'] ?? process.env['npm_package_version'] ?? '0.0.0';

/** Builds the page, its workers and the service worker into dist/app. */
export default defineConfig({
  root: 'src/app',
  publicDir: '../../public',
  base: '/',
  define: { __APP_VERSION__: JSON.stringify(version) },
  // The library's own build for browsers of today; its default is for those of long ago.
  resolve: { alias: [{ find: /^dexie$/, replacement: 'dexie/dist/modern/dexie.mjs' }] },
  build: { outDir: process.env['REELWARD_APP_OUT'] ?? '../../dist/app', emptyOutDir: true, target: 'es2022' },
  worker: { format: 'es' },
  plugins: [
    preact(),
    VitePWA({
      strategies: 'injectManifest',
      srcDir: '../sw',
      filename: 'sw.ts',
      registerType: 'prompt',
      injectRegister: false,
      manifest: {
        id: '/',
        name: 'Reelward',
        short_name: 'Reelward',
        description: 'Reels verified, run-outs foreseen, splices and changeovers guided',
        start_url: '/',
        display: 'standalone',
        orientation: 'any',
        background_color: '#f4f2ec',
        theme_color: '#1c2026',
        icons: [
          { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
          { src: 'icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
        ],
      },
      injectManifest: {
        globPatterns: ['**/*.{js,css,html,svg,png,wasm,webmanifest}'],
        maximumFileSizeToCacheInBytes: 4 * 1024 * 1024,
      },
    }),
  ],
});
