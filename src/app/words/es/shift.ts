import type { words as english } from '../en/shift.ts';
import type { Sentences } from '../words.ts';
import { plural } from '../words.ts';

export const words: Sentences<typeof english> = {
  page: 'Turno',
  title: (line, span) => `${line}, ${span}`,
  thisShift: 'Este turno',
  lastHours: (hours) => plural(hours, 'Última hora', `Últimas ${hours} h`),
  span: 'Tiempo',
  print: 'Imprimir',
  rows: 'CSV',
  picture: 'PNG',
  asRows: (what) => `CSV: ${what}`,
  asPicture: (what) => `PNG: ${what}`,
  dry: '¿Se vació una posición?',
  dryNone: 'No se anotó ninguna parada por posición vacía.',
  drySome: (stops, span) => plural(stops, `1 parada, ${span}.`, `${stops} paradas, ${span}.`),
  splicesHour: '¿Cuántos empalmes por hora?',
  splices: (splices, walks) =>
    `${plural(splices, '1 empalme', `${splices} empalmes`)} en ${plural(walks, '1 recorrido', `${walks} recorridos`)}.`,
  splicesNone: 'Ningún empalme.',
  stops: '¿Qué paró la línea?',
  stopsSome: (stops, span) => plural(stops, `1 parada, ${span}.`, `${stops} paradas, ${span}.`),
  stopsNone: 'No se anotó ninguna parada.',
  times: (count) => `${count} ×`,
  notSaid: 'Sin motivo',
  changes: '¿Cuánto duraron los cambios?',
  changesSome: (count) => plural(count, '1 cambio.', `${count} cambios.`),
  changesNone: 'Ningún cambio.',
  notReleased: 'sin liberar',
  feeders: '¿Qué alimentadores pierden piezas?',
  feedersSome: (lost, picks) => `${lost} de ${picks} piezas tomadas se perdieron.`,
  feedersNone: 'No se contó ninguna bobina al quitarla.',
  share: (share, before) => `${share}, antes ${before}`,
  reasons: '¿Por qué se rechazaron o retuvieron bobinas?',
  reasonsSome: (refused, held, all) =>
    `${refused} rechazadas, ${held} retenidas de ${plural(all, '1 lectura', `${all} lecturas`)}.`,
  reasonsNone: (all) => plural(all, '1 lectura, ninguna rechazada.', `${all} lecturas, ninguna rechazada.`),
  onlyEntered: 'Contado con el registro de esta tableta. Lo que nadie anotó no está aquí.',
  reading: 'Leyendo el registro…',
};
