// Runs a command in this process with its own input and output, as tests of the command line need it.

import { runReelward } from '../../src/cli/reelward.ts';

/** What one call of the command line printed and returned. */
export interface CallResult {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs `reelward ...args` with `input` on standard input. */
export async function call(args: readonly string[], input: string | Uint8Array = ''): Promise<CallResult> {
  let out = '';
  let err = '';
  const code = await runReelward(args, {
    stdin: async () => (typeof input === 'string' ? new TextEncoder().encode(input) : input),
    stdout: (text) => {
      out += text;
    },
    stderr: (text) => {
      err += text;
    },
  });
  return { code, out, err };
}
