import type { words as english } from '../en/moisture.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  level: (msl) => `MSL ${msl}`,
  left: (span) => `${span} Offenzeit übrig`,
  leftUntil: (span, clock) => `${span} Offenzeit übrig, bis ${clock}`,
  unopened: (span) => `noch nicht geöffnet: ${span} Offenzeit`,
  noLimit: 'keine Grenze in dieser Luft',
  over: 'Offenzeit abgelaufen',
  overSince: (clock) => `Offenzeit abgelaufen seit ${clock}`,
  baking: 'im Ofen',
  bakeShort: 'kürzer gebacken, als die Tabelle sagt',
  bakeLet: (name) => `kurzes Backen gilt: ${name}`,
  letBake: 'Backen gelten lassen',
  letBakeTitle: (reel) => `Das Backen von ${reel} gelten lassen?`,
  letBakeWhat: (f) =>
    `${f.hours} h gebacken${f.celsius === null ? '' : ` bei ${f.celsius} °C`}. ${f.wanted === null ? 'Die Tabelle hat dafür keine Zeile.' : `Die Tabelle verlangt ${f.wanted} h.`}`,
  letBakeHelp:
    'Gilt es, beginnt die Offenzeit an seinem Ende neu, und dieses Backen hält die Rolle nicht mehr zurück. Es gilt einmal: Ein weiteres kurzes Backen wird wieder zurückgehalten.',
  letBakeWhy: 'Warum gilt es?',
  letBakeDone: (reel) => `${reel}: Das Backen gilt.`,
  letBakeFor: 'Das Backen',
  letBakeOnce: 'Nur dieses Mal',
  letBakeAlways: 'Gilt von jetzt an',
  hotOver: (hours) => `${hours} h über 90 °C insgesamt`,
  labelTime: 'Stufe 6: backen, dann die Zeit von ihrem Etikett eingeben',
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
    other: 'Keines davon',
  },
  sources: {
    own: 'das eigene Exemplar des Werks',
    copy: 'mit einem veröffentlichten Exemplar verglichen',
    memory: 'aus dem Gedächtnis, nicht verglichen',
  },
  restsOn: (f) =>
    `${f.classes.length === 1 ? `Klasse ${f.classes[0]}` : `Klasse ${[...f.classes].sort().join(' oder ')} (die kürzere zählt)`} · ${f.celsius} °C, ${f.humidity} % · ${f.edition}`,
  classOpen:
    'Das Gehäuse ist nicht ganz bekannt, daher zählt die schlechteste Klasse. Ein Ingenieur kann es unter Werk, Bauteile eingeben.',
  labelHours: 'Zeit auf ihrem Etikett, Stunden',
  labelHoursHelp: 'Stufe 6: die auf dem Beutel gedruckte Offenzeit, gezählt ab dem Ende des Backens.',
  badLabelHours: 'Geben Sie die Stunden des Etiketts ein: 1 bis 9999.',
  hotSoFar: (hours, most) => `Bisher ${hours} h über 90 °C gebacken. Die Grenze ist insgesamt ${most} h.`,
  hotLimit: 'diese Grenze ist aus dem Gedächtnis',
  bakeAdvice: (f) => `Die Tabelle verlangt ${f.options} (${f.source}).`,
  bakeOption: (hours, celsius) => `${hours} h bei ${celsius} °C`,
  or: 'oder',
  bakeLarge:
    'Die Zeile mit 96 h bei 125 °C ist für große BGA und gestapelte Chips; sie zählt, solange das Gehäuse nicht bekannt ist.',
  dry: 'im Trockenlager',
  open: 'Beutel / Ofen',
  title: (reel) => `Offenzeit von ${reel}`,
  where: 'Wo ist sie?',
  airs: { floor: 'Offen in der Halle', dry: 'Schrank oder versiegelter Beutel', bake: 'Im Ofen' },
  hours: 'Vor wie vielen Stunden?',
  hoursHelp: '0 = jetzt. War es früher: die Stunden seitdem.',
  humidity: 'Relative Feuchte dort',
  humidities: { 5: '5 % oder weniger', 10: '10 % oder weniger' },
  ovenAir: 'Relative Feuchte im Ofen',
  ovenAirs: { dry: '5 % oder weniger', moist: 'Mehr, oder niemand weiß es' },
  ovenAirHelp:
    'Unter 125 °C gilt die Tabelle nur für trockene Luft. In anderer Luft muss ein Schichtleiter das Backen gelten lassen.',
  ovenAirMissing: 'Wählen Sie, wie trocken der Ofen ist',
  celsius: 'Ofen, Grad Celsius',
  celsiusHelp: 'Viele Gurte und Rollen vertragen höchstens 40 °C: Sehen Sie auf das Etikett des Beutels.',
  bakeCaution:
    'Heiß: Tragen Sie am Ofen Handschuhe. Das Etikett des Beutels und Ihre örtlichen Regeln gehen vor.',
  resetHelp:
    'Geben Sie es hier ein, wenn die Rolle wieder heraus ist. Ein kürzeres Backen, als die Tabelle für Körper und Stufe verlangt, stellt die Offenzeit nicht wieder her: Dann muss ein Schichtleiter entscheiden.',
  badHours: 'Geben Sie 0 bis 9999 Stunden ein.',
  badCelsius: 'Geben Sie 30 bis 150 °C ein.',
  climate: (f) =>
    f.computed !== f.entered
      ? `Die ${f.entered.celsius} °C und ${f.entered.humidity} % der Halle liegen außerhalb der Tabelle. Ihre schlechteste Zeile zählt: ${f.computed.celsius} °C und ${f.computed.humidity} %. Fragen Sie den Prozessingenieur.`
      : f.isEntered
        ? `Für eine Halle bis ${f.entered.celsius} °C und ${f.entered.humidity} % Feuchte, aus den Linienregeln.`
        : `Für eine Halle bis ${f.entered.celsius} °C und ${f.entered.humidity} % Feuchte: Niemand hat die Werte der Linie eingegeben.`,
  yes: 'Speichern',
  written: (reel) => `${reel}: gespeichert.`,
  ends: (slot, life, out) => `${slot}: Offenzeit endet ${life}, die Rolle würde bis ${out} reichen.`,
  isOver: (slot, life) => `${slot}: Offenzeit abgelaufen seit ${life}.`,
  endsAct: 'Setzen Sie bis dahin eine andere Rolle auf. Trocknen oder backen Sie diese nach Ihren Regeln.',
  overAct: 'Nicht weiter verwenden. Ein Schichtleiter entscheidet über die seitdem bestückten Bauteile.',
  toBake: (reels) => `Offenzeit abgelaufen, zuerst backen: ${reels}`,
};
