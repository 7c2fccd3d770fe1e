// The inks: both dark sets are one and the same, and words can be read on every ground.
import { expect, test } from 'vitest';
import css from './look.css?raw';

/** The variables of the block that follows a selector. */
function inks(selector: string): Record<string, string> {
  const from = css.indexOf(`${selector} {`);
  if (from < 0) throw new Error(`no ${selector}`);
  const block = css.slice(from, css.indexOf('}', from));
  return Object.fromEntries(
    [...block.matchAll(/--(\w+): (#[0-9a-f]{6});/g)].map((m) => [m[1] ?? '', m[2] ?? '']),
  );
}

/** Relative luminance (WCAG 2.2, definition of "relative luminance"). */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const c = parseInt(hex.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0);
}

/** Contrast ratio (WCAG 2.2, definition of "contrast ratio"). */
function contrast(a: string, b: string): number {
  const [x, y] = [luminance(a), luminance(b)];
  return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
}

const light = inks(':root');
const dark = inks(":root[data-theme='dark']");

test('dark by the system and dark by choice are the same', () => {
  expect(inks(":root:not([data-theme='light'])")).toEqual(dark);
  expect(Object.keys(dark)).toEqual(Object.keys(light));
  expect(Object.keys(light)).toHaveLength(10);
});

test('the measure of contrast is the standard one', () => {
  // WCAG 2.2: black on white is 21:1.
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
});

test.each([
  ['light', light],
  ['dark', dark],
])('%s: words reach 4.5:1 (WCAG 2.2, 1.4.3), lines that tell something 3:1 (1.4.11)', (_, set) => {
  const ink = (name: string) => set[name] ?? '';
  for (const ground of ['wall', 'paper', 'wash'])
    for (const words of ['ink', 'soft', 'ball', 'late'])
      expect(contrast(ink(words), ink(ground)), `${words} on ${ground}`).toBeGreaterThanOrEqual(4.5);
  expect(contrast(ink('paper'), ink('ball')), 'words on a primary button').toBeGreaterThanOrEqual(4.5);
  expect(contrast(ink('ink'), ink('rule')), 'words on a resting button').toBeGreaterThanOrEqual(4.5);
  for (const line of ['maple', 'line', 'ball'])
    expect(contrast(ink(line), ink('wall')), line).toBeGreaterThanOrEqual(3);
});
