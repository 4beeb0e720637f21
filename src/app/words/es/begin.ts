import type { words as english } from '../en/begin.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  about:
    'De una tableta vacía a la primera bobina correcta. Pare en cualquier paso; siga aquí o en otra tableta.',
  language: 'Idioma de esta tableta',
  done: 'hecho',
  steps: {
    plant: {
      title: 'La planta',
      text: 'Su nombre y su zona horaria. Las hojas impresas y las exportaciones llevan el nombre.',
      act: 'Dar nombre a la planta',
    },
    engineer: {
      title: 'Primer ingeniero',
      text: 'Un nombre, una tarjeta y un PIN. El ingeniero añade a los demás.',
      act: 'Añadir al ingeniero',
    },
    line: {
      title: 'La línea',
      text: 'Sus máquinas y bancos, con las posiciones como están escritas en las máquinas.',
      act: 'Describir la línea',
    },
    people: {
      title: 'Personas y tarjetas',
      text: 'Operarios y jefes de turno. Las tarjetas se pueden imprimir aquí.',
      act: 'Añadir personas',
    },
    product: {
      title: 'Primer producto',
      text: 'Una hoja de montaje, o el archivo de colocación y la lista de materiales de la placa.',
      act: 'Importar el producto',
    },
    labels: {
      title: 'Etiquetas de posiciones',
      text: 'Cada posición recibe un código para escanear. Alimentadores y carros también.',
      act: 'Imprimir etiquetas',
    },
    scanner: {
      title: 'El escáner',
      text: 'Una prueba muestra si esta tableta lo lee bien.',
      act: 'Probar el escáner',
    },
    label: {
      title: 'Una etiqueta impresa',
      text: 'Escanee la etiqueta de una posición: debe leerse como esa posición.',
      act: 'Probar una etiqueta',
    },
    practice: {
      title: 'Una primera carga, para practicar',
      text: 'En una copia de la línea. Allí nada cuenta.',
      act: 'Empezar la práctica',
    },
    load: {
      title: 'La primera bobina',
      text: 'Escanee posición, alimentador y bobina. La tableta dice si van juntos.',
      act: 'Cargar la línea',
    },
  },
  fromFile: 'Empezar con el archivo de otra planta',
  badges: 'Imprimir tarjetas',
  more: 'Abrir',
  openOf: (step) => `Abrir: ${step}`,
};
