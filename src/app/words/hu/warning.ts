import type { words as english } from '../en/warning.ts';
import { formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  soon: (span, clock) => `${span} múlva kifogy, kb. ${clock}. Hozza a következő tekercset.`,
  due: (span, clock) => `most toldható; ${span} múlva kifogy, kb. ${clock}.`,
  late: (_span, clock) => `túl van a toldási ablakán; a szalag vége kb. ${clock}.`,
  over: (clock, span) => `már ki kellett volna fogynia: ${clock}, ${span} ezelőtt. Nézze meg.`,
  ifPace: 'Nincs számolt panel: ha tartotta az ütemét.',
  ifStarts: 'Ha most újraindul.',
  backup: (slot) => `Utána ${slot} adagol, így a sor még nem áll le.`,
  short: {
    soon: (span) => `${span} múlva`,
    due: () => 'toldás most',
    late: () => 'toldani már késő',
    over: () => 'üresnek kellene lennie',
    blocked: () => 'zárolt tekercs',
  },
  shortPace: 'nincs számolt panel',
  shortStarts: 'a sor áll',
  shortMore: (count) => `+${count}`,
  more: (count) => `Még ${count} vár.`,
  show: 'Mutatás',
  nobody: (line) => `${line}: senki sem válaszolt`,
  unanswered: {
    due: (line, span) => `itt: ${line}, toldani kell. ${span} óta senki sem válaszolt.`,
    late: (line, span) => `itt: ${line}, mindjárt kifogy. ${span} óta senki sem válaszolt.`,
  },
  showLine: (line) => `${line} mutatása`,
  noSound: 'Még nincs hang: érintse meg a próbahanghoz',
  acknowledge: 'Megyek',
  blocked: (what, reason) => `zárolt alkatrésszel fut: ${what} (${reason}).`,
  blockedAct: 'Állítsa le a sort, és vegye le azt a tekercset.',
  blockedPanels: (since, sinceBlock) =>
    `${formatCount(since)} panel készült vele ebben a gyártásban, ebből ${formatCount(sinceBlock)} a zárolás óta.`,
  blockedBefore: 'Egy korábbi gyártásban is ott volt.',
  blockedNone: 'Ott nincs nyitott gyártás.',
  blockedMore: (slots) => `Ez is zárolt: ${slots}.`,
  blockedTrace: 'Panelek mutatása',
  blockedOff: 'Levétel',
  letRun: 'Fusson tovább',
  letRunTitle: (slot) => `Zárolt tekercs (${slot}): fusson tovább?`,
  letRunHelp:
    'Csak ez a tekercs, csak ezen a helyen. Maga a zárolás megmarad, az Ön neve és az ok a naplóba kerül.',
  letRunWhy: 'Miért futhat tovább?',
  letRunDone: (slot) => `${slot}: műszakvezető engedte tovább futni. Maga a zárolás megmarad.`,
  blockedTape: (reason) => `Zárolva: ${reason}`,
};
