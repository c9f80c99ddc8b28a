/**
 * Colours of the solid view. Cut faces, hatching, sheet and ink are those of the drawing (a test compares them), so that the
 * section reads the same in either view; the turned and milled surfaces around them are a shade deeper. Metals are calm
 * tints, never a code for sizes. The app may pass its own.
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
  /** Of words in the picture, and of the flag on the chamber that holds the lock. */
  readonly text: string;
  readonly flag: string;
  readonly parts: Readonly<Record<PartKind, PartColours>>;
  /** 0 to 1: how much a surface that is turned away from the light keeps of its colour. */
  readonly shade: number;
};

export const PAPER_THEME: SceneTheme = {
  background: '#fcfaf4',
  ink: '#1d2227',
  text: '#1d2227',
  flag: '#a3211a',
  shade: 0.62,
  parts: {
    shell: { skin: '#e3d5a6', cut: '#f0e6c8', hatch: '#c6b483' },
    sleeve: { skin: '#d9bb9c', cut: '#e6cdb4', hatch: '#b98f6c' },
    plug: { skin: '#d3bd82', cut: '#e3d2a2', hatch: '#b39c5e' },
    retainer: { skin: '#4a4f55', cut: '#3a4046', hatch: '#9aa3ab' },
    key: { skin: '#b9c4cd', cut: '#c3ccd3', hatch: '#9aa3ab' },
    ball: { skin: '#c6ced6', cut: '#d3dae1', hatch: '#9aa3ab' },
    bottomPin: { skin: '#ecdfbd', cut: '#f8f1dc', hatch: '#9aa3ab' },
    masterPin: { skin: '#e2cf9f', cut: '#efdfb6', hatch: '#9aa3ab' },
    driver: { skin: '#cbd1da', cut: '#dfe3e9', hatch: '#9aa3ab' },
    spring: { skin: '#7d858d', cut: '#7d858d', hatch: '#7d858d' },
  },
};

export const SLATE_THEME: SceneTheme = {
  background: '#20242a',
  ink: '#d6d2c7',
  text: '#ece8dd',
  flag: '#ff9687',
  shade: 0.5,
  parts: {
    shell: { skin: '#6a5c38', cut: '#453c26', hatch: '#7a6a3c' },
    sleeve: { skin: '#7d6048', cut: '#5c4534', hatch: '#9a7657' },
    plug: { skin: '#8a7334', cut: '#62532b', hatch: '#a18a4b' },
    retainer: { skin: '#cfd2d4', cut: '#c9cdd0', hatch: '#97a1aa' },
    key: { skin: '#5d6a75', cut: '#46515b', hatch: '#97a1aa' },
    ball: { skin: '#7f8b97', cut: '#67737f', hatch: '#97a1aa' },
    bottomPin: { skin: '#93834f', cut: '#7d6f40', hatch: '#97a1aa' },
    masterPin: { skin: '#94804a', cut: '#7a6a3a', hatch: '#97a1aa' },
    driver: { skin: '#7b8590', cut: '#5b6672', hatch: '#97a1aa' },
    spring: { skin: '#a9b1b8', cut: '#a9b1b8', hatch: '#a9b1b8' },
  },
};
