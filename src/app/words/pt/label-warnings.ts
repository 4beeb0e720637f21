import type { LabelWarning } from '../../../../shared/labels/warnings.ts';
import type { words as english } from '../en/label-warnings.ts';
import type { Sentences } from '../words.ts';

const fieldsPt: Readonly<Record<Extract<LabelWarning, { readonly code: 'conflict' }>['field'], string>> = {
  part: 'PN interno',
  supplierPart: 'PN do fornecedor',
  quantity: 'quantidade',
  lot: 'lote',
  dateCode: 'date code',
  made: 'semana de fabricação',
  expires: 'validade',
  reel: 'rolo',
  supplier: 'fornecedor',
  country: 'país',
  msl: 'nível de umidade',
  order: 'pedido',
};

/** A text in quotes, cut to what a line holds; control characters become visible. */
function quote(text: string): string {
  const plain = text.replace(/[\u0000-\u001f]/g, (char) => String.fromCharCode(0x2400 + char.charCodeAt(0)));
  return `“${plain.length > 60 ? `${plain.slice(0, 57)}…` : plain}”`;
}

function sayPt(warning: LabelWarning): string {
  switch (warning.code) {
    case 'no-code':
      return 'nenhum código foi lido desta etiqueta';
    case 'no-part-number':
      return 'sem PN nesta etiqueta: ele precisa vir de outro lugar';
    case 'header-damaged':
      return `o começo do código está danificado: ${quote(warning.found)}`;
    case 'separators-replaced':
      return `o leitor enviou ${quote(warning.found)} no lugar dos separadores (GS): ajuste-o para enviar caracteres de controle`;
    case 'separators-mixed':
      return `os separadores diferem (${warning.found.map(quote).join(', ')}): confira o leitor e o teclado dele`;
    case 'separators-lost':
      return `faltam separadores em ${quote(warning.text)}: só foi lido o que é certo; ajuste o leitor para enviar caracteres de controle`;
    case 'trailer-uncertain':
      return `o último caractere de ${quote(warning.text)} pode ser a marca de fim do código`;
    case 'keyboard-layout':
      return `o leitor digita para outro teclado (${warning.layout}): ${quote(warning.text)} não foi aceito; ajuste o teclado e escaneie de novo`;
    case 'identifier-lower-case':
      return `o identificador ${quote(warning.id)} veio em minúsculas e foi lido como ${warning.id.toUpperCase()}`;
    case 'identifier-unlisted':
      return `o identificador ${warning.id} não é conhecido: o valor é guardado, não usado`;
    case 'no-identifier':
      return `${quote(warning.text)} não tem identificador: guardado como texto`;
    case 'format-unread':
      return `o formato ${warning.format} não é lido aqui: guardado como texto`;
    case 'tags-not-mh10':
      return `marcas de duas letras (${warning.tags.join(', ')}) em vez de identificadores de dados`;
    case 'one-letter-tags':
      return 'marcas de uma letra, lidas assim: R rolo, P PN interno, D data, L lote, V fornecedor, Q quantidade, S PN do fornecedor';
    case 'blank-separated':
      return `lido em trechos, cortado nos espaços: se um PN em ${quote(warning.text)} tem espaços, ele também é cortado`;
    case 'value-may-go-on':
      return `${quote(warning.text)} pode pertencer ao valor depois de ${warning.id}: não lido`;
    case 'identifier-unconfirmed':
      return `${quote(warning.text)} pode começar com um identificador ou ser só um número: uma pessoa precisa dizer qual`;
    case 'confirmed-by-setup':
      return `${fieldsPt[warning.field]} ${quote(warning.value)} é o que o setup espera`;
    case 'conflict':
      return `a etiqueta tem valores diferentes para ${fieldsPt[warning.field]}: ${warning.values.map(quote).join(', ')}`;
    case 'second-lot':
      return `a etiqueta tem um segundo lote, ${quote(warning.text)}: o rolo tem os dois`;
    case 'quantity-unreadable':
      return `a quantidade ${quote(warning.text)} não pode ser lida sem adivinhar: conte ou digite`;
    case 'quantity-marks':
      return `a quantidade ${quote(warning.text)} foi lida como ${warning.quantity}`;
    case 'date-code-unclear':
      return `o date code ${quote(warning.text)} (${warning.id}) não está claro: guardado como impresso`;
    case 'no-such-week':
      return `o date code ${quote(warning.text)} (${warning.id}) não é semana de ano nenhum: guardado como impresso`;
    case 'no-such-date':
      return `${quote(warning.text)} (${warning.id}) não é uma data`;
    case 'day-not-printed':
      return `${quote(warning.text)} (${warning.id}) não tem dia: vale o último do mês`;
    case 'country-unlisted':
      return `${quote(warning.text)} não é um código de país`;
    case 'msl-unlisted':
      return `${quote(warning.text)} não é um nível de umidade`;
    case 'rule-unclear':
      return `a regra de etiqueta ${quote(warning.rule)} serve de mais de um modo: não usada`;
    case 'full-ascii':
      return `${quote(warning.text)} parece Code 39 em ASCII completo: seria ${quote(warning.meant)}; ajuste o leitor assim`;
    case 'gs1-unread':
      return `${quote(warning.text)} tem um identificador GS1 desconhecido aqui: guardado como texto`;
    case 'gs1-check-digit':
      return `o dígito verificador de ${quote(warning.text)} está errado`;
  }
}

export const words: Sentences<typeof english> = { say: sayPt };
