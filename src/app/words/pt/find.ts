import type { words as english } from '../en/find.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'Procurar com a câmera',
  sweep: 'Conferir com a câmera',
  title: 'Procurar rolos',
  help: 'Passe o tablet devagar pelas etiquetas.',
  sweepHelp: 'Mantenha na imagem a etiqueta do slot e a do rolo dele.',
  on: (slot) => `em ${slot}`,
  to: (slots) => `para ${slots}`,
  told: (wanted, barred, read) => `Procurados: ${wanted} · não usar: ${barred} · lidos: ${read}`,
  swept: (seen, all) => `Vistos: ${seen} de ${all}`,
  other: 'Não é preciso agora',
  unknown: 'Desconhecido',
  reading: 'Lendo…',
  none: 'Nada lido ainda.',
  missing: 'Ainda não vistos',
  several: (slot) => `${slot}: há mais de um rolo perto. Aproxime-se ou escaneie slot e rolo.`,
  unsure: (slot) => `${slot}: a etiqueta não mostra qual rolo é.`,
  check: 'Conferir este slot',
  times: (count) => `${count} × na imagem`,
  kept: (count) => `Rolos vistos: ${count}. Estão no log.`,
  notKept: 'O que foi visto não está no log. Entre primeiro.',
  barred: 'Não usar',
};
