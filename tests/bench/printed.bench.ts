// Are the plant's labels read by a decoder that has nothing to do with the one that draws them? 1,000 labels at 203 and at 300 dots per inch, each dot 30 % larger than it
// should be and 5 % of them missing, read by `dmtxread` of Debian's dmtx-utils (libdmtx) and compared character by character with what was printed; LABELS=N prints fewer.
// Run: npm run labels:check   (installs dmtx-utils by apt where that may be done)

import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { parseLabel } from '../../shared/labels/label.ts';
import { type Gray, prepareWriter, somePrint } from '../src/app/print/printed.ts';

const wanted = Number(process.env['LABELS'] ?? 1000);
const damage = { gain: 0.3, missing: 0.05 };

/** Installs the decoder where it is missing; ends where that may not be done. */
function installDecoder(): void {
  const isHere = () => spawnSync('dmtxread', ['--version']).error === undefined;
  if (isHere()) return;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    const quiet = { stdio: 'inherit', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } } as const;
    execFileSync('apt-get', ['update', '-qq'], quiet);
    execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'dmtx-utils'], quiet);
  }
  if (isHere()) return;
  console.error('labels:check needs dmtxread (Debian: apt-get install dmtx-utils)');
  process.exit(2);
}

installDecoder();
prepareWriter();
const folder = mkdtempSync(path.join(tmpdir(), 'reelward-labels-'));

/**
 * What the decoder from outside reads of a picture, character by character; null where it reads nothing. It looks at half the size first, as lost dots cost it
 * much time at the full size, and then at all for ten seconds.
 */
function readByDmtx({ data, width, height }: Gray): string | null {
  const file = path.join(folder, 'label.pgm');
  writeFileSync(file, Buffer.concat([Buffer.from(`P5\n${width} ${height}\n255\n`), data]));
  for (const size of ['-S2', '-S1']) {
    const { stdout } = spawnSync('dmtxread', ['-N1', '-m10000', size, file]);
    if (stdout.length > 0) return stdout.toString('latin1');
  }
  return null;
}

try {
  for (const dpi of [203, 300]) {
    let read = 0;
    let wrong = 0;
    const unread: number[] = [];
    for (let seed = 1; seed <= wanted; seed += 1) {
      const { image, message, facts } = await somePrint(seed, dpi, damage);
      const text = readByDmtx(image);
      if (text === null) unread.push(seed);
      else if (text !== message || parseLabel([text]).reel !== facts.reel) wrong += 1;
      else read += 1;
    }
    const rest = unread.length === 0 ? '' : `; not read: ${unread.slice(0, 20).join(' ')}`;
    console.log(`${dpi} dpi: ${read} of ${wanted} read as printed, ${wrong} read as something else${rest}`);
    if (read < wanted) process.exitCode = 1;
  }
} finally {
  rmSync(folder, { recursive: true });
}
