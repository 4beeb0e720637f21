import type { words as english } from '../en/lines.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  add: 'ラインを追加する',
  edit: '変更する',
  editOf: (name) => `${name}を変更する`,
  machines: (count) => `機械${count}台`,
  slots: (count) => `${count}スロット`,
  fromSheets:
    '段取り表ファイルからしかわかっていないスロットがあります。ラインを開き、機械に書かれたとおりの名前にしてください。',
  newTitle: '新しいライン',
  newName: (number) => `ライン${number}`,
  name: '名前',
  zone: 'タイムゾーン',
  zoneHelp: 'ラインのある場所。例：Asia/Tokyo',
  help: 'バンクごとに、最初と最後のスロットを機械に書かれたとおりに入力してください。',
  bankOf: (number) => `バンク${number}`,
  removeOf: (number) => `バンク${number}を外す`,
  first: '最初のスロット',
  last: '最後のスロット',
  addAcross: (slot) => `反対側を追加する：${slot}`,
  addMachine: (slot) => `次の機械を追加する：${slot}`,
  addBank: 'バンクを追加する',
  holdsTrays: 'トレイ（フィーダーなし）',
  trays: 'トレイ',
  lanes: {
    title: 'レーン',
    help: 'コンベアは2つの製品を同時に流せます。生産はレーンごと、部品は同じスロットから取ります。',
    add: 'レーンを追加する',
    name: (number) => `レーン${number}の名前`,
    called: (line, number) => `${line} レーン${number}`,
    removeOf: (number) => `レーン${number}を外す`,
    held: {
      runs: (lane) => `${lane}は生産中です。先に生産を終了してください。`,
      reels: (slots) => `このレーンだけが使うものを先に外してください：${slots}。`,
      open: 'このレーンに未完了のものがあります：保留中のリール、引き継ぎ、段取り替え、チェックリスト、全数照合、クリームはんだ、カウントステーション、準備済みフィーダー、台車。先に終わらせてください。',
    },
  },
  picture: 'ラインの見え方',
  save: 'ラインを保存する',
  saved: (name) => `${name}を保存しました。`,
  faults: {
    'no-number': 'どちらも末尾は数字にしてください：M1-F-001とM1-F-025。',
    differs: '違ってよいのは末尾の数字だけです。',
    'not-from-one': '最初のスロットは1番にしてください。',
    backwards: '最後の番号が最初の番号より小さくなっています。',
    'too-many': '1つのバンクは500スロットまでです。',
    twice: 'このバンクはもうあります。',
  },
  obstacles: {
    ranges: (count) =>
      count === 1
        ? '上で印の付いたバンクを直してください。'
        : `上で印の付いた${count}つのバンクを直してください。`,
    'name-missing': '名前を入力してください。',
    'lanes-alike': 'レーンごとに別の名前を付けてください。',
    'zone-unknown': '一覧からタイムゾーンを選んでください。',
    'no-banks': '先に1つのバンクのスロットを入力してください。',
    lost: (slots, count) =>
      count === 1
        ? `スロット${slots}は使用中です。残してください。`
        : `使用中の${count}スロットがなくなります：${slots}。残してください。`,
  },
};
