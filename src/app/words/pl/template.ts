import type { TemplateFault } from '../../../../shared/checklist/steps.ts';
import type { StepCondition, StepKind } from '../../../../shared/floor/checklist.ts';
import type { words as english } from '../en/template.ts';
import { byNumber, type Sentences } from '../words.ts';

const kindsPl: Readonly<Record<StepKind, string>> = {
  tick: 'odhaczenie',
  measure: 'wartość zmierzona',
  scan: 'skan',
  choice: 'wybór',
  photo: 'zdjęcie',
  note: 'notatka',
  sign: 'podpis',
  known: 'sprawdza aplikacja',
};

const conditionsPl: Readonly<Record<StepCondition, string>> = {
  always: 'zawsze',
  'side-changes': 'gdy zmienia się strona',
  'stencil-changes': 'gdy zmienia się szablon',
  'product-changes': 'gdy zmienia się produkt',
  'program-changes': 'gdy zmienia się program',
};

const faultsPl: Readonly<Record<TemplateFault['code'], string>> = {
  'no-title': 'Nadaj checkliście nazwę.',
  'no-steps': 'Checklista nie ma kroku.',
  'step-twice': 'Ten sam krok jest dwa razy.',
  'no-text': 'Brakuje tekstu.',
  'limits-crossed': 'Dolna granica jest powyżej górnej.',
  'no-options': 'Wybór wymaga dwóch lub więcej opcji.',
  'right-not-listed': 'Właściwej odpowiedzi nie ma wśród opcji.',
  'no-unit': 'Wartość zmierzona wymaga jednostki.',
  'nothing-known': 'Wybierz, co musi być prawdą. Może o to pytać tylko checklista przezbrojenia.',
  'signatures-differ': 'Każdy podpis wymaga roli.',
};

export const words: Sentences<typeof english> = {
  kinds: kindsPl,
  conditions: conditionsPl,
  faults: faultsPl,
  times: { running: 'gdy linia pracuje', stopped: 'gdy linia stoi' },
  version: (version, steps) =>
    `wersja ${version} · ${byNumber(steps, { one: `${steps} krok`, few: `${steps} kroki`, other: `${steps} kroków` })}`,
  edit: 'Edytuj',
  title: 'Nazwa',
  language: 'Dodaj język',
  noLanguage: 'żaden',
  text: 'Tekst',
  group: 'Nagłówek',
  caution: 'Przestroga',
  kind: 'Odpowiedź przez',
  time: 'Kiedy',
  condition: 'Warunek',
  mandatory: 'Obowiązkowe',
  least: 'Co najmniej',
  most: 'Najwyżej',
  unit: 'Jednostka',
  expects: 'Tekst, który skan musi dać',
  options: 'Opcje, oddzielone przecinkami',
  right: 'Właściwe odpowiedzi, oddzielone przecinkami',
  signature: (number) => `Podpis ${number}`,
  noSignature: 'brak',
  wants: 'Co jest skanowane',
  wantNames: {
    stencil: 'szablon',
    paste: 'słoik pasty',
    program: 'program',
    feeder: 'podajnik tego zakładu',
    slot: 'slot tej linii',
    reel: 'rolka tego zakładu',
    other: 'inny kod zakładu',
  },
  knows: 'Co musi być prawdą',
  factNames: {
    moves: 'nie ma już przestawień podajników',
    slots: 'każdy slot ma swoją zweryfikowaną rolkę',
    'first-panel': 'pierwszy panel jest sprawdzony i dobry',
  },
  up: 'Wcześniej',
  down: 'Później',
  remove: 'Usuń',
  add: 'Dodaj krok',
  done: 'Gotowe',
  save: (version) => `Zapisz jako wersję ${version}`,
  saved: (version) => `Wersja ${version} zapisana. Otwarte checklisty zostają bez zmian.`,
  help: 'Wersja nigdy się nie zmienia. Otwarte i zamknięte checklisty zachowują wersję, z którą je otwarto.',
  newGroup: 'Więcej',
};
