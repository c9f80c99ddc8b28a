/** The words of the station's pages, of sets and of what is printed, in German. */
import type { Words } from '../words.ts';

export const GERMAN_STATION: Words['station'] = {
  language: 'Sprache des Lernens',
  atTheBench: 'An der Werkbank',
  forTeachers: 'Für alle, die unterrichten',
  pages: {
    ten: 'Ein Stift, zehnmal',
    practice: 'Ein Übungszylinder',
    record: 'Ihr Blatt',
    teach: 'Eine Reihe zusammenstellen',
    seal: 'Einen Übungszylinder versiegeln',
  },
  kept: {
    heading: 'Was aufbewahrt wird',
    lead: 'Ihre Vorhersagen, Ihr Name, Ihre Lesungen und die Sprache bleiben in diesem Browser, nirgends sonst.',
    save: 'Als Datei sichern',
    forget: 'Alles vergessen',
    forgotten: 'Nichts davon wird mehr aufbewahrt.',
    read: 'Eine gesicherte Datei zurückholen',
    replaceTitle: 'Ersetzen, was aufbewahrt ist?',
    replaces: {
      one: 'Was hier aufbewahrt ist, darunter {count} Runde, wäre dann weg.',
      other: 'Was hier aufbewahrt ist, darunter {count} Runden, wäre dann weg.',
    },
    inFile: { one: 'Die Datei enthält {count} Runde.', other: 'Die Datei enthält {count} Runden.' },
    yes: 'Durch die Datei ersetzen',
    no: 'Lassen, wie es ist',
    stays: 'Nichts wurde geändert.',
    back: { one: 'Zurückgeholt: {count} Runde.', other: 'Zurückgeholt: {count} Runden.' },
    lost: {
      one: '{count} Runde der Datei ließ sich nicht lesen und fehlt.',
      other: '{count} Runden der Datei ließen sich nicht lesen und fehlen.',
    },
    faults: {
      'not one':
        'Das ist keine Datei von Lernenden. Wählen Sie die, die „Als Datei sichern“ hier geschrieben hat.',
      damaged: 'Diese Datei ist beschädigt: Ihr Ende oder ihre Runden fehlen. Nichts wurde geändert.',
      newer:
        'Diese Datei stammt von einer neueren Fassung dieses Programms. Laden Sie die Seite neu und lesen Sie sie dann.',
    },
  },
  files: {
    saved: 'Gesichert als {name}.',
    failed: 'Die Datei konnte nicht geschrieben werden. Wählen Sie einen anderen Ort oder Namen.',
  },
  lengths: {
    wrong:
      '„{typed}“ ist keine Länge, die hier genommen wird. Schreiben Sie eine zwischen {from} und {to}, zum Beispiel {example}.',
    meant: '„{typed}“ kann mehreres bedeuten. Was ist gemeint?',
    missing: 'Noch leer: {what}.',
  },
};

export const GERMAN_TEACH: Words['teach'] = {
  heading: 'Eine Reihe zusammenstellen',
  lead: 'Wählen Sie Lektionen und ihre Reihenfolge. Wer den Link oder die Datei öffnet, bekommt genau diese, mit denselben Zahlen. Weder Link noch Datei enthält etwas von einem Auftrag.',
  chosen: 'In der Reihe',
  others: 'Nicht in der Reihe',
  noneChosen: 'Noch keine Lektion: Nehmen Sie eine aus der Liste dazu.',
  add: '{title}: dazunehmen',
  remove: '{title}: herausnehmen',
  earlier: '{title}: früher',
  later: '{title}: später',
  seed: 'Runde',
  seedNote: 'Eine ganze Zahl von 0 bis 999999. Dieselbe Zahl gibt allen dieselben Maße.',
  seedWrong: 'Runde: „{typed}“ ist keine ganze Zahl von 0 bis 999999. Beispiel: 4711.',
  tolerance: 'Eine Rechnung gilt innerhalb von',
  toleranceNote: 'Orte, die nach Augenmaß gesetzt werden, gelten innerhalb des Doppelten.',
  link: 'Link',
  copy: 'Link kopieren',
  copied: 'Link kopiert.',
  notCopied: 'Der Browser ließ den Link nicht in die Zwischenablage. Markieren und kopieren Sie ihn.',
  save: 'Als Datei sichern',
  fileName: 'Lektionen',
  open: 'Eine Datei mit einer Reihe öffnen',
  tryIt: 'Die Reihe öffnen, wie Lernende es tun',
  inSet: { one: 'Eine Reihe mit {count} Lektion', other: 'Eine Reihe mit {count} Lektionen' },
  lessonOf: 'Lektion {number} von {count} dieser Reihe',
  next: 'Nächste der Reihe: {title}',
  end: 'Das war die letzte Lektion der Reihe. Ihr Blatt steht darunter.',
  leave: 'Die Reihe verlassen, alle Lektionen sehen',
  faults: {
    heading: 'Diese Reihe lässt sich nicht öffnen',
    'cut off': 'Ihr Ende fehlt: „{part}“. Bitten Sie noch einmal darum, und kopieren Sie alles.',
    changed: 'Sie wurde unterwegs verändert: „{part}“. Bitten Sie noch einmal darum.',
    'not a set':
      'Das ist keine Reihe von Lektionen. Wählen Sie die Datei, die „Als Datei sichern“ hier geschrieben hat.',
    newer:
      'Sie stammt von einer neueren Fassung dieses Programms. Laden Sie die Seite neu und öffnen Sie sie dann.',
    'no lessons': 'Es ist keine Lektion darin. Bitten Sie um eine, die welche hat.',
    'no such lesson':
      'Eine Lektion „{part}“ gibt es hier nicht. Laden Sie die Seite neu, oder bitten Sie um eine andere Reihe.',
    twice: 'Die Lektion „{part}“ ist zweimal darin. Bitten Sie um eine Reihe, die jede einmal hat.',
    seed: 'Ihre Runde, „{part}“, ist keine ganze Zahl von 0 bis 999999. Bitten Sie noch einmal darum.',
    unit: 'Ihre Einheit, „{part}“, ist weder in noch mm. Bitten Sie noch einmal darum.',
    tolerance:
      'Ihre Toleranz, „{part}“, liegt nicht zwischen 0,0051 und 0,127 mm. Bitten Sie noch einmal darum.',
  },
};

export const GERMAN_PAPER: Words['paper'] = {
  key: 'Lösungen',
  showKey: 'Die Lösungen zeigen',
  hideKey: 'Die Lösungen verbergen',
  keyNote:
    'Nichts schützt diese Lösungen: Wer den Link hat, kann sie sich zeigen lassen. Halten Sie das Papier von Lernenden fern.',
  page: 'Blatt der Lernenden',
  print: 'Drucken',
  printNote: 'Auf A4 oder Letter. Um es als Datei zu behalten, in eine PDF drucken.',
  name: 'Name',
  nameNote: 'Bleibt er leer, ist eine Linie zum Schreiben da.',
  date: 'Datum',
  round: 'Runde {seed}, in {unit}',
  within: 'Rechnungen gelten innerhalb von {by}.',
  asked: 'Gefragt',
  right: 'Richtig',
  seen: 'Gesehen',
  why: 'Warum',
  predicted: 'Vorhergesagt',
  difference: 'Unterschied',
  noPrediction: 'nichts',
  asPredicted: 'wie vorhergesagt',
  otherwise: 'anders',
  tooLarge: '{by} zu groß',
  tooSmall: '{by} zu klein',
  notReached: 'nicht erreicht',
  nothing: 'Noch keine Frage beantwortet. Sagen Sie zuerst etwas vorher: Es steht dann hier.',
  first: 'Die erste Vorhersage jeder Frage zählt.',
  tally: {
    one: '{right} von {count} Vorhersage traf zu.',
    other: '{right} von {count} Vorhersagen trafen zu.',
  },
  benchWork: 'An der Werkbank',
};
