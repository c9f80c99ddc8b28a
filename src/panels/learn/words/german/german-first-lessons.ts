/** The words of the first lessons in German. */
import type { LessonWords } from '../lesson-words.ts';

const PARTS = { 'bottom-pin': 'Der Kernstift', driver: 'Der Gehäusestift' };
const TURNS = { turns: 'Er dreht', rubs: 'Er dreht, aber reibt', stops: 'Er dreht nicht' };
const WHY_CROSSES =
  'Zu hoch: Das Teil unter der Trennstelle, der Kernstift, ragt ins Gehäuse. Zu tief: Das Teil darüber, der Gehäusestift, hängt in den Kern.';
const WHY_TURNS =
  'Zu tief kann die Kante des Kerns einen Gehäusestift mit gebrochener Kante heben, bis zu einem Punkt. Zu hoch gibt es nur das Spiel zwischen Kern und Gehäuse: Der Stift braucht es auf und reibt, und darüber dreht nichts.';
const CASES = {
  high: 'Die Trennstelle ist zu hoch',
  right: 'Die Trennstelle stimmt',
  low: 'Die Trennstelle ist zu tief',
};
const WHY_ONE =
  'Allein, ohne Gehäusestift, kann ein Stift nur zu hoch sein: Dann dreht nichts. Mit dem Gehäusestift zeigt sich auch, was zu tief ist. Zwei Proben trennen die drei Fälle, ohne Messschieber.';
const TOPS = { domed: 'Nur der ballige', both: 'Beide', neither: 'Keiner' };
const WHY_TOPS =
  'Ein balliges Ende folgt der Rundung des Kerns. Ein flaches Ende gleicher Länge steht an den Ecken aus der Rundung heraus und trifft das Gehäuse zuerst: Es muss tiefer sitzen.';

export const GERMAN_FIRST_LESSONS = {
  'which-part': {
    title: 'Welches Teil hält den Kern fest?',
    idea: 'Solange der Stift nicht zu lang ist, dreht der Kern.',
    steps: {
      'which-turn': {
        ask: 'Drei Kernstifte für diese eine Kammer. Einer reicht bei eingeführtem Schlüssel gerade bis an die Scherlinie, einer ist länger, einer kürzer. Mit welchen dreht der Kern?',
        options: {
          right: 'Nur mit dem, der die Linie erreicht',
          shorter: 'Mit diesem und auch mit dem kürzeren',
          longer: 'Mit diesem und auch mit dem längeren',
        },
        why: 'Der Kern dreht, wenn die Trennstelle, wo Kernstift und Gehäusestift sich berühren, an der Linie liegt. Dann bleibt jedes Teil auf seiner Seite.',
      },
      'stops-longer': {
        ask: 'Der längere Stift ist drin. Welches Teil hält den Kern fest?',
        options: PARTS,
        why: 'Die Trennstelle ist zu hoch. Der Kernstift gehört zum Kern, steht aber im Gehäuse: Er hält die beiden zusammen.',
      },
      'stops-shorter': {
        ask: 'Jetzt ist der kürzere Stift drin. Welches Teil hält den Kern fest?',
        options: PARTS,
        why: 'Die Trennstelle ist zu tief. Die Feder drückt den Gehäusestift dem Kernstift nach: Er hängt im Kern, während sein oberer Teil im Gehäuse bleibt.',
      },
      'broken-edge': {
        ask: 'Derselbe kürzere Stift. Der Gehäusestift hatte eine scharfe Kante; dieser hat eine gebrochene, eine Fase ringsum. Dreht der Kern?',
        options: { turns: 'Er dreht', 'does-not': 'Er dreht nicht' },
        why: 'Die Kante des Kerns kommt unter die Fase und hebt den Gehäusestift heraus. Eine zu tiefe Trennstelle kann trotzdem drehen; das hängt am Ende des Gehäusestifts. Einer zu hohen hilft nichts.',
      },
    },
    bench:
      'Nehmen Sie eine Kammer, einen Schlüssel, einen Gehäusestift und drei Stifte verschiedener Länge. Schlüssel einführen und den Kern mit jedem probieren. Sehen Sie nach, welches Teil klemmt.',
  },
  'high-or-low': {
    title: 'Zu hoch oder zu tief: Welches Teil steht quer?',
    idea: 'Ein Spalt und eine Überdeckung sind dasselbe, ein paar Hundertstel hin oder her.',
    steps: {
      'crosses-high': {
        ask: 'Schlüssel drin, die Trennstelle steht {by} über der Linie. Welches Teil steht quer zur Linie?',
        options: PARTS,
        why: WHY_CROSSES,
      },
      'crosses-low': {
        ask: 'Schlüssel drin, die Trennstelle liegt {by} unter der Linie. Welches Teil steht quer zur Linie?',
        options: PARTS,
        why: WHY_CROSSES,
      },
      'turns-high': {
        ask: 'Die Trennstelle ist {by} zu hoch. Der Kernstift ist ballig, der Gehäusestift hat eine gebrochene Kante, das Spiel ist üblich. Dreht der Kern?',
        options: TURNS,
        why: WHY_TURNS,
      },
      'turns-low': {
        ask: 'Die Trennstelle ist {by} zu tief. Der Kernstift ist ballig, der Gehäusestift hat eine gebrochene Kante, das Spiel ist üblich. Dreht der Kern?',
        options: TURNS,
        why: WHY_TURNS,
      },
    },
    bench:
      'Legen Sie einen Streifen Fühlerlehre unter den Schlüssel, um eine Säule ein wenig zu heben, und spüren Sie, wie der Kern von frei über reibend zu fest übergeht.',
  },
  'deep-cut': {
    title: 'Tiefer Einschnitt, langer Stift',
    idea: 'Ein tiefer Einschnitt braucht einen kurzen Stift.',
    steps: {
      'which-longer': {
        ask: 'Zwei Einschnitte. Einschnitt 1 lässt {one} Metall stehen, Einschnitt 2 lässt {two} stehen. Welcher braucht den längeren Stift?',
        options: { 'cut-1': 'Einschnitt 1', 'cut-2': 'Einschnitt 2' },
        why: 'Wo mehr weggeschnitten ist, beginnt der Stift tiefer und muss doch dieselbe Linie erreichen: Er muss länger sein.',
      },
      'how-long': {
        ask: 'Kern weniger Metall unter dem Schlüssel ist {across}. Einschnitt {number} lässt {root} stehen. Wie lang muss sein Stift sein, um die Linie zu erreichen?',
        why: 'Kern, weniger das Metall unter dem Schlüssel, weniger das, was unter dem Einschnitt steht. Werkstätten nennen die erste Differenz den wirksamen Durchmesser.',
      },
    },
    bench:
      'Ordnen Sie die Stifte eines Zylinders nach Länge neben ihrem Schlüssel: Der längste gehört zum tiefsten Einschnitt.',
  },
  'root-depth': {
    title: 'Restmaß ist, was stehen bleibt',
    idea: 'Das Restmaß sagt, wie viel weggeschnitten ist.',
    steps: {
      'what-is-left': {
        ask: 'Der Halm ist {blade} hoch. Der Fräser ging {down} tief. Wie groß ist das Restmaß?',
        why: 'Das Restmaß ist das Metall, das bleibt, vom Grund des Einschnitts bis zur Unterkante des Schlüssels. Es trägt den Stift.',
      },
    },
    bench:
      'Schließen Sie den Messschieber um den Schlüssel: ein Schenkel im Einschnitt, einer an der Unterkante. Was Sie ablesen, ist das Restmaß.',
  },
  'key-floor': {
    title: 'Was unter dem Schlüssel liegt',
    idea: 'Die Unterkante des Schlüssels liegt so tief wie die des Kerns.',
    steps: {
      'how-long': {
        ask: 'Der Kern misst {plug} im Durchmesser. Unter dem Schlüssel liegen {floor} Metall des Kerns. Der Einschnitt lässt {root} stehen. Wie lang muss der Stift sein?',
        why: 'Der Schlüssel steht auf dem Grund seines Kanals, nicht auf der Unterseite des Kerns. Wer dieses Metall vergisst, wählt jeden Stift um genau so viel zu lang.',
      },
    },
    bench:
      'Führen Sie den Schlüssel in den leeren Kern und messen Sie von der Unterseite des Kerns zur Unterkante des Schlüssels.',
  },
  'ball-in-dimple': {
    title: 'Eine Kugel in der Mulde ihres Stifts',
    idea: 'Kugel und Stift zusammenzählen; oder die Kugel weglassen, sie ist ja so klein.',
    steps: {
      'how-high': {
        ask: 'Der Stift ist {pin} lang, von Ende zu Ende. Die Kugel misst {ball} und sitzt in einer Mulde, deren Rand {mouth} weit ist. Wie hoch stehen die beiden zusammen?',
        options: {
          added: 'Stift und Kugel zusammengezählt, {added}',
          seated: 'Etwas weniger als beide zusammengezählt',
          'pin-alone': 'So hoch wie der Stift allein, {pin}',
        },
        why: 'Die Kugel sinkt in die Mulde, bis sie am Rand anliegt. Hier stehen die beiden {seated} hoch: Messen Sie sie zusammen, wann immer es geht.',
      },
    },
    bench:
      'Messen Sie einen Stift, seine Kugel, dann beide zusammen zwischen den Schenkeln. Die Summe der ersten zwei ist mehr als das dritte.',
  },
  'one-at-a-time': {
    title: 'Eine Kammer nach der anderen',
    idea: 'Wenn es nicht dreht, weiß man nicht, in welche Richtung es daneben ist.',
    steps: {
      'not-even-alone': {
        ask: 'Schlüssel drin, eine Kammer gefüllt. Mit dem Kernstift allein, ohne Gehäusestift, dreht der Kern nicht. Mit dem Gehäusestift auch nicht. Was ist es?',
        options: CASES,
        why: WHY_ONE,
      },
      'only-alone': {
        ask: 'Schlüssel drin, eine Kammer gefüllt. Mit dem Kernstift allein, ohne Gehäusestift, dreht der Kern. Mit dem Gehäusestift dreht er nicht. Was ist es?',
        options: CASES,
        why: WHY_ONE,
      },
      'both-turn': {
        ask: 'Schlüssel drin, eine Kammer gefüllt. Mit dem Kernstift allein, ohne Gehäusestift, dreht der Kern. Mit dem Gehäusestift dreht er auch. Was ist es?',
        options: CASES,
        why: WHY_ONE,
      },
    },
    bench:
      'Leeren Sie einen Zylinder und füllen Sie eine Kammer: erst den Stift allein, dann Stift und Gehäusestift. Schreiben Sie beides auf, bevor Sie die nächste füllen.',
  },
  'end-shapes': {
    title: 'Gleiche Länge, anderes Ende',
    idea: 'Gleiche Länge, gleicher Stift.',
    steps: {
      'which-turn-level': {
        ask: 'Zwei Stifte gleicher Länge, beide an der Linie. Der in Kammer 1 ist ballig, der in Kammer 2 flach. Mit welchen dreht der Kern?',
        options: TOPS,
        why: WHY_TOPS,
      },
      'which-turn-below': {
        ask: 'Zwei Stifte gleicher Länge, beide {by} unter der Linie. Der in Kammer 1 ist ballig, der in Kammer 2 flach; die Gehäusestifte haben eine breite gebrochene Kante. Mit welchen dreht der Kern?',
        options: TOPS,
        why: WHY_TOPS,
      },
      'which-turn-above': {
        ask: 'Zwei Stifte gleicher Länge, beide {by} über der Linie. Der in Kammer 1 ist ballig, der in Kammer 2 flach. Mit welchen dreht der Kern?',
        options: TOPS,
        why: WHY_TOPS,
      },
    },
    bench:
      'Sehen Sie das Ende eines Stifts gegen das Licht an, dann entlang des Kerns mit dem Stift an seinem Platz: Folgt es der Rundung?',
  },
  'ball-on-sides': {
    title: 'Eine Kugel, die auf den Flanken reitet',
    idea: 'Die Kugel sitzt auf dem Grund des Einschnitts.',
    steps: {
      where: {
        ask: 'Der Einschnitt hat einen Grund von {flat} zwischen Flanken mit 90°. Die Kugel misst {ball}. Der Stift wurde gewählt, als läge die Kugel auf dem Grund. Wo wird die Trennstelle stehen?',
        why: 'Eine Kugel, die für ihren Grund groß ist, berührt die zwei Flanken, bevor sie den Grund erreicht. Sie steht höher, und alles auf ihr auch.',
      },
    },
    bench:
      'Legen Sie eine Kugel in einen Einschnitt und messen Sie über sie. Messen Sie dann das Restmaß: Kugel und Restmaß zusammengezählt können weniger sein.',
  },
} as const satisfies Record<string, LessonWords>;
