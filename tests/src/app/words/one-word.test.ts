// One word for one thing: words that a language has for a thing of the trade, and does not use here because the glossary has another (or the same
// word for another thing), must not come back with a new area. And what French type wants: a no-break space before its double marks.

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { AreaName } from '../../../../src/app/words/areas.ts';
import { fetchEveryArea } from '../../../../src/app/words/fetch.ts';
import { type Language, language, languages, spoken } from '../../../../src/app/words/words.ts';
import { type Said, sentences } from './say-all.ts';

/** Words not said, each with what is said instead. */
const notSaid: { readonly [L in Language]?: readonly (readonly [word: RegExp, instead: string])[] } = {
  es: [
    [/\bpreparación\b(?! antes)/i, 'montaje'],
    [/\bjefes?\b(?! de (turno|calidad))/i, 'jefe de turno'],
    [/\bresponsable\b/i, 'jefe de turno'],
    [/\bclave de acceso\b/i, 'llave de acceso'],
    [/\benvases?\b/i, 'paquete'],
    [/\bpistas?\b/i, 'carril'],
    [/\bsobre las \d/i, 'hacia las'],
    [/\b(número de pieza|números de pieza)\b/i, 'referencia'],
    [/\bdescongela/i, 'atemperar'],
    [/\bbobina montada\b/i, 'bobina cargada'],
    [/\bcarretes?\b/i, 'bobina'],
  ],
  fr: [
    [/\bsetups?\b/i, 'plan'],
    [/\bdécongel/i, 'réchauffer'],
    [/\bconnectez-vous\b/i, 'identifiez-vous'],
    [/\bresponsable\b(?! qualité)/i, 'chef d’équipe'],
    [/\ba été déconnecté\b/i, 'session de … fermée'],
  ],
  pt: [
    [/\bbobinas?\b/i, 'rolo'],
    [/\bdescongela/i, 'climatizar'],
    [/\bfeederes\b/i, 'feeders'],
    [/\b(d[ao]s?|nest[ae]|no) fábrica\b/i, 'planta'],
    [/\bno registro\b/i, 'log'],
    [/\barmazém\b/i, 'estoque'],
  ],
  pl: [
    [/\brozmro/i, 'ogrzewać'],
    [/\bszpul/i, 'rolka'],
    [/\blist[ay] kontroln/i, 'checklista'],
  ],
  hu: [
    [/táblagép/i, 'tablet'],
    [/\bpasskey/i, 'azonosítókulcs'],
    [/\bítélet/i, 'eredmény'],
    [/felenged/i, 'felmelegedni'],
    [/\bletiltott tekercs/i, 'zárolt tekercs'],
  ],
  vi: [
    [/máy tính bảng/i, 'tablet'],
    [/bài gá/i, 'setup'],
    [/passkey/i, 'khóa đăng nhập'],
    [/nối cuộn/i, 'nối liệu'],
    [/danh sách kiểm tra/i, 'checklist'],
  ],
  zh: [
    [/相机/, '摄像头'],
    [/料位/, '站位'],
    [/(?<!计数)站点/, '计数站'],
    [/巡检/, '对料'],
    [/解冻/, '回温'],
  ],
  ko: [
    [/세요/, '십시오'],
    [/모델 교체/, '기종 교체'],
    [/해동/, '상온 복귀'],
  ],
  de: [
    [/\bUrteil/, 'Ergebnis'],
    [/aufgetaut/i, 'erwärmt'],
    [/\bRundgang\b/, 'Kontrollrunde'],
  ],
  ja: [
    [/ロード/, 'セット'],
    [/解凍/, '常温に戻す'],
  ],
};

const before = language.peek();
beforeAll(async () => {
  await Promise.all(languages.map(fetchEveryArea));
});
afterAll(() => {
  language.value = before;
});

function allSaid(code: Language, fact: number): readonly Said[] {
  language.value = code;
  const names = Object.keys(spoken.en) as AreaName[]; // filled by area
  return names.flatMap((name) => sentences(spoken[code][name], name, () => fact));
}

const tell = ({ where, text }: Said, instead: string) => `${where}: ${text} (${instead})`;

describe.each(Object.keys(notSaid) as (keyof typeof notSaid)[])('%s', (code) => {
  test('has one word for one thing', () => {
    const said = allSaid(code, 5);
    expect(said.length).toBeGreaterThan(1000);
    const wrong = (notSaid[code] ?? []).flatMap(([word, instead]) =>
      said.filter(({ text }) => word.test(text)).map((each) => tell(each, instead)),
    );
    expect(wrong).toEqual([]);
  });
});

test('French has no-break spaces inside quotes and before : ; ? !', () => {
  const broken = allSaid('fr', 5).filter(({ text }) => /\S [:;?!»]|« /.test(text));
  expect(broken).toEqual([]);
});

// The rules of both languages count 0 as one (Unicode CLDR, plural rules): a form for one with a written 1 would say 1 of nothing.
test.each(['fr', 'pt'] as const)('nothing is never told as 1 in %s', (code) => {
  const five = new Map(allSaid(code, 5).map(({ where, text }) => [where, text]));
  const isOne = (text: string) => /\b1\b/.test(text);
  expect(allSaid(code, 0).filter(({ where, text }) => isOne(text) && !isOne(five.get(where) ?? ''))).toEqual(
    [],
  );
});
