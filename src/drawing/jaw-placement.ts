/**
 * Small drawings that show where the caliper's jaws go, or what an end looks like: line art beside a field, 220 by 140
 * pixels, not to scale.
 */
import type { JawDrawingKind } from './jaw-kinds.ts';
import {
  caliperClosed,
  capDepth,
  chamberDiameter,
  chamberPosition,
  clearanceStrip,
  keyEdgeAbove,
  keyEdgeLevel,
  metalUnderKey,
  plugAcross,
  restDepth,
  rodToFloor,
  sleeveAcross,
  sleeveStrip,
  standsUpBy,
} from './jaw-scenes-cylinder.ts';
import {
  bladeHeight,
  cutPosition,
  overBall,
  rootDepth,
  rootFlat,
  stopShort,
  tipPosition,
} from './jaw-scenes-key.ts';
import {
  ballAndPin,
  ballDiameter,
  driverEndBroken,
  driverEndDomed,
  driverEndRounded,
  driverEndSharp,
  masterPinLength,
  driverLength,
  pinDiameter,
  pinLength,
  pinTipBall,
  pinTipPointed,
  pinTipRounded,
  pinTopBevelled,
  pinTopDomed,
  pinTopFlat,
  shopRule,
  springFree,
  springSolid,
} from './jaw-scenes-parts.ts';
import { SKETCH } from './jaw-sketch.ts';
import { clipped } from './close-up-metal.ts';
import { type DrawingNode, drawingRoot } from './node.ts';

type Scene = { readonly draw: () => DrawingNode[]; readonly words: string };

/** What each shows, in words for who cannot see it. */
const SCENES: Readonly<Record<JawDrawingKind, Scene>> = {
  caliperClosed: { draw: caliperClosed, words: 'Caliper jaws closed on nothing' },
  plugAcross: {
    draw: plugAcross,
    words: 'Jaws across the solid part of the plug, at right angles to the chambers',
  },
  sleeveAcross: { draw: sleeveAcross, words: 'Jaws across the outside of the sleeve' },
  sleeveStrip: { draw: sleeveStrip, words: 'A strip between sleeve and shell, at the top' },
  clearanceStrip: { draw: clearanceStrip, words: 'A strip between plug and shell, at the top' },
  keyEdgeLevel: {
    draw: keyEdgeLevel,
    words: "The key's bottom edge is level with the underside of the plug",
  },
  keyEdgeAbove: { draw: keyEdgeAbove, words: "The key's bottom edge is above the underside of the plug" },
  metalUnderKey: { draw: metalUnderKey, words: "From the underside of the plug up to the key's bottom edge" },
  rodToFloor: {
    draw: rodToFloor,
    words: 'A rod down the chamber to the floor of the keyway, read at the crest',
  },
  chamberPosition: {
    draw: chamberPosition,
    words: "From the plug's front face to the middle of the chamber",
  },
  chamberDiameter: { draw: chamberDiameter, words: 'The largest drill shank that drops into the chamber' },
  capDepth: { draw: capDepth, words: 'From the bore up the chamber to the underside of the cap' },
  restDepth: {
    draw: restDepth,
    words: "How far ball and bottom pin sink below the plug's crest with the key out",
  },
  shopRule: {
    draw: shopRule,
    words: 'Where pin and driver meet, so far above or below the shear line, still counts as level',
  },
  standsUpBy: {
    draw: standsUpBy,
    words: 'Caliper zeroed across the plug beside the chamber, then across the pin',
  },
  rootDepth: {
    draw: rootDepth,
    words: "One jaw along the key's bottom edge, the knife edge in the bottom of the cut",
  },
  overBall: {
    draw: overBall,
    words: "Ball in the cut, one jaw on the ball, the other on the key's bottom edge",
  },
  rootFlat: { draw: rootFlat, words: 'Width of the flat at the bottom of the cut' },
  cutPosition: { draw: cutPosition, words: 'From the shoulder to the middle of the cut' },
  bladeHeight: { draw: bladeHeight, words: 'Jaws across the blade where it is not cut' },
  tipPosition: { draw: tipPosition, words: 'From the shoulder to the end of the blade' },
  stopShort: {
    draw: stopShort,
    words: "From the key's shoulder to the front face of the plug, where it should rest",
  },
  ballDiameter: { draw: ballDiameter, words: 'Jaws across the ball' },
  pinLength: { draw: pinLength, words: 'Jaws on both ends of the pin' },
  pinDiameter: { draw: pinDiameter, words: 'Jaws across the body of the pin, away from its edges' },
  ballAndPin: {
    draw: ballAndPin,
    words: 'Ball and bottom pin together in a holder, one jaw under the ball, one on the pin',
  },
  masterPinLength: { draw: masterPinLength, words: 'Master pin held square, jaws on both ends' },
  driverLength: { draw: driverLength, words: 'Jaws on both ends of the driver' },
  springSolid: { draw: springSolid, words: 'Spring squeezed between the jaws until the coils touch' },
  springFree: { draw: springFree, words: 'Spring standing free between the jaws' },
  pinTopFlat: { draw: pinTopFlat, words: 'Top of the pin flat, edge sharp' },
  pinTopBevelled: { draw: pinTopBevelled, words: 'Top of the pin flat with a bevel' },
  pinTopDomed: { draw: pinTopDomed, words: 'Top of the pin domed' },
  driverEndSharp: { draw: driverEndSharp, words: 'Bottom of the driver flat, edge sharp' },
  driverEndBroken: { draw: driverEndBroken, words: 'Bottom of the driver flat, edge broken by a bevel' },
  driverEndRounded: { draw: driverEndRounded, words: 'Bottom of the driver flat, edge rounded' },
  driverEndDomed: { draw: driverEndDomed, words: 'Bottom of the driver domed' },
  pinTipBall: { draw: pinTipBall, words: 'A ball under a dimpled pin' },
  pinTipPointed: { draw: pinTipPointed, words: 'Lower end of the pin pointed' },
  pinTipRounded: { draw: pinTipRounded, words: 'Lower end of the pin rounded' },
};

/** Every kind, in the order they are asked for. */
export const JAW_DRAWING_KINDS = Object.keys(SCENES) as readonly JawDrawingKind[];

/** Draws one. */
export function jawDrawing(kind: JawDrawingKind): DrawingNode {
  const { draw, words } = SCENES[kind];
  const box = { left: 0, right: SKETCH.width, top: 0, bottom: SKETCH.height };
  return drawingRoot(SKETCH, words, [clipped(draw(), box)], 'jaw-drawing');
}
