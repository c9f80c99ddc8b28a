/**
 * Colours of the solid view. Metals are calm tints, never a code for sizes; both themes belong to the drawing's, so that
 * the section reads the same in either view. The app may pass its own.
 */
import type { PartKind } from '../solids/solid-parts.ts';

export type PartColours = {
  /** Of the turned or milled surface. */
  readonly skin: string;
  /** Of the cut face. */
  readonly cut: string;
  /** Of the lines across the cut face. */
  readonly hatch: string;
};

export type SceneTheme = {
  readonly background: string;
  /** Of edges and outlines. */
  readonly ink: string;
  readonly parts: Readonly<Record<PartKind, PartColours>>;
  /** 0 to 1: how much a surface that is turned away from the light keeps of its colour. */
  readonly shade: number;
};

const steel = { skin: '#b9c4cd', cut: '#bcc7d0', hatch: '#8c9aa6' };

export const PAPER_THEME: SceneTheme = {
  background: '#fdfcf7',
  ink: '#23282e',
  shade: 0.62,
  parts: {
    shell: { skin: '#e3d5a6', cut: '#ecdfb3', hatch: '#bfa968' },
    retainer: { skin: '#4a4f55', cut: '#23282e', hatch: '#23282e' },
    sleeve: { skin: '#d9c79a', cut: '#e4d3a4', hatch: '#ad9452' },
    plug: { skin: '#d3bd82', cut: '#dfca92', hatch: '#a88c45' },
    key: steel,
    ball: { skin: '#cfd6de', cut: '#dce1e8', hatch: '#8c9aa6' },
    bottomPin: { skin: '#ecdfbd', cut: '#f7eed8', hatch: '#bfa968' },
    masterPin: { skin: '#e6d3a6', cut: '#f0e0b8', hatch: '#bfa968' },
    driver: { skin: '#cbd1da', cut: '#dce0e7', hatch: '#8c9aa6' },
    spring: { skin: '#7d858d', cut: '#7d858d', hatch: '#7d858d' },
  },
};

export const SLATE_THEME: SceneTheme = {
  background: '#20252b',
  ink: '#ece7da',
  shade: 0.5,
  parts: {
    shell: { skin: '#6a5c38', cut: '#4d4227', hatch: '#7d6b3c' },
    retainer: { skin: '#cfd2d4', cut: '#ece7da', hatch: '#ece7da' },
    sleeve: { skin: '#7b6735', cut: '#5b4d28', hatch: '#917a3d' },
    plug: { skin: '#8a7334', cut: '#6b5824', hatch: '#a58a3f' },
    key: { skin: '#5d6a75', cut: '#46505a', hatch: '#75838f' },
    ball: { skin: '#7c8793', cut: '#5b6671', hatch: '#8b98a4' },
    bottomPin: { skin: '#a3925b', cut: '#8c7d4b', hatch: '#b7a468' },
    masterPin: { skin: '#94804a', cut: '#7c6c3f', hatch: '#b7a468' },
    driver: { skin: '#7b8590', cut: '#5a646e', hatch: '#8b98a4' },
    spring: { skin: '#a9b1b8', cut: '#a9b1b8', hatch: '#a9b1b8' },
  },
};
