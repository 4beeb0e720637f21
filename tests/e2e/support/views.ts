// How colours are seen by people who tell fewer of them apart, and how far apart two of them are then.
//
// Matrices: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency",
// IEEE Transactions on Visualization and Computer Graphics 15(6), 2009, severity 1.0. They work on linear light.
// Contrast: WCAG 2.2, definitions of relative luminance and contrast ratio; 3:1 for what must be told apart is its 1.4.11.

/** Red, green, blue; 0 to 255 where a screen shows them. */
export type Rgb = readonly [number, number, number];

type Matrix = readonly [Rgb, Rgb, Rgb];

/** By view; each row makes one channel of what is seen. Grey is the luminance alone. */
export const views: Readonly<
  Record<'plain' | 'protanopia' | 'deuteranopia' | 'tritanopia' | 'grey', Matrix>
> = {
  plain: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
  grey: [
    [0.2126, 0.7152, 0.0722],
    [0.2126, 0.7152, 0.0722],
    [0.2126, 0.7152, 0.0722],
  ],
};

/** One of the views. */
export type View = keyof typeof views;

const linear = (channel: number) =>
  channel / 255 <= 0.04045 ? channel / 255 / 12.92 : ((channel / 255 + 0.055) / 1.055) ** 2.4;

const dot = ([a, b, c]: Rgb, [x, y, z]: Rgb) => a * x + b * y + c * z;

/** How light a colour is in a view, 0 to 1; TypeError where a channel is no number. */
function luminance(colour: Rgb, view: View): number {
  if (!colour.every(Number.isFinite))
    throw new TypeError(`Cannot compare colours as a channel must be a number: current value is ${colour}`);
  const light: Rgb = [linear(colour[0]), linear(colour[1]), linear(colour[2])];
  const [red, green, blue] = views[view];
  const within = (value: number) => Math.min(1, Math.max(0, value));
  return dot(
    [0.2126, 0.7152, 0.0722],
    [within(dot(red, light)), within(dot(green, light)), within(dot(blue, light))],
  );
}

/** How far apart two colours are in a view, 1 to 21; TypeError where a channel is no number. */
export function contrast(one: Rgb, other: Rgb, view: View): number {
  const [a, b] = [luminance(one, view), luminance(other, view)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}
