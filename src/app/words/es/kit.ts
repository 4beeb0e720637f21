import type { words as english } from '../en/kit.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'Lista de picking y carros',
  list: 'Lista de picking',
  panels: 'Paneles del siguiente trabajo',
  needed: (count) => plural(count, '1 pieza', `${count} piezas`),
  short: (count) => `hacen falta ${count} más`,
  enough: 'suficiente',
  probably: (chance, missing) => `quizá suficiente (${chance}): ${missing} más para estar seguro`,
  readyNow: 'Haga esto con la línea en marcha',
  readyFetch: (count) =>
    count === 0
      ? 'No hay que traer bobinas.'
      : plural(
          count,
          'Traiga bobinas de 1 componente: lista abajo.',
          `Traiga bobinas de ${count} componentes: lista abajo.`,
        ),
  readyCarts: (count) =>
    count === 0
      ? 'Ponga los alimentadores siguientes en un carro.'
      : plural(
          count,
          'Ponga alimentadores en un carro: 1 lugar listo.',
          `Ponga alimentadores en un carro: ${count} lugares listos.`,
        ),
  readyOpenList: 'Abra la lista: algunos pasos no piden parar.',
  readyList: (count) =>
    plural(count, 'Lista: 1 paso se puede hacer ya.', `Lista: ${count} pasos se pueden hacer ya.`),
  toChecklist: 'Lista',
  fetch: (reels) => `Traer ${reels}`,
  stays: (slot, count) => `se queda en ${slot}, ${count}`,
  goesTo: (from, to, count) => `pasa de ${from} a ${to}, ${count}`,
  comesOff: (slot, count) => `sobra en ${slot}, ${count}`,
  leftThen: (count) => `quedarán unas ${count} al acabar este trabajo`,
  leftNow: (count) => `quedan unas ${count}`,
  onLine: (count) =>
    plural(
      count,
      '1 componente ya está en la línea: nada que traer',
      `${count} componentes ya están en la línea: nada que traer`,
    ),
  cartFirst: 'Escanee o teclee antes su código.',
  leftUnknown: 'sin contar',
  maybeShort: 'cuente primero',
  unsure: (count) =>
    plural(
      count,
      'Puede faltar 1 componente: cuente sus bobinas.',
      `Pueden faltar ${count} componentes: cuente sus bobinas.`,
    ),
  uncounted: (count) => plural(count, '1 bobina sin contar', `${count} bobinas sin contar`),
  none: 'ninguna bobina encontrada',
  msl: (level) => `MSL ${level}: vigile la vida en planta`,
  shortfalls: (count) =>
    plural(
      count,
      '1 componente pide más de lo que hay en las bobinas conocidas. Traiga más o avise a un jefe de turno.',
      `${count} componentes piden más de lo que hay en las bobinas conocidas. Traiga más o avise a un jefe de turno.`,
    ),
  carts: 'Carros',
  cart: 'Carro',
  cartHelp: 'Escanee o teclee el código del carro. Luego posición, alimentador y bobina.',
  use: 'Usar este carro',
  filling: (cart) => `Llenando ${cart}`,
  leave: 'Dejar el carro',
  wanted: {
    slot: 'Escanee la posición',
    feeder: 'Escanee el alimentador',
    'old-reel': '',
    reel: 'Escanee la bobina',
  },
  accepted: (slot) => `Correcta: lista para ${slot}.`,
  refused: (why) => `No la ponga: ${why}`,
  held: (why) => `Retenida: ${why}. Apártela. Un jefe de turno decide en la pantalla Carga.`,
  places: (count) => plural(count, '1 lugar listo', `${count} lugares listos`),
  empty: 'Quitar',
  dock: 'Acoplar',
  dockTitle: (cart) => `¿Acoplar ${cart}?`,
  dockCaution:
    'Pare antes la máquina y espere a que nada se mueva. Manos lejos del anclaje, el cabezal y la cuchilla.',
  willLoad: (count, product) =>
    plural(count, `Se carga 1 posición para ${product}:`, `Se cargan ${count} posiciones para ${product}:`),
  goesOff: (count) => plural(count, 'Sale 1 alimentador:', `Salen ${count} alimentadores:`),
  doesNotFit: (count) =>
    plural(count, '1 lugar no encaja y queda fuera:', `${count} lugares no encajan y quedan fuera:`),
  unfit: {
    'feeder-loaded': (f) => `El alimentador ${f.thing} está ahora en ${f.at}.`,
    'reel-loaded': (f) => `La bobina ${f.thing} está ahora en ${f.at}.`,
    'lane-beside': (f) =>
      `Su alimentador se queda en el carro: la bobina para ${f.at} no se puede cargar ahora.`,
    neighbour: (f) => `El alimentador ${f.thing} invade el sitio de ${f.at}. Quite antes uno de los dos.`,
    'other-lane': (f) => `${f.line} necesita ${f.slot}. Deje esto en el carro.`,
    blocked: (f) => `${f.thing} está ahora bloqueada. Quítela del carro.`,
  },
  others: (count) =>
    plural(
      count,
      '1 lugar es para otro montaje y se queda.',
      `${count} lugares son para otro montaje y se quedan.`,
    ),
  nothingFits: 'Nada de este carro se puede cargar para este cambio.',
  noChangeover: 'No hay ningún cambio abierto en esta línea. Planee uno antes.',
  knownCart: (cart) => `${cart} está elegido.`,
  dockable: (count) => plural(count, 'carga 1 posición', `carga ${count} posiciones`),
  notStanding: 'Acople cuando esté hecho el último panel.',
  docked: (cart, count) =>
    plural(count, `${cart} acoplado: 1 posición cargada.`, `${cart} acoplado: ${count} posiciones cargadas.`),
  signIn: 'Escanee primero su tarjeta.',
  unknown: (text) => `${text.slice(0, 40)} no es conocido. Para llenar un carro nuevo, deje antes este.`,
};
