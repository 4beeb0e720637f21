import type { words as english } from '../en/open-work.ts';
import type { Said } from '../open-work.ts';
import { byNumber, type Sentences } from '../words.ts';

const saidPl: Said = {
  misfit: () => 'Setup nie pasuje do tej linii',
  move: (count) =>
    byNumber(count, {
      one: `${count} przestawienie podajnika do zrobienia`,
      few: `${count} przestawienia podajników do zrobienia`,
      other: `${count} przestawień podajników do zrobienia`,
    }),
  'slot-empty': (count) =>
    byNumber(count, {
      one: `${count} slot bez swojej rolki`,
      few: `${count} sloty bez swoich rolek`,
      other: `${count} slotów bez swoich rolek`,
    }),
  'slot-other': (count) =>
    byNumber(count, {
      one: `${count} slot ma inny komponent`,
      few: `${count} sloty mają inne komponenty`,
      other: `${count} slotów ma inne komponenty`,
    }),
  'slot-held': (count) =>
    byNumber(count, {
      one: `${count} rolka czeka na lidera`,
      few: `${count} rolki czekają na lidera`,
      other: `${count} rolek czeka na lidera`,
    }),
  'measured-wrong': (count) =>
    byNumber(count, {
      one: `${count} komponent ze złym pomiarem`,
      few: `${count} komponenty ze złym pomiarem`,
      other: `${count} komponentów ze złym pomiarem`,
    }),
  'looked-wrong': (count) =>
    byNumber(count, {
      one: `${count} komponent wygląda źle`,
      few: `${count} komponenty wyglądają źle`,
      other: `${count} komponentów wygląda źle`,
    }),
  'cannot-tell': (count) =>
    byNumber(count, {
      one: `${count} komponent zbyt blisko granicy dla miernika`,
      few: `${count} komponenty zbyt blisko granicy dla miernika`,
      other: `${count} komponentów zbyt blisko granicy dla miernika`,
    }),
  unchecked: (count) =>
    byNumber(count, {
      one: `${count} komponent jeszcze niesprawdzony`,
      few: `${count} komponenty jeszcze niesprawdzone`,
      other: `${count} komponentów jeszcze niesprawdzonych`,
    }),
  step: (count) =>
    byNumber(count, {
      one: `${count} krok checklisty`,
      few: `${count} kroki checklisty`,
      other: `${count} kroków checklisty`,
    }),
  'no-checklist': () => 'Checklisty nigdy nie otwarto',
};

export const words: Sentences<typeof english> = {
  said: saidPl,
  on: (part, slot) => `${part} na ${slot}`,
  reelOn: (reel, slot) => `rolka ${reel} na ${slot}`,
  reel: (reel) => `rolka ${reel}`,
  more: (count) => `i jeszcze ${count}`,
  isWrong: 'Źle',
  isOpen: 'Jeszcze otwarte',
  nothing: 'Nic nie jest otwarte.',
};
