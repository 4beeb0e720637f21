// Ten thousand shifts of which every placement is known, against what the trace says of them (tests/truth). Shifts as an argument:
// TRUTH_SHIFTS=500. Prints what was sure, what was wrong, how many true ones were held for possible, and how large the held sets are
// beside the smallest that anybody could hold.

import { checkShift, emptyScore } from '../truth/check.ts';
import { playShift } from '../truth/play.ts';

const shifts = Number(process.env['TRUTH_SHIFTS'] ?? 10_000);
const score = emptyScore();
for (let seed = 1; seed <= shifts; seed++) checkShift(score, `shift ${seed}`, playShift(seed));
const share = (of: number, all: number) => `${((100 * of) / all).toFixed(4)} %`;
console.log(`${score.shifts} shifts, ${score.panels} panels, ${score.carried} times a reel on a panel`);
console.log(`sure: ${score.sure} claims, ${score.wrongSure} wrong`);
console.log(`possible holds the truth: ${share(score.carried - score.missed, score.carried)}`);
console.log(`wrong reels: ${score.wrongs}, on ${score.suspects} panels, ${score.escaped} of them not held`);
console.log(`held without: ${score.wrongHeld} of those held surely`);
console.log(
  `held ${score.held} panels, ${(score.held / score.best).toFixed(3)} times the smallest set possible`,
);
if (score.misnumbered > 0) console.log(`${score.misnumbered} panels numbered otherwise than counted`);
for (const fault of score.faults) console.log(fault);
