import type { words as english } from '../en/shift.ts';
import { byNumber, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  page: 'Zmiana',
  title: (line, span) => `${line}, ${span}`,
  thisShift: 'Ta zmiana',
  lastHours: (hours) => `Ostatnie ${hours} h`,
  span: 'Czas',
  print: 'Drukuj',
  rows: 'Zapisz CSV',
  picture: 'Zapisz obraz',
  asRows: (what) => `Zapisz CSV: ${what}`,
  asPicture: (what) => `Zapisz obraz: ${what}`,
  dry: 'Czy jakaś pozycja się opróżniła?',
  dryNone: 'Nie wpisano postoju z powodu pustej pozycji.',
  drySome: (stops, span) =>
    `${byNumber(stops, { one: `1 postój`, few: `${stops} postoje`, other: `${stops} postojów` })}, ${span}.`,
  splicesHour: 'Ile łączeń na godzinę?',
  splices: (splices, walks) =>
    `${byNumber(splices, { one: `1 łączenie`, few: `${splices} łączenia`, other: `${splices} łączeń` })}, ${byNumber(walks, { one: `1 obchód`, few: `${walks} obchody`, other: `${walks} obchodów` })}.`,
  splicesNone: 'Brak łączeń.',
  stops: 'Co zatrzymało linię?',
  stopsSome: (stops, span) =>
    `${byNumber(stops, { one: `1 postój`, few: `${stops} postoje`, other: `${stops} postojów` })}, ${span}.`,
  stopsNone: 'Nie wpisano postoju.',
  times: (count) => `${count} ×`,
  notSaid: 'Bez powodu',
  changes: 'Ile trwały przezbrojenia?',
  changesSome: (count) =>
    `${byNumber(count, { one: `1 przezbrojenie`, few: `${count} przezbrojenia`, other: `${count} przezbrojeń` })}.`,
  changesNone: 'Brak przezbrojeń.',
  notReleased: 'niezwolnione',
  feeders: 'Które podajniki gubią części?',
  feedersSome: (lost, picks) => `Zgubione części: ${lost} z ${picks} pobranych.`,
  feedersNone: 'Żadnej zdjętej rolki nie policzono.',
  share: (share, before) => `${share}, przedtem ${before}`,
  reasons: 'Dlaczego rolki odrzucono lub wstrzymano?',
  reasonsSome: (refused, held, all) => `Odrzucone: ${refused}, wstrzymane: ${held}, skany: ${all}.`,
  reasonsNone: (all) => `Skany: ${all}, nic nie odrzucono.`,
  onlyEntered: 'Policzone z dziennika tego tabletu. Czego nikt nie wpisał, tego tu nie ma.',
  reading: 'Czytanie dziennika…',
};
