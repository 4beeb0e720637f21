import path from 'node:path';
import { preact } from '@preact/preset-vite';
import { defineConfig, type Plugin, type Rolldown } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

const version = process.env['REELWARD_VERSION'] ?? process.env['npm_package_version'] ?? '0.0.0';

/** Size of the page's letters where nobody asked for larger ones, px; theme.css sets the root to it by a share. */
const ROOT_PX = 17;

/**
 * Sheets give sizes of letters in px, as they are drawn; a person who set larger letters on their tablet gets larger ones, as
 * each is built as a share of the root's. Units written by hand were refused: 11/17 tells nobody what it looks like.
 */
const lettersFollowTheRoot: Plugin = {
  name: 'letters-follow-the-root',
  enforce: 'pre',
  transform(code, id) {
    if (!id.endsWith('.css') || id.includes('node_modules')) return null;
    return code
      .replace(/font-size:([^;}]*)/g, (_, value: string) => `font-size:${value.replace(px, share)}`)
      .replace(/(font:\s*)(\d+(?:\.\d+)?)px/g, (_, start: string, size: string) => start + share('', size));
  },
};
const px = /\b(\d+(?:\.\d+)?)px/g;
const share = (_: string, size: string) => `calc(${size}rem / ${ROOT_PX})`;

type CodeSplitting = Exclude<Rolldown.OutputOptions['codeSplitting'], boolean | undefined>;

/**
 * What every first visit asks for by itself comes in five files: the page and its database, what reads the log into the floor, the
 * first screen with what works behind it, and once that stands what judges a scan, and the dialogs and calls of a running line. A file for
 * every module that two parts share was refused: more than a hundred small ones pack worse and are asked for one by one, a third of what
 * a start costs. Every other part is fetched when it is used, or while nothing else is to be done.
 */
const groups: CodeSplitting['groups'] = [
  { name: 'start', tags: ['$initial'], priority: 2 },
  { name: (id, look) => (isPartOf(id, ['store/start-store.ts'], look) ? 'open-log' : null), priority: 1 },
  { name: (id, look) => (isPartOf(id, firstScreen, look) ? 'first-screen' : null) },
  { name: (id, look) => (isPartOf(id, verdicts, look) ? 'verdicts' : null) },
  { name: (id, look) => (isPartOf(id, soon, look) ? 'soon' : null) },
  // What languages share stays out of the first of them.
  { name: (id, look) => wordsFile(id, look), includeDependenciesRecursively: false },
];
const firstScreen = ['work.ts', 'screens/line/Line.tsx', 'frame/Dock.tsx', 'frame/SyncChip.tsx'];
const verdicts = ['warm-up.ts', 'frame/VerdictBand.tsx', 'frame/QuestionDialog.tsx'];
const soon = [
  'device/wake.ts',
  'frame/connect.ts',
  'frame/TypeDialog.tsx',
  'frame/PeopleDialogs.tsx',
  'frame/AwayDialog.tsx',
  'frame/LeadWanted.tsx',
  'frame/SoundChip.tsx',
  'frame/WarningChip.tsx',
  'frame/spoken-verdict.ts',
  'outlook/other-calls.ts',
  'outlook/unanswered-call.ts',
  'outlook/walks.ts',
  'screens/line/RunDialogs.tsx',
  'screens/line/CountPanels.tsx',
  'screens/line/SetRightDialog.tsx',
  'screens/line/ToldState.tsx',
  'screens/line/LifeEnds.tsx',
  'screens/line/Losses.tsx',
  'screens/line/StencilPaste.tsx',
];

/**
 * Every language is kept for work without a network, as the next who signs in may speak another: each in two files, what the first screen says
 * and the rest, but of English the rest comes by area, with the parts that say it. A file for every area was refused: five hundred to ask for.
 */
function wordsFile(id: string, look: Rolldown.ChunkingContext): string | null {
  const [, code] = inLanguage.exec(id) ?? [];
  if (code === undefined) return null;
  if (isSaidFirst(id, look)) return `words-${code}-first`;
  return code === 'en' ? null : `words-${code}`;
}
const inLanguage = /\/src\/app\/words\/([a-z]{2})\/([a-z-]+)\.ts$/;

/** True for a language's pack, for its areas that the first screen says, and for what these are made with. */
function isSaidFirst(id: string, look: Rolldown.ChunkingContext): boolean {
  const [, , area] = inLanguage.exec(id) ?? [];
  if (area === undefined) return false;
  if (area === 'pack') return true;
  const door = path.join(import.meta.dirname, `src/app/words/${area}.ts`);
  if (look.getModuleInfo(door) !== null) return isPartOf(door, firstScreen, look);
  return look.getModuleInfo(id)?.importers.some((each) => isSaidFirst(each, look)) === true;
}

/** True for a module that some of these files import, at once or by way of others. */
function isPartOf(id: string, files: readonly string[], look: Rolldown.ChunkingContext): boolean {
  const seen = new Set<string>();
  const waiting = files.map((file) => path.join(import.meta.dirname, 'src/app', file));
  const lost = waiting.find((file) => look.getModuleInfo(file) === null);
  if (lost !== undefined) throw new Error(`${lost} is no part of the page any more: vite.config.ts names it`);
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (next === id) return true;
    if (seen.has(next)) continue;
    seen.add(next);
    waiting.push(...(look.getModuleInfo(next)?.importedIds ?? []));
  }
  return false;
}

/** Builds the page, its workers and the service worker into dist/app. */
export default defineConfig({
  root: 'src/app',
  publicDir: '../../public',
  base: '/',
  define: { __APP_VERSION__: JSON.stringify(version) },
  // The library's own build for browsers of today; its default is for those of long ago.
  resolve: { alias: [{ find: /^dexie$/, replacement: 'dexie/dist/modern/dexie.mjs' }] },
  build: {
    outDir: process.env['REELWARD_APP_OUT'] ?? '../../dist/app',
    emptyOutDir: true,
    target: 'es2022',
    // Parts are few and large, and lie in the offline copy from the first visit on: a link in the page for each only makes starts longer.
    modulePreload: false,
    rolldownOptions: { output: { codeSplitting: { groups } } },
  },
  worker: { format: 'es' },
  plugins: [
    lettersFollowTheRoot,
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
