// How good are proposed places? A hundred small questions against the optimum of an integer program, and a hundred families of boards against
// two plain ways: each job's parts in order of their names, or of their use, from the first slot on. Of the first families also boards that are proposed one after
// the other, each beside those before it, as a plant takes them in. `--small=100`, `--families=100`, `--beside=20`.

import { performance } from 'node:perf_hooks';
import { type Assignment, assignSlots } from '../../shared/assign/assign.ts';
import type { AssignQuestion } from '../../shared/assign/problem.ts';
import { type PlacedPart, proposeSlots } from '../../shared/assign/propose.ts';
import { median } from '../../shared/kit/median.ts';
import { actOut, assignPlainly, boardFamily, smallCase } from '../shared/assign/cases.ts';
import { fewestByProgram } from '../shared/assign/model.ts';

const option = (name: string, usual = 100) =>
  Number(
    process.env[`BENCH_${name.toUpperCase()}`] ??
      process.argv.find((one) => one.startsWith(`--${name}=`))?.split('=')[1] ??
      usual,
  );
const total = (counts: readonly number[]) => counts.reduce((sum, count) => sum + count, 0);
const seconds: number[] = [];

let same = 0;
let asked = 0;
let worst = 0;
let proven = 0;
for (let seed = 1; asked < option('small'); seed++) {
  const question = smallCase(seed);
  const from = performance.now();
  const answer = assignSlots(question);
  const took = performance.now() - from;
  const fewest = await fewestByProgram(question);
  if (!answer.ok || fewest === null) {
    if (answer.ok !== (fewest !== null)) console.log(`small ${seed}: one of the two finds no assignment`);
    continue;
  }
  asked++;
  seconds.push(took / 1000);
  const changes = total(actOut(question, answer.value.jobs));
  if (changes === fewest) same++;
  if (answer.value.isProven) proven++;
  if (answer.value.isProven && changes !== fewest)
    console.log(`small ${seed}: proven ${changes}, the program says ${fewest}`);
  worst = Math.max(worst, changes - fewest);
}
console.log(`small: ${same} of ${asked} as the integer program, worst ${worst} more, ${proven} proven`);
console.log(
  `small: seconds median ${median(seconds)?.toFixed(3)}, most ${Math.max(...seconds, 0).toFixed(2)}`,
);

/** Boards proposed one after the other, each beside the setups of those before it. */
function besideEachOther(question: AssignQuestion): Assignment['jobs'] {
  const { loaded: standing, jobs } = question;
  const line = {
    machines: question.line.machines.map(({ machine, banks }) => ({
      machine,
      name: machine,
      banks: banks.map(({ bank, positions }) => ({ bank, name: bank, positions })),
    })),
  };
  const before: PlacedPart[] = [];
  return jobs.map(({ id, parts }) => {
    const found = proposeSlots({ line, parts, standing, elsewhere: before });
    const slots = found.flatMap(({ part, slot }) => (slot === null ? [] : [{ part, slot }]));
    for (const { part, slot } of slots)
      before.push({ part, slot, width: parts.find((each) => each.part === part)?.width ?? 1 });
    return { id, slots, changes: 0 };
  });
}

const besides: number[] = [];
const shares: { readonly names: number; readonly usage: number }[] = [];
const took: number[] = [];
let gap = 0;
for (let seed = 1; seed <= option('families'); seed++) {
  const question = boardFamily(seed);
  const from = performance.now();
  const answer = assignSlots(question);
  took.push((performance.now() - from) / 1000);
  if (!answer.ok) {
    console.log(`family ${seed}: no assignment`);
    continue;
  }
  const changes = total(actOut(question, answer.value.jobs));
  gap += (changes - answer.value.lowest) / Math.max(1, answer.value.lowest);
  const names = total(
    actOut(
      question,
      assignPlainly(question, (a, b) => (a.part < b.part ? -1 : 1)),
    ),
  );
  const usage = total(
    actOut(
      question,
      assignPlainly(question, (a, b) => b.perPanel - a.perPanel || (a.part < b.part ? -1 : 1)),
    ),
  );
  if (seed <= option('beside', 20))
    besides.push(total(actOut(question, besideEachOther(question))) / changes);
  shares.push({ names: changes / names, usage: changes / usage });
}
const percent = (value: number | null) => `${((value ?? 0) * 100).toFixed(1)} %`;
console.log(
  `families: ${shares.length}; changes against by names: median ${percent(median(shares.map((one) => one.names)))}, worst ${percent(Math.max(...shares.map((one) => one.names)))}`,
);
console.log(
  `families: changes against by usage: median ${percent(median(shares.map((one) => one.usage)))}, worst ${percent(Math.max(...shares.map((one) => one.usage)))}`,
);
console.log(
  `families: ${besides.length} proposed board after board: changes against the search over all: median ${percent(median(besides))}, worst ${percent(Math.max(...besides, 0))}`,
);
console.log(
  `families: above the bound on average ${percent(gap / Math.max(1, shares.length))}; seconds median ${median(took)?.toFixed(2)}, most ${Math.max(...took).toFixed(2)}`,
);
