/** How each quantity is measured at a bench: a name, and two sentences beside the drawing of the jaws. */

import type { JawDrawingKind } from '../../drawing/jaw-kinds.ts';

export type HelpTopic =
  | 'plug'
  | 'metal under key'
  | 'rod'
  | 'root depth'
  | 'over the ball'
  | 'ball'
  | 'stands up by'
  | 'long stack'
  | 'ball and pin'
  | 'pin length'
  | 'pin diameter'
  | 'known set'
  | 'play'
  | 'play in sleeve'
  | 'sleeve'
  | 'sleeve play'
  | 'sleeve chambers'
  | 'master pin'
  | 'chamber diameter'
  | 'chamber position'
  | 'cut position'
  | 'cap depth'
  | 'driver'
  | 'spring solid'
  | 'spring free'
  | 'rest depth'
  | 'root flat'
  | 'blade height'
  | 'tip'
  | 'caliper closed'
  | 'stop short'
  | 'shop rule';

/** The drawing that shows where the jaws go. */
export const HELP_DRAWINGS: Readonly<Record<HelpTopic, JawDrawingKind>> = {
  plug: 'plugAcross',
  'metal under key': 'metalUnderKey',
  rod: 'rodToFloor',
  'root depth': 'rootDepth',
  'over the ball': 'overBall',
  ball: 'ballDiameter',
  'stands up by': 'standsUpBy',
  'long stack': 'ballAndPin',
  'ball and pin': 'ballAndPin',
  'pin length': 'pinLength',
  'pin diameter': 'pinDiameter',
  'known set': 'ballAndPin',
  play: 'clearanceStrip',
  'play in sleeve': 'clearanceStrip',
  sleeve: 'sleeveAcross',
  'sleeve play': 'sleeveStrip',
  'sleeve chambers': 'chamberDiameter',
  'master pin': 'masterPinLength',
  'chamber diameter': 'chamberDiameter',
  'chamber position': 'chamberPosition',
  'cut position': 'cutPosition',
  'cap depth': 'capDepth',
  driver: 'driverLength',
  'spring solid': 'springSolid',
  'spring free': 'springFree',
  'rest depth': 'restDepth',
  'root flat': 'rootFlat',
  'blade height': 'bladeHeight',
  tip: 'tipPosition',
  'caliper closed': 'caliperClosed',
  'stop short': 'stopShort',
  'shop rule': 'shopRule',
};

export const HELP: Readonly<Record<HelpTopic, { readonly title: string; readonly text: string }>> = {
  plug: {
    title: 'Plug, across the solid part',
    text: 'At a right angle to the row of chambers, front and back. Top to bottom, the jaws would land on the edges of the holes.',
  },
  'metal under key': {
    title: 'Metal under the key',
    text: "Key in, from the plug's lowest point up to the key's bottom edge. It belongs to this key in this plug.",
  },
  rod: {
    title: 'Rod to the floor',
    text: 'Key out. Stand a rod or drill shank in a chamber, on the floor the key rides on; read from its foot to the crest.',
  },
  'root depth': {
    title: 'Root depth: metal left under the cut',
    text: "One jaw along the key's bottom edge, the knife edge of the other across the blade in the root. Slide for the smallest reading.",
  },
  'over the ball': {
    title: 'Over the ball',
    text: "Lay a ball in the cut. One jaw on the ball, the other flat on the key's bottom edge. No root flat or angle is needed.",
  },
  ball: {
    title: 'The ball',
    text: 'Across the ball, turned once or twice. Balls of one size in a bag differ very little.',
  },
  'stands up by': {
    title: 'Stands up by',
    text: 'Key in the plug, ball and a pin surely too long in the chamber. Zero the caliper across the plug beside it, then read across the pin.',
  },
  'long stack': {
    title: 'The ball + pin that stands up',
    text: 'Measured together, seated. The same long pin can do for every chamber.',
  },
  'ball and pin': {
    title: 'Ball + bottom pin, measured together',
    text: "Ball in the pin's dimple, both standing in a hole through a bit of bar on a flat plate. A tilted pin reads long.",
  },
  'pin length': {
    title: 'Pin, tip to crown',
    text: 'Between its highest points, held square: one degree of tilt reads several thousandths long.',
  },
  'pin diameter': { title: 'Pin, across', text: 'Across the body of the pin, away from its edges.' },
  'known set': {
    title: 'A set known to work',
    text: 'Ball + bottom pin that turned with this key, chamber by chamber. They tell the height without any measuring of the plug.',
  },
  play: {
    title: 'Play between plug and shell',
    text: 'Plug pushed down: the thickest feeler or strip that still goes in at the top.',
  },
  'play in sleeve': {
    title: 'Play between plug and sleeve',
    text: 'Plug in the sleeve, pushed down: the thickest feeler or strip that still goes in at the top.',
  },
  sleeve: {
    title: 'Sleeve, across the outside',
    text: 'At a right angle to the row of chambers. The outer shear line lies on this round.',
  },
  'sleeve play': {
    title: 'Play between sleeve and shell',
    text: 'Sleeve in the shell, pushed down: the thickest feeler or strip that still goes in at the top.',
  },
  'sleeve chambers': {
    title: "Sleeve's chambers, across",
    text: "The largest drill shank that drops in without force. Usually drilled together with the plug's.",
  },
  'master pin': {
    title: 'Master pin, end to end',
    text: 'Held square between the jaws. A thin one tilts easily: turn it a little and take the smallest reading.',
  },
  'chamber diameter': {
    title: 'Chamber, across',
    text: 'The largest drill shank that drops in without force.',
  },
  'chamber position': {
    title: 'Where a chamber sits',
    text: 'From the front face to the far side of a drill shank standing in the chamber, less half the shank.',
  },
  'cut position': {
    title: 'Where a cut sits',
    text: 'From the stop to the middle of the cut. Or: mark the blade, seat it, press and twist each pin; the bright dots are where they sit.',
  },
  'cap depth': {
    title: "Shell's chamber",
    text: "From the shell's bore to the underside of the cap or plug that closes the chamber.",
  },
  driver: { title: 'Driver, end to end', text: 'Between its ends, held square to the jaws.' },
  'spring solid': {
    title: 'Spring, squeezed solid',
    text: 'Squeeze it between the jaws until it is solid, and read.',
  },
  'spring free': { title: 'Spring, free', text: 'Its length lying on the bench.' },
  'rest depth': {
    title: 'Sinks by',
    text: 'Key out, let ball and pin down in their chamber: how far below the crest does the top lie?',
  },
  'root flat': {
    title: 'Root flat',
    text: 'Width of the flat at the bottom of a cut. Skip it if the jaws do not reach; over the ball needs none.',
  },
  'blade height': { title: 'Blade, not cut', text: 'From the bottom edge to the top, where nothing is cut.' },
  tip: { title: 'Tip', text: 'Where the blade ends, from the stop; and how high its nose stands.' },
  'caliper closed': {
    title: 'The caliper, closed',
    text: 'Wipe the jaws, close them with your usual force, and read. Readings from now on are corrected by it.',
  },
  'stop short': {
    title: 'Stops short',
    text: 'How far the key stops before its shoulder, or its tip, is home. Past home is minus.',
  },
  'shop rule': {
    title: 'Shop rule',
    text: 'A split this close to its line counts as level.',
  },
};
