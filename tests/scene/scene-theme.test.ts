/** The solid view and the drawing show one section: same colours of cut faces, same hatching. */
import { describe, expect, test } from 'vitest';
import { type Ink, paletteColour } from '../../src/drawing/drawing-palette.ts';
import { hatchFor } from '../../src/drawing/hatch-styles.ts';
import type { CutRole } from '../../src/geometry/cut-parts.ts';
import { hatchStyleOf } from '../../src/scene/part-looks.ts';
import { PAPER_THEME, SLATE_THEME } from '../../src/scene/scene-theme.ts';

const ROLES: readonly CutRole[] = [
  'plug',
  'sleeve',
  'shell',
  'retainer',
  'key',
  'ball',
  'bottomPin',
  'masterPin',
  'driver',
];
const inkOf = (role: CutRole) => role.replace(/[A-Z]/, (letter) => `-${letter.toLowerCase()}`) as Ink;

describe.each([
  ['paper', PAPER_THEME],
  ['slate', SLATE_THEME],
] as const)('the %s theme', (name, theme) => {
  test.each(ROLES)('cuts and hatches %s in the colours of the drawing', (role) => {
    expect(theme.parts[role].cut).toBe(paletteColour(inkOf(role), name));
    const isBody = role === 'plug' || role === 'sleeve' || role === 'shell';
    const hatch: Ink = isBody ? `${role}-hatch` : 'part-hatch';
    expect(theme.parts[role].hatch).toBe(paletteColour(hatch, name));
  });

  test('has the sheet and the ink of the drawing', () => {
    expect(theme.background).toBe(paletteColour('sheet', name));
    expect(theme.ink).toBe(paletteColour('outline', name));
    expect(theme.text).toBe(paletteColour('ink', name));
    expect(theme.flag).toBe(paletteColour('stops', name));
  });
});

describe('hatching', () => {
  test.each(ROLES)('of %s has the angle and pitch of the drawing, which counts y downwards', (role) => {
    for (const use of ['bodies', 'all'] as const) {
      for (const place of [0, 1, 2, 3]) {
        const drawn = hatchFor(role, place, use);
        const solid = hatchStyleOf(role, place, use);
        expect(solid.pitch).toBe(drawn?.pitch ?? 0);
        if (drawn) expect(solid.angle).toBeCloseTo(-drawn.angle, 12);
      }
    }
  });
});
