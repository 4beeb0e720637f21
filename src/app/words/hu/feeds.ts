import type { Words } from '../areas.ts';

export const words: Words<'feeds'> = {
  kinds: { tape: 'Szalag', 'cut-tape': 'Szalagdarab', tray: 'Tálca', tube: 'Rúd', bulk: 'Ömlesztett' },
  acts: { splice: 'Toldás', exchange: 'Csere', refill: 'Utántöltés' },
  label: 'Címke nyomtatása hozzá',
  warns: {
    splice: (span, clock) => `${span} múlva kifogy, kb. ${clock}. Hozza a következő darabot.`,
    exchange: (span, clock) => `${span} múlva kifogy, kb. ${clock}. Akkor a gép a cseréig áll.`,
    refill: (span, clock) => `${span} múlva kifogy, kb. ${clock}. Előtte töltse után.`,
  },
  comesNext: { splice: 'Új tekercs', exchange: 'Helyette kerül fel', refill: 'Ráöntve' },
  accepted: {
    exchange: 'Ami ott volt, levettnek számít. Nem toldás: a gép áll, amíg ez bent nincs.',
    refill: 'Innentől mindkét tétel lehetséges, amíg a feeder nincs kiürítve.',
  },
  sayFeeds: {
    tape: '',
    'cut-tape': 'Szalagdarab: nincs toldási ablak. Ott ér véget, ahol a darab.',
    tray: 'Tálca: ha üres, a gép a cseréig áll.',
    tube: 'Rúd: ha üres, a gép a cseréig áll.',
    bulk: 'Ömlesztett: töltse után, mielőtt kifogy.',
  },
  picks: {
    tape: '',
    'cut-tape': (count) => `${count} szalagdarab`,
    tray: (count) => `${count} halom tálca`,
    tube: (count) => `${count} készlet rúd`,
    bulk: (count) => `${count} csomag`,
  },
  dueNow: { splice: 'toldás most', exchange: 'csere most', refill: 'utántöltés most' },
  forLane: (lane, part, count) => `${lane}: ${part}, panelenként ${count}.`,
};
