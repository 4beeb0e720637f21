// How many labels are fully read within five frames, how fast, and is anything ever read wrong?
// Baselines in the same run on the same frames: the plain call of the wasm reader (its defaults, plain text) and the
// script port. REELWARD_FRAME_CASES: cases a half, 1000 give 10,000 frames. REELWARD_FRAME_SCRIPT=0 leaves the port out,
// REELWARD_FRAME_ONLY=ours everything but ours, for the long run that looks for wrong reads.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { EMPTY_GATHER, gatherFrame, sureCodes } from '../../src/app/scan/gather.ts';
import { createFramePasses } from '../../src/worker/decode-passes.ts';
import { codeFormats, DEFAULT_FORMATS, type GrayImage } from '../../src/worker/decode-protocol.ts';
import { createCodeReader, type ReaderModule } from '../../src/worker/decode-reader.ts';
import { readWithScript } from '../src/worker/script-reader.ts';
import { FRAMES_PER_CASE, type FrameCase, HALVES, type Half, makeCase } from './frames-set.ts';

const CASES = Number(process.env['REELWARD_FRAME_CASES'] ?? 30);
const WITH_SCRIPT = process.env['REELWARD_FRAME_SCRIPT'] !== '0';

const wasmBinary = readFileSync(
  createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'),
);
const module = await prepareZXingModule({
  overrides: { wasmBinary: new Uint8Array(wasmBinary).buffer },
  fireImmediately: true,
});
const reader = createCodeReader(module as unknown as ReaderModule); // see src/worker/decode.ts

/** Processor time, so that other work on the machine neither slows a contender down nor eats its time budget. */
function nowMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

interface Read {
  readonly text: string;
  readonly format: string;
}

interface Contender {
  readonly name: string;
  /** A reader for the five frames of one case. */
  readonly start: () => (image: GrayImage) => Promise<readonly Read[]> | readonly Read[];
}

function toRgba(image: GrayImage): ImageData {
  const data = new Uint8ClampedArray(image.data.length * 4);
  for (let at = 0; at < data.length; at++) data[at] = at % 4 === 3 ? 255 : image.data[at >> 2]!; // a quarter as long
  return { data, width: image.width, height: image.height, colorSpace: 'srgb' } as ImageData; // Node has no such class
}

async function plainRead(image: GrayImage): Promise<readonly Read[]> {
  const results = await readBarcodes(toRgba(image), {
    formats: ['DataMatrix', 'QRCode', 'PDF417', 'Code128', 'Code39Std'],
    textMode: 'Plain',
  });
  return results.flatMap(({ text, symbology, isValid }) => {
    const format = codeFormats.find((each) => each === symbology);
    return isValid && format !== undefined ? [{ text, format }] : [];
  });
}

const ONLY = process.env['REELWARD_FRAME_ONLY'];
const all: readonly Contender[] = [
  {
    name: 'ours',
    // As the app does it: passes, then gathering, which believes some symbologies only when two frames agree.
    start: () => {
      const passes = createFramePasses(reader, { nowMs });
      let gathered = EMPTY_GATHER;
      return (image) => {
        gathered = gatherFrame(gathered, passes.read(image, DEFAULT_FORMATS, true));
        return sureCodes(gathered).map(({ text, format }) => ({ text, format: format ?? '' }));
      };
    },
  },
  {
    name: 'ours, quick pass only',
    start: () => {
      const passes = createFramePasses(reader, { nowMs });
      return (image) => passes.read(image, DEFAULT_FORMATS, false);
    },
  },
  { name: 'plain wasm call', start: () => plainRead },
  ...(WITH_SCRIPT
    ? [{ name: 'script port', start: () => (image: GrayImage) => readWithScript(image, DEFAULT_FORMATS) }]
    : []),
];

const contenders = all.filter(({ name }) => ONLY === undefined || name === ONLY);

interface Score {
  labels: number;
  frames: number;
  readonly wrong: string[];
  readonly ms: number[];
}

const keyOf = ({ text, format }: Read) => `${format} ${text}`;

async function runCase({ frames, labels }: FrameCase, contender: Contender, score: Score): Promise<void> {
  const truth = new Set(labels.flatMap(({ codes }) => codes.map(keyOf)));
  const read = contender.start();
  const seen = new Set<string>();
  for (const frame of frames) {
    const startMs = nowMs();
    const codes = await read(frame);
    score.ms.push(nowMs() - startMs);
    score.frames += 1;
    for (const key of codes.map(keyOf)) {
      if (truth.has(key)) seen.add(key);
      else if (!score.wrong.includes(key)) score.wrong.push(key);
    }
  }
  score.labels += labels.filter(({ codes }) => codes.every((code) => seen.has(keyOf(code)))).length;
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((left, right) => left - right);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

async function runHalf(half: Half): Promise<void> {
  const scores = contenders.map((): Score => ({ labels: 0, frames: 0, wrong: [], ms: [] }));
  let labels = 0;
  for (let seed = 1; seed <= CASES; seed++) {
    const made = makeCase(half, seed);
    labels += made.labels.length;
    for (const [at, contender] of contenders.entries()) await runCase(made, contender, scores[at]!); // same length
  }
  console.log(`\n${half} half: ${CASES} cases, ${labels} labels, ${CASES * FRAMES_PER_CASE} frames`);
  const plainLabels = scores[contenders.findIndex(({ name }) => name === 'plain wasm call')]?.labels ?? 0;
  contenders.forEach(({ name }, at) => {
    const score = scores[at]!; // same length
    const share = ((100 * score.labels) / labels).toFixed(1);
    const ratio = plainLabels === 0 ? '-' : (score.labels / plainLabels).toFixed(2);
    console.log(
      `${name.padEnd(22)} fully read ${share.padStart(5)} %  (${ratio} x plain)  median ${quantile(score.ms, 0.5).toFixed(1)} ms` +
        `  95 % ${quantile(score.ms, 0.95).toFixed(1)} ms  wrong reads ${score.wrong.length}`,
    );
    for (const wrong of score.wrong.slice(0, 5)) console.log(`    ${JSON.stringify(wrong)}`);
  });
}

for (const half of HALVES) await runHalf(half);
