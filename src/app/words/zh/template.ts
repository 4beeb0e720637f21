import type { TemplateFault } from '../../../../shared/checklist/steps.ts';
import type { StepCondition, StepKind } from '../../../../shared/floor/checklist.ts';
import type { words as english } from '../en/template.ts';
import type { Sentences } from '../words.ts';

const kinds: Readonly<Record<StepKind, string>> = {
  tick: '勾选',
  measure: '测量值',
  scan: '扫描',
  choice: '选择',
  photo: '照片',
  note: '备注',
  sign: '签名',
  known: '由应用检查',
};

const conditions: Readonly<Record<StepCondition, string>> = {
  always: '总是',
  'side-changes': '换面时',
  'stencil-changes': '换钢网时',
  'product-changes': '换产品时',
  'program-changes': '换程序时',
};

const faults: Readonly<Record<TemplateFault['code'], string>> = {
  'no-title': '请给检查表起名称。',
  'no-steps': '检查表没有步骤。',
  'step-twice': '同一步骤有两次。',
  'no-text': '缺文字。',
  'limits-crossed': '下限高于上限。',
  'no-options': '选择至少要两个选项。',
  'right-not-listed': '有一个正确答案不在选项中。',
  'no-unit': '测量值需要单位。',
  'nothing-known': '请选择必须成立什么。只有换线检查表能要求它。',
  'signatures-differ': '每个签名都需要角色。',
};

export const words: Sentences<typeof english> = {
  kinds,
  conditions,
  faults,
  times: { running: '产线运行时', stopped: '停线时' },
  version: (version, steps) => `版本 ${version} · ${steps} 步`,
  edit: '编辑',
  title: '名称',
  language: '添加语言',
  noLanguage: '不添加',
  text: '文字',
  group: '标题',
  caution: '注意',
  kind: '回答方式',
  time: '时间',
  condition: '何时要求',
  mandatory: '必做',
  least: '至少',
  most: '至多',
  unit: '单位',
  expects: '扫描必须得到的文字',
  options: '选项，用逗号隔开',
  right: '正确答案，用逗号隔开',
  signature: (number) => `签名 ${number}`,
  noSignature: '无',
  wants: '扫描什么',
  wantNames: {
    stencil: '钢网',
    paste: '锡膏罐',
    program: '程序',
    feeder: '本厂的飞达',
    slot: '本产线的站位',
    reel: '本厂的料盘',
    other: '现场的其他码',
  },
  knows: '必须成立什么',
  factNames: {
    moves: '没有剩余的飞达移动',
    slots: '每个站位都有核对过的料盘',
    'first-panel': '首件拼板已检查且正确',
  },
  up: '提前',
  down: '推后',
  remove: '移除',
  add: '添加步骤',
  done: '完成',
  save: (version) => `存为版本 ${version}`,
  saved: (version) => `版本 ${version} 已保存。已打开的检查表不变。`,
  help: '版本从不改变。已打开和已结束的检查表保持打开时的版本。',
  newGroup: '其他',
};
