import { formatCount, plural } from '../words.ts';

export const words = {
  soon: (span: string, clock: string) => `runs out in ${span}, about ${clock}. Bring the next reel.`,
  due: (span: string, clock: string) => `can be spliced now; runs out in ${span}, about ${clock}.`,
  late: (_span: string, clock: string) => `is past its splice window; the tape ends about ${clock}.`,
  over: (clock: string, span: string) => `should have run out at ${clock}, ${span} ago. Go and look.`,
  ifPace: 'No panels counted: if it kept its pace.',
  ifStarts: 'If it starts again now.',
  backup: (slot: string) => `Then ${slot} feeds, so the line does not stop yet.`,
  more: (count: number) => plural(count, '1 more waits.', `${count} more wait.`),
  show: 'Show',
  acknowledge: 'I’ll go',
  blocked: (what: string, reason: string) => `runs blocked parts: ${what} (${reason}).`,
  blockedAct: 'Stop the line and take that reel off.',
  blockedPanels: (since: number, sinceBlock: number) =>
    `${plural(since, '1 panel', `${formatCount(since)} panels`)} built with it in this run, ${formatCount(sinceBlock)} of them since the block.`,
  blockedBefore: 'It was there in an earlier run too.',
  blockedNone: 'No run is open there.',
  blockedMore: (slots: string) => `Blocked too: ${slots}.`,
  blockedTrace: 'Show the panels',
  blockedOff: 'Take it off',
  letRun: 'Let it run on',
  letRunTitle: (slot: string) => `Let the blocked reel on ${slot} run on?`,
  letRunHelp:
    'Only this reel, only on this slot. The block itself stays, and your name and reason are in the log.',
  letRunWhy: 'Why may it run on?',
  letRunDone: (slot: string) => `${slot}: a lead let it run on. The block itself stays.`,
  blockedTape: (reason: string) => `Blocked: ${reason}`,
} as const;
