/** The words of what is done with real parts, in German. */
import type { Words } from '../words.ts';

export const GERMAN_TEN: Words['ten'] = {
  idea: 'Die Anzeige sagt 0,3345, also ist es 0,3345.',
  lead: 'Nehmen Sie einen Stift und Ihren Messschieber. Messen Sie die Länge, nehmen Sie ihn heraus, schließen Sie die Schenkel, messen Sie wieder: zehnmal, mit Sorgfalt.',
  predict: 'Zuerst: Wie weit werden die größte und die kleinste Lesung auseinanderliegen?',
  predictNote: 'Legen Sie es fest, dann messen Sie.',
  lock: 'Festlegen und messen',
  locked: 'Sie erwarteten {by} zwischen der größten und der kleinsten.',
  caliper: 'Womit Sie messen',
  calipers: {
    'digital caliper': 'Digitaler Messschieber',
    'dial caliper': 'Messschieber mit Uhr',
    micrometer: 'Bügelmessschraube',
  },
  careful: 'Mit Sorgfalt',
  hurried: 'In Eile',
  hurriedLead:
    'Jetzt derselbe Stift zehnmal, so schnell Sie können: Schenkel nicht abwischen, Stift nicht ausrichten. Keine Pflicht, aber lehrreich.',
  reading: 'Lesung {number}',
  more: { one: 'Noch {count} Lesung.', other: 'Noch {count} Lesungen.' },
  result: 'Was sie sagen',
  mean: 'Mitte aller (Mittelwert)',
  apart: 'Größte weniger kleinste',
  deviation: 'Streuung einer Lesung (Standardabweichung)',
  meanDoubt: 'Der Mittelwert aus zehn gilt auf etwa ±',
  oneDoubt: 'Eine einzelne gilt auf etwa ±',
  splitDoubt: 'Eine Trennstelle aus vier Längen, jede einmal so gelesen: ±',
  doubtNote:
    'Neunzehnmal von zwanzig. Der eigene Fehler des Messschiebers ({own}) steckt darin und wird mit mehr Lesungen nicht kleiner.',
  expected: 'Sie erwarteten {expected}; es waren {apart}.',
  compare:
    'In Eile gilt eine Lesung auf ±{hurried}, mit Sorgfalt auf ±{careful}. Eine Trennstelle, in Eile gelesen: ±{split}.',
  picture: 'Lesungen mit Sorgfalt{hurried}, von {from} bis {to}; der Mittelwert ist {mean}.',
  pictureHurried: ' und in Eile',
  startOver: 'Von vorn beginnen',
  bench:
    'Tun Sie es morgen noch einmal mit demselben Stift. Hat sich die Mitte bewegt, sehen Sie nach der Null Ihres Messschiebers.',
};

export const GERMAN_PRACTICE: Words['practice'] = {
  seal: {
    lead: 'Schreiben Sie die wahren Maße eines Übungszylinders, wie sein Hersteller sie angibt oder wie Sie sie mit dem Besten gemessen haben, was Sie haben. Sie werden unter einem Passwort versiegelt; Lernende messen den Zylinder und werden daran gemessen.',
    label: 'Was auf dem Zylinder steht',
    labelExample: 'zum Beispiel P 7',
    chambers: 'Kammern',
    passphrase: 'Passwort',
    again: 'Noch einmal',
    short: 'Passwort: {count} Zeichen sind bald erraten; nehmen Sie 10 oder mehr, zum Beispiel vier Wörter.',
    differ: 'Noch einmal: Die beiden sind nicht gleich. Schreiben Sie beide neu.',
    labelMissing: 'Name: Schreiben Sie, was auf dem Zylinder steht, zum Beispiel P 7.',
    button: 'Versiegeln und Datei sichern',
    layOut: 'Versiegeln und hier bereitlegen',
    working: 'Wird versiegelt: mit Absicht langsam, damit niemand viele Passwörter probieren kann.',
    done: 'Versiegelt. Die Maße sind nicht mehr auf dieser Seite.',
    protects: 'Was schützt',
    protectsText:
      'Die Maße stehen in der Datei nur unter Ihrem Passwort, im offenen age-Format. Sie stehen nicht auf dem Bildschirm, nicht in dem, was ein Vorleseprogramm sagt, nicht im Speicher des Browsers.',
    protectsNot: 'Was nicht schützt',
    protectsNotText:
      'Ein Passwort, das sich erraten lässt. Name, Einheit und Zahl der Kammern sind nicht versiegelt. Sobald Sie zum Bewerten das Passwort schreiben, sind die Maße im Speicher dieser Seite, bis sie verlassen wird: Bleiben Sie dabei. Ein verlorenes Passwort ist ein verlorener Schlüssel.',
    fileName: 'Uebungszylinder',
  },
  lead: 'Messen Sie den Zylinder auf Ihrer Werkbank und schreiben Sie, was Sie lesen. Ist alles da, öffnet, wer unterrichtet, das Siegel: Erst werden Ihre Lesungen bewertet, dann die wahren Maße gezeigt.',
  none: 'Kein Übungszylinder liegt bereit.',
  open: 'Die Datei eines Übungszylinders öffnen',
  put: 'Weglegen',
  card: '{label}, zu lesen in {unit}',
  figures: {
    plug: 'Kern, Durchmesser',
    floor: 'Metall unter dem Schlüssel',
    root: 'Restmaß, Einschnitt {number}',
    pin: 'Kugel + Kernstift, {number}',
  },
  once: 'Einmal gemessen',
  key: 'Der Schlüssel',
  stacks: 'In den Kammern',
  mark: 'Bewerten lassen',
  marking: 'Passwort dessen, der unterrichtet',
  markButton: 'Siegel öffnen und bewerten',
  working: 'Wird geöffnet: mit Absicht langsam.',
  wrong: 'Dieses Passwort öffnet es nicht. Schreiben Sie es noch einmal; Großbuchstaben zählen.',
  damaged:
    'Was unter dem Siegel liegt, ist beschädigt oder gehört zu einem anderen Zylinder. Bitten Sie noch einmal um die Datei.',
  rules: 'Eine Lesung gilt innerhalb von {reading}, eine Säule innerhalb von {stack}.',
  within: 'innerhalb',
  off: 'daneben',
  marks: {
    one: '{right} von {count} Lesung innerhalb.',
    other: '{right} von {count} Lesungen innerhalb.',
  },
  stackMarks: {
    one: '{right} von {count} Säule innerhalb.',
    other: '{right} von {count} Säulen innerhalb.',
  },
  marked: 'Bewertet. Die Lesungen bleiben, wie sie sind; die wahren Maße sind noch verborgen.',
  release: 'Die wahren Maße zeigen',
  released: 'Die wahren Maße sind zu sehen.',
  what: 'Was',
  read: 'Gelesen',
  markHead: 'Bewertung',
  truth: 'Wahr',
  difference: 'Gelesen weniger wahr',
  stack: 'Säule {number}: Trennstelle von der Linie',
  again: 'Neu messen',
  faults: {
    'not one':
      'Das ist nicht die Datei eines Übungszylinders. Wählen Sie die, die unter „Einen Übungszylinder versiegeln“ gesichert wurde.',
    damaged: 'Diese Datei ist beschädigt. Bitten Sie noch einmal darum.',
    newer:
      'Diese Datei stammt von einer neueren Fassung dieses Programms. Laden Sie die Seite neu und öffnen Sie sie dann.',
  },
};
