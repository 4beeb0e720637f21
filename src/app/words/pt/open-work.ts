import type { words as english } from '../en/open-work.ts';
import type { Said } from '../open-work.ts';
import { plural, type Sentences } from '../words.ts';

const saidPt: Said = {
  misfit: () => 'O setup não cabe nesta linha',
  move: (count) =>
    plural(count, `falta ${count} movimento de feeder`, `faltam ${count} movimentos de feeder`),
  'slot-empty': (count) => plural(count, `${count} slot sem seu rolo`, `${count} slots sem seus rolos`),
  'slot-other': (count) =>
    plural(count, `${count} slot tem outro componente`, `${count} slots têm outros componentes`),
  'slot-held': (count) => plural(count, `${count} rolo espera um líder`, `${count} rolos esperam um líder`),
  'measured-wrong': (count) =>
    plural(count, `${count} componente com medida errada`, `${count} componentes com medida errada`),
  'looked-wrong': (count) =>
    plural(count, `${count} componente parece errado`, `${count} componentes parecem errados`),
  'cannot-tell': (count) =>
    plural(
      count,
      `${count} componente perto demais do limite para o medidor`,
      `${count} componentes perto demais do limite para o medidor`,
    ),
  unchecked: (count) =>
    plural(count, `${count} componente ainda não verificado`, `${count} componentes ainda não verificados`),
  step: (count) => plural(count, `${count} passo do checklist`, `${count} passos do checklist`),
  'no-checklist': () => 'O checklist nunca foi aberto',
};

export const words: Sentences<typeof english> = {
  said: saidPt,
  on: (part, slot) => `${part} em ${slot}`,
  reelOn: (reel, slot) => `rolo ${reel} em ${slot}`,
  reel: (reel) => `rolo ${reel}`,
  more: (count) => `e mais ${count}`,
  isWrong: 'Errado',
  isOpen: 'Ainda aberto',
  nothing: 'Nada está aberto.',
};
