/**
 * The section with dimensions as ISO 129-1 asks for it (general principles from memory; sizes of arrow heads and gaps common
 * practice): every line as long as its number says, texts over their lines, nothing on nothing.
 */
import { describe, expect, test } from 'vitest';
import { dimensionedSection } from '../../src/drawing/dimensioned-section.ts';
import type { DrawingNode } from '../../src/drawing/node.ts';
import { PX_PER_MM } from '../../src/drawing/view.ts';
import { poseAt } from '../../src/model/assembly/pose-at.ts';
import type { Evaluation } from '../../src/model/evaluate/evaluation.ts';
import { pictureOf, pictureSource } from '../../src/panels/note/note-pictures.ts';
import { lookAt } from '../../src/panels/shared/look.ts';
import { buildJob } from '../support/job-builder.ts';
import { sampleAssembly, sampleEvaluation, samplePose } from '../support/sample-assembly.ts';
import { everyNode, pathPoints, textBoxes, textFaults } from '../support/svg-boxes.ts';

const CASES = [1, 5, 6, 7].flatMap((chambers) =>
  [false, true].flatMap((hasSleeve) =>
    (['in', 'mm'] as const).map((unit) => ({ chambers, hasSleeve, unit })),
  ),
);

/** As a job gives it: with what the key calls for. */
function called(evaluation: Evaluation, needed: number): Evaluation {
  return {
    ...evaluation,
    chambers: evaluation.chambers.map((each) => ({ ...each, neededLowerStack: needed })),
  };
}

function drawn({ chambers, hasSleeve, unit }: (typeof CASES)[number], hasBitting = true) {
  const assembly = sampleAssembly({ chambers, hasSleeve });
  const pose = samplePose(assembly);
  const evaluation = called(sampleEvaluation(assembly, pose), 8.13);
  return {
    assembly,
    pose,
    ...dimensionedSection(assembly, pose, evaluation, { unit, mostMm: 182, hasBitting }),
  };
}

/** Each dimension: its number and brackets, and what its arrow heads span in mm of the cylinder. */
function dimensionsOf(root: DrawingNode, scale: string) {
  const pxPerMm = PX_PER_MM * Number.parseFloat(scale);
  return everyNode(root)
    .filter(({ attributes }) => attributes['class'] === 'dimensions')
    .map((each) => {
      const nodes = everyNode(each);
      const texts = nodes
        .filter(({ tag }) => tag === 'text')
        .map(({ children }) => children.filter((child) => typeof child === 'string').join(''));
      const tips = nodes
        .filter(({ attributes }) => attributes['class'] === 'arrow')
        .map(({ attributes }) => pathPoints(String(attributes['d']))[0]!);
      const [one, other] = tips as [{ x: number; y: number }, { x: number; y: number }];
      return { each, texts, tips, mm: Math.hypot(one.x - other.x, one.y - other.y) / pxPerMm };
    });
}

describe.each(CASES)('a section with dimensions, %o', (options) => {
  const { drawing, scale, assembly, widthMm } = drawn(options);
  const dimensions = dimensionsOf(drawing, scale);

  test('has every dimension once, as long as it says', () => {
    expect(dimensions).toHaveLength(1 + 3 * options.chambers);
    const millimetres = options.unit === 'in' ? 25.4 : 1;
    for (const { texts, mm } of dimensions) {
      const said = Number(texts[0]!.replace('Ø ', ''));
      // Half the last place that is said: half a thousandth of an inch or 0.01 mm.
      expect(Math.abs(said * millimetres - mm), texts[0]).toBeLessThan(
        options.unit === 'in' ? 0.0066 : 0.0052,
      );
    }
    const radius = assembly.bodies[0]!.outerRadius;
    expect(dimensions[0]!.mm).toBeCloseTo(2 * radius, 3);
    assembly.chambers.forEach(({ z }, i) => expect(dimensions[1 + i]!.mm).toBeCloseTo(z, 3));
    expect(widthMm).toBeLessThanOrEqual(176);
  });

  test('has what the key calls for in brackets beside each lower stack, and beside nothing else', () => {
    const brackets = dimensions.flatMap(({ texts }) => texts.slice(1));
    expect(brackets).toEqual(
      Array.from({ length: options.chambers }, () => (options.unit === 'in' ? '(.3200)' : '(8.13)')),
    );
  });

  test('no text lies on another or leaves the drawing, and each stands over its line', () => {
    // The root has its size on paper; boxes are in pixels.
    const [, , width, height] = String(drawing.attributes['viewBox']).split(' ').map(Number);
    const inPixels = { ...drawing, attributes: { ...drawing.attributes, width: width!, height: height! } };
    expect(textFaults(inPixels)).toEqual([]);
    for (const { each, tips } of dimensions) {
      const [box] = textBoxes(each);
      const isLevel = tips[0]!.y === tips[1]!.y;
      if (isLevel) expect(box!.bottom).toBeLessThanOrEqual(tips[0]!.y + 1);
      else expect(box!.right).toBeLessThanOrEqual(tips[0]!.x + 1);
    }
  });

  test('extension lines leave a gap to the metal and run past the dimension line; heads are narrow and filled', () => {
    const extensions = everyNode(drawing).filter(({ attributes }) => attributes['class'] === 'extension');
    expect(extensions).toHaveLength(2 + 1 + options.chambers);
    const lowest = Math.max(
      ...everyNode(
        drawing.children.find(
          (each) => typeof each !== 'string' && each.attributes['class'] === 'metal',
        ) as DrawingNode,
      )
        .filter(({ attributes }) => attributes['d'] !== undefined)
        .flatMap(({ attributes }) => pathPoints(String(attributes['d'])).map(({ y }) => y)),
    );
    for (const { attributes } of extensions.slice(2)) {
      const [start] = pathPoints(String(attributes['d']));
      expect(start!.y - lowest).toBeGreaterThan(0.5 * PX_PER_MM);
    }
    for (const { each } of dimensions)
      for (const { attributes } of everyNode(each).filter((node) => node.attributes['class'] === 'arrow')) {
        const [tip, one, other] = pathPoints(String(attributes['d'])) as [P, P, P];
        const half = Math.hypot(one.x - other.x, one.y - other.y) / 2;
        const long = Math.hypot((one.x + other.x) / 2 - tip.x, (one.y + other.y) / 2 - tip.y);
        expect((2 * Math.atan2(half, long) * 180) / Math.PI).toBeLessThan(32);
      }
  });
});

type P = { readonly x: number; readonly y: number };

describe('a section with dimensions', () => {
  test('of a job says what was measured, with the unit once', () => {
    const job = buildJob({ chambers: [{ rootDepth: 0.27 }, { rootDepth: 0.31 }] });
    const look = lookAt(job, { cylinder: 'cylinder', key: 'key', plan: 'plan' });
    const texts = (isHidden: boolean) =>
      textBoxes(pictureOf('dimensions', 'chamber-1', pictureSource(look, isHidden)).drawing).map(
        ({ text }) => text,
      );
    const shown = texts(false);
    expect(shown).toContain('.2700');
    expect(shown).toContain('.3100');
    const needed = look.evaluation.chambers[0]!.neededLowerStack! / 25.4;
    expect(shown.some((text) => Math.abs(Number(text.replace(/[()]/gu, '')) - needed) < 2.6e-4)).toBe(true);
    expect(shown.filter((text) => text.includes('inches')).length).toBe(1);
    expect(shown.filter((text) => /^[Ø (.\d)]+ in$/u.test(text))).toEqual([]);
    // Hidden: diameter and places only.
    const hidden = texts(true).filter((text) => /^[Ø (.\d)]+$/u.test(text) && !/^\d$/u.test(text));
    expect(hidden).toHaveLength(1 + 2);
    expect(hidden.join(' ')).not.toContain('.2700');
  });

  test('without a key tells the stacks alone, without stacks the places', () => {
    const bare = sampleAssembly({ chambers: 2, hasKey: false });
    const options = { unit: 'mm', mostMm: 182, hasBitting: true } as const;
    const alone = dimensionedSection(bare, poseAt(bare, { travel: null }), null, options);
    expect(dimensionsOf(alone.drawing, alone.scale)).toHaveLength(1 + 2 + 2);
    const empty = { ...bare, stacks: [] };
    const places = dimensionedSection(empty, poseAt(empty, { travel: null }), null, options);
    expect(dimensionsOf(places.drawing, places.scale)).toHaveLength(1 + 2);
  });
});
