import type { RuleField } from '../../../../shared/labels/rules.ts';
import type { words as english } from '../en/teach.ts';
import type { Problems } from '../teach.ts';
import { byNumber, plural, type Sentences } from '../words.ts';

const fieldsPl: Readonly<Record<RuleField, string>> = {
  part: 'Indeks własny',
  supplierPart: 'Indeks dostawcy',
  quantity: 'Ilość',
  lot: 'Partia',
  dateCode: 'Date code',
  expires: 'Zużyć przed',
  reel: 'ID rolki',
  supplier: 'Dostawca',
  country: 'Kraj',
  msl: 'MSL',
  order: 'Zamówienie',
};

const problemsPl: Problems = {
  'nothing-tapped': 'Dotknij fragmentu i powiedz, co to jest',
  'tap-outside': 'Fragment wychodzi poza kod',
  'taps-overlap': 'Dwa fragmenty zachodzą na siebie',
  'field-tapped-twice': 'Dwa fragmenty mają to samo znaczenie',
  'too-loose': 'Pasowałoby do prawie każdej etykiety: nazwij jeszcze jeden fragment',
  'too-long': 'Etykieta jest za długa na regułę',
};

export const words: Sentences<typeof english> = {
  fields: fieldsPl,
  problems: problemsPl,
  listHelp: 'Zeskanuj dowolną etykietę, aby zobaczyć, jak jest czytana.',
  teach: 'Naucz etykiety',
  export: 'Zapisz reguły do pliku',
  exported: (name) => `Zapisano jako ${name}.`,
  import: 'Zaimportuj reguły z pliku',
  importTitle: 'Reguły w tym pliku',
  importFailed: 'Ten plik nie został zaimportowany',
  importAgain:
    'Nic nie zmieniono. Popraw plik albo zapisz reguły ponownie tam, skąd pochodzą. Potem wybierz go ponownie.',
  importProblems: {
    'not-json': 'Plik nie jest poprawnym JSON: jest ucięty albo to inny rodzaj pliku.',
    'no-list': 'Plik nie zawiera listy reguł.',
    empty: 'Lista w pliku jest pusta.',
    'not-a-rule': (rule, at) => `Reguła „${rule}” nie jest poprawna${at === '' ? '' : `: zobacz ${at}`}.`,
    twice: (rule) => `Reguła „${rule}” jest w pliku dwa razy: zostaw jedną.`,
  },
  importStatus: {
    new: (version) => `+ nowa, wersja ${version}`,
    newer: (version, here) => `↑ wersja ${version} zamiast ${here}`,
    same: (version) => `= ta sama tutaj, wersja ${version}`,
    older: (version, here) => `△ wersja ${version} jest starsza niż ${here} tutaj: nieimportowana`,
    differs: (version) =>
      `△ inna reguła jest tutaj wersją ${version}: nieimportowana, dopóki plik nie nada jej wyższej wersji`,
    fails: (version) => `✕ wersja ${version} nie czyta własnych przykładów: nieimportowana`,
  },
  importNothing: 'Żadna reguła w tym pliku nie jest nowa ani nowsza.',
  importTake: (count) =>
    byNumber(count, {
      one: `Zaimportuj ${count} regułę`,
      few: `Zaimportuj ${count} reguły`,
      other: `Zaimportuj ${count} reguł`,
    }),
  imported: (count) =>
    byNumber(count, {
      one: `${count} reguła zaimportowana.`,
      few: `${count} reguły zaimportowane.`,
      other: `${count} reguł zaimportowanych.`,
    }),
  none: 'Nie nauczono jeszcze żadnej etykiety.',
  noneHelp:
    'Etykiety według norm nie wymagają reguły. Zeskanuj etykietę, która nie jest czytana, i naucz jej raz.',
  version: (version) => `wersja ${version}`,
  approvedBy: (name, when) => `zatwierdzenie: ${name}, ${when}`,
  needsAll: (count) =>
    `${byNumber(count, { one: 'Jej kod musi być', few: `Jej ${count} kody muszą być`, other: `Jej ${count} kodów musi być` })} na jednym obrazie z kamery albo wpisane razem.`,
  examples: (count) =>
    byNumber(count, {
      one: 'czyta swój przykład',
      few: `czyta swoje ${count} przykłady`,
      other: `czyta swoich ${count} przykładów`,
    }),
  examplesFail: (failed, count) =>
    plural(count, 'czyta swój przykład inaczej', `czyta inaczej ${failed} ze swoich ${count} przykładów`),
  again: 'Naucz ponownie',
  withdraw: 'Wycofaj',
  withdrawTitle: (rule) => `Wycofaj regułę „${rule}”`,
  withdrawWhy: 'Dlaczego?',
  withdrawn: (rule) => `Etykiety nie są już czytane przez „${rule}”.`,
  pieces: {
    digits: (length) =>
      length === null
        ? 'cyfry'
        : byNumber(length, { one: `${length} cyfra`, few: `${length} cyfry`, other: `${length} cyfr` }),
    letters: (length) =>
      length === null
        ? 'litery'
        : byNumber(length, { one: `${length} litera`, few: `${length} litery`, other: `${length} liter` }),
    alphanumeric: (length) =>
      length === null
        ? 'litery lub cyfry'
        : byNumber(length, {
            one: `${length} litera lub cyfra`,
            few: `${length} litery lub cyfry`,
            other: `${length} liter lub cyfr`,
          }),
    any: (length) =>
      length === null
        ? 'cokolwiek'
        : byNumber(length, { one: `${length} znak`, few: `${length} znaki`, other: `${length} znaków` }),
  },
  skipped: 'pominięte',
  scanned: 'Właśnie zeskanowane',
  readBy: (rule) => `odczytane regułą „${rule}”`,
  readByStandard: 'odczytane według normy',
  notRead: 'Nic z niej nie jest czytane.',
  teachThis: 'Naucz tej etykiety',
  lookAgain: 'Wyczyść',
  codesTitle: 'Etykieta',
  codesHelp: 'Zeskanuj każdy kod na jednej etykiecie; każdy skan coś dodaje.',
  waiting: 'Czekam na skan…',
  addTyped: 'Wpisz kod zamiast tego',
  remove: 'Usuń ten kod',
  alreadyRead: 'Ta etykieta jest już czytana bez reguły:',
  tapHelp: 'Dotknij fragmentu, potem powiedz, co to jest. Dotknij drugiego, aby objąć oba.',
  what: 'Co to jest?',
  nothing: 'Nic',
  from: 'Początek',
  to: 'Koniec',
  earlier: 'wcześniej',
  later: 'później',
  ruleTitle: 'Reguła',
  name: 'Nazwa reguły',
  nameHelp: 'Na przykład czyje to etykiety.',
  nameMissing: 'Nazwij regułę',
  replaces: (version) => `Zastępuje wersję ${version}.`,
  datePrinted: (field) => `${field}: wydrukowane jako`,
  asPrinted: 'zostaw jak wydrukowano',
  reads: 'Z tej etykiety czyta',
  pattern: 'Etykieta pasuje, jeśli zawiera',
  tried: (count) =>
    plural(
      count,
      `Sprawdzono na ${count} etykiecie z dziennika`,
      `Sprawdzono na ${count} etykietach z dziennika`,
    ),
  trying: 'Sprawdzanie na dzienniku…',
  fitsNone: 'Nie pasuje do żadnej, więc nic, co jest teraz czytane, się nie zmieni.',
  fits: (count) => `Pasuje do ${count} z nich:`,
  contradicts: (count) =>
    byNumber(count, {
      one: `${count} była wcześniej czytana inaczej. Zawęź regułę.`,
      few: `${count} były wcześniej czytane inaczej. Zawęź regułę.`,
      other: `${count} było wcześniej czytanych inaczej. Zawęź regułę.`,
    }),
  fitsAlso: (rule, count) => `Reguła „${rule}” też pasuje do ${count} z nich.`,
  disagrees: (rule, count) =>
    `Reguła „${rule}” też pasuje do ${count} z nich i czyta je inaczej. Zawęź jedną z tych dwóch.`,
  readsAnew: (count) => `Mówi więcej niż wcześniej: ${count}.`,
  variedTitle: 'Etykiety utworzone z tej',
  variedNot: 'Nie odczytuje: tu każda część musi być tak długa jak na nauczonej etykiecie.',
  before: 'wcześniej',
  now: 'z tą regułą',
  lostExamples: (count) =>
    byNumber(count, {
      one: `${count} etykieta czytana przez obecną wersję nie jest już czytana.`,
      few: `${count} etykiety czytane przez obecną wersję nie są już czytane.`,
      other: `${count} etykiet czytanych przez obecną wersję nie jest już czytanych.`,
    }),
  approve: 'Niech zatwierdzi lider',
  approveTitle: (rule) => `Zatwierdź regułę „${rule}”`,
  approveHelp: 'Każdy tablet czyta potem takie etykiety tą regułą.',
  approved: (rule) => `Etykiety są teraz czytane przez „${rule}”.`,
  doesNotRead: 'Nie czyta etykiety tak, jak zaznaczono',
};
