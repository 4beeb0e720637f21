import type { Words } from '../areas.ts';
import { plural } from '../words.ts';

export const words: Words<'feeds'> = {
  kinds: { tape: 'Cinta', 'cut-tape': 'Trozo de cinta', tray: 'Bandeja', tube: 'Tubo', bulk: 'A granel' },
  acts: { splice: 'Empalmar', exchange: 'Cambiar', refill: 'Rellenar' },
  label: 'Imprimir su etiqueta',
  warns: {
    splice: (span, clock) => `se acaba en ${span}, hacia las ${clock}. Traiga el trozo siguiente.`,
    exchange: (span, clock) =>
      `se acaba en ${span}, hacia las ${clock}. Después la máquina se para hasta que se cambie.`,
    refill: (span, clock) => `se acaba en ${span}, hacia las ${clock}. Rellene antes.`,
  },
  comesNext: { splice: 'Bobina nueva', exchange: 'Se pone en su lugar', refill: 'Se vierte encima' },
  accepted: {
    exchange:
      'Lo que había se da por retirado. No es un empalme: la máquina espera hasta que esto esté puesto.',
    refill: 'Desde aquí ambos lotes son posibles, hasta vaciar el alimentador.',
  },
  sayFeeds: {
    tape: '',
    'cut-tape': 'Trozo de cinta: sin ventana de empalme. Acaba donde acaba el trozo.',
    tray: 'Bandeja: vacía, la máquina se para hasta que se cambie.',
    tube: 'Tubo: vacío, la máquina se para hasta que se cambie.',
    bulk: 'A granel: rellene antes de que se vacíe.',
  },
  picks: {
    tape: '',
    'cut-tape': (count) => plural(count, '1 trozo', `${count} trozos`),
    tray: (count) => plural(count, '1 pila de bandejas', `${count} pilas de bandejas`),
    tube: (count) => plural(count, '1 juego de tubos', `${count} juegos de tubos`),
    bulk: (count) => plural(count, '1 paquete', `${count} paquetes`),
  },
  dueNow: { splice: 'empalmar ya', exchange: 'cambiar ya', refill: 'rellenar ya' },
  forLane: (lane, part, count) => `Para ${lane}: ${part}, ${count} por panel.`,
};
