import type { words as english } from '../en/lines.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  add: 'Añadir una línea',
  edit: 'Cambiar',
  editOf: (name) => `Cambiar ${name}`,
  machines: (count) => plural(count, '1 máquina', `${count} máquinas`),
  slots: (count) => plural(count, '1 posición', `${count} posiciones`),
  fromSheets:
    'Algunas posiciones solo se conocen por hojas de montaje. Abra la línea para nombrarlas como están escritas.',
  newTitle: 'Una línea nueva',
  newName: (number) => `Línea ${number}`,
  name: 'Nombre',
  zone: 'Zona horaria',
  zoneHelp: 'Donde está la línea, por ejemplo Europe/Madrid.',
  help: 'Para cada banco, escriba la primera y la última posición como están en la máquina.',
  bankOf: (number) => `Banco ${number}`,
  removeOf: (number) => `Quitar el banco ${number}`,
  first: 'Primera posición',
  last: 'Última posición',
  addAcross: (slot) => `Añadir el otro lado: ${slot}`,
  addMachine: (slot) => `Añadir la máquina siguiente: ${slot}`,
  addBank: 'Añadir un banco',
  holdsTrays: 'Bandejas, sin alimentadores',
  trays: 'bandejas',
  lanes: {
    title: 'Carriles',
    help: 'Un transportador puede llevar dos productos a la vez. Cada carril tiene su propia tirada; todos toman de las mismas posiciones.',
    add: 'Añadir un carril',
    name: (number) => `Nombre del carril ${number}`,
    called: (line, number) => `${line}, carril ${number}`,
    removeOf: (number) => `Quitar el carril ${number}`,
    held: {
      runs: (lane) => `${lane} está produciendo. Termine antes su serie.`,
      reels: (slots) => `Quite antes lo que solo necesita este carril: ${slots}.`,
      open: 'Este carril tiene algo abierto: bobina retenida, relevo, cambio, lista, repaso, pasta, estación de conteo, alimentador listo o carro. Termínelo antes.',
    },
  },
  picture: 'Así queda la línea',
  save: 'Guardar línea',
  saved: (name) => `${name}: guardada.`,
  faults: {
    'no-number': 'Ambas deben acabar en número: M1-F-001 y M1-F-025.',
    differs: 'Solo puede cambiar el número del final.',
    'not-from-one': 'La primera posición debe ser la número 1.',
    backwards: 'El último número es menor que el primero.',
    'too-many': 'Un banco tiene 500 posiciones como máximo.',
    twice: 'Este banco ya está.',
  },
  obstacles: {
    ranges: (count) =>
      plural(count, 'Corrija el banco marcado arriba.', `Corrija los ${count} bancos marcados arriba.`),
    'name-missing': 'Escriba un nombre.',
    'lanes-alike': 'Dé a cada carril un nombre propio.',
    'zone-unknown': 'Elija una zona horaria de la lista.',
    'no-banks': 'Escriba antes las posiciones de un banco.',
    lost: (slots, count) =>
      plural(
        count,
        `La posición ${slots} está en uso. Déjela.`,
        `Se perderían ${count} posiciones en uso: ${slots}. Déjelas.`,
      ),
  },
};
