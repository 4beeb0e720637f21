import type { words as english } from '../en/practice.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  word: 'TREINO',
  tells: 'Aqui nada conta. A linha real continua.',
  end: 'Encerrar treino',
  real: (slot, told) => `Na linha real: ${slot} ${told}`,
  title: 'Treine sem tocar na linha',
  about:
    'Você recebe uma cópia desta linha como está agora. Escaneie, emende, troque, erre: nada chega à linha real, ao log ou às contagens dela. A cópia é apagada quando você encerra o treino, ou após doze horas.',
  aboutNew:
    'Esta planta ainda não tem linha, por isso você recebe uma pequena, inventada. Escaneie, carregue, emende, erre. Ela é apagada quando você encerra o treino, ou após doze horas.',
  warns: 'Os avisos da linha real continuam aparecendo.',
  start: 'Iniciar treino',
  taken: 'O treino está aberto em outra janela deste tablet. Encerre-o lá antes.',
  notSaved: (name) => `Treino: nenhum arquivo é salvo. Na linha real seria ${name}.`,
  labels: 'Etiquetas para treinar',
  labelsHelp: 'Toque em uma etiqueta em vez de escanear: o slot, o feeder se pedido, o rolo.',
  print: 'Imprimir as etiquetas',
  groups: {
    load: 'Para carregar',
    splice: 'Para emendar depois',
    wrong: 'Para recusar ou reter',
    panels: 'Painéis',
  },
  slot: (slot) => `Slot ${slot}`,
  wants: (part) => `pede ${part}`,
  right: (slot) => `rolo certo para ${slot}`,
  wrong: (slot, asked) => `vai em ${slot}; experimente em ${asked}`,
  foreign: (asked) => `nenhum slot o pede; experimente em ${asked}`,
  bare: (slot) => `sem quantidade na etiqueta; para ${slot}`,
  free: (slot) => `feeder livre para ${slot}`,
  panel: 'conta um painel',
  nothing: 'Escolha antes um setup. As etiquetas dele aparecem aqui.',
  names: {
    line: 'Linha de treino',
    machine: 'primeira máquina',
    bank: 'frente',
    product: 'Placa de treino',
  },
};
