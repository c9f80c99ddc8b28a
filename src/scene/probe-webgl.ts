/**
 * Finds out once whether this browser draws in 3D at all, and whether it has to do it slowly in software. The verdict holds
 * for the session: a refused context is not asked for again.
 */
export type WebglVerdict =
  | { readonly isAvailable: true; readonly isSlow: boolean; readonly renderer: string }
  | { readonly isAvailable: false; readonly sentence: string };

let verdict: WebglVerdict | null = null;

/** Gives the verdict, asking the browser the first time. */
export function probeWebgl(): WebglVerdict {
  verdict ??= probe();
  return verdict;
}

function probe(): WebglVerdict {
  if (typeof WebGL2RenderingContext === 'undefined') {
    return refused('This browser has no WebGL 2');
  }
  const fast = tryContext({ failIfMajorPerformanceCaveat: true });
  if (fast.context) return accepted(fast.context, false);
  const slow = tryContext({ failIfMajorPerformanceCaveat: false });
  if (slow.context) return accepted(slow.context, true);
  return refused(
    slow.reason === ''
      ? 'This browser refused to draw in 3D (often the graphics card is switched off or not trusted)'
      : `This browser refused to draw in 3D (${slow.reason})`,
  );
}

function tryContext(options: { readonly failIfMajorPerformanceCaveat: boolean }): {
  readonly context: WebGL2RenderingContext | null;
  readonly reason: string;
} {
  const canvas = document.createElement('canvas');
  let reason = '';
  canvas.addEventListener('webglcontextcreationerror', (event) => {
    reason = (event as WebGLContextEvent).statusMessage;
  });
  const context = canvas.getContext('webgl2', options) as WebGL2RenderingContext | null;
  return { context, reason };
}

function accepted(context: WebGL2RenderingContext, isSlow: boolean): WebglVerdict {
  const renderer = String(context.getParameter(context.RENDERER));
  // Browsers keep few contexts alive: this one is given back at once.
  context.getExtension('WEBGL_lose_context')?.loseContext();
  return { isAvailable: true, isSlow, renderer };
}

function refused(what: string): WebglVerdict {
  return {
    isAvailable: false,
    sentence: `${what}. The drawing shows the same section with the same numbers; nothing is missing but the solid view.`,
  };
}
