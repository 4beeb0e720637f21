// A simulated tablet for the fleet bench: lean enough that three hundred of them fit in one process beside the server. Speaks
// the real wire: signed requests, sealed and signed entries, live events.

import { createHash } from 'node:crypto';
import { Agent, request } from 'node:http';
import { type Entry, firstPrev } from '../../shared/log/entry.ts';
import { sealEntry } from '../../shared/log/seal.ts';
import { entryText, formatProof, requestText } from '../../shared/wire/signing.ts';
import { bodyHeader } from '../../shared/wire/version.ts';
import { newNonce } from '../../src/app/sync/key.ts';
import { newKey, type TestKey } from '../contract/entries.ts';
import { verdictPayload } from './server-process.ts';

/** What the fleet counts. */
export interface FleetCounts {
  /** Time from sending a page to its acknowledgement, ms. */
  readonly appendMs: number[];
  /** Index: whole ms from sending an entry to its arrival at a listener. */
  readonly liveMs: Uint32Array;
  errors: number;
  /** Errors are expected while the server is down. */
  forgiving: boolean;
}

export function newCounts(): FleetCounts {
  return { appendMs: [], liveMs: new Uint32Array(60_000), errors: 0, forgiving: false };
}

/** When each entry was first sent, by hash; shared by the whole fleet. */
export type SentTimes = Map<string, number>;

export interface FleetTablet {
  readonly name: string;
  readonly key: TestKey;
  /** Hashes that the server acknowledged. */
  readonly acked: string[];
  readonly waiting: Entry[];
  readonly write: () => void;
  readonly listen: () => void;
  readonly stop: () => void;
}

export interface FleetTabletOptions {
  readonly name: string;
  readonly port: () => number;
  readonly counts: FleetCounts;
  readonly sent: SentTimes;
  /** The version of the wire that it speaks. */
  readonly wire?: number;
  /** Told of each push that was answered and not taken in: status and code. */
  readonly onRefused?: (status: number, code: string) => void;
  /** What came live, as text: for a tablet that reads and folds all of it itself. */
  readonly onLive?: (text: string) => void;
}

/** Frames are the same for all listeners: each is read once, by its first bytes. */
const frames = new Map<string, readonly string[]>();

export function newFleetTablet(options: FleetTabletOptions): FleetTablet {
  const { name, counts, sent, wire = 1 } = options;
  const key = newKey();
  const agent = new Agent({ keepAlive: true, maxSockets: 2 });
  const acked: string[] = [];
  const waiting: Entry[] = [];
  let seq = 0;
  let prev = firstPrev;
  let pushing = false;
  let stopped = false;

  const headers = (method: string, path: string, body: string) => {
    const bodyHash = createHash('sha256').update(body).digest('hex');
    const timeMs = Date.now();
    const nonce = newNonce();
    const sig = key.sign(requestText({ method, path, bodyHash, timeMs, nonce }));
    return {
      'reelward-wire': String(wire),
      // Told since version 3.
      ...(wire < 3 ? {} : { [bodyHeader]: bodyHash }),
      'content-type': 'application/json',
      authorization: formatProof({ tablet: name, timeMs, nonce, sig }),
    };
  };

  const push = () => {
    if (pushing || stopped || waiting.length === 0) return;
    pushing = true;
    const page = waiting.slice(0, 200);
    const body = JSON.stringify({ sentMs: Date.now(), entries: page });
    const startMs = performance.now();
    const again = (waitMs: number) => {
      pushing = false;
      setTimeout(push, waitMs);
    };
    const failed = () => {
      if (!counts.forgiving) counts.errors += 1;
      again(100 + Math.random() * 200);
    };
    const call = request(
      {
        port: options.port(),
        host: '127.0.0.1',
        path: '/api/push',
        method: 'POST',
        agent,
        timeout: 10_000,
        headers: headers('POST', '/api/push', body),
      },
      (response) => {
        let text = '';
        response.setEncoding('utf8');
        response.on('data', (chunk) => {
          text += chunk;
        });
        response.on('error', failed);
        response.on('end', () => {
          if (response.statusCode !== 200) {
            options.onRefused?.(response.statusCode ?? 0, /"code":"([\w-]+)"/.exec(text)?.[1] ?? '');
            return failed();
          }
          const { acks } = JSON.parse(text) as { acks: { seq: number }[] };
          if (!counts.forgiving) counts.appendMs.push(performance.now() - startMs);
          while ((waiting[0]?.seq ?? Number.POSITIVE_INFINITY) <= (acks[0]?.seq ?? 0))
            acked.push(waiting.shift()?.hash ?? '');
          again(0);
        });
      },
    );
    call.on('timeout', () => call.destroy());
    call.on('error', failed);
    call.end(body);
  };

  const takeFrame = (frame: string) => {
    if (counts.forgiving || !frame.startsWith('data: ')) return;
    options.onLive?.(frame.slice(6));
    const nowMs = performance.now();
    const id = frame.slice(0, 160);
    let hashes = frames.get(id);
    if (!hashes) {
      const live = JSON.parse(frame.slice(6)) as { entries: Entry[] | null };
      hashes = (live.entries ?? []).map((entry) => entry.hash);
      if (frames.size > 50) frames.clear();
      frames.set(id, hashes);
    }
    for (const hash of hashes) {
      const sentMs = sent.get(hash);
      if (sentMs === undefined) continue;
      const at = Math.min(counts.liveMs.length - 1, Math.round(nowMs - sentMs));
      counts.liveMs[at] = (counts.liveMs[at] ?? 0) + 1;
    }
  };

  const listen = () => {
    if (stopped) return;
    const again = () => void setTimeout(listen, 100 + Math.random() * 300);
    const call = request(
      {
        port: options.port(),
        host: '127.0.0.1',
        path: '/api/live',
        method: 'GET',
        agent,
        headers: headers('GET', '/api/live', ''),
      },
      (response) => {
        let parts: string[] = [];
        response.setEncoding('latin1');
        response.on('data', (chunk: string) => {
          parts.push(chunk);
          if (!chunk.endsWith('\n\n')) return;
          for (const frame of parts.join('').split('\n\n')) takeFrame(frame);
          parts = [];
        });
        response.on('error', () => undefined);
        response.on('close', again);
      },
    );
    call.on('error', again);
    call.end();
  };

  return {
    name,
    key,
    acked,
    waiting,
    listen,
    write: () => {
      seq += 1;
      const nowMs = Date.now();
      const sealed = sealEntry({
        v: 1,
        tablet: name,
        epoch: 'e1',
        seq,
        at: new Date(nowMs).toISOString(),
        hlc: { ms: nowMs, n: 0 },
        who: 'p1',
        kind: 'reel.verified',
        payload: verdictPayload(seq),
        prev,
      });
      prev = sealed.hash;
      waiting.push({ ...sealed, sig: key.sign(entryText(sealed.hash)) });
      sent.set(sealed.hash, performance.now());
      push();
    },
    stop: () => {
      stopped = true;
      agent.destroy();
    },
  };
}
