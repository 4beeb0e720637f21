// Holds the English sentences to the style sheet in src/app/words/README.md: how long a sentence is, how hard it reads, phrases of translated
// English, a verb on each button. Every sentence is said with 5 for each of its facts; a figure counts as a word of one syllable.
// Method: grade level of Flesch and Kincaid, 0.39 words/sentences + 11.8 syllables/words - 15.59 (Kincaid, Fishburne, Rogers and
// Chissom 1975, Research Branch Report 8-75, Naval Technical Training Command).

import { beforeAll, describe, expect, test } from 'vitest';
import type { AreaName } from '../../../../src/app/words/areas.ts';
import { language, spoken } from '../../../../src/app/words/words.ts';
import { readSources } from '../../../source-scan.ts';
import { type Said, sentences } from './say-all.ts';

/** The longest sentence, in words. */
const MOST_WORDS = 20;
/** Half of all sentences have no more words than this. */
const MEDIAN_WORDS = 7;
/** The grade that all sentences together may reach, and that the sentences of one area may reach: measured, and rounded up to a half. */
const MOST_GRADE = 2.5;
const MOST_AREA_GRADE = 5;
/** A text's grade says nothing of a handful of words. */
const LEAST_WORDS = 60;

/** English that nobody says, and what is said instead. */
const phrases: readonly (readonly [phrase: RegExp, instead: string])[] = [
  [/\bhandlings? left\b/i, 'moves left'],
  [/\bin step with\b/i, 'synced'],
  [/\bgive (it|this|that) up\b/i, 'cancel'],
  [/\bgive back\b/i, 'take back, return'],
  [/\bbring (a|the) (\w+ )?(setup|sheet|file|list) in\b/i, 'import'],
  [/\b(begins|start) short\b/i, 'is short at the start'],
  [/\bset (it|them|its clock) right\b/i, 'correct it'],
  [/\bput (it|them|this|that) (aside|apart)\b/i, 'set it aside'],
  [/\b(is|are) (silent|over|held|loaded|stopped) since\b/i, 'has been … since'],
  [/\b(by|for|to) the (site|plant|line) itself\b/i, 'by the site'],
  [/\bholds? (it|this|the reel|the panel) no more\b/i, 'no longer'],
  [/\bthis very\b/i, 'this'],
  [/\b(carries|carry|carried) (it|them) surely\b/i, 'surely carries it'],
  [/\bstands? in for\b/i, 'is used for'],
  [/\b(begin|began|begun|begins) anew\b/i, 'start again'],
  [/\btold (twice|too late)\b/i, 'reported'],
  [/\bbelieves? something else\b/i, 'differs'],
  [/\bis commanded\b/i, 'it commands no machine'],
  [/\bmake a decision\b|\btake a decision\b/i, 'decide'],
  [/\bin order to\b/i, 'to'],
  [/\bplease\b/i, 'say the act alone'],
  [/\bclick\b/i, 'tap'],
  [/\btakes? (it )?along\b/i, 'includes'],
  [/\b(a|the) ticket of the server\b/i, 'a server ticket'],
  [/\bof its own kind\b|\bthe same like\b|\bmore then\b/i, 'plain comparison'],
  [/\b(actualize|informations|respectively|possibility to)\b/i, 'update, facts, each, can'],
];

/** What a button's text begins with: what the tap does. */
const verbs: readonly string[] =
  'accept add approve ask block build cancel change check choose clear close confirm continue correct count cut decide decline do dock edit end enter erase export fetch find give go hand hide hold import join keep leave let lift load lock look make measure move open paste plan practise print propose put read refresh reject release reload remove rename resume save scan scrap settle show shut sign skip splice start stop switch sync take teach test try turn type unload unlock update use withdraw'.split(
    ' ',
  );

/** Buttons whose text is no act, and why. */
const bare: Readonly<Record<string, string>> = {
  'shell.done': 'the usual word to end a step',
  'dock.enough': 'an answer to what is still asked',
  'dock.standsHere': 'an answer: what the dock asks is so',
  'change.lastPanel': 'an answer: said of the line, confirmed in the next step',
  'change.tabs.checklist': 'the name of a page that the button opens',
  'count.leftEmpty': 'an answer: what is left on the reel',
  'packages.tables.endless': 'a value that is chosen',
  'print.many.all': 'a choice among names',
  'print.many.noneOf': 'a choice among names',
  'server.rolledBackSeen': 'an answer: what the page asks to be done is done',
  'line.plusOne': 'a count that is added, as the counter shows it',
  'line.plusMany': 'a count that is added, as the counter shows it',
  'run.skippedNotKnown': 'an answer: nobody can say',
  'line.setRight': 'the figure that the tap changes',
  'line.acknowledge': 'an answer to a call',
  'warning.acknowledge': 'an answer to a call',
  'stations.clear': 'an answer: the finding is looked into',
  'trace.neither': 'an answer: neither of the two',
};

/** The sentences of a text: what ends in a full stop, a question mark or an exclamation mark. `e.g.` ends none. */
function sentencesIn(text: string): readonly string[] {
  return text
    .replace(/\be\.g\. /gi, 'for example ')
    .split(/(?<=[.!?…]”?)\s+/u)
    .filter((each) => wordsIn(each).length > 0);
}

function wordsIn(text: string): readonly string[] {
  return text.match(/[\p{L}\d][\p{L}\d’'./,-]*/gu) ?? [];
}

/** Syllables by rule: groups of vowels, without an e that is not heard at the end. A figure or a code counts as one. */
function syllablesIn(word: string): number {
  const small = word.toLowerCase().replace(/[^a-z]/g, '');
  if (small.length <= 3 || /\d/.test(word)) return 1;
  const heard = small.replace(/(?<=[^aeiouyl])(es|e)$|(?<=[aeiouy]l)e$/, '').replace(/(?<=[^td])ed$/, '');
  return Math.max(1, (heard.match(/[aeiouy]+/g) ?? []).length);
}

/** Grade level of Flesch and Kincaid for some sentences together. */
function gradeOf(sentences: readonly string[]): number {
  const words = sentences.flatMap(wordsIn);
  const syllables = words.reduce((sum, word) => sum + syllablesIn(word), 0);
  return (0.39 * words.length) / sentences.length + (11.8 * syllables) / words.length - 15.59;
}

function median(numbers: readonly number[]): number {
  return [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)] ?? 0;
}

/** Full sentences: labels and headings end in no mark, and are no prose. */
function proseIn(said: readonly Said[]): readonly string[] {
  return said.flatMap(({ text }) => sentencesIn(text)).filter((each) => /[.!?]”?$/.test(each));
}

function tooLong(said: readonly Said[]): string[] {
  return said.flatMap(({ where, text }) =>
    sentencesIn(text)
      .filter((each) => wordsIn(each).length > MOST_WORDS)
      .map((each) => `${where}: ${wordsIn(each).length} words: ${each}`),
  );
}

function translated(said: readonly Said[]): string[] {
  return said.flatMap(({ where, text }) =>
    phrases
      .filter(([phrase]) => phrase.test(text))
      .map(([, instead]) => `${where}: "${text}". Say: ${instead}.`),
  );
}

/** Keys of the texts that stand alone on a button, as the page's parts name them: `area.key`. */
function buttonKeys(source: string): readonly string[] {
  const imports = [...source.matchAll(/import \{([^}]*)\} from '[./]*words\/([\w-]+)\.ts'/g)];
  const areas = new Map(
    imports.flatMap(([, names = '', area]) => names.split(',').map((name) => [name.trim(), area] as const)),
  );
  const said = [...source.matchAll(/const (\w+) = say\((\w+)\)((?:\.\w+)*)/g)];
  return [...source.matchAll(/<Button\b[^<]*?>\s*\{(\w+)\.([\w.]+)\}\s*<\/Button>/g)].flatMap((button) => {
    const name = said
      .filter(([, as]) => as === button[1])
      .reverse()
      .find(({ index }) => index < button.index);
    const area = areas.get(name?.[2] ?? '');
    return area === undefined ? [] : [`${area}${name?.[3]}.${button[2]}`];
  });
}

function withoutVerb(said: readonly Said[]): string[] {
  return said
    .filter(({ where, text }) => {
      const [first = ''] = wordsIn(text);
      return bare[where] === undefined && !verbs.includes(first.toLowerCase());
    })
    .map(({ where, text }) => `${where}: ${text}`);
}

let all: readonly Said[] = [];
let areas: readonly (readonly [name: string, said: readonly Said[]])[] = [];
beforeAll(() => {
  language.value = 'en';
  const names = Object.keys(spoken.en) as AreaName[]; // filled by area
  areas = names.map((name) => [name, sentences(spoken.en[name], name, () => 5)] as const);
  all = areas.flatMap(([, said]) => said);
});

describe('every English sentence', () => {
  test('is short', () => {
    expect(tooLong(all)).toEqual([]);
  });

  test('is short as a rule', () => {
    expect(median(proseIn(all).map((each) => wordsIn(each).length))).toBeLessThanOrEqual(MEDIAN_WORDS);
  });

  test('reads easily, by area and all together', () => {
    expect(gradeOf(proseIn(all))).toBeLessThanOrEqual(MOST_GRADE);
    const hard = areas
      .map(([name, said]) => [name, proseIn(said)] as const)
      .filter(([, prose]) => prose.flatMap(wordsIn).length >= LEAST_WORDS)
      .map(([name, prose]) => [name, gradeOf(prose)] as const)
      .filter(([, grade]) => grade > MOST_AREA_GRADE);
    expect(hard).toEqual([]);
  });

  test('has no phrase of translated English', () => {
    expect(translated(all)).toEqual([]);
  });

  test('on a button begins with what the tap does', () => {
    const keys = readSources(['src/app'], (file) => file.endsWith('.tsx')).flatMap(({ source }) =>
      buttonKeys(source),
    );
    const onButtons = all.filter(({ where }) => keys.includes(where));
    expect(onButtons.length).toBeGreaterThan(90);
    expect(withoutVerb(onButtons)).toEqual([]);
    expect(Object.keys(bare).filter((key) => !onButtons.some(({ where }) => where === key))).toEqual([]);
  });
});

describe('the check itself', () => {
  const plant = (text: string): Said[] => [{ where: 'a.b', text }];

  test('counts words, sentences and syllables', () => {
    expect(sentencesIn('Stop the line. Why? E.g. a jam: call the lead.')).toHaveLength(3);
    expect(sentencesIn('“Surely” is right. It counts.')).toHaveLength(2);
    expect(wordsIn('Reel R-100, 1,200 parts: 0.5 mm — done.')).toEqual([
      'Reel',
      'R-100,',
      '1,200',
      'parts',
      '0.5',
      'mm',
      'done.',
    ]);
    expect(['reel', 'loaded', 'splice', 'table', 'machine', 'stopped', 'M1-F-014'].map(syllablesIn)).toEqual([
      1, 2, 1, 2, 2, 1, 1,
    ]);
  });

  test('gives the grade that the formula gives by hand', () => {
    // 9 words, 1 sentence, 12 syllables: 0.39 * 9 + 11.8 * 12 / 9 - 15.59 = 3.51 + 15.7333 - 15.59.
    expect(gradeOf(['A lead must decide before the line is loaded.'])).toBeCloseTo(3.6533, 4);
    // 7 words, 2 sentences, 7 syllables: 0.39 * 3.5 + 11.8 - 15.59.
    expect(gradeOf(['The reel is wrong.', 'Put it back.'])).toBeCloseTo(-2.425, 4);
    const hard =
      'Verification of the configuration is mandatory prior to commencement of production activities.';
    expect(gradeOf([hard])).toBeGreaterThan(MOST_AREA_GRADE);
  });

  test('finds a long sentence and a foreign phrase', () => {
    expect(tooLong(plant(`${'and so on '.repeat(7)}.`))).toHaveLength(1);
    expect(tooLong(plant(`${'and so on '.repeat(6)}.`))).toEqual([]);
    for (const planted of [
      '27 handlings left',
      'In step with the server',
      'Give it up',
      'Bring a setup in',
      'Give back',
      'M1-F-010 begins short',
      'The clock is behind: set it right.',
      'It is silent since 14:07.',
    ])
      expect(translated(plant(planted)), planted).toHaveLength(1);
  });

  test('finds a button without a verb, and reads what stands on a button', () => {
    expect(withoutVerb(plant('Checklist'))).toEqual(['a.b: Checklist']);
    expect(withoutVerb(plant('Load the slot'))).toEqual([]);
    const part = [
      "import { loadWords } from '../../words/load.ts';",
      'const words = say(loadWords);',
      "return <Button tone='act' onPress={() => go()}>{words.sweep}</Button>;",
    ].join('\n');
    expect(buttonKeys(part)).toEqual(['load.sweep']);
  });
});
