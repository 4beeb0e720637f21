import type { PackageFamily } from '../../../../shared/floor/vocabulary.ts';
import type { ValueSource } from '../../../../shared/moisture/values.ts';
import type { words as english } from '../en/moisture.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  level: (msl) => `MSL ${msl}`,
  left: (span) => `フロアライフ残り${span}`,
  leftUntil: (span, clock) => `フロアライフ残り${span}、${clock}まで`,
  unopened: (span) => `未開封：フロアライフ${span}`,
  noLimit: 'この環境では制限なし',
  over: 'フロアライフ切れ',
  overSince: (clock) => `${clock}からフロアライフ切れ`,
  baking: 'オーブン中',
  bakeShort: 'ベーキングが表より短い',
  bakeLet: (name) => `短いベーキングを有効扱い：${name}`,
  letBake: 'ベーキングを有効にする',
  letBakeTitle: (reel) => `${reel}のベーキングを有効にしますか`,
  letBakeWhat: (f) =>
    `ベーキング${f.hours} h${f.celsius === null ? '' : `、${f.celsius} °C`}。${f.wanted === null ? '表に該当する行がありません。' : `表の要求は${f.wanted} h です。`}`,
  letBakeHelp:
    '有効にすると、フロアライフはベーキング終了時から数え直し、このベーキングを理由に保留しません。有効なのは1回だけで、次に短いベーキングがあれば再び保留します。',
  letBakeWhy: '有効とする理由は？',
  letBakeDone: (reel) => `${reel}：ベーキングを有効にしました。`,
  letBakeFor: 'このベーキング',
  letBakeOnce: '今回だけ',
  letBakeAlways: '今後も有効',
  hotOver: (hours) => `90 °C 超が合計${hours} h`,
  labelTime: 'レベル6：ベーキング後、ラベルの時間を入力',
  families: {
    bga: 'BGA',
    lga: 'LGA',
    pqfp: 'PQFP',
    mqfp: 'MQFP',
    qfp: 'QFP',
    tqfp: 'TQFP',
    lqfp: 'LQFP',
    plcc: 'PLCC',
    qfn: 'QFN',
    sop: 'SOP',
    tsop: 'TSOP',
    soic: 'SOIC',
    sot: 'SOT',
    chip: 'チップ',
    other: 'どれでもない',
  } as Readonly<Record<PackageFamily, string>>,
  sources: {
    own: '自社所有の規格書',
    copy: '公開版と照合済み',
    memory: '記憶による、未照合',
  } as Readonly<Record<ValueSource, string>>,
  restsOn: (f) =>
    `${f.classes.length === 1 ? `区分${f.classes[0]}` : `区分${[...f.classes].sort().join('または')}（短いほうで計算）`} · ${f.celsius} °C、${f.humidity} % · ${f.edition}`,
  classOpen:
    'パッケージが完全にはわからないため、最も厳しい区分で計算します。技術者が「工場」の「部品とフィーダー」で入力できます。',
  labelHours: 'ラベルの時間（h）',
  labelHoursHelp: 'レベル6：袋に印字されたフロアライフ。ベーキング終了から数えます。',
  badLabelHours: 'ラベルの時間を1〜9999で入力してください。',
  hotSoFar: (hours, most) => `90 °C 超のベーキングはこれまで${hours} h。合計の上限は${most} h です。`,
  hotLimit: 'この上限は記憶によります',
  bakeAdvice: (f) => `表の要求：${f.options}（${f.source}）。`,
  bakeOption: (hours, celsius) => `${celsius} °C で${hours} h`,
  or: 'または',
  bakeLarge: '125 °C・96 h の行は大型 BGA と積層ダイ用です。パッケージ不明の間はこれで計算します。',
  dry: '乾燥保管中',
  open: '袋・オーブン',
  title: (reel) => `${reel}のフロアライフ`,
  where: 'どこにありますか',
  airs: { floor: 'フロアで開封状態', dry: '防湿庫または密封袋', bake: 'オーブンの中' },
  hours: '何時間前ですか',
  hoursHelp: '0 = 今。前のことなら、それからの時間数。',
  humidity: 'そこの相対湿度',
  humidities: { 5: '5 % 以下', 10: '10 % 以下' } as Readonly<Record<number, string>>,
  ovenAir: 'オーブン内の相対湿度',
  ovenAirs: { dry: '5 % 以下', moist: 'それより高い、またはわからない' },
  ovenAirHelp:
    '125 °C 未満では、表は乾燥空気にだけ当てはまります。それ以外では、班長がベーキングを有効にする必要があります。',
  ovenAirMissing: 'オーブンの湿度を選んでください',
  celsius: 'オーブン温度（°C）',
  celsiusHelp: 'テープやリールは40 °C までのものが多くあります。袋のラベルを確認してください。',
  bakeCaution: '高温：オーブンでは手袋を着用してください。袋のラベルと現場の規則を優先してください。',
  resetHelp:
    'リールを再び出したら、ここで入力してください。本体とレベルに対して表が求めるより短いベーキングでは、フロアライフは戻りません。その場合は班長の判断が必要です。',
  badHours: '0〜9999時間で入力してください。',
  badCelsius: '30〜150 °C で入力してください。',
  climate: (f) =>
    f.computed !== f.entered
      ? `フロアの${f.entered.celsius} °C・${f.entered.humidity} % は表の範囲外です。最も厳しい行（${f.computed.celsius} °C・${f.computed.humidity} %）で計算します。工程技術者に聞いてください。`
      : f.isEntered
        ? `${f.entered.celsius} °C・湿度${f.entered.humidity} % までのフロア用、ライン規則から。`
        : `${f.entered.celsius} °C・湿度${f.entered.humidity} % までのフロア用：ライン自身の値は誰も入力していません。`,
  yes: '保存する',
  written: (reel) => `${reel}：保存しました。`,
  ends: (slot, life, out) => `${slot}：フロアライフは${life}まで、リールは${out}までもちます。`,
  isOver: (slot, life) => `${slot}：${life}からフロアライフ切れです。`,
  endsAct: 'それまでに別のリールを付けてください。このリールは自社の規則で乾燥またはベーキングしてください。',
  overAct: '使用をやめてください。それ以降に装着した部品は班長が判断します。',
  toBake: (reels) => `フロアライフ切れ、先にベーキング：${reels}`,
};
