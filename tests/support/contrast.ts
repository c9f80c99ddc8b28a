/** Contrast of two colours by WCAG 2.2 (relative luminance, contrast ratio), and colours laid over each other. */

/** From 1 (the same) to 21 (black and white). Colours as #rrggbb. */
export function contrast(one: string, other: string): number {
  const [a, b] = [luminance(one), luminance(other)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** What is seen of a colour that lies over another and lets some of it through. */
export function laidOver(top: string, ground: string, opacity: number): string {
  const [over, under] = [channels(top), channels(ground)];
  const mixed = over.map((each, i) => Math.round(opacity * each + (1 - opacity) * (under[i] ?? 0)));
  return `#${mixed.map((each) => each.toString(16).padStart(2, '0')).join('')}`;
}

function channels(colour: string): number[] {
  if (!/^#[0-9a-f]{6}$/i.test(colour)) throw new Error(`colour ${colour}`);
  return [1, 3, 5].map((at) => parseInt(colour.slice(at, at + 2), 16));
}

function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = channels(colour).map((channel) => {
    const share = channel / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
