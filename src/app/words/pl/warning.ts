import type { words as english } from '../en/warning.ts';
import { byNumber, formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  soon: (span, clock) => `kończy się za ${span}, około ${clock}. Przynieś następną rolkę.`,
  due: (span, clock) => `można już łączyć; kończy się za ${span}, około ${clock}.`,
  late: (_span, clock) => `jest po oknie łączenia; taśma kończy się około ${clock}.`,
  over: (clock, span) => `powinna była się skończyć o ${clock}, ${span} temu. Idź i zobacz.`,
  ifPace: 'Nie policzono paneli: jeśli utrzymała tempo.',
  ifStarts: 'Jeśli ruszy teraz.',
  backup: (slot) => `Potem podaje ${slot}, więc linia jeszcze nie stanie.`,
  short: {
    soon: (span) => `za ${span}`,
    due: () => 'łącz teraz',
    late: () => 'za późno na łączenie',
    over: () => 'powinno być puste',
    blocked: () => 'zablokowana rolka',
  },
  shortPace: 'nie policzono paneli',
  shortStarts: 'linia stoi',
  shortMore: (count) => `+${count}`,
  more: (count) =>
    byNumber(count, {
      one: `Czeka jeszcze ${count}.`,
      few: `Czekają jeszcze ${count}.`,
      other: `Czeka jeszcze ${count}.`,
    }),
  show: 'Pokaż',
  nobody: (line) => `${line}: nikt nie odpowiedział`,
  unanswered: {
    due: (line, span) => `na ${line} czeka na łączenie. Od ${span} nikt nie odpowiedział.`,
    late: (line, span) => `na ${line} zaraz się skończy. Od ${span} nikt nie odpowiedział.`,
  },
  showLine: (line) => `Pokaż ${line}`,
  noSound: 'Jeszcze bez dźwięku: dotknij, aby usłyszeć ton próbny',
  acknowledge: 'Idę',
  blocked: (what, reason) => `pracuje na zablokowanych komponentach: ${what} (${reason}).`,
  blockedAct: 'Zatrzymaj linię i zdejmij tę rolkę.',
  blockedPanels: (since, sinceBlock) =>
    `${byNumber(since, { one: `${formatCount(since)} panel zbudowany`, few: `${formatCount(since)} panele zbudowane`, other: `${formatCount(since)} paneli zbudowanych` })} z nią w tej serii, od blokady: ${formatCount(sinceBlock)}.`,
  blockedBefore: 'Była tam też we wcześniejszej serii.',
  blockedNone: 'Nie ma tam otwartej serii.',
  blockedMore: (slots) => `Także zablokowane: ${slots}.`,
  blockedTrace: 'Pokaż panele',
  blockedOff: 'Zdejmij ją',
  letRun: 'Pozwól pracować',
  letRunTitle: (slot) => `Zablokowana rolka na ${slot}: pozwolić jej pracować?`,
  letRunHelp:
    'Tylko ta rolka, tylko na tym slocie. Sama blokada zostaje, a twoje nazwisko i powód są w dzienniku.',
  letRunWhy: 'Dlaczego może pracować?',
  letRunDone: (slot) => `${slot}: lider pozwolił pracować. Sama blokada zostaje.`,
  blockedTape: (reason) => `Zablokowane: ${reason}`,
};
