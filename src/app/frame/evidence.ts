// Pictures of labels as evidence, where the line's rules want it: what the camera read is held until a verdict is made on it, then kept,
// and the log is told its hash in an entry of its own. All of it after the verdict is durable and shown; what fails is told and no more.

import { effect } from '@preact/signals';
import type { App } from '../app.ts';
import type { DeskRun, ShownVerdict } from '../desk/desk.ts';
import { tabletPictures } from '../store/pictures.ts';
import { picturesWords } from '../words/pictures.ts';
import { say } from '../words/words.ts';

/** The picture of codes that were read together. */
interface Held {
  readonly texts: ReadonlySet<string>;
  readonly picture: Promise<Blob | null>;
}

/** Takes pictures of labels in. */
export interface Evidence {
  /** Whether the line in hand keeps pictures. */
  readonly isWanted: () => boolean;
  readonly take: (codes: readonly { readonly text: string }[], picture: Promise<Blob | null>) => void;
}

/** A reel may be read some labels before its verdict; what is older belongs to none. */
const MOST_HELD = 4;

const made = new WeakMap<DeskRun, Evidence>();

/** The evidence of a desk: it goes on after the camera is closed, since slot or feeder may be scanned then. */
export function evidenceOf(app: App, desk: DeskRun): Evidence {
  const known = made.get(desk);
  if (known) return known;
  const evidence = createEvidence(app, desk);
  made.set(desk, evidence);
  return evidence;
}

function createEvidence(app: App, desk: DeskRun): Evidence {
  const held: Held[] = [];
  let done = '';
  effect(() => {
    const shown = desk.shown.value;
    if (shown === null || shown.entry === '' || shown.entry === done) return;
    done = shown.entry;
    const of = heldFor(held, shown);
    if (of !== null)
      keep(app, shown, of).catch(() => {
        app.notice.value = { tone: 'care', text: say(picturesWords).failed };
      });
  });
  return {
    isWanted: () => app.practice === null && ruleOf(app)?.evidence === true,
    take: (codes, picture) => {
      picture.catch(() => undefined); // whoever waits for it hears of it
      held.push({ texts: new Set(codes.map(({ text }) => text)), picture });
      if (held.length > MOST_HELD) held.shift();
    },
  };
}

function ruleOf(app: App) {
  return app.store.floor().pictureRules.get(app.line.peek() ?? '') ?? null;
}

/** The picture on which a verdict was made: the newest that shows every code of its label; null for other verdicts. */
function heldFor(held: readonly Held[], { act, reel }: ShownVerdict): Promise<Blob | null> | null {
  if (act === 'sweep' || reel.via !== 'camera' || reel.codes.length === 0) return null;
  const newestFirst = [...held].reverse();
  return newestFirst.find(({ texts }) => reel.codes.every((code) => texts.has(code)))?.picture ?? null;
}

async function keep(app: App, shown: ShownVerdict, picture: Promise<Blob | null>): Promise<void> {
  const [rule, line] = [ruleOf(app), app.line.peek()];
  if (rule === null || line === null) return;
  const blob = await picture;
  if (blob === null) throw new RangeError('Cannot keep a picture as it must be small enough: it is not');
  const bytes = await blob.arrayBuffer();
  const at = { room: rule, nowMs: app.clock.nowMs() };
  const sha256 = await tabletPictures().keep({ of: shown.entry, bytes }, at);
  const { slot, reel } = shown;
  const facts = { of: shown.entry, line, slot, reel: reel.reel, sha256, bytes: bytes.byteLength };
  await app.write([{ kind: 'picture.kept', payload: facts }]);
}
