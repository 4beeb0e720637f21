import type { words as english } from '../en/find.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: 'カメラで探す',
  sweep: 'カメラで全数照合',
  title: 'リールを探す',
  help: 'タブレットをラベルに沿ってゆっくり動かしてください。',
  sweepHelp: 'スロットのラベルとそのリールのラベルを画面に入れてください。',
  on: (slot) => `${slot} にあり`,
  to: (slots) => `${slots} へ`,
  told: (wanted, barred, read) => `必要：${wanted} · 使用不可：${barred} · 読取：${read}`,
  swept: (seen, all) => `確認済み：${seen} / ${all}`,
  other: '今は不要',
  unknown: '不明',
  reading: '読取中…',
  none: 'まだ何も読み取っていません。',
  missing: '未確認',
  several: (slot) =>
    `${slot}：近くに複数のリールがあります。近づくか、スロットとリールをスキャンしてください。`,
  unsure: (slot) => `${slot}：ラベルからはどのリールか分かりません。`,
  check: 'このスロットを確認',
  times: (count) => `画面に ${count} ×`,
  kept: (count) => `確認したリール：${count}。ログに残しました。`,
  notKept: '確認した内容はログに残っていません。先にサインインしてください。',
  barred: '使用不可',
};
