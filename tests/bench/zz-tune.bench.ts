// temporary
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { prepareZXingModule } from 'zxing-wasm/reader';
import { EMPTY_GATHER, gatherFrame, sureCodes } from '../../src/app/scan/gather.ts';
import { createFramePasses } from '../../src/worker/decode-passes.ts';
import { DEFAULT_FORMATS } from '../../src/worker/decode-protocol.ts';
import { createCodeReader, type ReaderModule } from '../../src/worker/decode-reader.ts';
import { makeCase, type Half } from './frames-set.ts';

const FROM = Number(process.env['FROM'] ?? 5001);
const CASES = Number(process.env['CASES'] ?? 60);
const HALF = (process.env['HALF'] ?? 'hard') as Half;
const wasmBinary = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'));
const module = await prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasmBinary).buffer }, fireImmediately: true });
const reader = createCodeReader(module as unknown as ReaderModule);
const nowMs = () => { const { user, system } = process.cpuUsage(); return (user + system) / 1000; };
let labels = 0, full = 0, wrong = 0;
const ms: number[] = [];
const lost: Record<string, [number, number]> = {};
const bump = (k: string, isLost: boolean) => { const e = (lost[k] ??= [0, 0]); e[1]++; if (isLost) e[0]++; };
const via: Record<string, number> = {};
for (let seed = FROM; seed < FROM + CASES; seed++) {
  const made = makeCase(HALF, seed);
  const passes = createFramePasses(reader, { nowMs });
  let g = EMPTY_GATHER;
  const seen = new Set<string>();
  const once: Record<string, number> = {};
  for (const f of made.frames) {
    const s = nowMs();
    const codes = passes.read(f, DEFAULT_FORMATS, true);
    ms.push(nowMs() - s);
    for (const c of codes) { once[c.format + ' ' + c.text] = (once[c.format + ' ' + c.text] ?? 0) + 1; via[c.pass] = (via[c.pass] ?? 0) + 1; }
    g = gatherFrame(g, codes);
    for (const c of sureCodes(g)) seen.add(c.format + ' ' + c.text);
  }
  const truth = new Set(made.labels.flatMap((l) => l.codes.map((c) => c.format + ' ' + c.text)));
  for (const k of seen) if (!truth.has(k)) { wrong++; console.log('WRONG', JSON.stringify(k)); }
  for (const l of made.labels) {
    labels++;
    const ok = l.codes.every((c) => seen.has(c.format + ' ' + c.text));
    if (ok) full++;
    const L = made.look;
    bump('module ' + Math.floor(L.modulePx * 5) / 5, !ok); bump('tilt ' + Math.floor(L.tiltDeg / 10) * 10, !ok);
    bump('bent ' + L.isBent, !ok); bump('glare ' + L.isGlaring, !ok); bump('blur ' + Math.floor(L.blurPx * 5) / 5, !ok); bump('noise ' + Math.floor(L.noise / 2) * 2, !ok);
    bump('blur/module ' + Math.floor(L.blurPx / L.modulePx * 10) / 10, !ok); bump('labels ' + made.labels.length, !ok);
    bump('codes ' + l.codes.map((c) => c.format).join('+'), !ok);
    for (const c of l.codes) { const k = c.format + ' ' + c.text; bump('code ' + c.format, !seen.has(k)); if (!seen.has(k)) bump('lostcode-seenonce ' + c.format, !once[k]); }
    if (!ok && process.env['SHOW']) console.log(seed, JSON.stringify(L, (_, v) => typeof v === 'number' ? Math.round(v * 100) / 100 : v), l.codes.map((c) => c.format + (seen.has(c.format + ' ' + c.text) ? '+' : '-' + (once[c.format + ' ' + c.text] ?? 0))).join(' '));
  }
}
const q = (p: number) => [...ms].sort((a, b) => a - b)[Math.floor(p * ms.length)]?.toFixed(0);
console.log(`${HALF} ${FROM}+${CASES}: full ${full}/${labels} ${(100 * full / labels).toFixed(1)} wrong ${wrong} ms med ${q(.5)} p95 ${q(.95)} max ${q(.999)}`);
if (process.env['LOST']) { for (const k of Object.keys(lost).sort()) console.log(k.padEnd(50), lost[k]!.join('/')); console.log(via); }
