import type { words as english } from '../en/pictures.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  rule: 'Imagens de etiquetas',
  ruleHelp: 'Guarda a imagem de cada etiqueta lida pela câmera ao carregar ou emendar.',
  keep: 'Guardar imagens',
  days: 'Dias de guarda',
  megabytes: 'Espaço em cada tablet, MB',
  fault: 'As imagens precisam de 1 a 3650 dias e de 1 a 10000 MB.',
  shown: 'Imagem da etiqueta',
  notHere: 'A imagem não está neste tablet. Veja no tablet que leu a etiqueta.',
  none: 'Nenhuma imagem encontrada.',
  broken: 'Esta imagem não é a que foi guardada. Avise um líder.',
  failed: 'A imagem da etiqueta não foi guardada. O veredito vale.',
  exported: 'Salvar também as imagens de etiquetas',
  saved: (name) => `Salvo como ${name}.`,
};
