/**
 * The written fields of a repair note, as a shop that files its work keeps them (trade practice, no source). Those of the
 * shareable page say what was done and by whom; those of the restricted page help whoever would cut a key. A place and the
 * measurements of its key never stand on one page: the place is on the shareable one.
 */
export type NotePage = 'shared' | 'restricted';

export type NoteField = {
  /** Under this name it is kept in the job. */
  readonly name: string;
  readonly label: string;
  /** A text of several lines. */
  readonly isLong?: true;
  /** Shown while the field is empty. */
  readonly example?: string;
};

/** The head of the sheet: a title block, as on a drawing. */
export const HEAD_FIELDS: readonly NoteField[] = [
  { name: 'jobNumber', label: 'Job no.' },
  { name: 'dateIn', label: 'Date in' },
  { name: 'dateOut', label: 'Date out' },
  { name: 'technician', label: 'Technician' },
  { name: 'checker', label: 'Checked by' },
  { name: 'authorisedBy', label: 'Authorised by' },
  { name: 'basis', label: 'On what basis', example: 'written order' },
  { name: 'workOrder', label: 'Work order' },
];

export const CYLINDER_FIELDS: readonly NoteField[] = [
  { name: 'cylinder', label: 'Cylinder or tag' },
  { name: 'cylinderType', label: 'Type', example: 'rim, mortise, cam' },
  { name: 'locationCode', label: 'Location code', example: 'not the door' },
  { name: 'function', label: 'Function' },
  { name: 'cam', label: 'Cam or tailpiece', example: 'which, where it rests' },
  { name: 'keysHeld', label: 'Keys held', example: 'count, serials' },
];

export const WORK_FIELDS: readonly NoteField[] = [
  { name: 'work', label: 'What was done', isLong: true },
  { name: 'defects', label: 'Defects and wear', isLong: true },
  { name: 'partsReplaced', label: 'Parts replaced' },
  { name: 'lubricant', label: 'Lubricant' },
  { name: 'testsPassed', label: 'Tests passed', example: 'bench, door open' },
];

export const RETURN_FIELDS: readonly NoteField[] = [
  { name: 'returnedTo', label: 'Returned to' },
  { name: 'keysReturned', label: 'Keys returned', example: 'how many' },
  { name: 'scrap', label: 'Scrap destroyed' },
  { name: 'nextCheck', label: 'Next check' },
];

export const RESTRICTED_FIELDS: readonly NoteField[] = [
  { name: 'keyway', label: 'Keyway' },
  { name: 'blank', label: 'Blank' },
  { name: 'temperature', label: 'Temperature, if unusual' },
  { name: 'keptWhere', label: 'This sheet is kept', example: 'locked, where' },
  { name: 'toDo', label: 'Still to do', isLong: true },
  { name: 'remarks', label: 'Remarks', isLong: true },
];

/** Every field of the shareable page, in the order they stand there. */
export const SHARED_FIELDS: readonly NoteField[] = [
  ...HEAD_FIELDS,
  ...CYLINDER_FIELDS,
  ...WORK_FIELDS,
  ...RETURN_FIELDS,
];

/** Short and usual; what a place and its licensing ask for comes first. Trade practice, no source. */
export const CAUTIONS: readonly string[] = [
  'Local codes, licensing and the facility’s own procedure come before anything on this sheet; where they ask for a licensed locksmith, one does the work.',
  'Work only for the authorised owner.',
  'Fire and egress doors: nothing that hinders leaving or voids a label. Ask the authority in charge.',
  'Try it with the door open and the key in your hand.',
  'Springs fly: protect the eyes. Brass may hold lead: wipe wet, no compressed air, wash before eating.',
  'The numbers advise; the lock must pass the bench test.',
];
