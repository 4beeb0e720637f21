import type { Layout } from '../../scan/layouts.ts';
import type { words as english } from '../en/scanner.ts';
import type { Sentences } from '../words.ts';

const layouts: Readonly<Record<Layout, string>> = {
  us: '英語（米国）',
  uk: '英語（英国）',
  german: 'ドイツ語',
  'swiss-german': 'スイスドイツ語',
  french: 'フランス語',
  spanish: 'スペイン語',
  italian: 'イタリア語',
  swedish: 'スウェーデン語',
};

export const words: Sentences<typeof english> = {
  layouts,
  title: 'このコードをスキャナーで読んでください',
  help: 'この画面、別の画面、印刷したシートのどれからでも。このページを開いている間、スキャンはほかへ行きません。',
  codeLabel: '調整用コード',
  striped: 'バーコード専用スキャナー',
  stripedLabel: '調整用バーコード',
  stripedHelp:
    '小さい画面には幅が足りません：シートを印刷してください。バーコードは区切り文字を1種類しか持たないため、それだけを試します。',
  stripedSheet: 'バーコード専用スキャナー用：',
  print: 'シートを印刷する',
  waiting: 'スキャン待ち…',
  right: 'このスキャナーの設定は正しいです。',
  rightText: '文字、記号、区切り文字が印字どおりに届きます。',
  plainOnly: '単純なコードは読めますが、区切り文字入りのラベルは読めません。',
  plainOnlyText: 'スキャナーを下のとおりに設定するまで、そのようなラベルは拒否します。',
  wrong: 'このスキャナーはまだ信頼できません。',
  wrongText: 'これで読むと印字どおりに届きません。',
  findings: {
    'all-equal': 'すべての文字が印字どおりに届きました。',
    'half-arrived': (found, wanted) =>
      `${wanted}文字中${found}文字しか届きません：スキャンが途中で切れました。文字間の遅延をなしにするか、スキャナーを親機に近づけてください。`,
    'layout-differs': (scanner, tablet) =>
      `スキャナーは${scanner}キーボード用に打ち、タブレットは${tablet}を想定しています。スキャナーのキーボードを${tablet}にするか、タブレットの配列を${scanner}にしてください。`,
    'characters-differ':
      '文字が変わって届き、ここで知られているどの配列でも説明できません。スキャナーのキーボードをタブレットの配列に合わせ、読み直してください。',
    'case-inverted':
      '大文字と小文字が逆に届きます。Caps Lock を切り、スキャナーを文字を変えない設定にしてください。',
    'separators-lost': (names) =>
      `区切り文字が届きません（${names}）。制御文字を Ctrl＋キーまたは Alt＋テンキーで送る設定にしてください。`,
    'separator-replaced': (name, by) =>
      `区切り文字${name}が「${by}」として届きます。制御文字をそのまま送る設定にしてください。`,
    'terminator-missing':
      '最後に Enter がなく、スキャンの終わりは推測になります。スキャナーの末尾を Enter にしてください。',
    'unknown-key': (key) =>
      `スキャンの途中にキー「${key}」が来ました。そのようなキーをスキャナーの設定から外してください。`,
    slow: (pace) => `文字間が${pace} ms で遅すぎます。文字間の遅延をなしにしてください。`,
    'symbology-id-sent': (id) =>
      `スキャナーが先頭にコードの種類（${id}）を送ります。理解できるので、そのままでかまいません。`,
  },
  wanted: '印字',
  found: '届いた',
  label: {
    title: '印刷したラベルをスキャンしてください',
    help: 'スロット、フィーダー、バッジ、リールのラベルです。',
    read: 'このラベルは読めます。',
    unknown: 'このタブレットの知らないラベルです。',
    unknownHelp: 'もう一度スキャンしてください。読めなければ大きく印刷するか、先に工場に追加してください。',
  },
  arrived: '届いた内容',
  none: 'まだ何もありません。何でもスキャンしてください：制御文字も含めてここに出ます。',
  characters: (count) => `${count}文字`,
  pace: (ms) => `1文字${ms} ms`,
  endedBy: { Enter: '次に Enter', Tab: '次に Tab', silence: 'Enter なし' },
  reads: '読み取り結果',
  readsNothing: '既知のラベルではない',
  settingsTitle: 'スキャナーの設定',
  settings: [
    'キーボードとして動作（HID）。',
    'キーボードの国：タブレットと同じ。',
    '制御文字を Ctrl＋キーまたは Alt＋テンキーで送る。',
    '末尾：Enter。先頭なし。',
    '文字は印字どおり：大文字小文字を変えない。',
    '文字間の遅延なし。',
  ],
  keep: 'このスキャナーの速さをこのタブレットに保存する',
  keptNow: '保存しました。このタブレットは、この速さでスキャンと手入力を区別します。',
  isKept: 'このタブレットはスキャナーの速さを保存済みです。',
  forget: '通常の速さを使う',
  sheetTitle: 'スキャナー調整',
  sheetText: 'タブレットで「工場」の「スキャナー」を開き、このコードをスキャンしてください。',
  sheetHolds: 'コードの内容：',
  fields: {
    part: '部品',
    supplierPart: '仕入先品番',
    quantity: '数量',
    lot: 'ロット',
    dateCode: 'デートコード',
    reel: 'リール',
  },
};
