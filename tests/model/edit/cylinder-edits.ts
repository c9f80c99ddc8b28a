/** Edits of cylinder and settings, each with what it is done to; see changes.golden.test.ts. */
import {
  changeChamber,
  plugDiameterOf,
  setCapDepth,
  setChamberDiameter,
  setChamberPosition,
  setClearance,
  setKeywayWidth,
  setLies,
  setPlugDiameter,
  setRattle,
  setTurn,
} from '../../../src/model/edit/edit-cylinder.ts';
import { addToDo, setHidesBitting, setNoteField, toDo } from '../../../src/model/edit/edit-note.ts';
import { setNumbering, setShopRule, setTitle, setUnit } from '../../../src/model/edit/edit-settings.ts';
import {
  setCrestDrop,
  setJawEdge,
  setLooseness,
  setThreshold,
} from '../../../src/model/edit/edit-thresholds.ts';
import {
  closedReading,
  currentInstrument,
  type InstrumentKind,
  setClosedReading,
  setInstrumentFigure,
  takeUpInstrument,
  usualInstrument,
} from '../../../src/model/edit/instruments.ts';
import type { Job } from '../../../src/model/schema/job-schema.ts';
import type { Edits } from '../../support/edit-text.ts';
import { changed } from '../../support/job-builder.ts';
import { inches, statedInches } from '../../support/values.ts';

export const CYLINDER_EDITS: Edits = {
  'plug diameter, hardly other': (job) => setPlugDiameter(job, 'cylinder', inches(0.511)),
  'plug diameter of a large one': (job) => setPlugDiameter(job, 'cylinder', inches(0.7)),
  'plug diameter taken away, of the second': (job) => setPlugDiameter(job, 'b-cylinder', undefined),
  'plug diameters': (job) =>
    ['cylinder', 'b-cylinder', 'none'].map((id) => `${id} ${plugDiameterOf(job, id)}`),
  'play at the outer line': (job) => setClearance(job, 'cylinder', 'outer-line', inches(0.005)),
  'rattles tight': (job) => setRattle(job, 'cylinder', 'inner-line', 'tight'),
  'rattles normally': (job) => setRattle(job, 'cylinder', 'inner-line', 'normal'),
  'rattles loose, in mm': (job) => setRattle(setUnit(job, 'mm'), 'b-cylinder', 'b-line', 'loose'),
  'lies centred at the inner line': (job) => setLies(job, 'cylinder', 'inner-line', 'centred'),
  'turns a quarter one way': (job) => setTurn(job, 'b-cylinder', 90, 'one'),
  'chamber 2 lies elsewhere': (job) => setChamberPosition(job, 'cylinder', 'chamber-2', inches(0.4)),
  'chamber 2 is open again': (job) =>
    changeChamber(job, 'cylinder', 'chamber-2', ({ closed, ...chamber }) =>
      closed === true ? chamber : { ...chamber, closed: true },
    ),
  'chambers of the sleeve are wider': (job) => setChamberDiameter(job, 'cylinder', 'sleeve', inches(0.125)),
  'chambers of the second plug are not known': (job) =>
    setChamberDiameter(job, 'b-cylinder', 'b-plug', undefined),
  'caps lie deeper': (job) => setCapDepth(job, 'cylinder', inches(0.5)),
  'caps are not known': (job) => setCapDepth(job, 'b-cylinder', undefined),
  'slot is wider': (job) => setKeywayWidth(job, 'cylinder', inches(0.09)),
  'slot is not known': (job) => setKeywayWidth(job, 'cylinder', undefined),
  'end play, of the second': (job) => setLooseness(job, 'b-cylinder', 'endPlay', inches(0.006)),
  'slot, of the first': (job) => setLooseness(job, 'cylinder', 'keywayWidth', inches(0.07)),
  'end play taken away': (job) => setLooseness(job, 'cylinder', 'endPlay', undefined),
  'crest lies lower': (job) => setCrestDrop(job, 'cylinder', inches(0.003)),
  'crest not looked at': (job) => setCrestDrop(job, 'cylinder', undefined),
  'crest of the second': (job) => setCrestDrop(job, 'b-cylinder', inches(0.002)),
};

const read = (job: Job, session: string | null) =>
  changed(job, (copy) => {
    copy.keys[1]!.cuts[0]!.rootDepth!.readings[0]!.session = session;
  });
const check = (newId: () => string) => ({ newId, at: '2026-03-05' });

export const SETTING_EDITS: Edits = {
  title: (job) => setTitle(job, 'Boat house'),
  'unit mm': (job) => setUnit(job, 'mm'),
  'numbered from the tip': (job) => setNumbering(job, 'tip'),
  'shop rule': (job) => setShopRule(job, statedInches(0.002)),
  'a threshold': (job) => setThreshold(job, 'springMargin', inches(0.03, 0.04)),
  'another threshold': (job) => setThreshold(job, 'keyMoved', inches(0.01)),
  'one threshold usual again': (job) => setThreshold(job, 'crestLow', undefined),
  'all thresholds usual again': (job) =>
    setThreshold(setThreshold(job, 'crestLow', undefined), 'springMargin', undefined),
  'first threshold': (job) =>
    setThreshold(
      setThreshold(setThreshold(job, 'crestLow', undefined), 'springMargin', undefined),
      'plugSpread',
      inches(0.002),
    ),
  'edge of the jaw': (job) => setJawEdge(job, 'caliper', inches(0.031, 0.03)),
  'edge of the jaw taken away': (job) => setJawEdge(job, 'dial', undefined),
  'instrument in hand': (job) => currentInstrument(job),
  'no instrument in hand': (job) =>
    currentInstrument(changed(job, (copy) => void (copy.settings.instrument = null))),
  'picks up an instrument there is': (job, newId) => takeUpInstrument(job, 'dial caliper', newId),
  'picks up one there is none of': (job, newId) => takeUpInstrument(job, 'dial indicator', newId),
  'a figure of an instrument': (job) => setInstrumentFigure(job, 'micrometer', 'repeatabilityMm', 0.002),
  'read closed': (job) => closedReading(job),
  'read closed, without a zero check': (job) =>
    closedReading(changed(job, (copy) => void (copy.settings.session = null))),
  'reads closed, nothing read since': (job, newId) => setClosedReading(job, inches(0.0015), check(newId)),
  'reads closed, something read since': (job, newId) =>
    setClosedReading(read(job, 'noon'), inches(0.0015), check(newId)),
  'reads closed for the first time': (job, newId) =>
    setClosedReading(
      changed(job, (copy) => void (copy.settings.session = null)),
      inches(0.0015),
      check(newId),
    ),
  'reads closed without an instrument': (job, newId) => {
    const bare = changed(job, (copy) => void (copy.settings.instrument = null));
    return setClosedReading(bare, inches(0.0015), check(newId)) === bare;
  },
  'zero check ended': (job, newId) => setClosedReading(job, undefined, check(newId)),
  'usual instruments': () =>
    (
      ['digital caliper', 'dial caliper', 'micrometer', 'dial indicator', 'other'] satisfies InstrumentKind[]
    ).flatMap((kind) => [
      usualInstrument(kind, `${kind}, in`, 'in'),
      usualInstrument(kind, `${kind}, mm`, 'mm'),
    ]),
  'work to do': (job) => toDo(job),
  'work to do that stands there': (job) => addToDo(job, 'Cut the key.'),
  'more work to do': (job) => addToDo(job, 'Oil it.'),
  'work to do there is no room for': (job) => addToDo(job, 'x'.repeat(20_000)),
  'work to do, to the last character': (job) => {
    const room = 20_000 - 'File the pin.\nCut the key.\n'.length;
    return [room, room + 1].map((length) => addToDo(job, 'x'.repeat(length)) === job);
  },
  'a field written': (job) => setNoteField(job, 'shared', 'technician', ' B. Invented '),
  'a field that stands so': (job) => setNoteField(job, 'shared', 'technician', 'A. Invented'),
  'a field of the same name on the other page': (job) => setNoteField(job, 'restricted', 'technician', 'C.'),
  'a field emptied': (job) => setNoteField(job, 'restricted', 'remarks', ' '),
  'an empty field left empty': (job) => setNoteField(job, 'restricted', 'keyway', ' '),
  'bitting hidden': (job) => setHidesBitting(job, true),
  'bitting hidden and shown': (job) => setHidesBitting(setHidesBitting(job, true), false),
};
