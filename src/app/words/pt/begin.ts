import type { words as english } from '../en/begin.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  about:
    'De um tablet vazio ao primeiro rolo certo. Pare em qualquer passo; continue aqui ou em outro tablet.',
  language: 'Idioma deste tablet',
  done: 'feito',
  steps: {
    plant: {
      title: 'A planta',
      text: 'O nome e o fuso horário. Impressões e exportações levam o nome.',
      act: 'Dar nome à planta',
    },
    engineer: {
      title: 'Primeiro engenheiro',
      text: 'Um nome, um crachá e um PIN. O engenheiro adiciona todos os outros.',
      act: 'Adicionar o engenheiro',
    },
    line: {
      title: 'A linha',
      text: 'As máquinas e os bancos dela, com os slots como estão escritos nas máquinas.',
      act: 'Descrever a linha',
    },
    people: {
      title: 'Pessoas e crachás',
      text: 'Operadores e líderes. Os crachás podem ser impressos aqui.',
      act: 'Adicionar pessoas',
    },
    product: {
      title: 'Primeiro produto',
      text: 'Uma folha de setup, ou o arquivo de coordenadas e a BOM da placa.',
      act: 'Importar o produto',
    },
    labels: {
      title: 'Etiquetas dos slots',
      text: 'Cada slot recebe um código para escanear. As de feeders e carrinhos também se imprimem ali.',
      act: 'Imprimir etiquetas',
    },
    scanner: {
      title: 'O leitor',
      text: 'Um teste mostra se este tablet o lê direito.',
      act: 'Testar o leitor',
    },
    label: {
      title: 'Uma etiqueta impressa',
      text: 'Escaneie a etiqueta de um slot: ela deve ser lida como esse slot.',
      act: 'Testar uma etiqueta',
    },
    practice: {
      title: 'Uma primeira carga, para treinar',
      text: 'Numa cópia da linha. Ali nada conta.',
      act: 'Iniciar treino',
    },
    load: {
      title: 'O primeiro rolo',
      text: 'Escaneie slot, feeder e rolo. O tablet diz se combinam.',
      act: 'Carregar a linha',
    },
  },
  fromFile: 'Começar com o arquivo de outra planta',
  badges: 'Imprimir crachás',
  more: 'Abrir',
  openOf: (step) => `Abrir: ${step}`,
};
