// The station links that a server starts beside itself: processes of their own, so that a fault in one of them never touches the server.

import { type ChildProcess, spawn } from 'node:child_process';

/** A link that ended by itself is started again after so long, ms: longer each time, up to a minute. */
const FIRST_AGAIN_MS = 1_000;
const LONGEST_AGAIN_MS = 60_000;
/** One that ran so long has started well, ms. */
const RAN_WELL_MS = 60_000;

/** A link beside the server. */
export interface Linked {
  readonly stop: () => Promise<void>;
}

/** Starts `reelward link --config FILE` as a child and keeps it going; `say`: a line for people. */
export function startLinked(wish: {
  readonly program: string;
  readonly file: string;
  readonly say: (line: string) => void;
}): Linked {
  let child: ChildProcess | null = null;
  let stopping = false;
  let waitMs = FIRST_AGAIN_MS;
  let timer: NodeJS.Timeout | null = null;
  const start = () => {
    const startedMs = performance.now();
    const args = [wish.program, 'link', '--config', wish.file];
    const here = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe', 'ipc'] });
    child = here;
    const tell = (chunk: Buffer) => {
      for (const line of chunk.toString('utf8').split('\n')) if (line !== '') wish.say(line);
    };
    here.stdout?.on('data', tell);
    here.stderr?.on('data', tell);
    let isOver = false;
    const over = (why: string) => {
      if (isOver) return;
      isOver = true;
      child = null;
      if (stopping) return;
      if (performance.now() - startedMs > RAN_WELL_MS) waitMs = FIRST_AGAIN_MS;
      wish.say(`the link ended (${why}); it is started again in ${Math.round(waitMs / 1000)} s`);
      timer = setTimeout(start, waitMs);
      waitMs = Math.min(LONGEST_AGAIN_MS, 2 * waitMs);
    };
    here.on('error', (error) => over(error.message));
    here.on('exit', (code, signal) => over(signal ?? `exit ${code}`));
  };
  start();
  return {
    stop: async () => {
      stopping = true;
      if (timer) clearTimeout(timer);
      const last = child;
      if (!last || last.exitCode !== null) return;
      const ended = new Promise<void>((resolve) => last.once('exit', () => resolve()));
      last.kill('SIGTERM');
      await ended;
    },
  };
}
