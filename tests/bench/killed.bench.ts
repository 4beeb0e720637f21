// What does a killed browser lose? Kills it at chance moments in the middle of loads and splices on a profile that stays, and
// counts verdicts that stood on the screen against the entries found afterwards. REELWARD_KILLS sets how often (50).

import { seededChance } from '../../shared/kit/chance.ts';
import { startDemo } from '../e2e/support/demo.ts';
import { killAgainAndAgain } from '../e2e/support/kills.ts';

const kills = Number(process.env['REELWARD_KILLS'] ?? 50);
const demo = await startDemo();
try {
  const report = await killAgainAndAgain(demo.url, { kills, mostActs: 24, chance: seededChance(7) });
  console.log(`kills ${report.kills}, SIGKILL to every process of the browser, profile kept`);
  console.log(`verdicts shown before a kill: ${report.acknowledged}`);
  console.log(`of them lost: ${report.lost} (target 0)`);
  console.log(`entries written but killed before they were shown: ${report.unshown}`);
  console.log(`entries in the log: ${report.entries}, chains ${report.whole ? 'whole' : 'BROKEN'}`);
} finally {
  await demo.stop();
}
