// What the demo serves beside the app: the plant's log up to now, what happens from now on, labels to practise with, and the
// page with a mark that tells it where it is.

import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setImmediate as othersTurn } from 'node:timers/promises';
import type { Entry } from '../shared/log/entry.ts';
import type { ServerSettings } from '../src/server/settings.ts';
import { logText } from './log.ts';
import type { Playing } from './playing.ts';
import { practiceLabels } from './practice.ts';
import type { PracticeLabel } from './practice-label.ts';
import { lineId } from './setups.ts';
import { sheetPage, sheetStyle } from './sheet-page.ts';
import { loadSymbols, SymbolsMissing } from './symbols.ts';

/** The server's own kind of app. */
type App = Parameters<NonNullable<ServerSettings['addRoutes']>>[0];

/** What the routes need. */
export interface DemoRoutes {
  readonly playing: Playing;
  readonly appRoot: string;
  readonly nowMs: () => number;
  /** Told of entries as they become known, to keep them on the server too. */
  readonly onTold: (entries: readonly Entry[]) => Promise<void>;
  /** True where the shift goes on by itself. */
  readonly live: boolean;
}

/** Real ms between two looks at what has happened. */
const LOOK_MS = 250;
/** The shift is played on for so much of its own time, ms, before others are served: nobody may have asked for hours. */
const AT_ONCE_MS = 600_000;

/**
 * Adds the demo's routes. `/demo/state.json` says whether the shift goes on by itself (`live`), and which plant time it is:
 * `openedMs` + (real time - `openedMs`) × `speed`. They come before the app's own, so that the marked page wins over the plain
 * one. */
export function addDemoRoutes(app: App, demo: DemoRoutes): void {
  const tellMore = createTeller(demo, (error) =>
    app.log.error(error, 'the demo stops here: what happens next cannot be played or kept'),
  );
  app.addHook('onRequest', async (request, reply) => {
    if (/^\/demo\//.test(request.url)) reply.header('cache-control', 'no-store');
  });
  for (const path of ['/', '/index.html']) {
    app.get(path, async (_, reply) => {
      reply.header('cache-control', 'no-store').type('text/html; charset=utf-8');
      return markedPage(demo);
    });
  }
  app.get('/demo/state.json', async () => {
    const { speed, openedMs } = demo.playing;
    return { live: demo.live, speed, openedMs };
  });
  app.get('/demo/log.ndjson', async (_, reply) => {
    await tellMore();
    reply.type('application/x-ndjson; charset=utf-8');
    return logText(demo.playing.told);
  });
  app.get('/demo/labels.json', async () => {
    await tellMore();
    return labelsNow(demo);
  });
  app.get('/demo/labels', async (_, reply) => {
    await tellMore();
    try {
      const page = sheetPage(labelsNow(demo), await loadSymbols());
      reply.type('text/html; charset=utf-8');
      return page;
    } catch (error) {
      if (!(error instanceof SymbolsMissing)) throw error;
      reply.code(503).type('text/plain; charset=utf-8');
      return `${error.message}\n`;
    }
  });
  app.get('/demo/labels.css', async (_, reply) => {
    reply.type('text/css; charset=utf-8');
    return sheetStyle;
  });
  if (demo.live) addLive(app, demo, tellMore);
  // What the demo does not have is no page of the app either.
  app.get('/demo/*', async (_, reply) => {
    reply.code(404).type('text/plain; charset=utf-8');
    return 'nothing is here\n';
  });
}

function labelsNow({ playing, nowMs }: DemoRoutes): readonly PracticeLabel[] {
  const scene = { state: playing.state, line: lineId, nowMs: playing.plantMs(nowMs()) };
  return practiceLabels(scene).map((practice) => practice.label);
}

/** Tells more of the shift, one caller after the other, so that the server keeps entries in their order. Never rejects: what fails is told once, and the shift stands still from then on. */
function createTeller(
  { playing, nowMs, onTold }: DemoRoutes,
  failed: (error: unknown) => void,
): () => Promise<void> {
  let last = Promise.resolve();
  let isOver = false;
  let atMs = playing.openedMs;
  const tellTo = async (untilMs: number) => {
    do {
      atMs = Math.min(untilMs, atMs + AT_ONCE_MS / playing.speed);
      const fresh = playing.tell(atMs);
      if (fresh.length > 0) await onTold(fresh);
      if (atMs < untilMs) await othersTurn();
    } while (atMs < untilMs);
  };
  return () => {
    last = last.then(async () => {
      if (isOver) return;
      try {
        await tellTo(nowMs());
      } catch (error) {
        isOver = true;
        failed(error);
      }
    });
    return last;
  };
}

/** The app's page with a mark. The mark says no more than where it is: a page may come out of a cache, `/demo/state.json` does not. */
async function markedPage({ appRoot }: DemoRoutes): Promise<string> {
  const page = await readFile(join(appRoot, 'index.html'), 'utf8');
  if (!page.includes('</head>'))
    throw new TypeError('Cannot mark the page as it must have a head: current value has none');
  return page.replace('</head>', '  <meta name="reelward-demo" content="plant" />\n  </head>');
}

/** Server-sent events: each carries the entries that have happened since the one before, `?after=N` those after the first N. */
function addLive(app: App, demo: DemoRoutes, tellMore: () => Promise<void>): void {
  const open = new Set<() => void>();
  app.get<{ Querystring: { after?: string } }>('/demo/live', (request, reply) => {
    const resumed = Number(request.headers['last-event-id'] ?? request.query.after ?? 0);
    let sent = Number.isSafeInteger(resumed) && resumed >= 0 ? resumed : 0;
    reply.hijack();
    const stream = reply.raw;
    stream.writeHead(200, {
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
    });
    stream.write('retry: 1000\n\n');
    const look = setInterval(() => {
      void tellMore().then(() => {
        const { told } = demo.playing;
        if (told.length <= sent || stream.writableEnded) return;
        const fresh = told.slice(sent);
        sent = told.length;
        stream.write(`id: ${sent}\ndata: ${JSON.stringify(fresh)}\n\n`);
      });
    }, LOOK_MS);
    const end = () => {
      clearInterval(look);
      open.delete(end);
      stream.end();
    };
    open.add(end);
    stream.on('close', end);
  });
  app.addHook('preClose', async () => {
    for (const end of open) end();
  });
}
