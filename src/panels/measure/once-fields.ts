/** The fields that are asked once for the cylinder, the key and the pair. */
import {
  plugDiameterOf,
  setCapDepth,
  setChamberDiameter,
  setClearance,
  setPlugDiameter,
} from '../../model/edit/edit-cylinder.ts';
import { setBladeHeight, setRootFlat, setTip } from '../../model/edit/edit-key.ts';
import { setKeywayFloorHeight, setPlugMinusFloor, setStopShort } from '../../model/edit/edit-seating.ts';
import { setShopRule } from '../../model/edit/edit-settings.ts';
import { setBallDiameter, setPinDiameter } from '../../model/edit/edit-stack.ts';
import {
  USUAL_CLEARANCE,
  USUAL_SHOP_RULE,
  type UsualValue,
  usualSizes,
} from '../../model/edit/usual-values.ts';
import { assumedValue, statedValue } from '../../model/edit/values.ts';
import type { Job } from '../../model/schema/job-schema.ts';
import type { Id, LengthValue } from '../../model/schema/leaf.ts';
import type { Look } from '../shared/look.ts';
import { type FieldSpec, PLAUSIBLE } from './field-spec.ts';

type Sizes = ReturnType<typeof usualSizes>;

/** What a field falls back to when it is emptied: the usual value, assumed. */
function usual(job: Job, cylinder: Id, pick: (sizes: Sizes) => UsualValue): LengthValue {
  const { unit } = job.settings;
  return assumedValue(pick(usualSizes(plugDiameterOf(job, cylinder)))[unit], unit);
}

export function plugField({ bench, selection }: Look): FieldSpec {
  const plug = bench.cylinder.bodies[0];
  return {
    id: `body/${plug?.id ?? ''}/outerDiameter`,
    label: 'Plug diameter',
    value: plug?.outerDiameter,
    set: (job, value) => setPlugDiameter(job, selection.cylinder, value),
    plausible: PLAUSIBLE.plugDiameter,
    help: 'plug',
  };
}

export function metalUnderKeyField({ bench, selection }: Look, key: Id): FieldSpec {
  return {
    id: `seating/${key}/keywayFloorHeight`,
    label: 'Metal under the key',
    value: bench.seating?.keywayFloorHeight,
    set: (job, value) => setKeywayFloorHeight(job, selection.cylinder, key, value),
    plausible: PLAUSIBLE.metalUnderKey,
    help: 'metal under key',
  };
}

export function rodField({ bench, selection }: Look, key: Id): FieldSpec {
  return {
    id: `seating/${key}/plugMinusFloor`,
    label: 'Rod in a chamber, from the floor to the crest',
    value: bench.seating?.plugMinusFloor,
    set: (job, value) => setPlugMinusFloor(job, selection.cylinder, key, value),
    plausible: PLAUSIBLE.plugMinusFloor,
    help: 'rod',
  };
}

export function clearanceField({ bench, selection }: Look, lineIndex = 0): FieldSpec | null {
  const line = bench.cylinder.lines[lineIndex];
  if (line === undefined) return null;
  const [inner, outer] = [lineIndex, lineIndex + 1].map((i) => bench.cylinder.bodies[i]?.role ?? 'shell');
  return {
    id: `line/${line.id}/clearance`,
    label: `Play between ${inner ?? 'plug'} and ${outer ?? 'shell'}`,
    value: line.clearance,
    set: (job, value) => {
      const { unit } = job.settings;
      return setClearance(
        job,
        selection.cylinder,
        line.id,
        value ?? assumedValue(USUAL_CLEARANCE[unit], unit),
      );
    },
    plausible: PLAUSIBLE.clearance,
    help: inner === 'sleeve' ? 'sleeve play' : outer === 'sleeve' ? 'play in sleeve' : 'play',
  };
}

/** Chambers in plug and shell, pins and balls: across. */
export function diameterFields({ bench, rows, selection }: Look): FieldSpec[] {
  const { cylinder, plan } = selection;
  const [plug, shell] = [bench.cylinder.bodies[0]?.id ?? '', bench.cylinder.bodies.at(-1)?.id ?? ''];
  const holeIn = (body: Id) => rows.rows[0]?.chamber.holes.find((hole) => hole.body === body)?.diameter;
  const parts = rows.rows.find((row) => row.parts !== null)?.parts;
  const hole = (body: Id, name: string): FieldSpec => ({
    id: `chamber/all/holeDiameter/${body}`,
    label: `Chambers in the ${name}, across`,
    value: holeIn(body),
    set: (job, value) =>
      setChamberDiameter(job, cylinder, body, value ?? usual(job, cylinder, (s) => s.chamberDiameter)),
    plausible: PLAUSIBLE.diameter,
    help: 'chamber diameter',
  });
  const fields = [hole(plug, 'plug'), hole(shell, 'shell')];
  if (parts?.bottomPin != null) {
    fields.push({
      id: 'part/pins/diameter',
      label: 'Pins, across',
      value: parts.bottomPin.diameter,
      set: (job, value) => setPinDiameter(job, plan, value ?? usual(job, cylinder, (s) => s.pinDiameter)),
      plausible: PLAUSIBLE.diameter,
      help: 'pin diameter',
    });
  }
  if (parts?.ball != null) {
    fields.push({
      id: 'part/balls/diameter',
      label: 'Balls',
      value: parts.ball.diameter,
      set: (job, value) => setBallDiameter(job, plan, value ?? usual(job, cylinder, (s) => s.pinDiameter)),
      plausible: PLAUSIBLE.diameter,
      help: 'ball',
    });
  }
  return fields;
}

/** The key's blade and tip, the flat of its cuts, and how far it stops short. */
export function keyFields({ bench, selection }: Look, key: Id): FieldSpec[] {
  const { cylinder } = selection;
  const blade = bench.key;
  return [
    {
      id: `key/${key}/rootFlat`,
      label: 'Root flat, all cuts',
      value: blade?.rootFlat,
      set: (job, value) => setRootFlat(job, key, value ?? usual(job, cylinder, (s) => s.rootFlat)),
      plausible: PLAUSIBLE.rootFlat,
      help: 'root flat',
    },
    {
      id: `key/${key}/bladeHeight`,
      label: 'Blade where it is not cut',
      value: blade?.bladeHeight,
      set: (job, value) => setBladeHeight(job, key, value ?? usual(job, cylinder, (s) => s.bladeHeight)),
      plausible: PLAUSIBLE.bladeHeight,
      help: 'blade height',
    },
    {
      id: `key/${key}/tipPosition`,
      label: 'Tip, from the stop',
      value: blade?.tip?.position,
      set: (job, value) => setTip(job, key, 'position', value),
      plausible: PLAUSIBLE.position,
      help: 'tip',
    },
    {
      id: `key/${key}/noseHeight`,
      label: 'Nose, height',
      value: blade?.tip?.noseHeight,
      set: (job, value) => setTip(job, key, 'noseHeight', value),
      plausible: PLAUSIBLE.noseHeight,
      help: 'tip',
    },
    {
      id: `seating/${key}/stopShort`,
      label: 'Stops short of home by',
      value: bench.seating?.stopShort,
      set: (job, value) => setStopShort(job, cylinder, key, value),
      plausible: PLAUSIBLE.stopShort,
      help: 'stop short',
      isSigned: true,
    },
  ];
}

export function capDepthField({ rows, selection }: Look): FieldSpec {
  const { cylinder } = selection;
  return {
    id: 'chamber/all/capDepth',
    label: "Shell's chambers, bore to cap",
    value: rows.rows[0]?.chamber.capDepth,
    set: (job, value) => setCapDepth(job, cylinder, value ?? usual(job, cylinder, (s) => s.capDepth)),
    plausible: PLAUSIBLE.depth,
    help: 'cap depth',
  };
}

export function shopRuleField({ job: { settings } }: Look): FieldSpec {
  return {
    id: 'settings/shopRule',
    label: 'Counts as level within',
    value: settings.shopRule,
    set: (job, value) =>
      setShopRule(
        job,
        value === undefined
          ? statedValue(USUAL_SHOP_RULE[job.settings.unit], job.settings.unit)
          : { ...value, basis: 'stated' },
      ),
    plausible: PLAUSIBLE.shopRule,
    help: 'shop rule',
  };
}
