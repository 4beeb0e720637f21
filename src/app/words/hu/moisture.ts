import type { words as english } from '../en/moisture.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  level: (msl) => `MSL ${msl}`,
  left: (span) => `${span} nyitott idő maradt`,
  leftUntil: (span, clock) => `${span} nyitott idő maradt, eddig: ${clock}`,
  unopened: (span) => `még bontatlan: ${span} nyitott idő`,
  noLimit: 'ebben a levegőben nincs határ',
  over: 'a nyitott idő lejárt',
  overSince: (clock) => `a nyitott idő ekkor lejárt: ${clock}`,
  baking: 'kemencében',
  bakeShort: 'rövidebb sütés, mint a táblázatban',
  bakeLet: (name) => `rövid sütés elfogadva: ${name}`,
  letBake: 'Sütés elfogadása',
  letBakeTitle: (reel) => `Elfogadja a sütést: ${reel}?`,
  letBakeWhat: (f) =>
    `${f.hours} h sütés${f.celsius === null ? '' : `, ${f.celsius} °C`}. ${f.wanted === null ? 'A táblázatban erre nincs sor.' : `A táblázat ${f.wanted} h-t kér.`}`,
  letBakeHelp:
    'Ha elfogadják, a nyitott idő a sütés végétől újraindul, és ez a sütés már nem tartja vissza a tekercset. Egyszer számít: egy újabb rövid sütés megint vissza lesz tartva.',
  letBakeWhy: 'Miért fogadja el?',
  letBakeDone: (reel) => `${reel}: a sütés elfogadva.`,
  letBakeFor: 'A sütés',
  letBakeOnce: 'Csak most az egyszer',
  letBakeAlways: 'Mostantól érvényes',
  hotOver: (hours) => `összesen ${hours} h 90 °C felett`,
  labelTime: '6-os szint: süsse ki, majd írja be a címkéjén lévő időt',
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
    chip: 'Chip',
    other: 'Egyik sem',
  },
  sources: {
    own: 'az üzem saját példánya',
    copy: 'egy kiadott példánnyal összevetve',
    memory: 'emlékezetből, nincs összevetve',
  },
  restsOn: (f) =>
    `${f.classes.length === 1 ? `${f.classes[0]} osztály` : `${[...f.classes].sort().join(' vagy ')} osztály (a rövidebb számít)`} · ${f.celsius} °C, ${f.humidity} % · ${f.edition}`,
  classOpen:
    'A tok nem teljesen ismert, ezért a legrosszabb osztály számít. Mérnök megadhatja: Üzem, Alkatrészek.',
  labelHours: 'A címkéjén lévő idő, óra',
  labelHoursHelp: '6-os szint: a tasakra nyomtatott nyitott idő, a sütés végétől számítva.',
  badLabelHours: 'Írja be a címke óráit: 1–9999.',
  hotSoFar: (hours, most) => `Eddig ${hours} h sütés 90 °C felett. A határ összesen ${most} h.`,
  hotLimit: 'ez a határ emlékezetből való',
  bakeAdvice: (f) => `A táblázat ezt kéri: ${f.options} (${f.source}).`,
  bakeOption: (hours, celsius) => `${hours} h, ${celsius} °C`,
  or: 'vagy',
  bakeLarge:
    'A 96 h-s, 125 °C-os táblázatsor a nagy BGA-kra és az egymásra épített chipekre szól; addig számít, amíg a tok nem ismert.',
  dry: 'szárazon tárolva',
  open: 'Tasak / kemence',
  title: (reel) => `Nyitott idő: ${reel}`,
  where: 'Hol van?',
  airs: { floor: 'Nyitva a csarnokban', dry: 'Szekrény vagy lezárt tasak', bake: 'Kemencében' },
  hours: 'Hány órája?',
  hoursHelp: '0 = most. Ha korábban volt: az azóta eltelt órák.',
  humidity: 'Relatív páratartalom ott',
  humidities: { 5: '5 % vagy kevesebb', 10: '10 % vagy kevesebb' },
  ovenAir: 'Relatív páratartalom a kemencében',
  ovenAirs: { dry: '5 % vagy kevesebb', moist: 'Több, vagy senki nem tudja' },
  ovenAirHelp:
    '125 °C alatt a táblázat csak száraz levegőre érvényes. Más levegőben műszakvezetőnek kell elfogadnia a sütést.',
  ovenAirMissing: 'Válassza ki, mennyire száraz a kemence',
  celsius: 'Kemence, Celsius-fok',
  celsiusHelp: 'Sok szalag és tekercs legfeljebb 40 °C-ot bír: nézze meg a tasak címkéjét.',
  bakeCaution: 'Forró: viseljen kesztyűt a kemencénél. A tasak címkéje és a helyi szabályok az elsők.',
  resetHelp:
    'Itt adja meg, amikor a tekercs újra kint van. Ha a sütés rövidebb, mint amit a táblázat a testéhez és szintjéhez kér, a nyitott idő nem áll vissza: akkor műszakvezetőnek kell döntenie.',
  badHours: '0–9999 órát írjon be.',
  badCelsius: '30–150 °C-ot írjon be.',
  climate: (f) =>
    f.computed !== f.entered
      ? `A csarnok ${f.entered.celsius} °C és ${f.entered.humidity} % értéke kívül esik a táblázaton. A legrosszabb sora számít: ${f.computed.celsius} °C és ${f.computed.humidity} %. Kérdezze a folyamatmérnököt.`
      : f.isEntered
        ? `Legfeljebb ${f.entered.celsius} °C és ${f.entered.humidity} % páratartalmú csarnokra, a sorszabályokból.`
        : `Legfeljebb ${f.entered.celsius} °C és ${f.entered.humidity} % páratartalmú csarnokra: a sor saját értékét senki nem adta meg.`,
  yes: 'Mentés',
  written: (reel) => `${reel}: mentve.`,
  ends: (slot, life, out) => `${slot}: a nyitott idő vége ${life}, a tekercs eddig tartana: ${out}.`,
  isOver: (slot, life) => `${slot}: a nyitott idő ekkor lejárt: ${life}.`,
  endsAct: 'Addig tegyen fel másik tekercset. Ezt szárítsa vagy süsse ki a szabályai szerint.',
  overAct: 'Ne használja tovább. Az azóta beültetett alkatrészekről műszakvezető dönt.',
  toBake: (reels) => `a nyitott idő lejárt, előbb sütés: ${reels}`,
};
