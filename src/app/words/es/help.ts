import type { words as english } from '../en/help.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: (screen) => `Ayuda: ${screen}`,
  practise: 'Practicar con guía',
  lines: {
    line: [
      'Una cinta termina donde se acaba su bobina. Empalme dentro del corchete.',
      'La banda de arriba nombra la próxima ronda. Tóquela cuando vaya.',
      'La barra de encima inicia, para y cuenta la tirada.',
    ],
    load: [
      'Toque un banco para ver sus posiciones. La línea muestra lo que falta cargar.',
      'Escanee la posición y luego la bobina.',
      'Círculo: aceptada. Octágono: rechazada. Rombo: retenida para el jefe de turno.',
    ],
    change: [
      'Elija el próximo producto. Cada movimiento queda en una lista.',
      'Haga un movimiento cada vez y escanee lo que mete.',
      'Termine la lista de control y revise el primer panel. Luego libere la tirada.',
    ],
    stock: [
      'Vea qué bobinas llevar y para cuándo.',
      'Abra una bobina para contarla, guardarla o bloquearla.',
      'Una bobina que debe seguir seca muestra su vida en planta.',
    ],
    log: [
      'Aquí queda cada acto con su hora y persona. Nunca se borra nada.',
      'Del lote a sus paneles, o del panel a sus bobinas.',
      'Vea el turno, entréguelo y exporte el registro.',
    ],
    plant: [
      'Importe un montaje y elija qué construir.',
      'Añada personas, etiquetas y las reglas de la línea.',
      'Practique en una copia de la línea. Allí nada cuenta.',
    ],
    search: [
      'Escanee o escriba un código, nombre o número.',
      'Los resultados van por clases.',
      'Toque un resultado para abrirlo.',
    ],
    lines: [
      'Cada fila es una línea, con su tirada y su próxima ronda.',
      'Campana: espera un aviso. Rombo: hay una bobina retenida.',
      'Toque una fila para trabajar en esa línea.',
    ],
  },
};
