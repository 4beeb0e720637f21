// Sentences: none shows what only the code should see, and none is broken where a fact is missing.

import { isShown } from './shown.ts';

interface Rule {
  readonly what: string;
  readonly finds: RegExp;
}

const nouns =
  'slots|panels|reels|tries|parts|feeders|steps|people|entries|moves|pockets|minutes|hours|days|lots|lines|tablets|boards|' +
  'warnings|columns|rows|labels|codes|rules|checks|splices|walks|machines|persons|copies|handlings|products|jobs|others|' +
  'posiciones|paneles|bobinas|piezas|alimentadores|pasos|personas|entradas|minutos|horas|intentos|filas|columnas|lotes|' +
  'etiquetas|códigos|reglas|empalmes|tabletas|avisos|recorridos';

/** What no sentence may hold, in any language. */
const rules: readonly Rule[] = [
  { what: 'undefined', finds: /\bundefined\b/ },
  { what: 'NaN', finds: /\bNaN\b/ },
  { what: 'Infinity', finds: /\bInfinity\b/ },
  { what: 'null', finds: /\bnull\b/ },
  { what: 'an object', finds: /\[object / },
  { what: 'an ISO stamp', finds: /\d{4}-\d{2}-\d{2}T\d{2}:\d{2}/ },
  // Ids as the app makes them: 20 letters and digits; an entry's: tablet/epoch/number.
  { what: 'a raw id', finds: /\b(?=[a-z0-9]{20}\b)(?=[a-z]*\d)[0-9a-z]{20}\b/ },
  { what: 'a raw id', finds: /\b[0-9a-z]{4,}\/[0-9a-z]+\/\d+\b/ },
  { what: 'a raw id', finds: /\b(?:run|p)-\d+\b/ },
  { what: 'a key name', finds: /\b(?:[a-z]+[A-Z][a-z]+|[a-z]+\.(?:[a-z]+\.)*(?:[a-z]{5,}|[a-z]+-[a-z]+))\b/ },
  { what: 'a wrong plural', finds: new RegExp(`(?<![\\w.,:/±–-]|[±–-] )1 (?:${nouns})(?![\\wáéíóú])`, 'i') },
  { what: 'a space before the stop', finds: /\s[.,](?=\s|$)/ },
  { what: 'two stops', finds: /(?<!\.)\.\.(?!\.)(?=\s|$)/ },
  { what: 'an empty pair', finds: /\(\s*\)|"\s*"|“\s*”|‘\s*’/ },
  { what: 'a separator with nothing beside it', finds: /·\s*·|^\s*·\s|\s·\s*$/ },
];

/** What is wrong in one sentence, in plain words. */
export function wrongIn(sentence: string): readonly string[] {
  return rules.filter(({ finds }) => finds.test(sentence)).map(({ what }) => what);
}

const attributes = ['aria-label', 'title', 'placeholder', 'alt', 'aria-description'];

/** Everything wrong with what a part of the page says, attributes included. */
export function wrongSentences(root: Element): readonly string[] {
  const found = new Set<string>();
  const judge = (text: string, where: string) => {
    const plain = text.replace(/\s+/g, ' ').trim();
    for (const what of wrongIn(plain)) found.add(`${what}: "${around(plain, what)}"${where}`);
  };
  for (const block of blocksOf(root)) judge(textOf(block), '');
  for (const element of root.querySelectorAll(attributes.map((each) => `[${each}]`).join(', '))) {
    if (!isShown(element)) continue;
    for (const attribute of attributes) {
      const text = element.getAttribute(attribute);
      if (text) judge(text, ` (${attribute})`);
    }
  }
  for (const option of root.querySelectorAll('option')) judge(option.text, ' (option)');
  return [...found];
}

function around(text: string, what: string): string {
  const at = rules.find((rule) => rule.what === what && rule.finds.test(text))?.finds.exec(text)?.index ?? 0;
  return text.slice(Math.max(0, at - 40), at + 40);
}

/** Elements that hold text of their own and are no mere part of a sentence. */
function blocksOf(root: Element): ReadonlySet<Element> {
  const blocks = new Set<Element>();
  const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    if (!/\S/.test(node.textContent ?? '')) continue;
    let block = node.parentElement;
    if (!block || block.closest('script, style, option, title, noscript, [data-raw]') || !isShown(block))
      continue;
    while (block.parentElement && getComputedStyle(block).display.startsWith('inline') && block !== root)
      block = block.parentElement;
    blocks.add(block);
  }
  return blocks;
}

/** The text of a block, its inline parts in their place; what stands in boxes of its own is left out. */
function textOf(block: Element): string {
  let text = '';
  for (const node of block.childNodes) {
    if (node.nodeType === Node.TEXT_NODE) text += node.textContent;
    if (!(node instanceof Element)) continue;
    if (node.localName === 'br') text += '\n';
    else if (node.matches('[data-raw]')) text += '…';
    else if (getComputedStyle(node).display === 'inline') text += textOf(node);
    else text += ' … ';
  }
  return text;
}
