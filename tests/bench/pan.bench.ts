// Of the labels that a hand passes a tablet over, how many are read within 2 s of entering the picture, and is one ever read wrong or
// twice? A dozen labels in view, 60 pictures, sway, tilt, motion and glare (`pan-set.ts`). A look takes as long as it takes: the next
// picture is the one that the lens has then. Wanted: 95 % and more, none wrong. Baseline in the same run on the same pictures: the
// gathering of one label, which asks as soon as there are several. REELWARD_PAN_CASES: passes, 6 where it is not set.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { prepareZXingModule } from 'zxing-wasm/reader';
import { emptyState } from '../../shared/floor/state.ts';
import { framesToWait } from '../../src/app/frame/camera-task.ts';
import { isAloneFor, panClaim } from '../../src/app/frame/find-model.ts';
import { EMPTY_GATHER, gatherAnswer, gatherFrame } from '../../src/app/scan/gather.ts';
import { EMPTY_PAN, panFrame, panSettings, SETTLE_LOOKS } from '../../src/app/scan/pan.ts';
import { createFramePasses } from '../../src/worker/decode-passes.ts';
import { DEFAULT_FORMATS } from '../../src/worker/decode-protocol.ts';
import { createCodeReader, type ReaderModule } from '../../src/worker/decode-reader.ts';
import { BEAT_MS, makePan, type PanCase } from './pan-set.ts';

const CASES = Number(process.env['REELWARD_PAN_CASES'] ?? 6);
const WITHIN_MS = 2000;

const wasmBinary = readFileSync(
  createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'),
);
const module = await prepareZXingModule({
  overrides: { wasmBinary: new Uint8Array(wasmBinary).buffer },
  fireImmediately: true,
});
const reader = createCodeReader(module as unknown as ReaderModule); // see src/worker/decode.ts

/** Processor time, so that other work on the machine does not count. */
function nowMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

const view = { floor: emptyState(), line: '' };
const settings = panSettings({
  claim: panClaim,
  isAlone: (code) => isAloneFor(code, view),
  settleFor: (codes) => framesToWait(codes, view, SETTLE_LOOKS),
});

interface Score {
  stayed: number;
  inTime: number;
  read: number;
  labels: number;
  wrong: number;
  twice: number;
  asked: number;
  readonly lookMs: number[];
  readonly stepMs: number[];
}

function run({ labels, frames, inView }: PanCase, score: Score): void {
  const passes = createFramePasses(reader, { nowMs });
  const readMs = new Map<number, number>();
  const counted = new Map<number, number>();
  let pan = EMPTY_PAN;
  let gathered = EMPTY_GATHER;
  let atMs = 0;
  for (let at = 0; at < frames.length; at = Math.ceil(atMs / BEAT_MS)) {
    const frame = frames[at]!; // inside by the loop
    const startMs = nowMs();
    const codes = passes
      .read(frame, DEFAULT_FORMATS, true)
      .map(({ text, format, quad }) => ({ text, format, symbologyId: null, quad }));
    const lookMs = nowMs() - startMs;
    const stepStart = nowMs();
    pan = panFrame(pan, codes, { settings, nowMs: atMs });
    score.stepMs.push(nowMs() - stepStart);
    score.lookMs.push(lookMs);
    gathered = gatherFrame(gathered, codes);
    if (gatherAnswer(gathered).kind === 'several') score.asked += 1;
    const doneMs = at * BEAT_MS + lookMs;
    for (const { codes: own } of pan.found.values()) {
      const of = labels.findIndex((label) =>
        own.every(({ text }) => label.codes.some((code) => code.text === text)),
      );
      if (of >= 0 && !readMs.has(of)) readMs.set(of, doneMs);
    }
    atMs = Math.max((at + 1) * BEAT_MS, doneMs);
  }
  for (const { codes: own } of pan.found.values()) {
    const of = labels.findIndex((label) =>
      own.every(({ text }) => label.codes.some((code) => code.text === text)),
    );
    if (of < 0) score.wrong += 1;
    else counted.set(of, (counted.get(of) ?? 0) + 1);
  }
  score.twice += [...counted.values()].filter((times) => times > 1).length;
  labels.forEach((_, of) => {
    const { from, to } = inView[of] ?? { from: -1, to: -1 };
    if (from < 0) return;
    score.labels += 1;
    const read = readMs.get(of);
    if (read !== undefined) score.read += 1;
    if ((to - from) * BEAT_MS < WITHIN_MS) return;
    score.stayed += 1;
    if (read !== undefined && read - from * BEAT_MS <= WITHIN_MS) score.inTime += 1;
  });
}

const quantile = (values: readonly number[], share: number) =>
  [...values].sort((a, b) => a - b)[Math.floor((values.length - 1) * share)] ?? Number.NaN;

const score: Score = {
  stayed: 0,
  inTime: 0,
  read: 0,
  labels: 0,
  wrong: 0,
  twice: 0,
  asked: 0,
  lookMs: [],
  stepMs: [],
};
for (let seed = 1; seed <= CASES; seed++) run(makePan(seed), score);
const percent = (part: number, of: number) => `${((100 * part) / of).toFixed(1)} %`;
console.log(`${CASES} passes, ${score.labels} labels, a dozen in view; wanted: 95 % within 2 s, 0 wrong`);
console.log(
  `  read within 2 s of entering   ${percent(score.inTime, score.stayed)} of ${score.stayed} that stayed so long`,
);
console.log(`  read before the pass ended    ${percent(score.read, score.labels)}`);
console.log(`  wrong ${score.wrong}, counted twice ${score.twice}`);
console.log(
  `  a look (worker)  median ${quantile(score.lookMs, 0.5).toFixed(0)} ms, 95 % ${quantile(score.lookMs, 0.95).toFixed(0)} ms of processor time`,
);
console.log(
  `  a step (page)    median ${quantile(score.stepMs, 0.5).toFixed(2)} ms, longest ${quantile(score.stepMs, 1).toFixed(2)} ms of processor time`,
);
console.log(
  `  baseline: one label gathered   asks which of several in ${percent(score.asked, score.lookMs.length)} of looks`,
);
