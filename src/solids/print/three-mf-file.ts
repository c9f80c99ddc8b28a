/**
 * Pieces as a 3MF package (3MF Core Specification 1.3): a zip file with a model in XML, whose unit is written in it. Every
 * piece an object of its own, its corners where it lies on the bed, so that no reader has to apply a transform. The same
 * pieces give the same bytes: no dates, no made-up ids.
 */
import { type Zippable, zipSync } from 'fflate';
import type { BedPiece } from './laid-out.ts';

const HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n';
const CONTENT_TYPES = `${HEAD}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>`;
const RELATIONSHIPS = `${HEAD}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>`;

/** Zip files must have a time; this is the first one they can have. Local, so that the same digits are written everywhere. */
const NO_TIME = '1980-01-01T00:00:00';
/** Finer than single precision is at the size of a hand. */
const DECIMALS = 1e6;

/** @param title shown by programs that open it */
export function threeMfFile(pieces: readonly BedPiece[], title: string): Uint8Array {
  const encoder = new TextEncoder();
  const files: Zippable = {
    '[Content_Types].xml': encoder.encode(CONTENT_TYPES),
    '_rels/.rels': encoder.encode(RELATIONSHIPS),
    '3D/3dmodel.model': encoder.encode(modelText(pieces, title)),
  };
  return zipSync(files, { mtime: NO_TIME, level: 6 });
}

function modelText(pieces: readonly BedPiece[], title: string): string {
  const objects = pieces.map(({ name, mesh }, i) => {
    const { positions, triangles } = mesh;
    const lines = [
      `  <object id="${i + 1}" type="model" name="${escaped(name)}">`,
      '   <mesh>',
      '    <vertices>',
    ];
    for (let at = 0; at < positions.length; at += 3)
      lines.push(
        `<vertex x="${text(positions[at])}" y="${text(positions[at + 1])}" z="${text(positions[at + 2])}"/>`,
      );
    lines.push('    </vertices>', '    <triangles>');
    for (let at = 0; at < triangles.length; at += 3)
      lines.push(
        `<triangle v1="${triangles[at] ?? 0}" v2="${triangles[at + 1] ?? 0}" v3="${triangles[at + 2] ?? 0}"/>`,
      );
    lines.push('    </triangles>', '   </mesh>', '  </object>');
    return lines.join('\n');
  });
  return [
    `${HEAD}<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">`,
    ` <metadata name="Title">${escaped(title)}</metadata>`,
    ' <resources>',
    ...objects,
    ' </resources>',
    ' <build>',
    ...pieces.map((_, i) => `  <item objectid="${i + 1}"/>`),
    ' </build>',
    '</model>',
    '',
  ].join('\n');
}

function text(value = 0): string {
  return String(Math.round(value * DECIMALS) / DECIMALS + 0);
}

/** XML knows no control characters, not even written as numbers. */
function escaped(words: string): string {
  return words
    .replaceAll(/[\p{Cc}\p{Cs}\uFFFE\uFFFF]/gu, ' ')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
