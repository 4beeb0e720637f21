import type { words as english } from '../en/find.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'Procurar com a câmera',
  sweep: 'Varredura com a câmera',
  title: 'Procurar rolos',
  help: 'Passe o tablet devagar pelas etiquetas.',
  sweepHelp: 'Mantenha na imagem a etiqueta da posição e a do rolo dela.',
  on: (slot) => `em ${slot}`,
  to: (slots) => `para ${slots}`,
  told: (wanted, barred, read) => `Procurados: ${wanted} · não usar: ${barred} · lidos: ${read}`,
  swept: (seen, all) => `Vistas: ${seen} de ${all}`,
  other: 'Não é preciso agora',
  unknown: 'Desconhecida',
  reading: 'Lendo…',
  none: 'Nada lido ainda.',
  missing: 'Ainda não vistas',
  several: (slot) => `${slot}: há mais de um rolo perto. Aproxime-se ou leia posição e rolo.`,
  unsure: (slot) => `${slot}: a etiqueta não mostra qual rolo é.`,
  check: 'Conferir esta posição',
  times: (count) => `${count} × na imagem`,
  kept: (count) => `Rolos vistos: ${count}. Estão no registro.`,
  notKept: 'O que foi visto não está no registro. Entre primeiro.',
  barred: 'Não usar',
};
