// Who may import whom, with a sentence of reason each. What is not listed is forbidden.

/** What one folder may import. */
export interface Arrow {
  readonly room: string;
  readonly may: readonly string[];
  readonly why: string;
}

const core = [
  'shared/kit',
  'shared/labels',
  'shared/log',
  'shared/floor',
  'shared/sheet',
  'shared/verdict',
  'shared/forecast',
  'shared/changeover',
  'shared/order',
  'shared/assign',
  'shared/checklist',
  'shared/moisture',
  'shared/trace',
  'shared/wire',
  'shared/outlook',
  'shared/desk',
];

/** Every folder; the longest that fits a file counts. `!` in front forbids. */
export const arrows: readonly Arrow[] = [
  { room: 'shared/kit', may: [], why: 'The ground: it stands on nothing.' },
  { room: 'shared/labels', may: ['shared/kit'], why: 'A label knows no setup.' },
  {
    room: 'shared/log',
    may: ['shared/kit'],
    why: 'The log knows no word of the floor, so the server can keep it.',
  },
  {
    room: 'shared/wire',
    may: ['shared/kit', 'shared/log'],
    why: 'It carries envelopes and treats payloads as opaque, so that new rules need no new server.',
  },
  {
    room: 'shared/order',
    may: ['shared/kit'],
    why: 'The search for an order knows sets and counts, no word of the floor.',
  },
  {
    room: 'shared/floor',
    may: ['shared/kit', 'shared/labels', 'shared/log'],
    why: 'The state of a line is a fold of entries over what labels said.',
  },
  {
    room: 'shared/sheet',
    may: ['shared/kit', 'shared/labels', 'shared/floor'],
    why: 'A sheet becomes a setup; it asks nothing of what happens on the floor.',
  },
  {
    room: 'shared/verdict',
    may: ['shared/kit', 'shared/labels', 'shared/log', 'shared/floor'],
    why: 'A verdict compares a label with a setup; of the log it uses the order of texts only.',
  },
  {
    room: 'shared/forecast',
    may: ['shared/kit', 'shared/floor'],
    why: 'It asks how long material lasts and knows none of the other questions.',
  },
  {
    room: 'shared/changeover',
    may: ['shared/kit', 'shared/floor', 'shared/order'],
    why: 'It asks what differs between setups; the order of its moves comes from the search.',
  },
  {
    room: 'shared/assign',
    may: ['shared/kit', 'shared/floor'],
    why: 'It seeks places for feeders; of the floor it asks how a slot is written.',
  },
  {
    room: 'shared/checklist',
    may: ['shared/kit', 'shared/floor'],
    why: 'It asks which steps are done and knows none of the other questions.',
  },
  {
    room: 'shared/moisture',
    may: ['shared/kit', 'shared/floor'],
    why: 'It asks how much floor life is left and knows none of the other questions.',
  },
  {
    room: 'shared/trace',
    may: ['shared/kit', 'shared/log', 'shared/floor'],
    why: 'It reads panels and lots out of entries and knows none of the other questions.',
  },
  {
    room: 'shared/outlook',
    may: ['shared/kit', 'shared/log', 'shared/floor', 'shared/forecast'],
    why: 'It asks the forecast about a whole line; of the log it uses the order of texts only.',
  },
  {
    room: 'shared/desk',
    may: [
      'shared/kit',
      'shared/labels',
      'shared/floor',
      'shared/verdict',
      'shared/forecast',
      'shared/moisture',
    ],
    why: 'The task in hand joins scans, floor, floor life and verdict; it draws nothing and keeps nothing.',
  },
  { room: 'src/app/device', may: ['shared/kit'], why: 'Clock, ids and PINs of the tablet know no floor.' },
  {
    room: 'src/app/words',
    may: [...core, 'src/app/scan'],
    why: 'Sentences say what the core and the camera found; they fetch nothing.',
  },
  {
    room: 'src/app/ui',
    may: ['shared/kit', 'shared/floor', 'src/app/words'],
    why: 'Widgets draw what they are given; of the floor they know its closed lists of words.',
  },
  {
    room: 'src/app/store',
    may: [
      'shared/kit',
      'shared/log',
      'shared/floor',
      'shared/wire',
      'src/app/device',
      'src/app/scan/wedge.ts',
      'src/app/sync/ports.ts',
    ],
    why: 'The one wall to the browser database keeps and folds the log, and offers it to sync through sync’s own port.',
  },
  {
    room: 'src/app/demo',
    may: ['shared/log', 'src/app/app.ts', 'src/app/device', 'src/app/store', 'src/app/words'],
    why: 'The demo is a plant like any other: it is taken in, followed and never leaked into the rest.',
  },
  {
    room: 'src/app/sync',
    may: ['shared/kit', 'shared/log', 'shared/wire', 'src/app/store', 'src/app/device'],
    why: 'Sync moves entries between store and server and never knows a screen.',
  },
  {
    room: 'src/app/scan',
    may: ['shared/kit', 'shared/labels', 'src/app/device', 'src/worker'],
    why: 'Pixels and keys in, codes out; of the worker it knows the messages.',
  },
  {
    room: 'src/app/desk',
    may: ['shared', 'src/app/app.ts', 'src/app/device', 'src/app/scan', 'src/app/store', 'src/app/words'],
    why: 'It holds the task in hand as signals and writes its entries; it draws nothing.',
  },
  {
    room: 'src/app/frame',
    may: ['shared', 'src/app', 'src/worker'],
    why: 'The shell stands around the screens and loads each by its name.',
  },
  {
    room: 'src/app/screens',
    may: ['shared', 'src/app', '!src/app/screens', 'src/worker'],
    why: 'A screen can be taken out by deleting its folder: no other screen knows it.',
  },
  {
    room: 'src/app',
    may: ['shared', 'src/app', 'src/worker', 'demo'],
    why: 'The composition root builds everything and hands it down.',
  },
  {
    room: 'src/worker',
    may: ['shared'],
    why: 'The worker computes and decodes; it stores nothing and draws nothing.',
  },
  { room: 'src/sw', may: ['shared/kit'], why: 'The service worker caches files, never data.' },
  {
    room: 'src/server/stores',
    may: ['shared/kit', 'shared/log', 'shared/wire', 'src/server/stores', 'src/server/codes.ts'],
    why: 'A store keeps entries and answers in the codes of the wire; it knows neither routes nor the floor.',
  },
  {
    room: 'src/server/trace',
    may: [
      'shared/kit',
      'shared/log',
      'shared/floor',
      'shared/trace',
      'src/server/stores',
      'src/server/paced.ts',
    ],
    why: 'The trace of a year is folded once and kept in the store, at its own pace: the one place of the server that knows the floor.',
  },
  {
    room: 'src/server/people',
    may: [
      'shared/kit',
      'shared/log',
      'shared/floor',
      'shared/wire',
      'src/server/stores',
      'src/server/keys.ts',
      'src/server/settings.ts',
      'src/server/http/refuse.ts',
    ],
    why: 'The server reads who belongs to the plant and what proves it out of the log, and nothing else of the floor.',
  },
  {
    room: 'src/server',
    may: [
      'shared/kit',
      'shared/log',
      'shared/wire',
      'shared/floor/people.ts',
      'shared/floor/secrets.ts',
      'shared/floor/state.ts',
      'src/server',
    ],
    why: 'The server keeps entries and their order; of the floor it knows people, and what leaves no plant; its rules are not its business.',
  },
  {
    room: 'src/link',
    may: [
      'shared/kit',
      'shared/log',
      'shared/wire',
      'shared/floor',
      'src/app/sync',
      'src/server/stores/sqlite/lock.ts',
    ],
    why: 'A station link is a tablet without a screen: it writes entries and brings them to the server by the tablet’s own sync.',
  },
  {
    room: 'src/cli',
    may: ['shared', 'src/server', 'src/link', 'demo'],
    why: 'The command line puts the core and the server behind commands.',
  },
  {
    room: 'demo',
    may: ['shared', 'src/server', 'src/cli'],
    why: 'The invented plant plays through the real core.',
  },
  {
    room: 'tests',
    may: [
      'shared',
      'src',
      'demo',
      'tests',
      'vite.config.ts',
      'vite.node.config.ts',
      'vitest.config.ts',
      'package.json',
    ],
    why: 'Tests may look at anything; nothing looks at tests.',
  },
];

/** A folder that is one file's own: everybody else asks that file. */
export interface Door {
  readonly folder: string;
  readonly door: string;
  readonly why: string;
}

/** Questions that are answered in one place. Tests may look behind a door. */
export const doors: readonly Door[] = [
  {
    folder: 'shared/floor/remaining',
    door: 'shared/floor/remaining.ts',
    why: 'What is left on a slot has one answer: whoever asks a part of it would make another.',
  },
];

/** Where some packages may be imported. */
export interface Wall {
  /** Package name; `*` at the end stands for any ending. */
  readonly packages: readonly string[];
  readonly rooms: readonly string[];
  readonly why: string;
}

/** Where packages may be imported; `tests` may import any of them, development packages are named where they are used. */
export const walls: readonly Wall[] = [
  { packages: ['dexie'], rooms: ['src/app/store'], why: 'One wall to the browser database.' },
  {
    packages: ['zxing-wasm', '@zxing/*'],
    rooms: ['src/worker', 'src/app/scan'],
    why: 'One wall to the decoder.',
  },
  { packages: ['better-sqlite3'], rooms: ['src/server/stores/sqlite'], why: 'A driver only in its store.' },
  { packages: ['pg'], rooms: ['src/server/stores/postgres'], why: 'A driver only in its store.' },
  { packages: ['kysely'], rooms: ['src/server/stores'], why: 'Queries are the stores’ business.' },
  { packages: ['bwip-js'], rooms: ['demo'], why: 'It draws labels for practice and is far too big to ship.' },
  { packages: ['zod'], rooms: ['shared', 'src', 'demo'], why: 'Checking input is everybody’s business.' },
  {
    packages: ['@noble/hashes', 'canonicalize'],
    rooms: ['shared/log', 'shared/wire'],
    why: 'The seal of an entry.',
  },
  {
    packages: ['fflate'],
    rooms: ['shared/log', 'shared/sheet'],
    why: 'A workbook is a zip, here and at the server.',
  },
  {
    packages: ['saxen'],
    rooms: ['shared/sheet', 'src/link/hermes'],
    why: 'Board data and what machines tell come as XML.',
  },
  { packages: ['papaparse'], rooms: ['shared/sheet', 'shared/log'], why: 'Sheets and exports are CSV.' },
  {
    packages: ['read-excel-file'],
    rooms: ['src/app', 'src/worker', 'src/cli'],
    why: 'Workbooks are bytes: the core sees rows.',
  },
  { packages: ['preact', '@preact/signals'], rooms: ['src/app'], why: 'Only the page draws.' },
  {
    packages: ['workbox-window', 'virtual:pwa-register'],
    rooms: ['src/app'],
    why: 'Registers the service worker.',
  },
  { packages: ['workbox-precaching', 'workbox-routing'], rooms: ['src/sw'], why: 'Caches files.' },
  {
    packages: ['lean-qr'],
    rooms: ['src/app', 'src/server', 'src/cli', 'demo'],
    why: 'Enrolment by a code on a screen.',
  },
  {
    packages: ['fastify', '@fastify/*', '@peculiar/x509', 'reflect-metadata', 'prom-client'],
    rooms: ['src/server'],
    why: 'Only the server serves.',
  },
  {
    packages: ['rhea'],
    rooms: ['src/link/ipc2591'],
    why: 'AMQP 1.0 is the transport of one kind of station alone.',
  },
  {
    packages: ['jose'],
    rooms: ['src/server/people'],
    why: 'Tickets are signed tokens; the page checks them without.',
  },
  {
    packages: ['node:*'],
    rooms: ['src/server', 'src/link', 'src/cli', 'demo'],
    why: 'Only these run in Node.',
  },
];

/** What shared/ may not name: the compiler does not refuse these, or refuses them only by the absence of types. */
export const bannedInCore: readonly { readonly name: string; readonly why: string }[] = [
  ...['Date.now', 'new Date()', 'performance'].map((name) => ({
    name,
    why: 'The clock comes in as an argument.',
  })),
  { name: 'Math.random', why: 'Chance comes in as an argument.' },
  { name: 'crypto', why: 'Ids and keys come in as arguments.' },
  ...['console', 'process', 'globalThis'].map((name) => ({ name, why: 'The core talks to nobody.' })),
  ...['fetch', 'setTimeout', 'setInterval', 'queueMicrotask'].map((name) => ({
    name,
    why: 'The core waits for nobody.',
  })),
  // `window` and `document` stay free: a splice has a window, and the compiler refuses the page's own.
  ...['localStorage', 'sessionStorage', 'indexedDB', 'navigator'].map((name) => ({
    name,
    why: 'The core runs without a page.',
  })),
];
