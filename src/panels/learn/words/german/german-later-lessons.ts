/** The words of the later lessons in German. */
import type { LessonWords } from '../lesson-words.ts';

const HOME_TAIL =
  'Bei ganz eingeführtem Schlüssel liegt die Trennstelle an der Linie. Jetzt fehlen dem Schlüssel {short}. Was geschieht mit der Trennstelle?';
const HOME_OPTIONS = { higher: 'Sie steht höher', same: 'Sie bleibt, wo sie ist' };
const HOME_WHY =
  'Was auf einer Flanke des Einschnitts reitet, steigt, wenn der Schlüssel nicht ganz drin ist. Was auf dem Grund steht, merkt nichts, solange der Grund so weit reicht.';
const ZERO_OPTIONS = { low: 'Zu tief', level: 'An der Linie', high: 'Zu hoch' };
const ZERO_TAIL =
  'Kern, Metall unter dem Schlüssel, Restmaß und dann der Stift wurden alle damit gemessen. Die Rechnung geht auf. Wo liegt die Trennstelle wirklich?';
const ZERO_WHY =
  'Die Rechnung zieht zwei Längen von einer ab, so dass der verlangte Stift einmal falsch herauskommt. Dann wird der Stift selbst noch einmal um dasselbe falsch gelesen. Zwei Fehler, eine Richtung.';
const LINE_OPTIONS = { plug: 'Der Kern allein', together: 'Kern und Hülse zusammen', nothing: 'Nichts' };
const LINE_HEAD =
  'Um den Kern liegt eine Hülse: Die innere Linie läuft zwischen Kern und Hülse, die äußere zwischen Hülse und Gehäuse.';
const LINE_WHY =
  'Eine Linie dreht, wenn jede Kammer eine Trennstelle an ihr hat. Kammern, die ihre an verschiedenen Linien haben, halten einander fest: Jede stimmt, und nichts bewegt sich.';

export const GERMAN_LATER_LESSONS = {
  'not-home': {
    title: 'Ein Schlüssel, der nicht ganz drin ist',
    idea: 'Fast ganz drin ist drin.',
    steps: {
      'what-happens-ball': {
        ask: `Eine Kugel reitet auf beiden Flanken ihres Einschnitts. ${HOME_TAIL}`,
        options: HOME_OPTIONS,
        why: HOME_WHY,
      },
      'what-happens-point': {
        ask: `Ein spitzer Stift steht mitten auf dem Grund seines Einschnitts. ${HOME_TAIL}`,
        options: HOME_OPTIONS,
        why: HOME_WHY,
      },
      'how-much': {
        ask: 'Die Kugel reitet auf Flanken mit 45°, und dem Schlüssel fehlen {short}. Wie weit bewegt sich die Trennstelle?',
        why: 'Auf einer Flanke mit 45° steigt die Kugel so weit, wie der Schlüssel draußen ist: eins zu eins.',
      },
    },
    bench: 'Legen Sie einen Streifen Fühlerlehre zwischen Anschlag und Kern und probieren Sie das Drehen.',
  },
  'turns-when-lifted': {
    title: 'Es dreht nur, solange der Schlüssel angehoben wird',
    idea: 'Wenn Anheben hilft, muss der Stift zu lang sein.',
    steps: {
      'which-way': {
        ask: 'Der Schlüssel ist drin, und der Kern dreht nicht. Heben Sie den Schlüssel um {by} an, und er dreht. War die Trennstelle zu hoch oder zu tief?',
        options: { low: 'Zu tief', high: 'Zu hoch' },
        why: 'Wer den Schlüssel anhebt, hebt alles, was auf ihm steht. Hilft das, so war die Trennstelle zu tief. Beides sehen Sie hier mit angehobenem Schlüssel.',
      },
    },
    bench:
      'Probieren Sie an einem Zylinder, der hakt, den Schlüssel nach oben gedrückt, dann nach unten, dann ein Haar herausgezogen. Jedes sagt etwas anderes.',
  },
  'driver-length': {
    title: 'Der Gehäusestift und seine Feder',
    idea: 'Jeder Gehäusestift tut es, er füllt nur das Loch.',
    steps: {
      'which-driver': {
        ask: 'Bei gezogenem Schlüssel sinkt das obere Ende des Kernstifts {rest} unter die Linie. Welcher Gehäusestift hält den Kern gesperrt und lässt den Schlüssel trotzdem ein?',
        options: {
          one: 'Einer mit {one}',
          two: 'Einer mit {two}',
          three: 'Einer mit {three}',
        },
        why: 'Bei gezogenem Schlüssel muss der Gehäusestift quer zur Linie stehen. Beim Einführen müssen Gehäusestift und gepresste Feder unter das Ende der Kammer passen. Dazwischen liegt, was passt.',
      },
    },
    bench:
      'Drücken Sie eine Feder im Messschieber auf Block und schreiben Sie ihre Länge auf. Es ist die Zahl, die am häufigsten fehlt.',
  },
  'which-end': {
    title: 'An welchem Ende liegt Einschnitt 1?',
    idea: 'Eine Liste der Einschnitte ist eine Liste der Kammern.',
    steps: {
      'longest-pin': {
        ask: 'Eine Liste, von der Spitze des Schlüssels gezählt: Einschnitt 1 lässt {one} stehen, Einschnitt 2 {two}, Einschnitt 3 {three}. Der Anschlag hält den Schlüssel an. Von vorn gezählt, welche Kammer nimmt den längsten Stift auf?',
        options: { '1': 'Kammer 1', '2': 'Kammer 2', '3': 'Kammer 3' },
        why: 'Die Spitze geht zuerst hinein und kommt hinten an. Von der Spitze gezählt liegt Einschnitt 1 unter der letzten Kammer. Fragen Sie nach dem Ende, bevor Sie eine Liste lesen.',
      },
    },
    bench:
      'Schreiben Sie auf die Karte neben die Restmaße, wo die Zählung beginnt: „von der Reide“ oder „von der Spitze“.',
  },
  'cut-number': {
    title: 'Eine Einschnittnummer ist keine Länge',
    idea: 'Eine 4 ist vier von irgendetwas, auf jedem Schlüssel.',
    steps: {
      'what-is-left': {
        ask: 'Eine erfundene Tabelle: Nummer 0 lässt {shallowest} stehen, und jede weitere lässt {step} weniger stehen. Was lässt Nummer {number} stehen?',
        why: 'Eine Nummer ist ein Platz in einer Tabelle. In einer anderen lässt dieselbe Nummer etwas anderes stehen und zählt vielleicht sogar andersherum. Messen Sie, oder besorgen Sie die Tabelle.',
      },
    },
    bench:
      'Messen Sie die Einschnitte eines Schlüssels und suchen Sie die Stufe, die sie gemeinsam haben. Dann kennen Sie die Tabelle, oder wissen, dass es keine gibt.',
  },
  'caliper-zero': {
    title: 'Ein Messschieber, der nicht auf null steht',
    idea: 'Derselbe Fehler in jeder Lesung hebt sich auf.',
    steps: {
      'which-way-over': {
        ask: `Geschlossen zeigt der Messschieber {by} statt null: Jede Länge liest sich um so viel zu groß. ${ZERO_TAIL}`,
        options: ZERO_OPTIONS,
        why: ZERO_WHY,
      },
      'which-way-under': {
        ask: `Geschlossen zeigt der Messschieber {by} unter null: Jede Länge liest sich um so viel zu klein. ${ZERO_TAIL}`,
        options: ZERO_OPTIONS,
        why: ZERO_WHY,
      },
      'how-far-over': {
        ask: 'Jede Länge las sich {by} zu groß. Wie weit von der Linie liegt die Trennstelle?',
        why: ZERO_WHY,
      },
      'how-far-under': {
        ask: 'Jede Länge las sich {by} zu klein. Wie weit von der Linie liegt die Trennstelle?',
        why: ZERO_WHY,
      },
    },
    bench:
      'Schenkel schließen, abwischen, auf null stellen. Dann einen Stift zehnmal messen, jedes Mal neu eingelegt: Die Streuung ist Ihre eigene.',
  },
  'swapped-pins': {
    title: 'Zwei Stifte in den falschen Kammern',
    idea: 'Es ist gleich, wohin die Stifte kommen, Hauptsache, alle sind drin.',
    steps: {
      'stands-in-shell': {
        ask: 'Einschnitt 1 lässt {one} stehen, Einschnitt 2 lässt {two} stehen. Ihre zwei Stifte kamen in die Kammer des jeweils anderen. In welcher Kammer steht der Kernstift im Gehäuse?',
        options: { 'chamber-1': 'Kammer 1', 'chamber-2': 'Kammer 2' },
        why: 'Der lange Stift gehört zum tiefen Einschnitt. Über dem flachen ist er zu lang und steht im Gehäuse; über dem tiefen lässt der kurze den Gehäusestift in den Kern hängen. Einer zu hoch und einer zu tief um dasselbe: Denken Sie an zwei vertauschte Stifte.',
      },
    },
    bench:
      'Legen Sie Stifte in einer Schale in der Reihenfolge ihrer Kammern ab, vom ersten an, den Sie herausnehmen.',
  },
  'second-line': {
    title: 'Eine zweite Linie',
    idea: 'Jede Kammer hat eine Trennstelle an einer Linie, also dreht es.',
    steps: {
      'all-inner': {
        ask: `${LINE_HEAD} Alle drei Kammern haben eine Trennstelle an der inneren Linie. Was dreht?`,
        options: LINE_OPTIONS,
        why: LINE_WHY,
      },
      'all-outer': {
        ask: `${LINE_HEAD} Alle drei Kammern haben eine Trennstelle an der äußeren Linie. Was dreht?`,
        options: LINE_OPTIONS,
        why: LINE_WHY,
      },
      mixed: {
        ask: `${LINE_HEAD} Trennstelle an der inneren Linie: Kammer {inner}. Trennstelle an der äußeren Linie: Kammer {outer}. Was dreht?`,
        options: LINE_OPTIONS,
        why: LINE_WHY,
      },
    },
    bench:
      'Rechnen Sie bei zwei Schlüsseln für einen Zylinder Linie für Linie aus, was jede Säule tut, bevor Sie bestücken.',
  },
} as const satisfies Record<string, LessonWords>;
