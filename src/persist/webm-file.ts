/**
 * A moving picture as a WebM file: one track of frames that the browser encoded, in the EBML form (RFC 8794; Matroska, RFC
 * 9559). An element is its id, its size and its content. No date, no made-up id: equal frames give equal bytes.
 */
export type ClipFrame = {
  readonly bytes: Uint8Array;
  readonly milliseconds: number;
  /** Can be shown without the frames before it. */
  readonly isKey: boolean;
};

export type Clip = {
  readonly codec: 'V_VP8' | 'V_VP9';
  readonly width: number;
  readonly height: number;
  /** Of the whole. */
  readonly milliseconds: number;
  readonly frames: readonly ClipFrame[];
};

const ID = {
  head: 0x1a45dfa3,
  version: 0x4286,
  readVersion: 0x42f7,
  longestId: 0x42f2,
  longestSize: 0x42f3,
  docType: 0x4282,
  docVersion: 0x4287,
  docReadVersion: 0x4285,
  segment: 0x18538067,
  info: 0x1549a966,
  timestampScale: 0x2ad7b1,
  muxingApp: 0x4d80,
  writingApp: 0x5741,
  duration: 0x4489,
  tracks: 0x1654ae6b,
  track: 0xae,
  trackNumber: 0xd7,
  trackId: 0x73c5,
  lacing: 0x9c,
  trackType: 0x83,
  codec: 0x86,
  video: 0xe0,
  pixelWidth: 0xb0,
  pixelHeight: 0xba,
  cues: 0x1c53bb6b,
  cuePoint: 0xbb,
  cueTime: 0xb3,
  cuePositions: 0xb7,
  cueTrack: 0xf7,
  cueCluster: 0xf1,
  cluster: 0x1f43b675,
  timestamp: 0xe7,
  block: 0xa3,
} as const;

const APP = 'Shearsight';
const TRACK = 1;
const VIDEO_TRACK = 1;
/** ns in a millisecond. */
const MILLISECOND = 1_000_000;
/** Cues count from the start of the segment's content, in so many bytes, however small the number. */
const CUE_BYTES = 4;

/** Writes the file: a cluster for each key frame, so that players can jump to it. */
export function webmFile(clip: Clip): Uint8Array<ArrayBuffer> {
  const clusters = clustersOf(clip.frames);
  const written = clusters.map((frames) => clusterBytes(frames));
  const before = joined([infoBytes(clip), tracksBytes(clip)]);
  const cuesLength = cuesBytes(
    clusters,
    clusters.map(() => 0),
  ).length;
  let at = before.length + cuesLength;
  const places = written.map((bytes) => {
    const place = at;
    at += bytes.length;
    return place;
  });
  return joined([
    headBytes(),
    element(ID.segment, joined([before, cuesBytes(clusters, places), ...written])),
  ]);
}

function headBytes(): Uint8Array {
  return element(
    ID.head,
    joined([
      number(ID.version, 1),
      number(ID.readVersion, 1),
      number(ID.longestId, 4),
      number(ID.longestSize, 8),
      text(ID.docType, 'webm'),
      number(ID.docVersion, 4),
      number(ID.docReadVersion, 2),
    ]),
  );
}

function infoBytes({ milliseconds }: Clip): Uint8Array {
  const duration = new Uint8Array(8);
  new DataView(duration.buffer).setFloat64(0, milliseconds);
  return element(
    ID.info,
    joined([
      number(ID.timestampScale, MILLISECOND),
      text(ID.muxingApp, APP),
      text(ID.writingApp, APP),
      element(ID.duration, duration),
    ]),
  );
}

function tracksBytes({ codec, width, height }: Clip): Uint8Array {
  const video = element(ID.video, joined([number(ID.pixelWidth, width), number(ID.pixelHeight, height)]));
  const track = [
    number(ID.trackNumber, TRACK),
    number(ID.trackId, TRACK),
    number(ID.lacing, 0),
    number(ID.trackType, VIDEO_TRACK),
    text(ID.codec, codec),
    video,
  ];
  return element(ID.tracks, element(ID.track, joined(track)));
}

function cuesBytes(clusters: readonly (readonly ClipFrame[])[], places: readonly number[]): Uint8Array {
  const points = clusters.map(([first], i) => {
    const place = new Uint8Array(CUE_BYTES);
    new DataView(place.buffer).setUint32(0, places[i] ?? 0);
    const positions = joined([number(ID.cueTrack, TRACK), element(ID.cueCluster, place)]);
    return element(
      ID.cuePoint,
      joined([number(ID.cueTime, first?.milliseconds ?? 0), element(ID.cuePositions, positions)]),
    );
  });
  return element(ID.cues, joined(points));
}

function clustersOf(frames: readonly ClipFrame[]): ClipFrame[][] {
  const clusters: ClipFrame[][] = [];
  for (const frame of frames) {
    const last = clusters.at(-1);
    if (last === undefined || frame.isKey) clusters.push([frame]);
    else last.push(frame);
  }
  return clusters;
}

function clusterBytes(frames: readonly ClipFrame[]): Uint8Array {
  const start = frames[0]?.milliseconds ?? 0;
  const blocks = frames.map(({ bytes, milliseconds, isKey }) => {
    // Track as a size, time within the cluster in two bytes, flags.
    const head = new Uint8Array(4);
    const view = new DataView(head.buffer);
    head[0] = 0x80 | TRACK;
    view.setInt16(1, milliseconds - start);
    head[3] = isKey ? 0x80 : 0;
    return element(ID.block, joined([head, bytes]));
  });
  return element(ID.cluster, joined([number(ID.timestamp, start), ...blocks]));
}

function element(id: number, content: Uint8Array): Uint8Array {
  return joined([bigEndian(id), sizeBytes(content.length), content]);
}

function number(id: number, value: number): Uint8Array {
  return element(id, bigEndian(value));
}

function text(id: number, words: string): Uint8Array {
  return element(id, new TextEncoder().encode(words));
}

/** A size in the fewest bytes whose first set bit tells how many there are; all ones would mean "not known". */
function sizeBytes(size: number): Uint8Array {
  let length = 1;
  while (size >= 2 ** (7 * length) - 1) length += 1;
  const bytes = new Uint8Array(length);
  let rest = size;
  for (let i = length - 1; i >= 0; i--) {
    bytes[i] = rest % 256;
    rest = Math.floor(rest / 256);
  }
  bytes[0] = (bytes[0] ?? 0) | (0x80 >> (length - 1));
  return bytes;
}

function bigEndian(value: number): Uint8Array {
  const bytes: number[] = [];
  for (let rest = value; rest > 0 || bytes.length === 0; rest = Math.floor(rest / 256))
    bytes.unshift(rest % 256);
  return Uint8Array.from(bytes);
}

function joined(pieces: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}
