// A program in a network of its own that can be cut off without a word, as by a switch that fails: nothing is refused and nothing closed, packets just do not come. By Linux's
// network namespaces, as root; cut by a wrong hardware address on both sides.

import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** The network between this computer and whoever is inside. */
export interface CutOff {
  /** Addresses of this computer and of whoever is inside. */
  readonly outside: string;
  readonly inside: string;
  /** What a program is started by to be inside. */
  readonly enter: readonly string[];
  readonly cut: () => void;
  readonly join: () => void;
  readonly remove: () => void;
}

const NOBODY = '02:00:00:00:00:99';
const ip = (text: string) => execFileSync('ip', text.split(' '), { stdio: ['ignore', 'ignore', 'inherit'] });

/** What a run of before left behind would have the same addresses. */
function removeLeft(): void {
  const { stdout } = spawnSync('ip', ['netns', 'list'], { encoding: 'utf8' });
  for (const [left, pid] of (stdout ?? '').matchAll(/^rw(\d+)/gm))
    if (!existsSync(`/proc/${pid}`)) spawnSync('ip', ['netns', 'delete', left]);
}

/** Makes it; null where that may not be done. */
export function newCutOff(): CutOff | null {
  const name = `rw${process.pid}`;
  removeLeft();
  const [outside, inside] = ['10.213.0.1', '10.213.0.2'];
  if (process.getuid?.() !== 0 || spawnSync('ip', ['netns', 'add', name]).status !== 0) return null;
  ip(`link add ${name}o type veth peer name ${name}i netns ${name}`);
  ip(`address add ${outside}/24 dev ${name}o`);
  ip(`-netns ${name} address add ${inside}/24 dev ${name}i`);
  ip(`link set ${name}o up`);
  ip(`-netns ${name} link set ${name}i up`);
  ip(`-netns ${name} link set lo up`);
  const sides = [`neigh %s ${inside} dev ${name}o`, `-netns ${name} neigh %s ${outside} dev ${name}i`];
  return {
    outside,
    inside,
    enter: ['ip', 'netns', 'exec', name],
    cut: () => {
      for (const side of sides) ip(`${side.replace('%s', 'replace')} lladdr ${NOBODY} nud permanent`);
    },
    join: () => {
      for (const side of sides) ip(side.replace('%s', 'delete'));
    },
    remove: () => void spawnSync('ip', ['netns', 'delete', name]),
  };
}
